import { parse } from "csv-parse/sync";
import type { Finding } from "../../findings/finding.js";
import { say, type Text } from "../../words/message.js";

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

/** A lab sheet of a few hundred rows has a few kB; this leaves room and stops a disk image. */
const LARGEST_SHEET_BYTES = 20 * 1024 * 1024;

export type GridReading =
  | { readonly grid: SheetGrid; readonly finding?: undefined }
  | { readonly grid?: undefined; readonly finding: Finding };

/**
 * Turns the bytes of a CSV or XLSX file into a grid of text cells, or says why it cannot.
 * CSV is UTF-8, separated by commas, semicolons or tabs: by `delimiter`, or the mark that most lines hold.
 * XLSX gives the first sheet, numbers at full precision, not as the workbook displays them.
 */
export async function readGrid(
  file: string,
  bytes: Uint8Array,
  { delimiter }: { readonly delimiter?: "," | ";" | "\t" } = {},
): Promise<GridReading> {
  const refuse = (code: string, message: Text, expected: Text, remedy: Text): GridReading => ({
    finding: { severity: "error", code, file, message, expected, remedy },
  });
  if (bytes.length > LARGEST_SHEET_BYTES) {
    return refuse(
      "sheet-too-large",
      say`The file has ${bytes.length} bytes.`,
      say`a lab sheet of at most ${LARGEST_SHEET_BYTES} bytes`,
      say`Keep one test per file, without pictures.`,
    );
  }
  const workbook = /\.xlsx$/i.test(file);
  const { rows, problem } = workbook ? await readWorkbook(bytes) : readCsv(bytes, delimiter);
  if (rows === undefined) {
    return refuse(
      workbook ? "not-a-workbook" : "not-a-csv",
      problem,
      workbook ? say`an Excel workbook (.xlsx)` : say`text in UTF-8, one row a line`,
      workbook
        ? say`Open the sheet in a spreadsheet program and save it as .xlsx, or as CSV with the ending .csv.`
        : say`Save the sheet again as CSV (UTF-8).`,
    );
  }
  if (rows.every((row) => row.every((cell) => cell === ""))) {
    return refuse(
      "empty-sheet",
      say`The sheet has no cells.`,
      say`a sheet with a header row and readings`,
      say`Fill in the sheet, or take it out of study.yaml.`,
    );
  }
  return { grid: { file, rows } };
}

/** Rows of text cells, or a sentence that says why there are none. */
type Rows =
  | { readonly rows: string[][]; readonly problem?: undefined }
  | { readonly rows?: undefined; readonly problem: Text };

function readCsv(bytes: Uint8Array, given?: string): Rows {
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return { problem: say`The file is not text in UTF-8.` };
  }
  if (text.includes("\u0000")) return { problem: say`The file holds binary data.` };
  const delimiter = given ?? separatorOf(text);
  try {
    const rows = parse(text, {
      bom: true,
      delimiter,
      relax_column_count: true,
      skip_empty_lines: false,
      trim: true,
    }) as string[][];
    return { rows };
  } catch (problem) {
    return { problem: say`The rows cannot be told apart: ${(problem as Error).message}.` };
  }
}

/** The mark that most lines hold; on a tie the semicolon, since its files use the comma inside numbers. */
function separatorOf(text: string): string {
  const lines = text.split(/\r?\n/).filter((line) => !line.startsWith("#"));
  const counts = [";", "\t", ","].map((mark) => ({
    mark,
    lines: lines.filter((line) => line.includes(mark)).length,
  }));
  return counts.reduce((best, next) => (next.lines > best.lines ? next : best)).mark;
}

/** Reads the first sheet of an XLSX workbook as text cells. */
async function readWorkbook(bytes: Uint8Array): Promise<Rows> {
  // The reader would take any text for a table: a workbook is a ZIP archive, which starts with PK.
  if (bytes[0] !== 0x50 || bytes[1] !== 0x4b) {
    return { problem: say`The file is not an Excel workbook.` };
  }
  // Loaded only here: most studies have CSV sheets, and the reader costs 60 ms.
  const { read, utils } = await import("@e965/xlsx");
  try {
    const workbook = read(bytes, { type: "array", cellFormula: false, cellHTML: false });
    const first = workbook.Sheets[workbook.SheetNames[0]];
    if (!first) return { problem: say`The workbook has no sheet.` };
    const cells = utils.sheet_to_json<unknown[]>(first, {
      header: 1,
      raw: true,
      defval: "",
      blankrows: true,
    });
    return { rows: cells.map((row) => Array.from(row, (cell) => String(cell ?? "").trim())) };
  } catch (problem) {
    return { problem: say`The workbook cannot be read: ${(problem as Error).message}.` };
  }
}
