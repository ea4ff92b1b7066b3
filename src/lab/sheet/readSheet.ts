import {
  type Finding,
  type FindingPlace,
  finding,
  findingIf,
  hasErrors,
} from "../../findings/finding.js";
import { sieveNumbers } from "../../quantities/sieves.js";
import { normaliseUnit } from "../../quantities/units.js";
import { joinTexts, say } from "../../words/message.js";
import type { SheetGrid } from "./grid.js";
import {
  type CellPlace,
  type CellRule,
  type CellValue,
  emptyCell,
  headerExample,
  headerUnit,
  missingColumn,
  parseHeaderCell,
  readCell,
  type SheetLayout,
  type SheetRow,
  type SheetValues,
} from "./layout.js";

/** What came out of a sheet: the record, unless there is an error among the findings. */
export interface SheetReading<T> {
  readonly record?: T;
  /** Every problem in the sheet, not only the first. */
  readonly findings: readonly Finding[];
}

/**
 * Reads a sheet by its layout and makes a record of its values.
 *
 * @param make the record, and what it finds in the values; values with a finding of their own are not
 * there, and the record is dropped where there was any error.
 */
export function readRecord<T>(
  grid: SheetGrid,
  layout: SheetLayout,
  make: (sheet: SheetValues) => { readonly record: T; readonly findings: readonly Finding[] },
): SheetReading<T> {
  const { sheet, findings } = readSheet(grid, layout);
  if (!sheet) return { findings };
  const made = make(sheet);
  const all = [...findings, ...made.findings];
  return hasErrors(all) ? { findings: all } : { record: made.record, findings: all };
}

/**
 * Reads a grid by its layout: facts above, one table below. A row whose first cell is `#` alone, or `#`
 * and a space, is a remark; so is a row with `#` before its only text.
 *
 * @returns no sheet where there is no table to be read.
 */
export function readSheet(
  grid: SheetGrid,
  layout: SheetLayout,
): { readonly sheet?: SheetValues; readonly findings: readonly Finding[] } {
  const { file } = grid;
  const headerIndex = findHeaderRow(grid, layout);
  if (headerIndex < 0) return readLines(grid, layout);
  const header = readHeader(grid, headerIndex, layout);
  const { written, findings: comma } = asWritten(grid, headerIndex, header.columns);
  const facts = readFacts(written, headerIndex, layout);
  const table = readTable(written, headerIndex, layout, header.columns);
  const named = header.columns.map(({ rule, header: column, unit }) => ({
    balance: rule.balance,
    place: { file, row: headerIndex + 1, column },
    unit,
  }));
  const findings = [
    ...comma,
    ...facts.findings,
    ...header.findings,
    ...mixedUnits([...facts.units, ...named]),
    ...table.findings,
  ];
  if (table.rows.length === 0) {
    // Rows that were refused are told already.
    const isEmpty = table.findings.length === 0;
    const empty = findingIf(isEmpty, { file, row: headerIndex + 1 }, "error", "empty-sheet", {
      message: say`This ${layout.title} has a header but no readings.`,
      expected: say`at least one row below the header`,
      remedy: say`Fill in the readings, or take the sheet out of study.yaml.`,
    });
    return { findings: [...findings, ...empty] };
  }
  const headers = Object.fromEntries(
    header.columns.map(({ rule, header: cell }) => [rule.key, cell]),
  );
  const { values, rows } = facts;
  return { sheet: { file, facts: values, factRows: rows, rows: table.rows, headers }, findings };
}

