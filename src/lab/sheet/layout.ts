import {
  type Finding,
  type FindingPlace,
  type FindingWords,
  finding,
} from "../../findings/finding.js";
import { measured } from "../../quantities/format.js";
import { acceptedUnits, parseNumber } from "../../quantities/parseQuantity.js";
import { parseSieve, sieveNumbers } from "../../quantities/sieves.js";
import { convertToBase, type Dimension, normaliseUnit, UNITS } from "../../quantities/units.js";
import { type Sentence, say, type Text } from "../../words/message.js";

/** What a cell may hold. Numbers are converted to the base unit of their dimension. */
export interface CellRule {
  /** Key in the values that come back. */
  readonly key: string;
  /** Accepted names, lower case; the first one is shown in messages. */
  readonly names: readonly string[];
  readonly kind: "number" | "text" | "sieve";
  /** Of a number: but for `number` the cell's header must name a unit of it. */
  readonly dimension?: Dimension;
  readonly required?: boolean;
  /** A line may be left out, but where it is there it has to hold a value. */
  readonly filled?: boolean;
  /** Smallest allowed value in the base unit; of a sieve in mm. */
  readonly min?: number;
  /** Largest allowed value in the base unit; of a sieve in mm. */
  readonly max?: number;
  /** Zero is not allowed. */
  readonly positive?: boolean;
  /** Of a sieve: `pan`, or all that is finer (`<0.063`), may stand there. */
  readonly pan?: boolean;
  /** Names that say the unit themselves, so that no unit need stand behind them. */
  readonly unitless?: readonly string[];
  /** What may stand before a number, such as the D of `D60`. */
  readonly lead?: RegExp;
  /** Readings of one name here are made with one balance or ruler: two systems of units among them are asked about. */
  readonly balance?: string;
  /** Texts that may stand in place of a number, and are kept as texts. */
  readonly words?: RegExp;
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
  /** The facts alone may be all that a laboratory reports. */
  readonly tableOptional?: boolean;
}

type Limits = Omit<CellRule, "key" | "names" | "kind" | "dimension">;
type Names = string | readonly string[];

const listed = (names: Names): readonly string[] => (typeof names === "string" ? [names] : names);

/** The rule of a cell that holds a number. */
export function numberRule(
  key: string,
  names: Names,
  dimension: Dimension,
  limits: Limits = {},
): CellRule {
  return { key, names: listed(names), kind: "number", dimension, ...limits };
}

/** The rule of a cell that holds a sieve. */
export function sieveRule(key: string, names: Names, limits: Limits = {}): CellRule {
  return { key, names: listed(names), kind: "sieve", ...limits };
}

/** How the column of the sieves is named. */
export const SIEVE_NAMES = [
  "sieve",
  "sieve size",
  "sieve opening",
  "opening",
  "aperture",
  "size",
  "particle size",
  "grain size",
  "sieve no",
  "sieve no.",
  "sieve number",
] as const;

/** The rule of a cell that holds a text. */
export function textRule(key: string, names: Names, limits: Limits = {}): CellRule {
  return { key, names: listed(names), kind: "text", ...limits };
}

/** The line that names the form of the test, such as ASTM D422 or ISO 17892-4. */
export const METHOD_FACT = textRule("method", "method");

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

/** Those of the named values that are numbers. */
export function numbersAmong<Key extends string>(
  values: SheetRow["values"],
  ...keys: readonly Key[]
): { readonly [Name in Key]?: number } {
  const numbers = keys.filter((key) => typeof values[key] === "number");
  return Object.fromEntries(numbers.map((key) => [key, values[key]])) as { [Name in Key]?: number };
}

/** The named values, where all of them are numbers. */
export function allNumbers<Key extends string>(
  values: SheetRow["values"],
  ...keys: readonly Key[]
): { readonly [Name in Key]: number } | undefined {
  const numbers = numbersAmong(values, ...keys);
  return keys.every((key) => key in numbers)
    ? (numbers as { readonly [Name in Key]: number })
    : undefined;
}

/** Where a cell of the table stands and what is written there, for findings. */
export function cellPlace(
  { file, headers }: SheetValues,
  { row, written }: SheetRow,
  key: string,
): FindingPlace {
  return { file, row, column: headers[key], value: written[key] };
}

/** A reading that should be there. */
export function emptyCell(place: FindingPlace, expected: Text = say`a reading`): Finding {
  return finding(place, "error", "missing-value", {
    message: say`This cell is empty.`,
    expected,
    remedy: say`Fill in the reading, or start the row with # and a space to leave it out.`,
  });
}

/** A sheet without a column that it needs, told at its header. */
export function missingColumn(place: FindingPlace, name: string, expected: Text): Finding {
  return finding(place, "error", "wrong-header", {
    message: say`The column “${name}” is missing.`,
    expected,
    remedy: say`Add the column, or rename the one that holds it.`,
  });
}

