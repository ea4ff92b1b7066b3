import { say } from "../words/say.js";
import type { Finding } from "./finding.js";
import type { LimitsRecord } from "./limitsRecord.js";
import type { SheetValues } from "./sheetLayout.js";

/** The long box of field practice where a sheet gives no other length. */
const BOX_LENGTH_MM = 600;

/** The long shrinkage box of a limits sheet; findings where its two lines do not go together. */
export function readLongBox(
  { file, facts, factRows }: SheetValues,
  findings: Finding[],
): LimitsRecord["longBox"] {
  const { boxShrinkageMm: shrinkage, boxLengthMm: length = BOX_LENGTH_MM } = facts;
  if (!("boxShrinkageMm" in factRows)) {
    if ("boxLengthMm" in factRows) {
      findings.push({
        severity: "error",
        code: "incomplete-shrinkage",
        file,
        row: factRows.boxLengthMm,
        column: "long box length",
        value: String(facts.boxLengthMm ?? ""),
        message: say`The long box has a length and no shrinkage.`,
        expected: say`“long box shrinkage (mm)” beside it`,
        wayOut: say`Add the line: all gaps of the dry bar pushed together, measured at one end.`,
      });
    }
    return undefined;
  }
  if (typeof shrinkage !== "number" || typeof length !== "number") return undefined;
  if (shrinkage >= length) {
    findings.push({
      severity: "error",
      code: "box-shrank-away",
      file,
      row: factRows.boxShrinkageMm,
      column: "long box shrinkage",
      value: `${shrinkage} mm`,
      message: say`The soil in the long box shrank by as much as the box is long.`,
      expected: say`less than ${length} mm`,
      wayOut: say`Check whether the dry length stands there in place of the shrinkage.`,
    });
    return undefined;
  }
  return { shrinkageMm: shrinkage, lengthMm: length };
}