/** A sheet without a table: its lines may be all that a laboratory reports. */
function readLines(grid: SheetGrid, layout: SheetLayout): ReturnType<typeof readSheet> {
  const { file, rows } = grid;
  const { written, findings: comma } = asWritten(grid, rows.length, []);
  const facts = readFacts(written, rows.length, layout);
  if (!(layout.tableOptional && facts.onlyKnown)) {
    const required = layout.columns.filter((rule) => rule.required).map(headerExample);
    const found = finding({ file }, "error", "wrong-header", {
      message: say`No row of this ${layout.title} holds the column “${layout.columns[0].names[0]}”.`,
      expected: say`a header row with ${joinTexts(required)}`,
      remedy: say`Name the columns so; the unit stands in parentheses after the name.`,
    });
    return { findings: [found] };
  }
  const sheet = { file, facts: facts.values, factRows: facts.rows, rows: [], headers: {} };
  const findings = [...comma, ...facts.findings, ...mixedUnits(facts.units)];
  const said = Object.values(facts.values).some((value) => value !== undefined);
  if (said || hasErrors(findings)) return { sheet, findings };
  const [first] = Object.values(facts.rows);
  return { sheet, findings: [...findings, emptyFact(file, first, rows[first - 1]?.[0])] };
}

const COMMA = /^[+−-]?(\d*,(\d{1,2}|\d{4,})|0,\d+)$/;
const POINT = /^[+−-]?\d*\.\d+$/;

/**
 * The sheet with how its decimals are written, where that is not said but leaves no doubt: some of its numbers
 * can only have a decimal comma, and none has a decimal point. A remark says nothing about it.
 */
function asWritten(
  grid: SheetGrid,
  headerIndex: number,
  columns: readonly PlacedColumn[],
): { readonly written: SheetGrid; readonly findings: readonly Finding[] } {
  const plain = { written: grid, findings: [] };
  if (grid.decimalComma !== undefined) return plain;
  const measured = columns.filter(({ rule }) => rule.kind !== "text").map(({ at }) => at);
  const numbers = grid.rows.map((cells, index) => {
    if (index === headerIndex || isBlankOrRemark(cells)) return [];
    return (index < headerIndex ? [1] : measured).map((at) => cells[at] ?? "");
  });
  if (numbers.some((cells) => cells.some((cell) => POINT.test(cell)))) return plain;
  const row = numbers.findIndex((cells) => cells.some((cell) => COMMA.test(cell)));
  if (row < 0) return plain;
  const value = numbers[row].find((cell) => COMMA.test(cell));
  const found = finding({ file: grid.file, row: row + 1, value }, "note", "decimal-comma", {
    message: say`The numbers of this sheet are written with decimal commas and read so.`,
    expected: say`one way of writing decimals in the whole sheet`,
    remedy: say`Nothing to do.`,
  });
  return { written: { ...grid, decimalComma: true }, findings: [found] };
}

/** Index of the table's header row, or -1: one cell names the first column, another cell another column. */
export function findHeaderRow(grid: SheetGrid, layout: SheetLayout): number {
  const [first, ...others] = layout.columns;
  return grid.rows.findIndex((cells) => {
    if (isBlankOrRemark(cells)) return false;
    const names = cells.map((cell) => parseHeaderCell(cell).name);
    const named = (rule: CellRule) => names.some((name) => rule.names.includes(name));
    return named(first) && others.some(named);
  });
}

/** A line above the table of any sheet that names what the test is of; a study of sheets alone reads it. */
export const SAMPLE_LINE = /^(sample|material|soil|muestra)$/i;

/** Rows that hold nothing, or a remark. */
export function isBlankOrRemark(cells: readonly string[]): boolean {
  const [first = "", ...others] = cells;
  if (!first.startsWith("#")) return cells.every((cell) => cell === "");
  return /^#(\s|$)/.test(first) || others.every((cell) => cell === "");
}

