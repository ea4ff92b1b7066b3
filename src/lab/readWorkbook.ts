import { say } from "../words/say.js";
/**
 * Reads the first sheet of an XLSX workbook as text cells.
 *
 * @returns the rows, or a sentence that says why the bytes are no workbook.
 */
export async function readWorkbook(bytes: Uint8Array): Promise<string[][] | string> {
  // The reader would take any text for a table: a workbook is a ZIP archive, which starts with PK.
  if (bytes[0] !== 0x50 || bytes[1] !== 0x4b) return say`The file is not an Excel workbook.`;
  // Loaded only here: most studies have CSV sheets, and the reader costs 60 ms.
  const { read, utils } = await import("@e965/xlsx");
  try {
    const workbook = read(bytes, { type: "array", cellFormula: false, cellHTML: false });
    const first = workbook.Sheets[workbook.SheetNames[0]];
    if (!first) return say`The workbook has no sheet.`;
    const cells = utils.sheet_to_json<unknown[]>(first, {
      header: 1,
      raw: true,
      defval: "",
      blankrows: true,
    });
    return cells.map((row) => Array.from(row, (cell) => String(cell ?? "").trim()));
  } catch (problem) {
    return say`The workbook cannot be read: ${(problem as Error).message}.`;
  }
}
