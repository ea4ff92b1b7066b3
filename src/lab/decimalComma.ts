import { parseNumber } from "../quantities/parseNumber.js";
import { say } from "../words/say.js";
import type { Finding } from "./finding.js";
import type { CellRule } from "./sheetLayout.js";

/**
 * A cell of a sheet with decimal commas, written with a point; texts stay as they are. A number with a
 * point is refused: 1.500 may be one and a half or fifteen hundred, and nobody should guess.
 *
 * @param stored numbers that a workbook stores have a point whatever it shows.
 */
export function decimalComma(
  text: string,
  rule: CellRule,
  place: { readonly file: string; readonly row: number; readonly column: string },
  stored: boolean,
  findings: Finding[],
): string {
  if (rule.kind === "text") return text;
  const number = parseNumber(text);
  if ("problem" in number) {
    if (number.problem === "comma-decimal") return text.replaceAll(".", "").replace(",", ".");
    return rule.kind === "sieve" ? text.replace(/(\d),(\d)/g, "$1.$2") : text;
  }
  if (!text.includes(".") || stored) return text;
  findings.push({
    ...{ severity: "error", code: "point-decimal", ...place, value: text },
    message: say`This number has a point, but the sheet is said to write decimal commas.`,
    expected: say`a decimal comma: ${text.replace(".", ",")}, or ${text.replaceAll(".", "")} without thousands`,
    wayOut: say`Correct the cell, or take “decimal: comma” out of study.yaml.`,
  });
  return text;
}
