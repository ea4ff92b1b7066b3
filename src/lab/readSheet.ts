import { say, sayOf } from "../words/say.js";
import type { Finding } from "./finding.js";
import { headerExample } from "./headerUnit.js";
import { readCell } from "./readCell.js";
import { readFacts } from "./sheetFacts.js";
import type { SheetGrid } from "./sheetGrid.js";
import { findHeaderRow, isBlankOrRemark, readHeader } from "./sheetHeader.js";
import type { CellValue, SheetLayout, SheetRow, SheetValues } from "./sheetLayout.js";

/**
 * Reads a grid by its layout: facts above, one table below. Rows whose first cell starts with `#`
 * are remarks. Every problem in the sheet is pushed, not only the first.
 *
 * @returns the values, or `undefined` where the table's header row cannot be found.
 */
export function readSheet(
  grid: SheetGrid,
  layout: SheetLayout,
  findings: Finding[],
): SheetValues | undefined {
  const { file } = grid;
  const headerIndex = findHeaderRow(grid, layout);
  if (headerIndex < 0) {
    findings.push({
      severity: "error",
      code: "wrong-header",
      file,
      message: say`No row of this ${sayOf(layout.title)} holds the column “${layout.columns[0].names[0]}”.`,
      expected: say`a header row with ${layout.columns
        .filter((rule) => rule.required)
        .map(headerExample)
        .join(", ")}`,
      wayOut: say`Name the columns so; the unit stands in brackets behind the name.`,
    });
    return undefined;
  }
  const facts = readFacts(grid, headerIndex, layout, findings);
  const columns = readHeader(grid, headerIndex, layout, findings);
  const rows: SheetRow[] = [];
  for (let index = headerIndex + 1; index < grid.rows.length; index++) {
    const cells = grid.rows[index];
    const row = index + 1;
    if (isBlankOrRemark(cells)) {
      findings.push(...sieveOrRemark(file, row, cells, layout));
      continue;
    }
    const extra = cells.findIndex((cell, at) => at >= grid.rows[headerIndex].length && cell !== "");
    if (extra >= 0) {
      findings.push({
        severity: "error",
        code: "row-too-long",
        file,
        row,
        value: cells.join(", "),
        message: say`This row has ${cells.length} cells, but the header has ${grid.rows[headerIndex].length}.`,
        expected: say`one cell for each header cell`,
        wayOut: say`A decimal comma may have split a number in two: write decimal points.`,
      });
      continue;
    }
    const values: Record<string, CellValue> = {};
    const written: Record<string, string> = {};
    for (const { rule, at, header, unit } of columns) {
      const text = cells[at] ?? "";
      written[rule.key] = text;
      values[rule.key] = readCell(text, rule, { file, row, column: header, unit }, findings);
      if (text === "" && rule.required) {
        findings.push({
          severity: "error",
          code: "missing-value",
          file,
          row,
          column: header,
          value: "",
          message: say`This cell is empty.`,
          expected: rule.kind === "text" ? say`a text` : say`a reading`,
          wayOut: say`Fill in the reading, or start the row with # to leave it out.`,
        });
      }
    }
    rows.push({ row, values, written });
  }
  if (rows.length === 0) {
    findings.push({
      severity: "error",
      code: "empty-sheet",
      file,
      row: headerIndex + 1,
      message: say`This ${sayOf(layout.title)} has a header but no readings.`,
      expected: say`at least one row below the header`,
      wayOut: say`Fill in the readings, or take the sheet out of study.yaml.`,
    });
    return undefined;
  }
  const headers = Object.fromEntries(columns.map(({ rule, header }) => [rule.key, header]));
  return { file, facts: facts.values, factRows: facts.rows, rows, headers };
}

/** “#4” may be a sieve or a row left out: taken for a remark, a sieve would vanish without a word. */
function sieveOrRemark(
  file: string,
  row: number,
  cells: readonly string[],
  { columns: [first] }: SheetLayout,
): Finding[] {
  if (first.kind !== "sieve" || !/^#\d+( 1\/2)?$/.test(cells[0] ?? "") || !cells[1]) return [];
  return [
    {
      severity: "error",
      code: "sieve-or-remark",
      file,
      row,
      value: cells[0],
      message: say`This row may be sieve No. ${cells[0].slice(1)}, or a row that was left out.`,
      expected: say`No. ${cells[0].slice(1)} for the sieve; # and a space before a remark`,
      wayOut: say`Write the one that is meant.`,
    },
  ];
}
