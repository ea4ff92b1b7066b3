import { createRandom } from "../../numerics/random.js";
import { type GradingCurve, passingAtSize } from "../curve.js";
import type { GradingFit } from "../models/fit.js";
import { GRADING_MODELS } from "../models/gradingModels.js";
import { quickFit } from "../models/quickFit.js";
import { quantile } from "./intervals.js";

export interface ResampleOptions {
  readonly sizesMm: readonly number[];
  /** Whole number; the same seed gives the same band. */
  readonly seed: number;
  /** Default 200. */
  readonly resamples?: number;
  /** Share of the resampled curves within the band at each size, default 0.95. */
  readonly coverage?: number;
  /** Default `residual`; see `resampleFits`. */
  readonly method?: ResampleMethod;
  /** For `readings`. */
  readonly curves?: readonly GradingCurve[];
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
 * By residuals or parametric it holds the scatter about this model for true and independent; by
 * readings it holds the stated reading errors alone. A wrong model is in none of them.
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
  if (!(coverage > 0 && coverage < 1)) {
    throw new RangeError(`invalid \`coverage\`: ${coverage}; expected between 0 and 1`);
  }
  const model = GRADING_MODELS[fit.model];
  const start = fit.parameters.map(({ value }) => value);
  const { values } = resampleFits(fit, options);
  return sizesMm.map((sizeMm) => {
    const sorted = values.map((each) => model.evaluate(sizeMm, each)).sort((a, b) => a - b);
    return {
      sizeMm,
      fittedPct: model.evaluate(sizeMm, start),
      lowPct: quantile(sorted, (1 - coverage) / 2),
      highPct: quantile(sorted, (1 + coverage) / 2),
    };
  });
}

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
