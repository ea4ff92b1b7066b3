import type { Finding } from "../lab/finding.js";
import type { HydrometerRecord } from "../lab/hydrometerRecord.js";
import { formatFixed } from "../quantities/formatNumber.js";
import { effectiveDepth } from "./effectiveDepth.js";
import type { HydrometerAnalysisRow } from "./hydrometerAnalysis.js";
import { waterProperties } from "./waterProperties.js";

/** Percentage points outside 0 to 100 that reading to half a division explains; common practice, no source. */
const SLACK_PCT = 3;

/** What is wrong or doubtful about hydrometer readings and the percentages made from them. */
export function checkHydrometer(
  record: HydrometerRecord,
  rows: readonly HydrometerAnalysisRow[],
): Finding[] {
  return [
    ...record.readings.flatMap((reading) => outsideTables(record, reading)),
    ...rows.flatMap((row) => outsidePercent(record, row)),
    ...rows.flatMap((row, index) => rising(record, row, rows[index - 1])),
  ];
}

function outsideTables(
  record: HydrometerRecord,
  { temperatureC, reading, row }: HydrometerRecord["readings"][number],
): Finding[] {
  const { file, hydrometer, meniscusCorrection } = record;
  const findings: Finding[] = [];
  if (!waterProperties(temperatureC)) {
    findings.push({
      severity: "error",
      code: "temperature-outside-table",
      file,
      row,
      column: "temperature",
      value: `${formatFixed(temperatureC, 1)} °C`,
      message: "The viscosity of water is not tabulated at this temperature.",
      expected: "10 to 30 °C",
      wayOut:
        "Check the reading and its unit; repeat the test in a room or bath within that range.",
    });
  }
  if (!(effectiveDepth(hydrometer, reading + meniscusCorrection) > 0)) {
    findings.push({
      severity: "error",
      code: "reading-off-scale",
      file,
      row,
      column: "reading",
      value: String(reading),
      message: `This reading is not on the scale of a ${hydrometer}.`,
      expected: hydrometer === "152H" ? "about −5 to 60 (g/L)" : "about 0.995 to 1.038",
      wayOut: "Check the reading and the type of hydrometer.",
    });
  }
  return findings;
}

function outsidePercent(
  { file }: HydrometerRecord,
  { row, finerOfDispersedPct }: HydrometerAnalysisRow,
): Finding[] {
  const over = finerOfDispersedPct - 100;
  const outside = Math.max(over, -finerOfDispersedPct);
  if (outside <= 1e-9) return [];
  return [
    {
      severity: outside > SLACK_PCT ? "error" : "warning",
      code: over > 0 ? "finer-over-100" : "finer-below-0",
      file,
      row,
      column: "reading",
      value: `${formatFixed(finerOfDispersedPct, 1)} %`,
      message:
        over > 0
          ? "More is in suspension than was put in."
          : "The reading lies below the control: less than nothing is in suspension.",
      expected: `0 to 100 % of the dispersed mass (within ${SLACK_PCT} it is taken as the limit)`,
      wayOut: "Check the dry mass, the control reading and the meniscus correction.",
    },
  ];
}

function rising(
  { file }: HydrometerRecord,
  row: HydrometerAnalysisRow,
  before: HydrometerAnalysisRow | undefined,
): Finding[] {
  const rise = before ? row.finerOfDispersedPct - before.finerOfDispersedPct : 0;
  if (!(rise > 1e-9)) return [];
  return [
    {
      severity: "warning",
      code: "finer-rises",
      file,
      row: row.row,
      column: "reading",
      value: `${formatFixed(row.finerOfDispersedPct, 1)} %`,
      message: `The percentage in suspension rises by ${formatFixed(rise, 1)} points since the reading before, which settling cannot do.`,
      expected: "percentages that fall or stay with time",
      wayOut: "Check both readings, the control and the temperature.",
    },
  ];
}
