import { levenbergMarquardt, type NonlinearFit } from "../../numerics/levenbergMarquardt.js";
import type { GradingModel } from "./gradingModel.js";

/** A grading model that can be fitted to one row of passings after another, always at the same sizes. */
export interface SizesFit {
  /**
   * Least squares from a start; `parameters` of what it returns are steps.
   *
   * @param start values in the order of the model's parameters; brought within their bounds.
   * @param tolerance default 1e-10.
   */
  solve(passingPct: ArrayLike<number>, start: readonly number[], tolerance?: number): NonlinearFit;
  /** Σ ((model − passing) / s)² at given values. */
  misfit(passingPct: ArrayLike<number>, values: readonly number[]): number;
  /** Parameters from the solver's steps: sizes are stepped by their logarithm. */
  toValues(steps: readonly number[]): number[];
}

/** Tolerance of a fit that nobody reads digits of: a band, or which of several starts is best. */
export const ROUGH = 1e-6;

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
  const misses = (passingPct: ArrayLike<number>, values: readonly number[]) =>
    sizesMm.map((sizeMm, i) => (model.evaluate(sizeMm, values) - passingPct[i]) * weight[i]);
  return {
    toValues,
    misfit: (passingPct, values) =>
      misses(passingPct, values).reduce((sum, miss) => sum + miss * miss, 0),
    solve: (passingPct, start, tolerance) =>
      levenbergMarquardt({
        start: toSteps(start).map((step, j) => Math.min(upper[j], Math.max(lower[j], step))),
        lower,
        upper,
        tolerance,
        residuals: (steps) => misses(passingPct, toValues(steps)),
        jacobian: (steps) => {
          const values = toValues(steps);
          return sizesMm.map((sizeMm, i) =>
            model
              .slopes(sizeMm, values)
              // Along the logarithm of a size the slope is the size times that along the size.
              .map((slope, j) => slope * weight[i] * (logarithmic[j] ? values[j] : 1)),
          );
        },
      }),
  };
}
