import { createRandom } from "../numerics/random.js";
import type { GradingCurve } from "./gradingCurve.js";
import type { GradingFit } from "./gradingFit.js";
import { GRADING_MODELS } from "./models/gradingModels.js";
import { passingAtSize } from "./passingAtSize.js";
import { quickFit } from "./quickFit.js";

export type ResampleMethod = "residual" | "parametric" | "readings";

export interface ResampleFitsOptions {
  /** Whole number; the same seed gives the same fits. */
  readonly seed: number;
  /** Default 200; with `readings` as many as there are curves. */
  readonly resamples?: number;
  /**
   * `residual` (default): residuals dealt anew. `parametric`: normal errors of the fit's own residual
   * error. `readings`: the curves given are fitted as they are.
   */
  readonly method?: ResampleMethod;
  /** For `readings`: curves as the sample could have been read, from `resampleReadings`. */
  readonly curves?: readonly GradingCurve[];
}

export interface ResampledFits {
  /** One set of values a resample, in the order of the model's parameters. */
  readonly values: readonly (readonly number[])[];
  /** Resamples that did not come to rest; their last values are kept. */
  readonly notConverged: number;
}

/**
 * Fits a model again and again to points as they could have come out, each time from the fit's own
 * values.
 *
 * Residuals are widened by √(n / degrees of freedom), as those of a fit are smaller than the errors.
 * With weights they are scaled by each point's stated error before they are dealt and after.
 * Source: residual and parametric bootstrap, Efron and Tibshirani 1993, from memory.
 *
 * @throws RangeError for a fit without degrees of freedom, fewer than 2 resamples, a bad seed, or
 * `readings` without curves.
 *
 * @example
 * const curve = { points: [0.063, 0.25, 1, 4, 16].map((sizeMm) => ({ sizeMm, passingPct: 100 * (sizeMm / 16) ** 0.3, origin: "sieve" })) };
 * resampleFits(fitGrading(curve, "power"), { seed: 7, resamples: 20 }).values[3] // => [16.000, 0.300]
 */
export function resampleFits(
  fit: GradingFit,
  { seed, resamples = 200, method = "residual", curves }: ResampleFitsOptions,
): ResampledFits {
  if (!(Number.isInteger(resamples) && resamples >= 2)) {
    throw new RangeError(`invalid \`resamples\`: ${resamples}; expected a whole number from 2`);
  }
  if (method !== "readings" && fit.degreesOfFreedom < 1) {
    throw new RangeError("invalid `fit`: 0 degrees of freedom; expected at least 1");
  }
  if (method === "readings" && !(curves && curves.length > 1)) {
    throw new RangeError("invalid `curves`: fewer than 2; expected those of `resampleReadings`");
  }
  const sizes = fit.fitted.map(({ sizeMm }) => sizeMm);
  const sd = fit.fitted.map(({ sdPct = 1 }) => sdPct);
  const weighted = fit.fitted.some(({ sdPct }) => sdPct !== undefined);
  const start = fit.parameters.map(({ value }) => value);
  const refit = quickFit(GRADING_MODELS[fit.model], sizes, weighted ? sd : undefined);
  const random = createRandom(seed);
  const n = sizes.length;
  const drawn = new Float64Array(n);
  const widen = Math.sqrt(n / Math.max(1, fit.degreesOfFreedom));
  const scaled = fit.fitted.map((at, i) => (at.measuredPct - at.fittedPct) / sd[i]);
  const error = Math.sqrt(scaled.reduce((sum, r) => sum + r * r, 0) / n) * widen;
  const values: number[][] = [];
  let notConverged = 0;
  const count = method === "readings" ? (curves?.length ?? 0) : resamples;
  for (let index = 0; index < count; index++) {
    for (let i = 0; i < n; i++) {
      const { fittedPct, measuredPct } = fit.fitted[i];
      drawn[i] =
        method === "readings"
          ? // A moved reading may leave the end of the curve open: there the measured value stays.
            (passingAtSize(curves?.[index] ?? { points: [] }, sizes[i]) ?? measuredPct)
          : fittedPct +
            sd[i] *
              (method === "residual" ? widen * scaled[random.integer(n)] : error * random.normal());
    }
    const found = refit(drawn, start);
    values.push(found.values);
    if (!found.converged) notConverged++;
  }
  return { values, notConverged };
}
