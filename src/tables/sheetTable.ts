import type { SheetGrid } from "../lab/sheetGrid.js";
import { say } from "../words/say.js";
import type { TableBlock } from "./reportBlock.js";

/** A lab sheet as it was read, cell by cell, for the annex. Rows are numbered as a spreadsheet does. */
export function sheetTable(sheet: SheetGrid): TableBlock {
  // A remark stands in one cell and would make its column as wide as the page.
  const isRemark = (row: readonly string[]) => (row[0] ?? "").startsWith("#");
  const width = Math.max(...sheet.rows.map((row) => (isRemark(row) ? 0 : lastFilled(row))));
  const columns = Array.from({ length: width }, (_, index) => ({ header: columnName(index) }));
  return {
    kind: "table",
    caption: say`Readings as given: ${sheet.file}`,
    columns: [{ header: say`row`, align: "right" }, ...columns],
    rows: sheet.rows.flatMap((row, index) =>
      lastFilled(row) === 0 || isRemark(row)
        ? []
        : [[String(index + 1), ...columns.map((_, at) => row[at] ?? "")]],
    ),
    notes: sheet.rows.flatMap((row, index) =>
      isRemark(row) ? [say`Row ${index + 1}: ${row.filter((cell) => cell !== "").join(" ")}`] : [],
    ),
  };
}

function lastFilled(row: readonly string[]): number {
  return row.reduce((last, cell, index) => (cell === "" ? last : index + 1), 0);
}

function columnName(index: number): string {
  return index < 26
    ? String.fromCharCode(65 + index)
    : columnName(Math.floor(index / 26) - 1) + columnName(index % 26);
}
