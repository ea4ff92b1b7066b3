import type { GradingCurve } from "./gradingCurve.js";
import type { GradingFit } from "./gradingFit.js";
import { GRADING_MODELS } from "./models/gradingModels.js";
import { quantile } from "./quantile.js";
import { type ResampleMethod, resampleFits } from "./resampleFits.js";

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
