import { parseHeaderCell } from "../quantities/parseHeaderCell.js";
import { say, sayOf } from "../words/say.js";
import type { Finding } from "./finding.js";
import { headerExample, headerUnit } from "./headerUnit.js";
import type { SheetGrid } from "./sheetGrid.js";
import type { CellRule, SheetLayout } from "./sheetLayout.js";

/** A column that was found: its rule, its place in the row, the header cell as written. */
export interface PlacedColumn {
  readonly rule: CellRule;
  readonly at: number;
  readonly header: string;
  readonly unit?: string;
}

/** Index of the table's header row, or -1: the first cell names the first column, another cell another column. */
export function findHeaderRow(grid: SheetGrid, layout: SheetLayout): number {
  const { names } = layout.columns[0];
  return grid.rows.findIndex(
    (cells) =>
      cells.length > 1 &&
      names.includes(parseHeaderCell(cells[0]).name) &&
      cells[1] !== "" &&
      layout.columns
        .slice(1)
        .some((rule) => cells.some((cell) => rule.names.includes(parseHeaderCell(cell).name))),
  );
}

/** Rows that hold nothing, or start with `#`. */
export function isBlankOrRemark(cells: readonly string[]): boolean {
  return cells.every((cell) => cell === "") || cells[0].startsWith("#");
}

/** Places the columns of a layout in the header row; a finding for each that is missing, repeated or unused. */
export function readHeader(
  grid: SheetGrid,
  headerIndex: number,
  layout: SheetLayout,
  findings: Finding[],
): PlacedColumn[] {
  const { file } = grid;
  const row = headerIndex + 1;
  const header = grid.rows[headerIndex];
  const placed: PlacedColumn[] = [];
  for (const rule of layout.columns) {
    const at = header.findIndex((cell) => rule.names.includes(parseHeaderCell(cell).name));
    if (at < 0) {
      if (rule.required) {
        findings.push({
          severity: "error",
          code: "wrong-header",
          file,
          row,
          value: header.join(", "),
          message: say`The column “${rule.names[0]}” is missing.`,
          expected: headerExample(rule),
          wayOut: say`Add the column, or rename the one that holds it.`,
        });
      }
      continue;
    }
    const unit = headerUnit(rule, { file, row, text: header[at] }, findings);
    placed.push({ rule, at, header: header[at], unit });
  }
  header.forEach((cell, at) => {
    const known = placed.some((column) => column.at === at);
    const repeated =
      !known && layout.columns.some((rule) => rule.names.includes(parseHeaderCell(cell).name));
    if (cell === "" || known) return;
    findings.push({
      severity: repeated ? "error" : "note",
      code: repeated ? "repeated-column" : "unused-column",
      file,
      row,
      column: cell,
      value: cell,
      message: repeated ? say`This column stands twice.` : say`This column is not used.`,
      expected: say`columns of a ${sayOf(layout.title)}: ${layout.columns.map((rule) => rule.names[0]).join(", ")}`,
      wayOut: repeated
        ? say`Keep one of them.`
        : say`Nothing to do, unless it was meant to be one of those.`,
    });
  });
  return placed;
}