/** The rows below the header. */
function readTable(
  { file, rows: grid, decimalComma }: SheetGrid,
  headerIndex: number,
  layout: SheetLayout,
  columns: readonly PlacedColumn[],
): { readonly rows: readonly SheetRow[]; readonly findings: readonly Finding[] } {
  const rows: SheetRow[] = [];
  const findings: Finding[] = [];
  const numbered = layout.columns[0].kind === "sieve" && areSieves(grid.slice(headerIndex + 1));
  for (const [index, cells] of grid.entries()) {
    if (index <= headerIndex || isBlankOrRemark(cells)) continue;
    const misplaced =
      (numbered ? undefined : rowOrRemark(file, index + 1, cells, layout)) ??
      rowTooLong(file, index + 1, cells, grid[headerIndex].length, columns);
    if (misplaced) {
      findings.push(misplaced);
      continue;
    }
    const read = readRow({ file, row: index + 1, decimalComma }, cells, columns);
    rows.push(read.row);
    findings.push(...read.findings);
  }
  return { rows, findings };
}

function readRow(
  place: Omit<CellPlace, "column">,
  cells: readonly string[],
  columns: readonly PlacedColumn[],
): { readonly row: SheetRow; readonly findings: readonly Finding[] } {
  const values: Record<string, CellValue> = {};
  const written: Record<string, string> = {};
  const findings: Finding[] = [];
  for (const { rule, at, header, unit } of columns) {
    const text = cells[at] ?? "";
    const read = readCell(text, rule, { ...place, column: header, unit });
    written[rule.key] = text;
    values[rule.key] = read.value;
    if (read.finding) findings.push(read.finding);
    if (text === "" && rule.required) {
      const { file, row } = place;
      const empty = { file, row, column: header, value: "" };
      findings.push(emptyCell(empty, rule.kind === "text" ? say`a text` : undefined));
    }
  }
  return { row: { row: place.row, values, written }, findings };
}

/** Rows from “#4” to “#200” that rise are the sieves of the sheet: nobody leaves three of them out so. */
function areSieves(rows: SheetGrid["rows"]): boolean {
  const marked = rows.filter((cells) => cells[0]?.startsWith("#") && !isBlankOrRemark(cells));
  const numbers = marked.map(([first]) => Number(first.slice(1)));
  const known = sieveNumbers("US No.");
  return (
    marked.length >= 3 &&
    marked.every(([first]) => known?.(first.slice(1)) !== undefined) &&
    numbers.slice(1).every((number, index) => number > numbers[index])
  );
}

/**
 * “#4” may be a sieve, “#1” a block, or either a row left out: taken for a remark it would vanish without
 * a word. A spreadsheet's error in the first cell is no remark either.
 */
function rowOrRemark(
  file: string,
  row: number,
  cells: readonly string[],
  { columns: [first] }: SheetLayout,
): Finding | undefined {
  const [value] = cells;
  if (!value.startsWith("#")) return undefined;
  const asError = readCell(value, first, { file, row, column: first.names[0] }).finding;
  if (asError?.code === "spreadsheet-error") return asError;
  const name = value.slice(1);
  if (first.kind === "sieve" && /^\d+( 1\/2)?$/.test(name)) {
    return finding({ file, row, value }, "error", "sieve-or-remark", {
      message: say`This row may be sieve No. ${name}, or a row that was left out.`,
      expected: say`No. ${name} for the sieve; # and a space before a remark`,
      remedy: say`Write the one that is meant.`,
    });
  }
  return finding({ file, row, value }, "error", "row-or-remark", {
    message: say`This row may be a reading, or a row that was left out.`,
    expected: say`${name} without # for a reading; # and a space before a remark`,
    remedy: say`Write the one that is meant.`,
  });
}

/** A row with more in it than the header has cells for. */
function rowTooLong(
  file: string,
  row: number,
  cells: readonly string[],
  expected: number,
  columns: readonly PlacedColumn[],
): Finding | undefined {
  const beyond = cells.slice(expected).filter((cell) => cell !== "");
  if (beyond.length === 0) return undefined;
  // A comma in a remark leaves words behind the last column; one in a number leaves digits, and a number
  // where the remark begins.
  const last = columns.find(({ at }) => at === expected - 1);
  const begins = last?.rule.kind === "text" && /\p{L}/u.test(cells[expected - 1]);
  const remark = begins || beyond.some((cell) => /\p{L}/u.test(cell));
  return finding({ file, row, value: cells.join(", ") }, "error", "row-too-long", {
    message: say`This row has ${cells.length} cells, but the header has ${expected}.`,
    expected: say`one cell for each header cell`,
    remedy: remark
      ? say`Put a text that holds the mark between cells into double quotes.`
      : say`A decimal comma may have split a number in two: write decimal points.`,
  });
}

