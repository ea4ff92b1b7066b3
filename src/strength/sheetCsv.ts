import type { SheetGrid } from "../lab/sheetGrid.js";

/**
 * A sheet's cells as CSV text, with commas, and quotes where a cell needs them.
 *
 * Source: RFC 4180 (from memory), with line feeds alone.
 *
 * @example
 * sheetCsv({ file: "blocks.csv", rows: [["block", "remark"], ["A", "dry, \"crumbly\""]] }) // => "block,remark\nA,\"dry, \"\"crumbly\"\"\"\n"
 */
export function sheetCsv({ rows }: SheetGrid): string {
  const cell = (text: string) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
  return rows.map((row) => `${row.map(cell).join(",")}\n`).join("");
}
