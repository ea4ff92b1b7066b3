import { dampedGaussNewton } from "./dampedGaussNewton.js";
import { GaussNewtonStep } from "./gaussNewtonStep.js";
import type { NonlinearFit, NonlinearProblem } from "./nonlinearFit.js";
import { NonlinearModel } from "./nonlinearModel.js";
import { nonlinearReport } from "./nonlinearReport.js";
import { polishedMinimum } from "./polishedMinimum.js";

/**
 * Finds the parameters, within bounds, that make the sum of squared residuals least nearby.
 *
 * Levenberg–Marquardt: minimises `Σ rᵢ(p)²` by steps that solve `min ‖r + J s‖² + λ ‖D s‖²` by QR, with
 * `D` the longest column lengths of the Jacobian so far (so units do not matter), steps cut off at the
 * bounds, and parameters pushed against a bound held there. Ends with undamped steps on finer
 * differences, which fix the last digits. The minimum is a local one: try several starts.
 *
 * @param problem See `NonlinearProblem`. Residuals carry their weights, for example `(model - y) / sd`.
 *   Differences take steps of about 6e-6 of each parameter (7e-4 at the end) and stay inside the bounds.
 * @returns Never throws for not converging: see `status`, `unmoved`, `activeBounds`, `gradientNorm`.
 * @throws TypeError when lengths differ; RangeError for bounds that cross.
 *
 * Source: Moré, *The Levenberg–Marquardt algorithm: implementation and theory* (1978), from memory;
 * proved on the NIST Statistical Reference Datasets for nonlinear regression.
 *
 * @example
 * const days = [1, 3, 7, 14, 28];
 * const strengthMpa = [0.9, 1.9, 2.9, 3.5, 3.8];
 * const fit = levenbergMarquardt({
 *   residuals: ([end, rate]) => days.map((t, i) => end * (1 - Math.exp(-rate * t)) - strengthMpa[i]),
 *   start: [3, 0.1],
 * });
 * fit.status // => "converged"
 * fit.parameters // => [3.71237533, 0.23297835]
 */
export function levenbergMarquardt(problem: NonlinearProblem): NonlinearFit {
  const { start, lower, upper } = problem;
  checkBounds(start, lower, upper);
  const first = problem.residuals(start);
  const model = new NonlinearModel(problem, first.length);
  model.evaluations = 1;
  const solver = new GaussNewtonStep(first.length, start.length);
  const refusal = whyInvalid(model, start, first);
  if (refusal !== undefined) {
    return nonlinearReport(model, solver, start, {
      status: "invalid-start",
      message: refusal,
      parameters: [...start],
      residuals: first,
      iterations: 0,
    });
  }
  const found = dampedGaussNewton(model, solver, start, first, {
    maxIterations: problem.maxIterations ?? 200,
    tolerance: problem.tolerance ?? 1e-10,
  });
  const polished = polishedMinimum(model, solver, found);
  return nonlinearReport(model, solver, start, { ...found, ...polished });
}

function whyInvalid(
  model: NonlinearModel,
  start: readonly number[],
  residuals: readonly number[],
): string | undefined {
  if (residuals.length < start.length) {
    return `${residuals.length} residuals cannot settle ${start.length} parameters`;
  }
  const outside = start.findIndex(
    (value, j) => !(value >= model.lower[j] && value <= model.upper[j]),
  );
  if (outside >= 0) {
    return `start[${outside}] = ${start[outside]} lies outside ${model.lower[outside]} to ${model.upper[outside]}`;
  }
  const bad = residuals.findIndex((value) => !Number.isFinite(value));
  return bad >= 0 ? `residual ${bad} is ${residuals[bad]} at the start` : undefined;
}

function checkBounds(
  start: readonly number[],
  lower: readonly number[] | undefined,
  upper: readonly number[] | undefined,
): void {
  for (const [name, values] of Object.entries({ lower, upper })) {
    if (values && values.length !== start.length) {
      throw new TypeError(
        `invalid \`${name}\`: ${values.length} values; expected ${start.length}, one a parameter`,
      );
    }
  }
  start.forEach((_, j) => {
    const [least, most] = [lower?.[j] ?? -Infinity, upper?.[j] ?? Infinity];
    if (!(least <= most)) {
      throw new RangeError(`invalid \`lower[${j}]\`: ${least}; expected at most ${most}`);
    }
  });
}
