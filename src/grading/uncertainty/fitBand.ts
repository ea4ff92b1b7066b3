import { quantileSorted } from "simple-statistics";
import { createRandom } from "../../numerics/random.js";
import { checkThat } from "../../quantities/checkNumber.js";
import type { GradingFit } from "../models/fit.js";
import { GRADING_MODELS } from "../models/gradingModels.js";
import { sizesFit } from "../models/sizesFit.js";

export interface ResampleFitsOptions {
  /** Whole number; the same seed gives the same fits. */
  readonly seed: number;
  /** Default 200. */
  readonly resamples?: number;
}

export interface ResampleOptions extends ResampleFitsOptions {
  readonly sizesMm: readonly number[];
  /** Share of the resampled curves within the band at each size, default 0.95. */
  readonly coverage?: number;
}

export interface GradingBandPoint {
  readonly sizeMm: number;
  readonly fittedPct: number;
  readonly lowPct: number;
  readonly highPct: number;
}

/**
 * A band about a fitted grading curve by resampling: the model is fitted again to points as they could
 * have come out (see `resampleFits`), and at each size the middle of the curves so found is the band.
 *
 * It holds the scatter about this model for true and independent; a wrong model is not in it.
 * Source: residual bootstrap, Efron and Tibshirani 1993, from memory.
 *
 * @throws RangeError for a fit without degrees of freedom, a coverage not between 0 and 1, fewer than
 * 2 resamples, or a bad seed.
 *
 * @example
 * const curve = { points: [0.063, 0.25, 1, 4, 16].map((sizeMm) => ({ sizeMm, passingPct: 100 * (sizeMm / 16) ** 0.3, origin: "sieve" })) };
 * const [at] = resampleGrading(fitGrading(curve, "power"), { sizesMm: [1], seed: 7, resamples: 20 });
 * at.highPct - at.lowPct // => 0.00
 */
export function resampleGrading(
  fit: GradingFit,
  { sizesMm, coverage = 0.95, ...options }: ResampleOptions,
): GradingBandPoint[] {
  checkThat(coverage > 0 && coverage < 1, { coverage }, "between 0 and 1");
  const model = GRADING_MODELS[fit.model];
  const start = fit.parameters.map(({ value }) => value);
  const { values } = resampleFits(fit, options);
  return sizesMm.map((sizeMm) => {
    const sorted = values.map((each) => model.evaluate(sizeMm, each)).sort((a, b) => a - b);
    return {
      sizeMm,
      fittedPct: model.evaluate(sizeMm, start),
      lowPct: quantileSorted(sorted, (1 - coverage) / 2),
      highPct: quantileSorted(sorted, (1 + coverage) / 2),
    };
  });
}

export interface ResampledFits {
  /** One set of values a resample, in the order of the model's parameters. */
  readonly values: readonly (readonly number[])[];
  /** Resamples that did not come to rest; their last values are kept. */
  readonly notConverged: number;
}

/**
 * Fits a model again and again to points as they could have come out, each time from the fit's own
 * values: its residuals are dealt anew to its points.
 *
 * Residuals are widened by √(n / degrees of freedom), as those of a fit are smaller than the errors.
 * With weights they are scaled by each point's stated error before they are dealt and after.
 * Source: residual bootstrap, Efron and Tibshirani 1993, from memory.
 *
 * @throws RangeError for a fit without degrees of freedom, fewer than 2 resamples or a bad seed.
 *
 * @example
 * const curve = { points: [0.063, 0.25, 1, 4, 16].map((sizeMm) => ({ sizeMm, passingPct: 100 * (sizeMm / 16) ** 0.3, origin: "sieve" })) };
 * resampleFits(fitGrading(curve, "power"), { seed: 7, resamples: 20 }).values[3] // => [16.000, 0.300]
 */
export function resampleFits(
  { model, parameters, fitted, degreesOfFreedom }: GradingFit,
  { seed, resamples = 200 }: ResampleFitsOptions,
): ResampledFits {
  checkThat(Number.isInteger(resamples) && resamples >= 2, { resamples }, "a whole number from 2");
  checkThat(degreesOfFreedom >= 1, { fit: "0 degrees of freedom" }, "at least 1");
  const sizes = fitted.map(({ sizeMm }) => sizeMm);
  const sd = fitted.map(({ sdPct = 1 }) => sdPct);
  const { solveAgain, toValues } = sizesFit(GRADING_MODELS[model], sizes, sd);
  const start = parameters.map(({ value }) => value);
  const widen = Math.sqrt(sizes.length / degreesOfFreedom);
  const errors = fitted.map((at, i) => (widen * (at.measuredPct - at.fittedPct)) / sd[i]);
  const random = createRandom(seed);
  const values: number[][] = [];
  let notConverged = 0;
  for (let resample = 0; resample < resamples; resample++) {
    const drawn = fitted.map(
      ({ fittedPct }, i) => fittedPct + sd[i] * errors[random.integer(errors.length)],
    );
    const { status, parameters: steps } = solveAgain(drawn, start);
    values.push(toValues(steps));
    if (status !== "converged") notConverged++;
  }
  return { values, notConverged };
}
