import { createRandom } from "../numerics/random.js";
import { fitPoints } from "./fitPoints.js";
import type { GradingFit } from "./gradingFit.js";
import { GRADING_MODELS } from "./models/gradingModels.js";

export interface ResampleOptions {
  readonly sizesMm: readonly number[];
  /** Whole number; the same seed gives the same band. */
  readonly seed: number;
  /** Default 200. */
  readonly resamples?: number;
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
 * A band about a fitted grading curve by resampling its residuals: residuals, widened by
 * √(n / degrees of freedom), are dealt anew to the fitted points, the model is fitted again from the
 * fit's own values, and at each size the middle of the curves so found is the band.
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
  { sizesMm, seed, resamples = 200, coverage = 0.95 }: ResampleOptions,
): GradingBandPoint[] {
  if (!(coverage > 0 && coverage < 1)) {
    throw new RangeError(`invalid \`coverage\`: ${coverage}; expected between 0 and 1`);
  }
  if (!(Number.isInteger(resamples) && resamples >= 2)) {
    throw new RangeError(`invalid \`resamples\`: ${resamples}; expected a whole number from 2`);
  }
  if (fit.degreesOfFreedom < 1) {
    throw new RangeError("invalid `fit`: 0 degrees of freedom; expected at least 1");
  }
  const model = GRADING_MODELS[fit.model];
  const random = createRandom(seed);
  const widen = Math.sqrt(fit.points / fit.degreesOfFreedom);
  const residuals = fit.fitted.map(({ measuredPct, fittedPct }) => measuredPct - fittedPct);
  const start = fit.parameters.map(({ value }) => value);
  const curves = Array.from({ length: resamples }, () => {
    const points = fit.fitted.map(({ sizeMm, fittedPct }) => ({
      sizeMm,
      passingPct: fittedPct + widen * residuals[random.integer(residuals.length)],
    }));
    const { values } = fitPoints(model, points, [start]);
    return sizesMm.map((sizeMm) => model.evaluate(sizeMm, values));
  });
  return sizesMm.map((sizeMm, index) => {
    const sorted = curves.map((curve) => curve[index]).sort((a, b) => a - b);
    return {
      sizeMm,
      fittedPct: model.evaluate(sizeMm, start),
      lowPct: quantile(sorted, (1 - coverage) / 2),
      highPct: quantile(sorted, (1 + coverage) / 2),
    };
  });
}

function quantile(sorted: readonly number[], part: number): number {
  const place = part * (sorted.length - 1);
  const below = Math.floor(place);
  const above = Math.min(below + 1, sorted.length - 1);
  return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
}