/** A column that was found: its rule, its place in the row, the header cell as written. */
interface PlacedColumn {
  readonly rule: CellRule;
  readonly at: number;
  readonly header: string;
  readonly unit?: string;
}

/** A header cell of the rule's name and of a unit that measures it. */
function fits(rule: CellRule, cell: string): boolean {
  const named = rule.names.includes(parseHeaderCell(cell).name);
  return named && headerUnit(rule, { file: "", text: cell }).findings.length === 0;
}

/** Places the columns of a layout in the header row; a finding for each that is missing, repeated or unused. */
function readHeader(
  grid: SheetGrid,
  headerIndex: number,
  layout: SheetLayout,
): { readonly columns: readonly PlacedColumn[]; readonly findings: readonly Finding[] } {
  const { file } = grid;
  const row = headerIndex + 1;
  const header = grid.rows[headerIndex];
  const named = header.map((cell) => parseHeaderCell(cell).name);
  const columns: PlacedColumn[] = [];
  const findings: Finding[] = [];
  for (const rule of layout.columns) {
    // Laboratories put grams and percent side by side under one name: the column of the rule's unit is meant.
    const at = header.findIndex((cell) => fits(rule, cell));
    const like = at >= 0 ? at : named.findIndex((name) => rule.names.includes(name));
    if (like >= 0) {
      const { unit, findings: found } = headerUnit(rule, { file, row, text: header[like] });
      findings.push(...found);
      columns.push({ rule, at: like, header: header[like], unit });
    } else if (rule.required) {
      const place = { file, row, value: header.join(", ") };
      findings.push(missingColumn(place, rule.names[0], headerExample(rule)));
    }
  }
  const names = layout.columns.map((rule) => rule.names[0]);
  const expected = say`columns of a ${layout.title}: ${joinTexts(names)}`;
  header.forEach((cell, at) => {
    if (cell === "" || columns.some((column) => column.at === at)) return;
    const place = { file, row, column: cell, value: cell };
    const isRepeated = layout.columns.some((rule) => fits(rule, cell));
    findings.push(
      ...findingIf(isRepeated, place, "error", "repeated-column", {
        message: say`This column stands twice.`,
        expected,
        remedy: say`Keep one of them.`,
      }),
      ...findingIf(!isRepeated, place, "note", "unused-column", {
        message: say`This column is not used.`,
        expected,
        remedy: say`Nothing to do, unless it was meant to be one of those.`,
      }),
    );
  });
  return { columns, findings };
}

/** The unit that a line or a column names. */
interface NamedUnit {
  readonly balance?: string;
  readonly place: FindingPlace;
  readonly unit?: string;
}

const US_UNITS: ReadonlySet<string> = new Set(["lb", "oz", "short ton", "in", "ft"]);

/** Readings of one balance or ruler in units of two systems: one of the headers may be a slip. */
function mixedUnits(named: readonly NamedUnit[]): Finding[] {
  const told = named.flatMap(({ unit, ...one }) =>
    one.balance !== undefined && unit !== undefined && one.place.value !== ""
      ? [{ ...one, unit, us: US_UNITS.has(normaliseUnit(unit)) }]
      : [],
  );
  return told.flatMap((reading) => {
    const { balance, place, unit } = reading;
    const same = told.filter((one) => one.balance === balance);
    const [first] = same;
    // Told once for each balance, at the first reading that is in the other system.
    const isMixed = reading === same.find(({ us }) => us !== first.us);
    return findingIf(isMixed, { ...place, value: unit }, "warning", "mixed-units", {
      message: say`${place.file} has “${place.column ?? ""}” beside “${first.place.column ?? ""}”: units of two systems.`,
      expected: say`units of one system where one instrument measures (common practice, no source)`,
      remedy: say`Check which of the two units is right, and convert the other value.`,
    });
  });
}

