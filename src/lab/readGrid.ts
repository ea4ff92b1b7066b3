import { parse } from "csv-parse/sync";
import { say } from "../words/say.js";
import type { Finding } from "./finding.js";
import { readWorkbook } from "./readWorkbook.js";
import type { SheetGrid } from "./sheetGrid.js";

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
  const refuse = (
    code: string,
    message: string,
    expected: string,
    wayOut: string,
  ): GridReading => ({
    finding: { severity: "error", code, file, message, expected, wayOut },
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
  const rows = workbook ? await readWorkbook(bytes) : readCsv(bytes, delimiter);
  if (typeof rows === "string") {
    return refuse(
      workbook ? "not-a-workbook" : "not-a-csv",
      rows,
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
function readCsv(bytes: Uint8Array, given?: string): string[][] | string {
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return say`The file is not text in UTF-8.`;
  }
  if (text.includes("\u0000")) return say`The file holds binary data.`;
  const delimiter = given ?? separatorOf(text);
  try {
    return parse(text, {
      bom: true,
      delimiter,
      relax_column_count: true,
      skip_empty_lines: false,
      trim: true,
    }) as string[][];
  } catch (problem) {
    return say`The rows cannot be told apart: ${(problem as Error).message}.`;
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