/** A reading of a series that was not taken after the one above it. */
export function timeFindings(
  place: FindingPlace,
  timeMin: number,
  above: { readonly timeMin: number } | undefined,
  {
    message = say`This reading is not later than the one above it.`,
    remedy = say`Write the time since the start of sedimentation, in order.`,
  }: { readonly message?: Text; readonly remedy?: Text } = {},
): Finding[] {
  if (!above || timeMin > above.timeMin) return [];
  const expected = say`more than ${above.timeMin} min`;
  return [finding(place, "error", "time-order", { message, expected, remedy })];
}

export interface HeaderCell {
  /** Lower case, spaces folded. */
  readonly name: string;
  /** Text in the last pair of brackets, as written; `%` where the name itself says percent. */
  readonly unit?: string;
}

/** Longer than any name with its unit; no pattern need search a longer text. */
const MAX_HEADER = 200;

/**
 * Splits a header cell of a sheet into its name and its unit, which stands in brackets, behind a comma, or is
 * the percent or the series of sieves that the name speaks of.
 *
 * @example
 * parseHeaderCell("Retained (g)") // => { name: "retained", unit: "g" }
 * parseHeaderCell("Dry mass [kg]") // => { name: "dry mass", unit: "kg" }
 * parseHeaderCell("Dry mass, g") // => { name: "dry mass", unit: "g" }
 * parseHeaderCell("% passing") // => { name: "passing", unit: "%" }
 * parseHeaderCell("US sieve") // => { name: "sieve", unit: "us" }
 * parseHeaderCell(" remark ") // => { name: "remark" }
 */
export function parseHeaderCell(text: string): HeaderCell {
  const plain = text.trim();
  const folded = (name: string) => name.trim().toLowerCase().replace(/\s+/g, " ");
  for (const [opening, closing] of ["()", "[]"]) {
    const open = plain.lastIndexOf(opening);
    // Brackets in brackets, or text behind them, hold no unit.
    if (open >= 0 && plain.indexOf(closing, open) === plain.length - 1) {
      const { name, unit } = unitInName(folded(plain.slice(0, open)));
      return { name, unit: plain.slice(open + 1, -1).trim() || (unit ?? "") };
    }
  }
  const name = folded(plain);
  if (name.length > MAX_HEADER) return { name };
  const [, before, unit] = /^([^,]+), ?(\S+)$/.exec(plain) ?? [];
  if (unit !== undefined && isUnit(unit)) return { name: folded(before), unit };
  return unitInName(name);
}

/** `% passing`, `percent passing`, `passing %` and `ASTM sieve` are names that say their unit. */
function unitInName(name: string): HeaderCell {
  const [, series, sieve] = /^(us|u\.s\.|astm|bs) (?:standard )?(sieve.*)$/.exec(name) ?? [];
  if (sieve !== undefined) return { name: sieve, unit: series };
  const [, behind, before] =
    /^(?:%|percent(?:age)?|per cent) ?(?:of )?(.+)$|^(.+?),? ?%$/.exec(name.slice(0, MAX_HEADER)) ??
    [];
  const plain = behind ?? before;
  return plain === undefined ? { name } : { name: plain, unit: "%" };
}

function isUnit(text: string): boolean {
  const dimensions = Object.keys(UNITS) as Dimension[];
  return dimensions.some((dimension) => convertToBase(1, text, dimension) !== undefined);
}

/** The dimension that a header cell must name a unit of. */
function unitDimension({ kind, dimension }: CellRule): Dimension | undefined {
  if (kind === "sieve") return "length";
  return dimension === "number" ? undefined : dimension;
}

/** How the header cell of a rule is written, for messages. */
export function headerExample(rule: CellRule): string {
  const dimension = unitDimension(rule);
  const unit = dimension === undefined ? "" : ` (${acceptedUnits(dimension).split(", ")[0]})`;
  return `“${rule.names[0]}${unit}”`;
}

/**
 * The unit of a header cell; of a line without one that of its value (`MDD` and `1.96 g/cm3`); a finding where
 * one is missing or does not measure this.
 */
