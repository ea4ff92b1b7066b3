import type { Finding } from "../../findings/finding.js";
import { say } from "../../words/message.js";
import type { SheetGrid } from "./grid.js";
import {
  type CellRule,
  type CellValue,
  headerExample,
  headerUnit,
  parseHeaderCell,
  readCell,
  type SheetLayout,
  type SheetRow,
  type SheetValues,
} from "./layout.js";

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
      message: say`No row of this ${layout.title} holds the column “${layout.columns[0].names[0]}”.`,
      expected: say`a header row with ${layout.columns
        .filter((rule) => rule.required)
        .map(headerExample)
        .join(", ")}`,
      remedy: say`Name the columns so; the unit stands in brackets behind the name.`,
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
        remedy: say`A decimal comma may have split a number in two: write decimal points.`,
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
          remedy: say`Fill in the reading, or start the row with # to leave it out.`,
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
      message: say`This ${layout.title} has a header but no readings.`,
      expected: say`at least one row below the header`,
      remedy: say`Fill in the readings, or take the sheet out of study.yaml.`,
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
      remedy: say`Write the one that is meant.`,
    },
  ];
}

/** A column that was found: its rule, its place in the row, the header cell as written. */
interface PlacedColumn {
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
function readHeader(
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
          remedy: say`Add the column, or rename the one that holds it.`,
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
      expected: say`columns of a ${layout.title}: ${layout.columns.map((rule) => rule.names[0]).join(", ")}`,
      remedy: repeated
        ? say`Keep one of them.`
        : say`Nothing to do, unless it was meant to be one of those.`,
    });
  });
  return placed;
}

/** Reads the lines above the table: the name in the first cell, the value in the second. */
function readFacts(
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
        remedy: say`Nothing to do, unless it was meant to be one of those.`,
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
      remedy: say`Add the line.`,
    });
  }
  return { values, rows };
}
