/** How a sheet of one's own layout is read as one of ours: the user's texts are the keys, ours the values. */
export interface SheetMapping {
  /** Header cell of a column → header cell of our layout, such as `sieve (mm)`. */
  readonly columns: Readonly<Record<string, string>>;
  /** First cell of a line above the table → name of our line. */
  readonly lines: Readonly<Record<string, string>>;
  /** Text of a cell below the header → our text, such as `pan`. */
  readonly cells: Readonly<Record<string, string>>;
  /** Lines that the sheet lacks: our name → value, with a decimal point. */
  readonly facts: Readonly<Record<string, string>>;
  /** Rows at the top that are not looked at; default 0. */
  readonly skipRows: number;
  /** Of a CSV file; without it the mark that most lines hold. */
  readonly delimiter?: "," | ";" | "\t";
  /** Numbers of the sheet are written 1.234,5. */
  readonly decimalComma: boolean;
}

/** A sheet with its mapping. */
export interface MappedSheet extends SheetMapping {
  readonly sheet: string;
}

/** A sheet as a study names it: its file, or the file with how to read it. */
export type SheetSource = string | MappedSheet;
