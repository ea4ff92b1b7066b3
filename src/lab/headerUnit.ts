import { convertToBase } from "../quantities/convertUnit.js";
import { parseHeaderCell } from "../quantities/parseHeaderCell.js";
import { acceptedUnits } from "../quantities/parseQuantity.js";
import { say } from "../words/say.js";
import type { Finding } from "./finding.js";
import type { CellRule } from "./sheetLayout.js";

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
    wayOut: say`Write for example ${headerExample(rule)}.`,
  });
  return unit;
}
