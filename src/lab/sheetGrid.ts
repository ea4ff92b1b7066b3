import type { SheetMapping } from "./sheetMapping.js";

/** The cells of one sheet as text, as a spreadsheet shows its rows; row `i` of the sheet is `rows[i - 1]`. */
export interface SheetGrid {
  /** File inside the study folder, as the study names it. */
  readonly file: string;
  readonly rows: readonly (readonly string[])[];
  /** Lines above the table that stand elsewhere, in `study.yaml`; line `i` has row `-i`. */
  readonly facts?: readonly { readonly name: string; readonly value: string }[];
  /** How a sheet of the user's own layout was read; of sheets kept for the annex. */
  readonly readAs?: readonly SheetMapping[];
}
