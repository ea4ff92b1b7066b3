import { parse } from "csv-parse/sync";
import { type Finding, type FindingWords, finding } from "../../findings/finding.js";
import { say } from "../../words/message.js";
import { MAX_COLUMNS, MAX_ROWS, type Rows, readWorkbook } from "./workbook.js";

/** The cells of one sheet as text, as a spreadsheet shows its rows; row `i` of the sheet is `rows[i - 1]`. */
export interface SheetGrid {
  /** File inside the study folder, as the study names it. */
  readonly file: string;
  readonly rows: readonly (readonly string[])[];
  /** Lines above the table that stand elsewhere, in `study.yaml`; line `i` has row `-i`. */
  readonly facts?: readonly { readonly name: string; readonly value: string }[];
  /** Numbers of the sheet are written 1.234,5; where it is not said, the sheet's own numbers tell. */
  readonly decimalComma?: boolean;
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

/** A grid with what was noticed while it was read, or the reason why there is none. */
export interface GridReading {
  readonly grid?: SheetGrid;
  readonly findings: readonly Finding[];
}

/** A lab sheet of a few hundred rows has a few kB; this leaves room and stops a disk image. */
export const MAX_SHEET_BYTES = 4 * 1024 * 1024;
/** Longer than any remark; a cell beyond it is a sheet whose quotes or line ends went wrong. */
const MAX_CELL = 10_000;

/**
 * Turns the bytes of a CSV or XLSX file into a grid of text cells, or says why it cannot.
 * CSV is UTF-8, separated by commas, semicolons or tabs: by `delimiter`, or the mark that most lines hold;
 * its lines may end in any way, also mixed.
 * XLSX gives the first sheet that is not hidden, numbers at full precision, not as the workbook displays them.
 */
export async function readGrid(
  file: string,
  bytes: Uint8Array,
  { delimiter }: { readonly delimiter?: "," | ";" | "\t" } = {},
): Promise<GridReading> {
  const refuse = (code: string, words: FindingWords): GridReading => ({
    findings: [finding({ file }, "error", code, words)],
  });
  if (bytes.length > MAX_SHEET_BYTES) {
    return refuse("sheet-too-large", {
      message: say`The file is too large.`,
      expected: say`a lab sheet of at most ${MAX_SHEET_BYTES} bytes`,
      remedy: say`Keep one test per file, without pictures.`,
    });
  }
  const workbook = /\.xlsx$/i.test(file);
  const read = workbook ? await readWorkbook(file, bytes) : readCsv(bytes, delimiter);
  if (read.rows === undefined) {
    return workbook
      ? refuse("not-a-workbook", {
          message: read.problem,
          expected: say`an Excel workbook (.xlsx)`,
          remedy: say`Open the sheet in a spreadsheet program and save it as .xlsx, or as CSV with the ending .csv.`,
        })
      : refuse("not-a-csv", {
          message: read.problem,
          expected: say`text in UTF-8, one row a line`,
          remedy: say`Save the sheet again as CSV (UTF-8).`,
        });
  }
  const { rows, findings } = read;
  const tooLarge = sizeProblem(rows);
  if (tooLarge) return refuse("sheet-too-large", tooLarge);
  if (rows.every((row) => row.every((cell) => cell === ""))) {
    return refuse("empty-sheet", {
      message: say`The sheet has no cells.`,
      expected: say`a sheet with a header row and readings`,
      remedy: say`Fill in the sheet, or take it out of study.yaml.`,
    });
  }
  return { grid: { file, rows }, findings };
}

/** What a table of readings never has: that many rows or columns, or a whole text in one cell. */
function sizeProblem(rows: readonly (readonly string[])[]): FindingWords | undefined {
  if (rows.length > MAX_ROWS) {
    return {
      message: say`The sheet has ${rows.length} rows.`,
      expected: say`a lab sheet of at most ${MAX_ROWS} rows`,
      remedy: say`Keep one test per file.`,
    };
  }
  const wide = rows.findIndex((row) => row.length > MAX_COLUMNS);
  if (wide >= 0) {
    return {
      message: say`Row ${wide + 1} has ${rows[wide].length} cells.`,
      expected: say`at most ${MAX_COLUMNS} cells a row`,
      remedy: say`Check which mark stands between the cells.`,
    };
  }
  const long = rows.findIndex((row) => row.some((cell) => cell.length > MAX_CELL));
  if (long < 0) return undefined;
  return {
    message: say`Row ${long + 1} has a cell of more than ${MAX_CELL} letters.`,
    expected: say`one reading or remark a cell`,
    remedy: say`Check the row's quotes: one that is not closed joins all that follows.`,
  };
}

function readCsv(bytes: Uint8Array, given?: string): Rows {
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return { problem: say`The file is not text in UTF-8.` };
  }
  if (text.includes("\u0000")) return { problem: say`The file holds binary data.` };
  // The parser goes by the first line's end alone and would join lines that end in another way.
  const lines = text.replace(/\r\n?/g, "\n");
  const breaks = countOf(lines, "\n");
  if (breaks > MAX_LINES) {
    return { problem: say`The file has more than ${MAX_LINES} lines, which is no lab sheet.` };
  }
  try {
    const rows = parse(lines, {
      bom: true,
      delimiter: given ?? separatorOf(lines),
      record_delimiter: "\n",
      relax_column_count: true,
      skip_empty_lines: false,
      trim: true,
    }) as string[][];
    return { rows, findings: [] };
  } catch (problem) {
    return {
      problem: say`The rows cannot be separated: ${(problem as Error).message.slice(0, 200)}.`,
    };
  }
}

/** Counted before anything is parsed; rows may hold lines of their own in quotes. */
const MAX_LINES = 4 * MAX_ROWS;

function countOf(text: string, mark: string): number {
  let count = 0;
  for (let at = text.indexOf(mark); at >= 0; at = text.indexOf(mark, at + 1)) count += 1;
  return count;
}

/** The mark that most lines hold; on a tie the semicolon, since its files use the comma inside numbers. */
function separatorOf(text: string): string {
  const lines = text.split("\n").filter((line) => !/^"?#(\s|$)/.test(line));
  const counts = [";", "\t", ","].map((mark) => ({
    mark,
    lines: lines.filter((line) => line.includes(mark)).length,
  }));
  return counts.reduce((best, next) => (next.lines > best.lines ? next : best)).mark;
}