interface SheetFacts {
  readonly values: Readonly<Record<string, CellValue>>;
  readonly rows: Readonly<Record<string, number>>;
  readonly units: readonly NamedUnit[];
  /** There is a line, and every line is one of the layout. */
  readonly onlyKnown: boolean;
  readonly findings: readonly Finding[];
}

/** Reads the lines above the table: the name in the first cell, the value in the second. */
function readFacts(grid: SheetGrid, headerIndex: number, layout: SheetLayout): SheetFacts {
  const { file } = grid;
  const values: Record<string, CellValue> = {};
  const rows: Record<string, number> = {};
  const units: NamedUnit[] = [];
  const findings: Finding[] = [];
  const lines = [
    // Lines that stand in the study have rows from 0 down, which lead back to them.
    ...(grid.facts ?? []).map((fact, index) => ({ cells: [fact.name, fact.value], row: -index })),
    ...grid.rows.slice(0, headerIndex).map((cells, index) => ({ cells, row: index + 1 })),
  ].filter(({ cells }) => !isBlankOrRemark(cells) && !SAMPLE_LINE.test(cells[0]));
  for (const { cells, row } of lines) {
    const [column, text = ""] = cells;
    const { name } = parseHeaderCell(column);
    const rule = layout.facts.find((fact) => fact.names.includes(name));
    if (!rule) {
      const names = layout.facts.map((fact) => fact.names[0]);
      const found = finding({ file, row, column, value: text }, "note", "unused-fact", {
        message: say`This line above the table is not used.`,
        expected: names.length > 0 ? say`one of ${joinTexts(names)}` : say`the table's header`,
        remedy: say`Nothing to do, unless it was meant to be one of those.`,
      });
      findings.push(found);
      continue;
    }
    const isTwice = rule.key in rows;
    const { unit, findings: found } = headerUnit(rule, { file, row, text: column, value: text });
    // Values that stand in the study have a decimal point.
    const decimalComma = grid.decimalComma && row > 0;
    const read = readCell(text, rule, { file, row, column, unit, decimalComma });
    findings.push(
      ...found,
      ...findingIf(isTwice, { file, row, column, value: text }, "error", "repeated-fact", {
        message: say`This line stands twice above the table.`,
        expected: say`each line once`,
        remedy: say`Keep one of them.`,
      }),
    );
    if (read.finding) findings.push(read.finding);
    values[rule.key] = read.value;
    rows[rule.key] = row;
    units.push({ balance: rule.balance, place: { file, row, column, value: text }, unit });
    if (text === "" && (rule.required || rule.filled)) findings.push(emptyFact(file, row, column));
  }
  findings.push(...missingFacts(file, layout, rows));
  const onlyKnown = lines.length > 0 && lines.length === units.length;
  return { values, rows, units, onlyKnown, findings };
}

/** A line that is needed and holds nothing would leave a reader without its number. */
export function emptyFact(file: string, row: number, column = ""): Finding {
  return finding({ file, row, column, value: "" }, "error", "missing-value", {
    message: say`This line has no value.`,
    expected: say`a value in the second cell`,
    remedy: say`Fill it in.`,
  });
}

function missingFacts(
  file: string,
  { facts }: SheetLayout,
  rows: Readonly<Record<string, number>>,
): Finding[] {
  const missing = facts.filter((rule) => rule.required && !(rule.key in rows));
  return missing.map((rule) =>
    finding({ file }, "error", "missing-fact", {
      message: say`The line ${headerExample(rule)} above the table is missing.`,
      expected: say`${headerExample(rule)} in the first cell of a row above the table, the value in the second`,
      remedy: say`Add the line.`,
    }),
  );
}
