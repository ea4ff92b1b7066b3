/** The cells of one sheet as text, as a spreadsheet shows its rows; row `i` of the sheet is `rows[i - 1]`. */
export interface SheetGrid {
  /** File inside the study folder, as the study names it. */
  readonly file: string;
  readonly rows: readonly (readonly string[])[];
}
