import type { Finding } from "../lab/finding.js";
import type { HydrometerRecord } from "../lab/hydrometerRecord.js";
import { say } from "../words/say.js";
import { effectiveDepth } from "./effectiveDepth.js";
import type { HydrometerAnalysisRow } from "./hydrometerAnalysis.js";
import { percentFindings, riseFindings, temperatureFindings } from "./sedimentationFindings.js";

/** Percentage points outside 0 to 100 that reading to half a division explains; common practice, no source. */
const SLACK_PCT = 3;

/** What is wrong or doubtful about hydrometer readings and the percentages made from them. */
export function checkHydrometer(
  record: HydrometerRecord,
  rows: readonly HydrometerAnalysisRow[],
): Finding[] {
  const { file } = record;
  const place = (row: number) => ({ file, row, column: "reading" as const });
  return [
    ...record.readings.flatMap((reading) => [
      ...temperatureFindings(file, reading.row, reading.temperatureC),
      ...offScale(record, reading),
    ]),
    ...rows.flatMap(({ row, finerOfDispersedPct }) =>
      percentFindings(place(row), finerOfDispersedPct, {
        slackPct: SLACK_PCT,
        below: say`The reading lies below the control: less than nothing is in suspension.`,
        wayOut: say`Check the dry mass, the control reading and the meniscus correction.`,
      }),
    ),
    ...rows.slice(1).flatMap(({ row, finerOfDispersedPct }, index) =>
      riseFindings(place(row), finerOfDispersedPct, rows[index].finerOfDispersedPct, {
        before: "reading",
        wayOut: say`Check both readings, the control and the temperature.`,
      }),
    ),
  ];
}

function offScale(
  { file, hydrometer, meniscusCorrection }: HydrometerRecord,
  { reading, row }: HydrometerRecord["readings"][number],
): Finding[] {
  if (effectiveDepth(hydrometer, reading + meniscusCorrection) > 0) return [];
  return [
    {
      severity: "error",
      code: "reading-off-scale",
      file,
      row,
      column: "reading",
      value: String(reading),
      message: say`This reading is not on the scale of a ${hydrometer}.`,
      expected: hydrometer === "152H" ? say`about −5 to 60 (g/L)` : say`about 0.995 to 1.038`,
      wayOut: say`Check the reading and the type of hydrometer.`,
    },
  ];
}
