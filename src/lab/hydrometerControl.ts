import { say } from "../words/say.js";
import type { Finding } from "./finding.js";
import type { SheetValues } from "./sheetLayout.js";

/** Whether a hydrometer sheet gives control readings or separate corrections; findings where both or none. */
export function hydrometerControl(
  { file, headers, factRows, rows }: SheetValues,
  findings: Finding[],
): "control" | "corrections" {
  const push = (finding: Omit<Finding, "file">) => findings.push({ file, ...finding });
  const corrected = "dispersant" in factRows;
  if (corrected && headers.control) {
    push({
      severity: "error",
      code: "control-twice",
      row: factRows.dispersant,
      column: headers.control,
      message: say`The sheet gives control readings and a dispersant correction.`,
      expected: say`one of the two, so that they cannot contradict each other`,
      wayOut: say`Keep the control readings where there are any: they hold all corrections in one.`,
    });
  }
  if (corrected) return "corrections";
  if (!headers.control) {
    push({
      severity: "error",
      code: "missing-control",
      column: "control",
      message: say`The sheet says neither what a control cylinder read nor what the dispersant adds.`,
      expected: say`a column “control”, or the line “dispersant correction” above the table`,
      wayOut: say`Read a second cylinder of water and dispersant with each reading, or add the line.`,
    });
    return "control";
  }
  if ("calibrationC" in factRows) {
    push({
      severity: "note",
      code: "unused-fact",
      row: factRows.calibrationC,
      column: "calibration temperature",
      message: say`The calibration temperature is not used: the control readings hold the temperature's share.`,
      expected: say`the line only beside a dispersant correction`,
      wayOut: say`Nothing to do.`,
    });
  }
  for (const { row, written } of rows) {
    if (written.control !== "") continue;
    push({
      severity: "error",
      code: "missing-value",
      row,
      column: headers.control,
      value: "",
      message: say`This cell is empty.`,
      expected: say`a reading`,
      wayOut: say`Fill in the reading, or start the row with # to leave it out.`,
    });
  }
  return "control";
}
