import type { Finding } from "../../findings/finding.js";
import { acceptedUnits, parseNumber } from "../../quantities/parseQuantity.js";
import { parseSieve } from "../../quantities/sieves.js";
import { convertToBase, type Dimension, UNITS } from "../../quantities/units.js";
import { type Sentence, say, type Text } from "../../words/message.js";

/** What a cell may hold. Numbers are converted to the base unit of their dimension. */
export interface CellRule {
  /** Key in the values that come back. */
  readonly key: string;
  /** Accepted names, lower case; the first one is shown in messages. */
  readonly names: readonly string[];
  readonly kind: "number" | "text" | "sieve";
  /** Needed for numbers: where it is set, the cell's header must name a unit of it. */
  readonly dimension?: Dimension;
  readonly required?: boolean;
  /** Smallest allowed value in the base unit. */
  readonly min?: number;
  /** Largest allowed value in the base unit. */
  readonly max?: number;
  /** Zero is not allowed although `min` is 0. */
  readonly positive?: boolean;
}

/**
 * A lab sheet: rows of facts (name in the first cell, value in the second), then one table.
 * The header row of the table is the first row that holds the name of the first column.
 */
export interface SheetLayout {
  /** What the sheet is, for messages: "sieve sheet". */
  readonly title: Sentence;
  readonly facts: readonly CellRule[];
  readonly columns: readonly CellRule[];
}

export type CellValue = number | string | undefined;

export interface SheetRow {
  readonly row: number;
  readonly values: Readonly<Record<string, CellValue>>;
  /** Cells as written, for messages and the annex. */
  readonly written: Readonly<Record<string, string>>;
}

export interface SheetValues {
  readonly file: string;
  readonly facts: Readonly<Record<string, CellValue>>;
  readonly factRows: Readonly<Record<string, number>>;
  readonly rows: readonly SheetRow[];
  /** Header cells as written, by key. */
  readonly headers: Readonly<Record<string, string>>;
}

export interface HeaderCell {
  /** Lower case, spaces folded. */
  readonly name: string;
  /** Text in the last pair of brackets, as written. */
  readonly unit?: string;
}

/**
 * Splits a header cell of a sheet into its name and its unit.
 *
 * @example
 * parseHeaderCell("Retained (g)") // => { name: "retained", unit: "g" }
 * parseHeaderCell(" remark ") // => { name: "remark" }
 */
export function parseHeaderCell(text: string): HeaderCell {
  const [, name, unit] = /^\s*(.*?)\s*(?:\(([^()]*)\))?\s*$/u.exec(text) ?? [];
  const folded = (name ?? text).toLowerCase().replace(/\s+/g, " ");
  return unit === undefined ? { name: folded } : { name: folded, unit: unit.trim() };
}

/** How the header cell of a rule is written, for messages. */
export function headerExample(rule: CellRule): string {
  const unit =
    rule.kind === "sieve"
      ? " (mm)"
      : rule.dimension && rule.dimension !== "number"
        ? ` (${acceptedUnits(rule.dimension).split(", ")[0]})`
        : "";
  return `“${rule.names[0]}${unit}”`;
}

/** The unit of a header cell; a finding where one is missing or does not measure this. */
export function headerUnit(
  rule: CellRule,
  place: { file: string; row?: number; text: string },
  findings: Finding[],
): string | undefined {
  const { unit } = parseHeaderCell(place.text);
  const dimension = rule.kind === "sieve" ? "length" : rule.dimension;
  if (dimension === undefined || dimension === "number") return undefined;
  if (unit !== undefined && convertToBase(1, unit, dimension) !== undefined) return unit;
  // Designations such as No. 40 need no unit; a bare number would be taken as mm.
  if (unit === undefined && rule.kind === "sieve") return undefined;
  findings.push({
    severity: "error",
    code: unit === undefined ? "missing-unit" : "unknown-unit",
    file: place.file,
    row: place.row,
    column: place.text,
    value: unit ?? "",
    message:
      unit === undefined ? say`This name has no unit.` : say`The unit “${unit}” is not known here.`,
    expected: say`one of ${acceptedUnits(dimension)} in brackets behind the name`,
    remedy: say`Write for example ${headerExample(rule)}.`,
  });
  return unit;
}

interface CellPlace {
  readonly file: string;
  readonly row: number;
  readonly column: string;
  /** Unit from the header cell. */
  readonly unit?: string;
}

/**
 * Reads one cell by its rule. Pushes a finding and gives `undefined` where the cell does not fit.
 * An empty cell is no problem here: whoever needs the value says so.
 */
export function readCell(
  text: string,
  rule: CellRule,
  place: CellPlace,
  findings: Finding[],
): CellValue {
  const refuse = (code: string, message: Text, expected: Text, remedy: Text): undefined => {
    const { file, row, column } = place;
    findings.push({
      severity: "error",
      code,
      file,
      row,
      column,
      value: text,
      message,
      expected,
      remedy,
    });
    return undefined;
  };
  if (text === "") return undefined;
  if (rule.kind === "text") return text;
  if (rule.kind === "sieve") {
    if (/^pan$/i.test(text)) return "pan";
    const sizeMm = parseSieve(text, place.unit ?? "mm");
    if (sizeMm !== undefined) return sizeMm;
    return text.includes(",")
      ? commaDecimal(text, refuse)
      : refuse(
          "unknown-sieve",
          say`This is not a sieve.`,
          say`an opening, a United States designation such as No. 40 or 3/8 in, or pan`,
          say`Write the opening in the column's unit.`,
        );
  }

  const number = parseNumber(text);
  if ("problem" in number) {
    return number.problem === "comma-decimal"
      ? commaDecimal(text, refuse)
      : refuse(
          "not-a-number",
          say`This cell holds text where a number belongs.`,
          say`a number with a decimal point, without its unit`,
          say`Correct the reading; put remarks in a remark column.`,
        );
  }
  const value =
    rule.dimension === undefined || rule.dimension === "number"
      ? number.value
      : convertToBase(number.value, place.unit ?? UNITS[rule.dimension].base, rule.dimension);
  // An unknown unit is reported once, at the header.
  if (value === undefined) return undefined;
  const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = rule;
  if (value < min || value > max || (rule.positive && value <= 0)) {
    return refuse(
      "out-of-range",
      say`This value is outside what can be measured.`,
      rangeText(rule),
      say`Check the reading against the lab's own sheet.`,
    );
  }
  return value;
}

function commaDecimal(
  text: string,
  refuse: (code: string, message: Text, expected: Text, remedy: Text) => undefined,
): undefined {
  return refuse(
    "comma-decimal",
    say`This number is written with a decimal comma.`,
    say`a decimal point: ${text.replace(",", ".")}`,
    say`Replace decimal commas by points in the whole sheet.`,
  );
}

function rangeText(rule: CellRule): Text {
  const unit =
    rule.dimension && rule.dimension !== "number" ? ` ${UNITS[rule.dimension].base}` : "";
  const { min, max, positive } = rule;
  if (max === undefined)
    return positive ? say`more than 0${unit}` : say`at least ${min ?? 0}${unit}`;
  if (positive) return say`more than 0 and at most ${max}${unit}`;
  return min === undefined
    ? say`at most ${max}${unit}`
    : say`at least ${min} and at most ${max}${unit}`;
}
