import { parseHeaderCell } from "../quantities/parseHeaderCell.js";
import { say } from "../words/say.js";
import type { Finding } from "./finding.js";
import { headerExample, headerUnit } from "./headerUnit.js";
import { readCell } from "./readCell.js";
import type { SheetGrid } from "./sheetGrid.js";
import { isBlankOrRemark } from "./sheetHeader.js";
import type { CellValue, SheetLayout } from "./sheetLayout.js";

/** Reads the lines above the table: the name in the first cell, the value in the second. */
export function readFacts(
  grid: SheetGrid,
  headerIndex: number,
  layout: SheetLayout,
  findings: Finding[],
): { values: Record<string, CellValue>; rows: Record<string, number> } {
  const { file } = grid;
  const values: Record<string, CellValue> = {};
  const rows: Record<string, number> = {};
  const lines = [
    // Lines that stand in the study have rows from 0 down, which lead back to them.
    ...(grid.facts ?? []).map((fact, index) => ({ cells: [fact.name, fact.value], row: -index })),
    ...grid.rows.slice(0, headerIndex).map((cells, index) => ({ cells, row: index + 1 })),
  ];
  for (const { cells, row } of lines) {
    if (isBlankOrRemark(cells)) continue;
    const { name } = parseHeaderCell(cells[0]);
    const rule = layout.facts.find((fact) => fact.names.includes(name));
    if (!rule) {
      findings.push({
        severity: "note",
        code: "unused-fact",
        file,
        row,
        column: cells[0],
        value: cells[1] ?? "",
        message: say`This line above the table is not used.`,
        expected: layout.facts.length
          ? say`one of ${layout.facts.map((fact) => fact.names[0]).join(", ")}`
          : say`the table's header`,
        wayOut: say`Nothing to do, unless it was meant to be one of those.`,
      });
      continue;
    }
    const unit = headerUnit(rule, { file, row, text: cells[0] }, findings);
    values[rule.key] = readCell(
      cells[1] ?? "",
      rule,
      { file, row, column: cells[0], unit },
      findings,
    );
    rows[rule.key] = row;
  }
  for (const rule of layout.facts) {
    if (!rule.required || rule.key in rows) continue;
    findings.push({
      severity: "error",
      code: "missing-fact",
      file,
      message: say`The line ${headerExample(rule)} above the table is missing.`,
      expected: say`${headerExample(rule)} in the first cell of a row above the table, the value in the second`,
      wayOut: say`Add the line.`,
    });
  }
  return { values, rows };
}
