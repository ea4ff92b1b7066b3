import type { CompactionRecord } from "../lab/compactionRecord.js";
import { checkCompaction } from "./checkCompaction.js";
import type {
  CompactionAnalysis,
  CompactionAnalysisPoint,
  DensityAtWater,
} from "./compactionAnalysis.js";
import { compactionPeaks } from "./compactionPeaks.js";
import { zeroAirVoidsDensity } from "./zeroAirVoidsDensity.js";

/** Points of a drawn curve. */
const STEPS = 40;

/**
 * Works out a compaction test: dry densities, optimum water content, maximum dry density, and the line
 * without air.
 *
 * Formula: dry density = moist mass / volume / (1 + w / 100); air voids A = 100 (1 − ρd (1 / ρs + w / (100 ρw))).
 * Top: see {@link CompactionAnalysis.peak} for the method used; the others stand in `alternatives`,
 * because the method moves the optimum by up to about 1 % of its value on published data.
 *
 * @throws RangeError where there is no point, or a mass, volume or density is not positive.
 *
 * @example
 * const points = [[6.5, 1872], [8.7, 1966], [10.6, 2043], [12.2, 2068], [14.4, 1996]].map(([waterContentPct, moistMassG], index) => ({ waterContentPct, moistMassG, row: index + 5 }));
 * const { peak, points: dry } = analyseCompaction({ file: "c.csv", mouldVolumeCm3: 1000, points });
 * dry[2].dryDensityKgM3 // => 1847.2
 * peak.method // => "quadratic"
 */
export function analyseCompaction(
  record: CompactionRecord,
  options: {
    readonly particleDensityKgM3?: number;
    /** Leaves points denser than without any air out of the fit; default false: they are told either way. */
    readonly rejectAboveZeroAir?: boolean;
  } = {},
): CompactionAnalysis {
  const { particleDensityKgM3, rejectAboveZeroAir = false } = options;
  if (!(record.mouldVolumeCm3 > 0)) {
    throw new RangeError(`invalid \`mouldVolumeCm3\`: ${record.mouldVolumeCm3}; expected above 0`);
  }
  if (record.points.length === 0) {
    throw new RangeError("invalid `points`: []; expected at least one");
  }
  const points = record.points
    .map(({ row, waterContentPct, moistMassG }, index): CompactionAnalysisPoint => {
      if (!(waterContentPct >= 0 && moistMassG > 0)) {
        throw new RangeError(
          `invalid \`points[${index}]\`: ${waterContentPct} %, ${moistMassG} g; expected water 0 or more and mass above 0`,
        );
      }
      const bulkDensityKgM3 = (1000 * moistMassG) / record.mouldVolumeCm3;
      const dryDensityKgM3 = bulkDensityKgM3 / (1 + waterContentPct / 100);
      const airVoidsPct =
        particleDensityKgM3 === undefined
          ? undefined
          : 100 * (1 - dryDensityKgM3 / zeroAirVoidsDensity(waterContentPct, particleDensityKgM3));
      const beyond = rejectAboveZeroAir && airVoidsPct !== undefined && airVoidsPct < 0;
      return {
        row,
        waterContentPct,
        bulkDensityKgM3,
        dryDensityKgM3,
        ...(airVoidsPct === undefined ? {} : { airVoidsPct }),
        ...(beyond ? { rejected: true as const } : {}),
      };
    })
    .sort((a, b) => a.waterContentPct - b.waterContentPct);
  const [chosen, ...others] = compactionPeaks(points.filter(({ rejected }) => !rejected));
  const grid = waterSteps(points);
  const highest = points.reduce((best, point) =>
    point.dryDensityKgM3 > best.dryDensityKgM3 ? point : best,
  );
  const analysis: Omit<CompactionAnalysis, "findings"> = {
    points,
    ...(chosen ? { peak: chosen.peak } : {}),
    alternatives: others.map(({ peak }) => peak),
    highestPoint: {
      waterContentPct: highest.waterContentPct,
      dryDensityKgM3: highest.dryDensityKgM3,
    },
    curve: chosen ? along(grid, chosen.at) : [],
    zeroAirVoids:
      particleDensityKgM3 === undefined
        ? []
        : along(grid, (water) => zeroAirVoidsDensity(water, particleDensityKgM3)),
  };
  return { ...analysis, findings: checkCompaction(record, analysis, particleDensityKgM3) };
}

function waterSteps(points: readonly CompactionAnalysisPoint[]): number[] {
  const low = points[0].waterContentPct;
  const high = points[points.length - 1].waterContentPct;
  return Array.from({ length: STEPS + 1 }, (_, step) => low + ((high - low) * step) / STEPS);
}

function along(grid: readonly number[], at: (water: number) => number): DensityAtWater[] {
  return grid.map((waterContentPct) => ({ waterContentPct, dryDensityKgM3: at(waterContentPct) }));
}
