import { phrase, say } from "../words/say.js";
import type { Finding } from "./finding.js";
import type { HydrometerReading, HydrometerRecord } from "./hydrometerRecord.js";
import { readSheet } from "./readSheet.js";
import type { SheetGrid } from "./sheetGrid.js";
import type { SheetLayout } from "./sheetLayout.js";

const LAYOUT: SheetLayout = {
  title: phrase`hydrometer sheet`,
  facts: [
    { key: "hydrometer", names: ["hydrometer"], kind: "text", required: true },
    {
      key: "dryMassG",
      names: ["dry mass"],
      kind: "number",
      dimension: "mass",
      required: true,
      positive: true,
    },
    { key: "separatingSizeMm", names: ["separating sieve"], kind: "sieve", required: true },
    {
      key: "meniscusCorrection",
      names: ["meniscus correction"],
      kind: "number",
      required: true,
      min: 0,
    },
  ],
  columns: [
    {
      key: "timeMin",
      names: ["time"],
      kind: "number",
      dimension: "duration",
      required: true,
      positive: true,
    },
    { key: "reading", names: ["reading"], kind: "number", required: true, min: 0 },
    { key: "control", names: ["control"], kind: "number", required: true },
    {
      key: "temperatureC",
      names: ["temperature"],
      kind: "number",
      dimension: "temperature",
      required: true,
      min: 5,
      max: 40,
    },
  ],
};

/**
 * Reads a hydrometer sheet: `hydrometer` (151H or 152H), `dry mass (g)`, `separating sieve (mm)` and
 * `meniscus correction` above a table of `time (min)`, `reading`, `control` and `temperature (C)`.
 * Readings stand in the instrument's own units (152H: g/L; 151H: specific gravity).
 *
 * @returns the record, or `undefined` where the sheet holds too little to make one.
 */
export function readHydrometer(grid: SheetGrid, findings: Finding[]): HydrometerRecord | undefined {
  const before = findings.length;
  const sheet = readSheet(grid, LAYOUT, findings);
  if (!sheet) return undefined;
  const { file, facts } = sheet;
  const hydrometer = String(facts.hydrometer ?? "").toUpperCase();
  if (facts.hydrometer !== undefined && hydrometer !== "151H" && hydrometer !== "152H") {
    findings.push({
      severity: "error",
      code: "unknown-hydrometer",
      file,
      row: sheet.factRows.hydrometer,
      value: String(facts.hydrometer),
      message: say`This hydrometer is not known.`,
      expected: say`151H or 152H`,
      wayOut: say`Read the type off the stem of the instrument.`,
    });
  }
  const readings: HydrometerReading[] = [];
  for (const { row, values, written } of sheet.rows) {
    const { timeMin, reading, control, temperatureC } = values;
    if (
      typeof timeMin !== "number" ||
      typeof reading !== "number" ||
      typeof control !== "number" ||
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
    readings.push({ timeMin, reading, control, temperatureC, row });
  }
  if (findings.slice(before).some(({ severity }) => severity === "error")) return undefined;
  return {
    file,
    hydrometer: hydrometer as "151H" | "152H",
    dryMassG: facts.dryMassG as number,
    separatingSizeMm: facts.separatingSizeMm as number,
    meniscusCorrection: facts.meniscusCorrection as number,
    readings,
  };
}
