import type { Finding } from "../lab/finding.js";
import type { PipetteRecord } from "../lab/pipetteRecord.js";
import { formatFixed } from "../quantities/formatNumber.js";
import type { PipetteAnalysisRow } from "./pipetteAnalysis.js";
import { waterProperties } from "./waterProperties.js";

/** Percentage points outside 0 to 100 that weighing explains; common practice, no source. */
const SLACK_PCT = 2;

/** What is wrong or doubtful about a pipette analysis. */
export function checkPipette(
  { file, samples }: PipetteRecord,
  rows: readonly PipetteAnalysisRow[],
): Finding[] {
  const outside = samples.filter(({ temperatureC }) => !waterProperties(temperatureC));
  return [
    ...outside.map(
      ({ row, temperatureC }): Finding => ({
        severity: "error",
        code: "temperature-outside-table",
        file,
        row,
        column: "temperature",
        value: `${formatFixed(temperatureC, 1)} °C`,
        message: "The viscosity of water is not tabulated at this temperature.",
        expected: "10 to 30 °C",
        wayOut: "Check the reading and its unit; repeat the test within that range.",
      }),
    ),
    ...rows.flatMap(({ row, finerOfDispersedPct: pct }): Finding[] => {
      const beyond = Math.max(pct - 100, -pct);
      if (beyond <= 1e-9) return [];
      return [
        {
          severity: beyond > SLACK_PCT ? "error" : "warning",
          code: pct > 100 ? "finer-over-100" : "finer-below-0",
          file,
          row,
          column: "solids",
          value: `${formatFixed(pct, 1)} %`,
          message:
            pct > 100
              ? "More is in suspension than was put in."
              : "The sample holds less than its share of the dispersant.",
          expected: `0 to 100 % of the dispersed mass (within ${SLACK_PCT} it is taken as the limit)`,
          wayOut: "Check the dry mass, the two volumes and the mass of dispersant.",
        },
      ];
    }),
    ...rows.slice(1).flatMap((row, index): Finding[] => {
      const finer = rows[index];
      const rise = row.finerOfDispersedPct - finer.finerOfDispersedPct;
      // A later sample at a lower depth may be of coarser grains.
      if (!(rise > 1e-9) || row.sizeMm > finer.sizeMm) return [];
      return [
        {
          severity: "warning",
          code: "finer-rises",
          file,
          row: row.row,
          column: "solids",
          value: `${formatFixed(row.finerOfDispersedPct, 1)} %`,
          message: `The percentage in suspension rises by ${formatFixed(rise, 1)} points since the sample before, which settling cannot do.`,
          expected: "percentages that fall or stay with time",
          wayOut: "Check both weighings, times and depths.",
        },
      ];
    }),
  ];
}