export function headerUnit(
  rule: CellRule,
  place: {
    readonly file: string;
    readonly row?: number;
    readonly text: string;
    readonly value?: string;
  },
): { readonly unit?: string; readonly findings: readonly Finding[] } {
  const dimension = unitDimension(rule);
  if (dimension === undefined) return { findings: [] };
  const { file, row, text: column } = place;
  const { name, unit: written = unitBehind(place.value ?? "", dimension) } =
    parseHeaderCell(column);
  const isSieve = rule.kind === "sieve";
  const unit = isSieve && written !== undefined ? sieveUnit(written) : written;
  const refuse = (code: string, message: Text) => ({
    unit,
    findings: [
      finding({ file, row, column, value: unit ?? "" }, "error", code, {
        message,
        expected: isSieve
          ? say`one of ${acceptedUnits(dimension)}, US No., BS mesh in parentheses after the name`
          : say`one of ${acceptedUnits(dimension)} in parentheses after the name`,
        remedy: say`Write for example ${headerExample(rule)}.`,
      }),
    ],
  });
  if (unit === undefined) {
    // Designations such as No. 40 need no unit; a bare number would be taken as mm, but not under “sieve no.”.
    const named = isSieve ? !/ n(o\.?|umber)$/.test(name) : rule.unitless?.includes(name);
    return named ? { findings: [] } : refuse("missing-unit", say`This name has no unit.`);
  }
  const numbered = isSieve && sieveNumbers(unit) !== undefined;
  return numbered || convertToBase(1, unit, dimension) !== undefined
    ? { unit, findings: [] }
    : refuse("unknown-unit", say`The unit “${unit}” is not known here.`);
}

/** The series of standard openings are in mm; which of them a column is of is said for the reader. */
function sieveUnit(text: string): string {
  const plain = text.replace(/^(ISO 565|ISO 3310(-1)?|EN 933-2)(,|\s|$)\s*/i, "");
  return plain === "" ? "mm" : plain;
}

export interface CellPlace {
  readonly file: string;
  readonly row: number;
  readonly column: string;
  /** Unit from the header cell. */
  readonly unit?: string;
  /** The sheet writes 1.234,5. */
  readonly decimalComma?: boolean;
}

/** The value of a cell, or why it has none; of an empty cell neither. */
interface CellReading {
  readonly value?: CellValue;
  readonly finding?: Finding;
}

/**
 * Reads one cell by its rule. An empty cell is no problem here: whoever needs the value says so.
 */
export function readCell(text: string, rule: CellRule, place: CellPlace): CellReading {
  if (text === "") return {};
  if (SPREADSHEET_ERROR.test(text)) {
    return refusal(text, place, "spreadsheet-error", {
      message: say`This cell holds a spreadsheet's error in place of a value.`,
      expected: rule.kind === "text" ? say`a text` : say`a reading`,
      remedy: say`Mend the formula in the spreadsheet, or type what was read.`,
    });
  }
  if (rule.kind === "text" || rule.words?.test(text)) return { value: text };
  return rule.kind === "sieve"
    ? readSieveCell(text, rule, place)
    : readNumberCell(text, rule, place);
}

