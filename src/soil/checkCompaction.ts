import type { CompactionRecord } from "../lab/compactionRecord.js";
import type { Finding } from "../lab/finding.js";
import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import type { CompactionAnalysis } from "./compactionAnalysis.js";
import { zeroAirVoidsDensity } from "./zeroAirVoidsDensity.js";

type Analysis = Omit<CompactionAnalysis, "findings">;

/** Differences between the methods beyond which the report must speak of them; common practice, no source. */
const OPTIMUM_APART_PCT = 0.5;
const MAXIMUM_APART = 0.01;

/** What is wrong or doubtful about a compaction test. */
export function checkCompaction(
  { file }: CompactionRecord,
  analysis: Analysis,
  particleDensityKgM3: number | undefined,
): Finding[] {
  return [
    ...aboveZeroAir(file, analysis, particleDensityKgM3),
    ...shape(file, analysis),
    ...methodsApart(file, analysis),
  ];
}

function aboveZeroAir(
  file: string,
  { points, peak }: Analysis,
  particleDensity?: number,
): Finding[] {
  if (particleDensity === undefined) return [];
  const where = [
    ...points.map((point) => ({
      ...point,
      what: point.rejected ? say`This point was left out of the fit: it` : say`This point`,
    })),
    ...(peak
      ? [
          {
            row: undefined,
            waterContentPct: peak.optimumWaterPct,
            dryDensityKgM3: peak.maximumDryDensityKgM3,
            what: say`The fitted top (${peak.method})`,
          },
        ]
      : []),
  ];
  return where.flatMap(({ row, waterContentPct, dryDensityKgM3, what }): Finding[] => {
    const limit = zeroAirVoidsDensity(waterContentPct, particleDensity);
    if (dryDensityKgM3 <= limit) return [];
    return [
      {
        severity: "warning",
        code: "above-zero-air-voids",
        file,
        ...(row === undefined ? {} : { row }),
        value: say`${formatFixed(dryDensityKgM3, 0)} kg/m³ at ${formatFixed(waterContentPct, 1)} %`,
        message: say`${what} is denser than the soil can be without any air left in it.`,
        expected: say`at most ${formatFixed(limit, 0)} kg/m³ for particles of ${formatFixed(particleDensity, 0)} kg/m³`,
        wayOut: say`Check the water content, the mould volume and the particle density.`,
      },
    ];
  });
}

function shape(file: string, { points, peak }: Analysis): Finding[] {
  if (!peak) {
    return [
      {
        severity: "error",
        code: "no-compaction-peak",
        file,
        row: points[points.length - 1].row,
        value: say`${points.length} points`,
        message: say`The points show no highest dry density between the driest and the wettest.`,
        expected: say`at least three points that rise and then fall`,
        wayOut: say`Compact more points on the side where the density still rises.`,
      },
    ];
  }
  const drier = points.filter(({ waterContentPct }) => waterContentPct < peak.optimumWaterPct);
  const fewest = Math.min(drier.length, points.length - drier.length);
  if (fewest >= 2) return [];
  const dry = drier.length === fewest;
  return [
    {
      severity: "warning",
      code: "compaction-one-sided",
      file,
      row: points[dry ? 0 : points.length - 1].row,
      value: `${fewest} ${dry ? say`drier` : say`wetter`}`,
      message: say`Fewer than two points lie on the ${dry ? say`dry` : say`wet`} side of the optimum.`,
      expected: say`at least two points on either side (common practice, no source)`,
      wayOut: say`Compact another point that is ${dry ? say`drier` : say`wetter`}.`,
    },
  ];
}

function methodsApart(file: string, { peak, alternatives }: Analysis): Finding[] {
  if (!peak) return [];
  const apart = alternatives.filter(
    (other) =>
      Math.abs(other.optimumWaterPct - peak.optimumWaterPct) > OPTIMUM_APART_PCT ||
      Math.abs(other.maximumDryDensityKgM3 / peak.maximumDryDensityKgM3 - 1) > MAXIMUM_APART,
  );
  return apart.map((other) => ({
    severity: "warning",
    code: "compaction-methods-differ",
    file,
    value: `${formatFixed(other.optimumWaterPct, 1)} %, ${formatFixed(other.maximumDryDensityKgM3, 0)} kg/m³`,
    message: say`The ${other.method} gives another top than the ${peak.method} (${formatFixed(peak.optimumWaterPct, 1)} %, ${formatFixed(peak.maximumDryDensityKgM3, 0)} kg/m³).`,
    expected: say`tops within ${OPTIMUM_APART_PCT} points of water and ${100 * MAXIMUM_APART} % of density of each other`,
    wayOut: say`Compact another point near the optimum; take the optimum as a range until then.`,
  }));
}
