import type { CurveReading, GradingCurve } from "../grading/curve.js";
import type { BoundarySystem } from "../grading/fractions.js";
import {
  type QuantityInterval,
  quantityIntervals,
  readingSpread,
} from "../grading/uncertainty/intervals.js";
import {
  DEFAULT_READING_ERRORS,
  type ReadingErrors,
} from "../grading/uncertainty/readingErrors.js";
import { checkNotNegative } from "../quantities/checkNumber.js";
import { type ClassSystem, classifyCurve } from "./classification/classifyCurve.js";
import type { CurveLimits } from "./classification/sizeClass.js";
import { drawLimits, type LimitErrors, limitErrors } from "./consistency/drawnLimits.js";
import type { ConsistencyResult } from "./consistency/limits.js";

const SYSTEMS: readonly ClassSystem[] = ["uscs", "aashto", "usda", "iso14688", "bs5930"];

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
 * Reads everything off the curves of one run of the reading-error model: spread, intervals and classes.
 *
 * @param curve the measured one, whose sizes get a spread.
 * @param curves of `resampleReadings`.
 * @param limits of the same soil; their intervals give their errors.
 * @param drawn what the curves were drawn with: the seed, which also draws the limits, and the errors.
 * @returns plain data, the same for the same seed.
 * @throws RangeError for fewer than 2 curves.
 *
 * @example
 * const sieve = { file: "s.csv", dryMassG: 1000, splits: [], panG: 200, rows: [[20, 0], [4.75, 200], [2, 200], [0.075, 400]].map(([sizeMm, retainedG], index) => ({ sizeMm, retainedG, label: String(sizeMm), row: index + 4 })) };
 * const curves = resampleReadings({ sieve }, { seed: 1, resamples: 50 });
 * const found = curveUncertainty({ points: analyseSieve(sieve).points }, curves, undefined, { seed: 1 });
 * found.quantities.map(({ quantity }) => quantity) // => ["d30", "d50", "d60", "d85", "d90", "gravelPct"]
 * found.classes[2].likelihoods // => [{ label: "not classified", share: 1 }]
 */
export function curveUncertainty(
  curve: GradingCurve,
  curves: readonly GradingCurve[],
  limits: ConsistencyResult | undefined,
  drawn: {
    readonly seed: number;
    readonly errors?: Partial<ReadingErrors>;
    /** Of the fractions; default those of ISO 14688-1. */
    readonly boundaries?: BoundarySystem;
    /** Of the D-sizes; default `log-size`. */
    readonly reading?: CurveReading;
  },
): CurveUncertainty {
  const sizes = curve.points.map(({ sizeMm }) => sizeMm);
  const spread = readingSpread(curves, sizes);
  const doubtful = {
    liquidLimitPct: limits?.liquidLimitPct,
    plasticityIndexPct: limits?.plasticityIndexPct,
    nonPlastic: limits?.nonPlastic,
    ...(limits ? limitErrors(limits) : {}),
  };
  return {
    errors: { ...DEFAULT_READING_ERRORS, ...drawn.errors },
    seed: drawn.seed,
    resamples: curves.length,
    spread: sizes.map((sizeMm, index) => ({ sizeMm, sdPct: spread[index] })),
    quantities: quantityIntervals(curves, { system: drawn.boundaries, reading: drawn.reading }),
    classes: SYSTEMS.map((system) => ({
      system,
      likelihoods: classLikelihoods(curves, system, doubtful, drawn.seed),
    })),
  };
}

export interface ClassLikelihood {
  /** Class, or `not classified`. */
  readonly label: string;
  /** Share of the resampled soils that fall there, 0 to 1. */
  readonly share: number;
}

/** Consistency with its standard errors. */
export interface DoubtfulLimits extends CurveLimits, Partial<LimitErrors> {}

/**
 * How likely each class of a soil is, given how its curve and limits could have come out.
 *
 * Each of the resampled curves (from `resampleReadings`) is classified, with limits drawn from normal
 * errors about the measured ones. The shares hold the doubt that went in: stated reading errors, not
 * how well the sample stands for the heap.
 *
 * @param seed of the drawn limits; default 1.
 * @returns most likely first; shares add up to 1.
 * @throws RangeError without curves or for a negative error.
 *
 * @example
 * const curve = (fines) => ({ points: [{ sizeMm: 0.075, passingPct: fines, origin: "sieve" }, { sizeMm: 4.75, passingPct: 90, origin: "sieve" }, { sizeMm: 75, passingPct: 100, origin: "sieve" }] });
 * const limits = { liquidLimitPct: 30, plasticityIndexPct: 15 };
 * classLikelihoods([48, 49, 49, 51].map(curve), "uscs", limits) // => [{ label: "SC", share: 0.75 }, { label: "CL", share: 0.25 }]
 */
export function classLikelihoods(
  curves: readonly GradingCurve[],
  system: ClassSystem,
  limits: DoubtfulLimits = {},
  seed = 1,
): ClassLikelihood[] {
  if (curves.length === 0) throw new RangeError("invalid `curves`: 0; expected at least 1");
  const { liquidLimitErrorPct = 0, plasticityIndexErrorPct = 0, ...measured } = limits;
  const errors = { liquidLimitErrorPct, plasticityIndexErrorPct };
  for (const [name, value] of Object.entries(errors)) checkNotNegative(name, value);
  const drawn = drawLimits(measured, errors, curves.length, seed);
  const counts = new Map<string, number>();
  for (const [index, curve] of curves.entries()) {
    const { label = "not classified" } = classifyCurve(curve, system, drawn[index]);
    counts.set(label, (counts.get(label) ?? 0) + 1);
  }
  return [...counts]
    .map(([label, count]) => ({ label, share: count / curves.length }))
    .sort((x, y) => y.share - x.share || (x.label < y.label ? -1 : 1));
}