/** `#N/A`, `#DIV/0!` and their like, as spreadsheets write them in any language. */
const SPREADSHEET_ERROR = /^(#[\p{Lu}\d/_¡]{1,20}[!?]|#N\/[AD]|#NV|#GETTING_DATA|Err:\d{3})$/u;

function refusal(value: string, place: CellPlace, code: string, words: FindingWords): CellReading {
  const { file, row, column } = place;
  return { finding: finding({ file, row, column, value }, "error", code, words) };
}

/** How laboratories name what lies under the finest sieve. */
const PAN = /^(pan|bottom pan|receiver|tray|base)$/i;
const COMMA_IN_NUMBER = /(\d),(\d)/;

function readSieveCell(text: string, rule: CellRule, place: CellPlace): CellReading {
  const unit = place.unit ?? "mm";
  if (place.decimalComma && COMMA_IN_NUMBER.test(text)) {
    return readSieveCell(text.replace(COMMA_IN_NUMBER, "$1.$2"), rule, place);
  }
  if (rule.pan) {
    const limit = text.startsWith("<") ? parseSieve(text.slice(1), unit) : undefined;
    if (limit !== undefined || PAN.test(text)) return { value: "pan" };
  }
  const sizeMm = parseSieve(text, unit);
  if (sizeMm !== undefined) {
    return isInside(sizeMm, rule) ? { value: sizeMm } : outOfRange(text, rule, place);
  }
  if (text.includes(",")) return decimalCommaRefusal(text, place);
  return refusal(text, place, "unknown-sieve", {
    message: say`This is not a sieve.`,
    expected: rule.pan
      ? say`an opening, a United States designation such as No. 40 or 3/8 in, or pan`
      : say`an opening, or a United States designation such as No. 40 or 3/8 in`,
    remedy: say`Write the opening in the column's unit.`,
  });
}

function readNumberCell(text: string, rule: CellRule, place: CellPlace): CellReading {
  const dimension = unitDimension(rule);
  const unit = dimension && (place.unit ?? UNITS[dimension].base);
  const bare = withoutUnit(rule.lead ? text.replace(rule.lead, "") : text, unit);
  let number = parseNumber(bare);
  if (place.decimalComma) {
    // Numbers that a workbook stores have a point whatever it shows.
    const stored = /\.xlsx$/i.test(place.file);
    if ("value" in number && bare.includes(".") && !stored) return pointRefusal(text, bare, place);
    if ("problem" in number && number.problem === "comma-decimal") {
      number = parseNumber(bare.replace(/[. ]/g, "").replace(",", "."));
    }
  }
  if ("problem" in number) return notANumber(text, number.problem, place);
  const value = dimension && unit ? convertToBase(number.value, unit, dimension) : number.value;
  // An unknown unit is reported once, at the header.
  if (value === undefined) return {};
  return isInside(value, rule) ? { value } : outOfRange(text, rule, place);
}

function notANumber(text: string, problem: string, place: CellPlace): CellReading {
  if (problem === "comma-decimal") return decimalCommaRefusal(text, place);
  if (/^[<>≤≥±]|\d\s*±/.test(text)) {
    return refusal(text, place, "not-one-number", {
      message: say`This cell says a range or a limit, not one number.`,
      expected: say`the reading alone`,
      remedy: say`Write the number that was read; put the rest in a remark column.`,
    });
  }
  return refusal(text, place, "not-a-number", {
    message: say`This cell holds text where a number is expected.`,
    expected: say`a number with a decimal point, without its unit`,
    remedy: say`Correct the reading; put remarks in a remark column.`,
  });
}

function isInside(value: number, { min, max, positive }: CellRule): boolean {
  return (
    (min === undefined || value >= min) &&
    (max === undefined || value <= max) &&
    !(positive && value <= 0)
  );
}

function outOfRange(text: string, rule: CellRule, place: CellPlace): CellReading {
  return refusal(text, place, "out-of-range", {
    message: say`This value is outside what can be measured.`,
    expected: rangeText(rule),
    remedy: say`Check the reading against the lab's own sheet, and the unit in the header.`,
  });
}

/** A number with the unit of its column behind it, such as `6 %`, says the same without it. */
function withoutUnit(text: string, unit: string | undefined): string {
  const { number, unit: own } = numberAndUnit(text);
  if (own === undefined || unit === undefined) return text;
  return normaliseUnit(own) === normaliseUnit(unit) ? number : text;
}

function numberAndUnit(text: string): { readonly number: string; readonly unit?: string } {
  const [, number = text, unit] =
    /^([^\p{L}%°]*\d)\s*([\p{L}%°].*)$/u.exec(text.slice(0, 100)) ?? [];
  return { number, unit };
}

/** The unit behind a value, where it measures this. */
function unitBehind(value: string, dimension: Dimension): string | undefined {
  const { unit } = numberAndUnit(value);
  return unit !== undefined && convertToBase(1, unit, dimension) !== undefined ? unit : undefined;
}

function decimalCommaRefusal(text: string, place: CellPlace): CellReading {
  const pointed = text.replaceAll(".", "").replace(",", ".");
  // 1,234 with a comma is one and a bit where the comma is decimal, else over a thousand.
  if (/^[+-]?[1-9]\d{0,2},\d{3}$/.test(text)) {
    return refusal(text, place, "ambiguous-comma", {
      message: say`This number has two readings: the comma may be decimal or part the thousands.`,
      expected: say`${pointed}, or ${text.replace(",", "")}`,
      remedy: say`Write the one that is meant.`,
    });
  }
  return refusal(text, place, "comma-decimal", {
    message: say`This number is written with a decimal comma.`,
    expected: say`a decimal point: ${pointed}`,
    remedy: say`Replace decimal commas by points in the whole sheet.`,
  });
}

/** A number with a point among decimal commas: 1.500 may be one and a half or fifteen hundred, and nobody should guess. */
function pointRefusal(text: string, bare: string, place: CellPlace): CellReading {
  return refusal(text, place, "point-decimal", {
    message: say`This number has a point, but the sheet is said to write decimal commas.`,
    expected: say`a decimal comma: ${bare.replace(".", ",")}, or ${bare.replaceAll(".", "")} without thousands`,
    remedy: say`Correct the cell, or take “decimal: comma” out of study.yaml.`,
  });
}

function rangeText(rule: CellRule): Text {
  const { min, max, positive } = rule;
  const dimension = unitDimension(rule);
  const shown = (value: number): Text =>
    dimension === "stress" || dimension === "density" || dimension === "force"
      ? measured(value, dimension)
      : say`${value}${dimension ? ` ${UNITS[dimension].base}` : ""}`;
  if (max === undefined) {
    return positive ? say`more than ${shown(0)}` : say`at least ${shown(min ?? 0)}`;
  }
  if (positive) return say`more than 0 and at most ${shown(max)}`;
  return min === undefined
    ? say`at most ${shown(max)}`
    : say`at least ${shown(min)} and at most ${shown(max)}`;
}
