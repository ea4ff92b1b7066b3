import { GaussNewtonStep } from "../../numerics/gaussNewtonStep.js";
import {
  levenbergMarquardt,
  type NonlinearFit,
  type NonlinearProblem,
  nonlinearMinimum,
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
    options?: Pick<NonlinearProblem, "tolerance">,
  ): NonlinearFit;
  /** The same for one of many resamples, which starts near its end and is one count in a band: steps, no report. */
  solveAgain(
    passingPct: ArrayLike<number>,
    start: readonly number[],
  ): ReturnType<typeof nonlinearMinimum>;
  /** Σ ((model − passing) / s)² at given values. */
  misfit(passingPct: ArrayLike<number>, values: readonly number[]): number;
  /** Parameters from the solver's steps: sizes are stepped by their logarithm. */
  toValues(steps: readonly number[]): number[];
}

/** A fit that nobody reads digits of: which of several starts is best. */
export const ROUGH = { tolerance: 1e-6 };
const RESAMPLE = { tolerance: 1e-3, damping: 1e-6 };

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
  const slopes = new Float64Array(model.parameters.length);
  /** Derivatives along the steps at `place`, those along the first step first. */
  const jacobian = new Float64Array(model.parameters.length * count);
  let place: readonly number[] | undefined;
  const misses = (passingPct: ArrayLike<number>, steps: readonly number[]) => {
    const values = toValues(steps);
    const found = new Array<number>(count);
    for (let i = 0; i < count; i++) {
      found[i] = (model.evaluate(sizesMm[i], values, slopes) - passingPct[i]) * weight[i];
      for (let j = 0; j < slopes.length; j++) {
        // Along the logarithm of a size the slope is the size times that along the size.
        const along = logarithmic[j] ? values[j] : 1;
        jacobian[j * count + i] = slopes[j] * weight[i] * along;
      }
    }
    place = steps;
    return found;
  };
  const memory = new GaussNewtonStep(sizesMm.length, model.parameters.length);
  const problem = (passingPct: ArrayLike<number>, start: readonly number[]): NonlinearProblem => ({
    memory,
    start: toSteps(start).map((step, j) => Math.min(upper[j], Math.max(lower[j], step))),
    lower,
    upper,
    residuals: (steps) => misses(passingPct, steps),
    // Nearly always asked for where the residuals were just asked for.
    jacobian(steps, into) {
      if (steps !== place) misses(passingPct, steps);
      into.set(jacobian);
    },
  });
  return {
    toValues,
    misfit(passingPct, values) {
      let sum = 0;
      for (let i = 0; i < count; i++) {
        const miss = (model.evaluate(sizesMm[i], values) - passingPct[i]) * weight[i];
        sum += miss * miss;
      }
      return sum;
    },
    solve: (passingPct, start, options) =>
      levenbergMarquardt({ ...problem(passingPct, start), ...options }),
    solveAgain: (passingPct, start) =>
      nonlinearMinimum({ ...problem(passingPct, start), ...RESAMPLE }),
  };
}
