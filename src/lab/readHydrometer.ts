import { say } from "../words/say.js";
import type { Finding } from "./finding.js";
import { hydrometerControl } from "./hydrometerControl.js";
import { HYDROMETER_LAYOUT } from "./hydrometerLayout.js";
import { hydrometerMarks } from "./hydrometerMarks.js";
import type { HydrometerReading, HydrometerRecord, HydrometerType } from "./hydrometerRecord.js";
import { readPretreatment } from "./pretreatment.js";
import { readSheet } from "./readSheet.js";
import type { SheetGrid } from "./sheetGrid.js";

const TYPES: readonly string[] = ["151H", "152H", "BS"] satisfies readonly HydrometerType[];

/**
 * Reads a hydrometer sheet: `hydrometer` (151H, 152H or BS), `dry mass (g)`, `separating sieve (mm)` and
 * `meniscus correction` above a table of `time (min)`, `reading`, `control` and `temperature (C)`.
 * Readings stand in the instrument's own units (152H: g/L; 151H: specific gravity; BS: 0.001 above
 * 1.000, so that 24.0 is 1.0240, kept in the record as specific gravity).
 *
 * In place of the column `control` the sheet may have the line `dispersant correction` and, where the
 * scale is not right at 20 °C, `calibration temperature (C)`. The instrument's own depths are pairs
 * `calibration 1 reading`, `calibration 1 depth (mm)` and so on to 6, or two marks `calibration 1 to neck
 * (mm)` with `bulb length (mm)`, `bulb volume (cm3)` and `cylinder inner diameter (mm)`; a BS hydrometer
 * has no depths without them. `pretreatment` and `pretreatment loss (%)` say what was done before.
 *
 * @returns the record, or `undefined` where the sheet holds too little to make one.
 */
export function readHydrometer(grid: SheetGrid, findings: Finding[]): HydrometerRecord | undefined {
  const before = findings.length;
  const sheet = readSheet(grid, HYDROMETER_LAYOUT, findings);
  if (!sheet) return undefined;
  const { file, facts } = sheet;
  const hydrometer = String(facts.hydrometer ?? "").toUpperCase();
  if (facts.hydrometer !== undefined && !TYPES.includes(hydrometer)) {
    findings.push({
      severity: "error",
      code: "unknown-hydrometer",
      file,
      row: sheet.factRows.hydrometer,
      value: String(facts.hydrometer),
      message: say`This hydrometer is not known.`,
      expected: say`151H, 152H or BS`,
      wayOut: say`Read the type off the stem of the instrument.`,
    });
  }
  // A BS scale counts thousandths above 1: kept as specific gravity, so that one formula serves.
  const thousandths = hydrometer === "BS";
  const toUnits = (reading: number) => (thousandths ? 1 + reading / 1000 : reading);
  const difference = (correction: number) => (thousandths ? correction / 1000 : correction);
  const kind = hydrometerControl(sheet, findings);
  const calibration = hydrometerMarks(sheet, toUnits, findings);
  const pretreatment = readPretreatment(sheet, findings);
  const marked = Object.keys(sheet.factRows).some((key) => key.startsWith("mark"));
  if (thousandths && !calibration && !marked) {
    findings.push({
      severity: "error",
      code: "missing-calibration",
      file,
      row: sheet.factRows.hydrometer,
      value: String(facts.hydrometer),
      message: say`A hydrometer of this kind has no depths that hold for each instrument.`,
      expected: say`“calibration 1 reading” and “calibration 1 depth (mm)”, and so on, above the table`,
      wayOut: say`Copy two marks or more from the instrument's calibration sheet.`,
    });
  }
  const readings: HydrometerReading[] = [];
  for (const { row, values, written } of sheet.rows) {
    const { timeMin, reading, control, temperatureC } = values;
    if (
      typeof timeMin !== "number" ||
      typeof reading !== "number" ||
      (kind === "control" && typeof control !== "number") ||
      typeof temperatureC !== "number"
    ) {
      continue;
    }
    const above = readings.at(-1);
    if (above && timeMin <= above.timeMin) {
      findings.push({
        severity: "error",
        code: "time-order",
        file,
        row,
        column: sheet.headers.timeMin,
        value: written.timeMin,
        message: say`This reading is not later than the one above it.`,
        expected: say`more than ${above.timeMin} min`,
        wayOut: say`Write the time since the start of sedimentation, in order.`,
      });
    }
    readings.push({
      timeMin,
      reading: toUnits(reading),
      ...(kind === "control" && typeof control === "number" ? { control: toUnits(control) } : {}),
      temperatureC,
      row,
    });
  }
  if (findings.slice(before).some(({ severity }) => severity === "error")) return undefined;
  return {
    file,
    hydrometer: hydrometer as HydrometerType,
    dryMassG: facts.dryMassG as number,
    separatingSizeMm: facts.separatingSizeMm as number,
    meniscusCorrection: difference(facts.meniscusCorrection as number),
    ...(kind === "corrections"
      ? {
          corrections: {
            dispersant: difference(facts.dispersant as number),
            ...(typeof facts.calibrationC === "number" ? { calibrationC: facts.calibrationC } : {}),
          },
        }
      : {}),
    ...(calibration ? { calibration } : {}),
    ...(pretreatment ? { pretreatment } : {}),
    readings,
  };
}
