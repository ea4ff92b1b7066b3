import type { Finding } from "../lab/finding.js";
import type { PipetteRecord } from "../lab/pipetteRecord.js";
import { say } from "../words/say.js";
import type { PipetteAnalysisRow } from "./pipetteAnalysis.js";
import {
  percentFindings,
  pretreatmentFindings,
  riseFindings,
  temperatureFindings,
} from "./sedimentationFindings.js";

/** Percentage points outside 0 to 100 that weighing explains; common practice, no source. */
const SLACK_PCT = 2;

/** What is wrong or doubtful about a pipette analysis. */
export function checkPipette(
  record: PipetteRecord,
  rows: readonly PipetteAnalysisRow[],
): Finding[] {
  const { file, samples } = record;
  const place = (row: number) => ({ file, row, column: "solids" as const });
  return [
    ...pretreatmentFindings(record),
    ...samples.flatMap(({ row, temperatureC }) => temperatureFindings(file, row, temperatureC)),
    ...rows.flatMap(({ row, finerOfDispersedPct }) =>
      percentFindings(place(row), finerOfDispersedPct, {
        slackPct: SLACK_PCT,
        below: say`The sample holds less than its share of the dispersant.`,
        wayOut: say`Check the dry mass, the two volumes and the mass of dispersant.`,
      }),
    ),
    ...rows.slice(1).flatMap((row, index): Finding[] => {
      const before = rows[index];
      // A later sample at a lower depth may be of coarser grains.
      if (row.sizeMm > before.sizeMm) return [];
      return riseFindings(place(row.row), row.finerOfDispersedPct, before.finerOfDispersedPct, {
        before: "sample",
        wayOut: say`Check both weighings, times and depths.`,
      });
    }),
  ];
}
