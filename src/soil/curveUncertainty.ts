import type { GradingCurve } from "../grading/gradingCurve.js";
import { type QuantityInterval, quantityIntervals } from "../grading/quantityIntervals.js";
import { DEFAULT_READING_ERRORS, type ReadingErrors } from "../grading/readingErrors.js";
import { readingSpread } from "../grading/readingSpread.js";
import {
  type ReadingResampleOptions,
  type ReadingSheets,
  resampleReadings,
} from "../grading/resampleReadings.js";
import type { ClassSystem } from "./classifyCurve.js";
import { type ClassLikelihood, classLikelihoods } from "./classLikelihoods.js";
import type { ConsistencyResult } from "./consistencyResult.js";

const SYSTEMS: readonly ClassSystem[] = ["uscs", "aashto", "usda", "iso14688", "bs5930"];

/** Half of a 95 % interval in standard errors of a normal distribution. */
const HALF_95 = 1.96;

/** What stated reading errors do to a curve and all that is read off it. */
export interface CurveUncertainty {
  readonly errors: ReadingErrors;
  readonly seed: number;
  readonly resamples: number;
  /** Standard deviation of the passing at each size of the curve: the weights of a fit. */
  readonly spread: readonly { readonly sizeMm: number; readonly sdPct: number }[];
  /** 95 % intervals of D-sizes, Cu, Cc and fractions. */
  readonly quantities: readonly QuantityInterval[];
  /** How likely each class of each system is. */
  readonly classes: readonly {
    readonly system: ClassSystem;
    readonly likelihoods: readonly ClassLikelihood[];
  }[];
}

/**
 * Runs the reading-error model once and reads everything off it: spread, intervals and classes.
 *
 * @param curve the measured one, whose sizes get a spread.
 * @param limits of the same soil; their intervals give their errors.
 * @returns plain data, the same for the same seed.
 * @throws RangeError as `resampleReadings` does.
 *
 * @example
 * const sieve = { file: "s.csv", dryMassG: 1000, splits: [], panG: 200, rows: [[20, 0], [4.75, 200], [2, 200], [0.075, 400]].map(([sizeMm, retainedG], index) => ({ sizeMm, retainedG, label: String(sizeMm), row: index + 4 })) };
 * const found = curveUncertainty({ points: analyseSieve(sieve).points }, { sieve }, undefined, { seed: 1, resamples: 50 });
 * found.quantities.map(({ quantity }) => quantity) // => ["d30", "d50", "d60", "d85", "d90", "gravelPct"]
 * found.classes[2].likelihoods // => [{ label: "not classified", share: 1 }]
 */
export function curveUncertainty(
  curve: GradingCurve,
  sheets: ReadingSheets,
  limits: ConsistencyResult | undefined,
  options: ReadingResampleOptions,
): CurveUncertainty {
  const curves = resampleReadings(sheets, options);
  const sizes = curve.points.map(({ sizeMm }) => sizeMm);
  const spread = readingSpread(curves, sizes);
  const error = (interval: readonly [number, number] | undefined) =>
    interval ? (interval[1] - interval[0]) / 2 / HALF_95 : 0;
  const doubtful = {
    liquidLimitPct: limits?.liquidLimitPct,
    plasticityIndexPct: limits?.plasticityIndexPct,
    nonPlastic: limits?.nonPlastic,
    liquidLimitErrorPct: error(limits?.liquidLimitInterval95),
    plasticityIndexErrorPct: error(limits?.plasticityIndexInterval95),
  };
  return {
    errors: { ...DEFAULT_READING_ERRORS, ...options.errors },
    seed: options.seed,
    resamples: curves.length,
    spread: sizes.map((sizeMm, index) => ({ sizeMm, sdPct: spread[index] })),
    quantities: quantityIntervals(curves),
    classes: SYSTEMS.map((system) => ({
      system,
      likelihoods: classLikelihoods(curves, system, doubtful, options.seed),
    })),
  };
}
