import type { HydrometerRecord } from "../lab/hydrometerRecord.js";
import type { PipetteRecord } from "../lab/pipetteRecord.js";
import type { SieveRecord } from "../lab/sieveRecord.js";
import { createRandom } from "../numerics/random.js";
import { analyseHydrometer } from "./analyseHydrometer.js";
import { analysePipette } from "./analysePipette.js";
import { analyseSieve } from "./analyseSieve.js";
import { combineGrading } from "./combineGrading.js";
import type { GradingCurve, GradingPoint } from "./gradingCurve.js";
import { passingAtSize } from "./passingAtSize.js";
import { perturbHydrometer } from "./perturbHydrometer.js";
import { perturbPipette } from "./perturbPipette.js";
import { perturbSieve } from "./perturbSieve.js";
import { DEFAULT_READING_ERRORS, type ReadingErrors } from "./readingErrors.js";

export interface ReadingSheets {
  readonly sieve: SieveRecord;
  readonly hydrometer?: HydrometerRecord;
  /** In place of a hydrometer. */
  readonly pipette?: PipetteRecord;
  /** Needed with a hydrometer or a pipette. */
  readonly particleDensityKgM3?: number;
}

export interface ReadingResampleOptions {
  /** Whole number; the same seed gives the same curves. */
  readonly seed: number;
  /** Default 500. */
  readonly resamples?: number;
  /** Default `DEFAULT_READING_ERRORS`; what is left out is taken from there. */
  readonly errors?: Partial<ReadingErrors>;
}

/**
 * Curves as the same sample could have been measured: every reading is moved by its stated error and
 * the whole analysis is run again, sieve, hydrometer and joint.
 *
 * Hence errors of neighbouring points hang together as they do in the laboratory: a heavy sieve moves
 * all points below it. It holds reading and sieving errors alone: not how well the sample stands for
 * the heap, not a wrong method.
 *
 * @throws RangeError for a hydrometer without a particle density, fewer than 2 resamples, a negative
 * error, or sheets that cannot be analysed.
 *
 * @example
 * const sieve = { file: "s.csv", dryMassG: 1000, splits: [], panG: 100, rows: [{ sizeMm: 2, retainedG: 400, label: "2", row: 4 }, { sizeMm: 0.063, retainedG: 500, label: "0.063", row: 5 }] };
 * const exact = { balanceG: 0, sievingPct: 0 };
 * resampleReadings({ sieve }, { seed: 1, resamples: 2, errors: exact })[1].points.map(({ passingPct }) => passingPct) // => [10, 60]
 */
export function resampleReadings(
  { sieve, hydrometer, pipette, particleDensityKgM3 }: ReadingSheets,
  { seed, resamples = 500, errors: stated = {} }: ReadingResampleOptions,
): GradingCurve[] {
  const errors = { ...DEFAULT_READING_ERRORS, ...stated };
  for (const [name, value] of Object.entries(errors)) {
    if (!(value >= 0 && value < Infinity)) {
      throw new RangeError(`invalid \`errors.${name}\`: ${value}; expected 0 or more`);
    }
  }
  if (!(Number.isInteger(resamples) && resamples >= 2)) {
    throw new RangeError(`invalid \`resamples\`: ${resamples}; expected a whole number from 2`);
  }
  if (hydrometer && pipette) {
    throw new RangeError("invalid `pipette`: beside a hydrometer; expected one of the two");
  }
  const sediment = hydrometer ?? pipette;
  if (sediment && particleDensityKgM3 === undefined) {
    throw new RangeError("invalid `particleDensityKgM3`: undefined; expected above 1000");
  }
  const random = createRandom(seed);
  const { file } = sieve;
  const draw = (): GradingCurve => {
    const coarse = analyseSieve(perturbSieve(sieve, errors, random)).points;
    let fine: readonly GradingPoint[] | undefined;
    if (sediment && particleDensityKgM3 !== undefined) {
      const density = particleDensityKgM3 + errors.particleDensityKgM3 * random.normal();
      const passing = passingAtSize({ points: coarse }, sediment.separatingSizeMm);
      if (passing === undefined) {
        throw new RangeError(
          `invalid \`separatingSizeMm\`: ${sediment.separatingSizeMm}; expected within the sieves`,
        );
      }
      const input = {
        particleDensityKgM3: Math.max(1001, density),
        passingSeparatingPct: passing,
      };
      const { points } = hydrometer
        ? analyseHydrometer(perturbHydrometer(hydrometer, errors, random), input)
        : analysePipette(perturbPipette(sediment as PipetteRecord, errors, random), input);
      fine = distinct(points);
    }
    return combineGrading({ sieve: coarse, sedimentation: fine, file }).curve;
  };
  return Array.from({ length: resamples }, draw);
}

/** Moved times may meet: two readings at the same size are one point. */
function distinct(points: readonly GradingPoint[]): GradingPoint[] {
  return points.filter(({ sizeMm }, index) => sizeMm !== points[index + 1]?.sizeMm);
}
