import type { DampedResult } from "./dampedGaussNewton.js";
import type { GaussNewtonStep } from "./gaussNewtonStep.js";
import type { NonlinearModel } from "./nonlinearModel.js";

const MOST_STEPS = 30;

/**
 * Takes undamped Gauss–Newton steps with finer differences while each is shorter than the last.
 *
 * Near a minimum the sum of squares is flat, so comparing it fixes only half of the digits of the
 * parameters; the steps themselves fix the others. Leaves in the solver the Jacobian at the last
 * point, or within 1e-9 of it.
 */
export function polishedMinimum(
  model: NonlinearModel,
  solver: GaussNewtonStep,
  found: DampedResult,
): { parameters: number[]; residuals: number[] } {
  const { lower, upper } = model;
  let { parameters, residuals } = found;
  let square = residuals.reduce((sum, r) => sum + r * r, 0);
  let before = 1e-3;
  for (let step = 0; ; step++) {
    if (!model.jacobian(parameters, residuals, solver.jacobian, true)) break;
    solver.prepare(parameters, residuals, lower, upper);
    if (found.status !== "converged" || step === MOST_STEPS) break;
    if (solver.qr.rank < solver.qr.columns) break;
    solver.find(0);
    let size = 0;
    const next = parameters.map((value, j) => {
      const moved = Math.min(upper[j], Math.max(lower[j], value + solver.step[j]));
      if (value !== 0) size = Math.max(size, Math.abs(moved - value) / Math.abs(value));
      return moved;
    });
    if (!(size < 0.9 * before) || size < Number.EPSILON) break;
    const trial = model.residuals(next);
    const trialSquare = trial ? trial.reduce((sum, r) => sum + r * r, 0) : Infinity;
    if (!trial || trialSquare > square * (1 + 1e-12)) break;
    parameters = next;
    residuals = trial;
    square = trialSquare;
    // The next step would be shorter in about the same ratio: not worth its evaluations.
    if (size < 1e-9 && size * (size / before) < 1e-15) break;
    before = size;
  }
  return { parameters, residuals };
}
