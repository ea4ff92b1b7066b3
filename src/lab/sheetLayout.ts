import type { Dimension } from "../quantities/units.js";

/** What a cell may hold. Numbers are converted to the base unit of their dimension. */
export interface CellRule {
  /** Key in the values that come back. */
  readonly key: string;
  /** Accepted names, lower case; the first one is shown in messages. */
  readonly names: readonly string[];
  readonly kind: "number" | "text" | "sieve";
  /** Needed for numbers: where it is set, the cell's header must name a unit of it. */
  readonly dimension?: Dimension;
  readonly required?: boolean;
  /** Smallest allowed value in the base unit. */
  readonly min?: number;
  /** Largest allowed value in the base unit. */
  readonly max?: number;
  /** Zero is not allowed although `min` is 0. */
  readonly positive?: boolean;
}

/**
 * A lab sheet: rows of facts (name in the first cell, value in the second), then one table.
 * The header row of the table is the first row that holds the name of the first column.
 */
export interface SheetLayout {
  /** What the sheet is, for messages: "sieve sheet". */
  readonly title: string;
  readonly facts: readonly CellRule[];
  readonly columns: readonly CellRule[];
}

export type CellValue = number | string | undefined;

export interface SheetRow {
  readonly row: number;
  readonly values: Readonly<Record<string, CellValue>>;
  /** Cells as written, for messages and the annex. */
  readonly written: Readonly<Record<string, string>>;
}

export interface SheetValues {
  readonly file: string;
  readonly facts: Readonly<Record<string, CellValue>>;
  readonly factRows: Readonly<Record<string, number>>;
  readonly rows: readonly SheetRow[];
  /** Header cells as written, by key. */
  readonly headers: Readonly<Record<string, string>>;
}
