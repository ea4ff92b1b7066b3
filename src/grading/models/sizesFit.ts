import { GaussNewtonStep } from "../../numerics/gaussNewtonStep.js";
import {
  levenbergMarquardt,
  type NonlinearFit,
  type NonlinearProblem,
} from "../../numerics/levenbergMarquardt.js";
import type { GradingModel } from "./gradingModel.js";

/** A grading model that can be fitted to one row of passings after another, always at the same sizes. */
export interface SizesFit {
  /**
   * Least squares from a start; `parameters` of what it returns are steps.
   *
   * @param start values in the order of the model's parameters; brought within their bounds.
   * @param options of `levenbergMarquardt`; tolerance default 1e-10.
   */
  solve(
    passingPct: ArrayLike<number>,
    start: readonly number[],
    options?: Pick<NonlinearProblem, "tolerance" | "damping" | "polish">,
  ): NonlinearFit;
  /** Σ ((model − passing) / s)² at given values. */
  misfit(passingPct: ArrayLike<number>, values: readonly number[]): number;
  /** Parameters from the solver's steps: sizes are stepped by their logarithm. */
  toValues(steps: readonly number[]): number[];
}

/** A fit that nobody reads digits of: which of several starts is best. */
export const ROUGH = { tolerance: 1e-6 };
/** A fit of one of many resamples, which starts near its end and is one count in a band. */
export const RESAMPLE = { tolerance: 1e-3, damping: 1e-6, polish: false };

/**
 * Prepares fits of one model at fixed sizes.
 *
 * @param sdPct standard deviation of each passing; all alike where left out.
 */
export function sizesFit(
  model: GradingModel,
  sizesMm: readonly number[],
  sdPct?: readonly number[],
): SizesFit {
  const logarithmic = model.parameters.map(({ scale }) => scale === "logarithm");
  const toSteps = (values: readonly number[]) =>
    values.map((value, j) => (logarithmic[j] ? Math.log(value) : value));
  const toValues = (steps: readonly number[]) =>
    steps.map((step, j) => (logarithmic[j] ? Math.exp(step) : step));
  const lower = toSteps(model.parameters.map((parameter) => parameter.lower));
  const upper = toSteps(model.parameters.map((parameter) => parameter.upper));
  const weight = sizesMm.map((_, i) => 1 / (sdPct?.[i] ?? 1));
  const count = sizesMm.length;
  const missAt = (passingPct: ArrayLike<number>, values: readonly number[], i: number) =>
    (model.evaluate(sizesMm[i], values) - passingPct[i]) * weight[i];
  const misses = (passingPct: ArrayLike<number>, values: readonly number[]) => {
    const found = new Array<number>(count);
    for (let i = 0; i < count; i++) found[i] = missAt(passingPct, values, i);
    return found;
  };
  const memory = new GaussNewtonStep(sizesMm.length, model.parameters.length);
  return {
    toValues,
    misfit(passingPct, values) {
      let sum = 0;
      for (let i = 0; i < count; i++) {
        const miss = missAt(passingPct, values, i);
        sum += miss * miss;
      }
      return sum;
    },
    solve: (passingPct, start, options) =>
      levenbergMarquardt({
        ...options,
        memory,
        start: toSteps(start).map((step, j) => Math.min(upper[j], Math.max(lower[j], step))),
        lower,
        upper,
        residuals: (steps) => misses(passingPct, toValues(steps)),
        jacobian: (steps, into) => {
          const values = toValues(steps);
          for (let i = 0; i < count; i++) {
            const slopes = model.slopes(sizesMm[i], values);
            for (let j = 0; j < slopes.length; j++) {
              // Along the logarithm of a size the slope is the size times that along the size.
              const along = logarithmic[j] ? values[j] : 1;
              into[j * count + i] = slopes[j] * weight[i] * along;
            }
          }
        },
      }),
  };
}
