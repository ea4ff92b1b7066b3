import { convertToBase } from "../quantities/convertUnit.js";
import { parseNumber } from "../quantities/parseNumber.js";
import { parseSieve } from "../quantities/parseSieve.js";
import { UNITS } from "../quantities/units.js";
import { say } from "../words/say.js";
import type { Finding } from "./finding.js";
import type { CellRule, CellValue } from "./sheetLayout.js";

export interface CellPlace {
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
  const refuse = (code: string, message: string, expected: string, wayOut: string): undefined => {
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
      wayOut,
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
  refuse: (code: string, message: string, expected: string, wayOut: string) => undefined,
): undefined {
  return refuse(
    "comma-decimal",
    say`This number is written with a decimal comma.`,
    say`a decimal point: ${text.replace(",", ".")}`,
    say`Replace decimal commas by points in the whole sheet.`,
  );
}

function rangeText(rule: CellRule): string {
  const unit =
    rule.dimension && rule.dimension !== "number" ? ` ${UNITS[rule.dimension].base}` : "";
  const low = rule.positive
    ? say`more than 0`
    : rule.min === undefined
      ? undefined
      : say`at least ${rule.min}`;
  const high = rule.max === undefined ? undefined : say`at most ${rule.max}`;
  return [low, high].filter(Boolean).join(say` and `) + unit;
}
