import type { Finding } from "../lab/finding.js";
import type { HydrometerCalibration } from "../lab/hydrometerCalibration.js";
import type { HydrometerRecord } from "../lab/hydrometerRecord.js";
import { formatPlain } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import { effectiveDepth } from "./effectiveDepth.js";
import type { HydrometerAnalysisRow } from "./hydrometerAnalysis.js";
import { hydrometerDepth } from "./hydrometerDepth.js";
import {
  percentFindings,
  pretreatmentFindings,
  riseFindings,
  temperatureFindings,
} from "./sedimentationFindings.js";

/** Percentage points outside 0 to 100 that reading to half a division explains; common practice, no source. */
const SLACK_PCT = 3;

const EXPECTED: Readonly<Record<HydrometerRecord["hydrometer"], () => string>> = {
  "152H": () => say`about −5 to 60 (g/L)`,
  "151H": () => say`about 0.995 to 1.038`,
  BS: () => say`about −5 to 35 (thousandths above 1)`,
};

/** What is wrong or doubtful about hydrometer readings and the percentages made from them. */
export function checkHydrometer(
  record: HydrometerRecord,
  rows: readonly HydrometerAnalysisRow[],
  calibration: HydrometerCalibration | undefined = record.calibration,
): Finding[] {
  const { file } = record;
  const place = (row: number) => ({ file, row, column: "reading" as const });
  return [
    ...pretreatmentFindings(record),
    ...outsideMarks(record, calibration),
    ...record.readings.flatMap((reading) => [
      ...temperatureFindings(file, reading.row, reading.temperatureC),
      ...offScale(record, reading, calibration),
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

/** Readings beyond the calibrated marks: the scale is even, but nobody measured there. */
function outsideMarks(
  { file, readings, meniscusCorrection, hydrometer }: HydrometerRecord,
  calibration: HydrometerCalibration | undefined,
): Finding[] {
  if (!calibration) return [];
  const marks = "depths" in calibration ? calibration.depths : calibration.marks;
  const told = marks.map(({ reading }) => reading);
  const [low, high] = [Math.min(...told), Math.max(...told)];
  const written = (reading: number) =>
    formatPlain(hydrometer === "BS" ? 1000 * (reading - 1) : reading, 5);
  const beyond = readings.filter(({ reading }) => {
    const stem = reading + meniscusCorrection;
    // A whole span beyond the marks is no reading, and a hair beyond is no remark.
    return Math.max(low - stem, stem - high) > (high - low) / 50;
  });
  if (beyond.length === 0) return [];
  const [first] = beyond;
  return [
    {
      severity: "warning",
      code: "outside-calibration",
      file,
      row: first.row,
      column: "reading",
      value: written(first.reading),
      message: say`${beyond.length} readings lie outside the calibrated marks; their depth was taken on along the scale.`,
      expected: say`readings from ${written(low)} to ${written(high)}, meniscus added`,
      wayOut: say`Measure the depth at a mark beyond these readings.`,
    },
  ];
}

function offScale(
  { file, hydrometer, meniscusCorrection }: HydrometerRecord,
  { reading, row }: HydrometerRecord["readings"][number],
  calibration: HydrometerCalibration | undefined,
): Finding[] {
  const stem = reading + meniscusCorrection;
  const depth = calibration ? hydrometerDepth(calibration, stem) : effectiveDepth(hydrometer, stem);
  if (depth > 0) return [];
  return [
    {
      severity: "error",
      code: "reading-off-scale",
      file,
      row,
      column: "reading",
      value: hydrometer === "BS" ? formatPlain(1000 * (reading - 1), 5) : String(reading),
      message: say`This reading is not on the scale of a ${hydrometer}.`,
      expected: EXPECTED[hydrometer](),
      wayOut: say`Check the reading and the type of hydrometer.`,
    },
  ];
}
