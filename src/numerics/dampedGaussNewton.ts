import type { GaussNewtonStep } from "./gaussNewtonStep.js";
import type { NonlinearFit } from "./nonlinearFit.js";
import type { NonlinearModel } from "./nonlinearModel.js";

/** Beyond this damping a step no longer changes the parameters' digits. */
const MOST_DAMPING = 1e20;

export interface DampedResult {
  status: NonlinearFit["status"];
  parameters: number[];
  residuals: number[];
  iterations: number;
}

/**
 * Levenberg–Marquardt iterations: damped steps cut off at the bounds, damping led by the ratio of the
 * fall to the promised fall (Nielsen, *Damping parameter in Marquardt's method*, 1999, from memory).
 */
export function dampedGaussNewton(
  model: NonlinearModel,
  solver: GaussNewtonStep,
  start: readonly number[],
  startResiduals: number[],
  options: { maxIterations: number; tolerance: number },
): DampedResult {
  const { lower, upper } = model;
  let p = [...start];
  let residuals = startResiduals;
  let square = sumOfSquares(residuals);
  let damping = 1e-3;
  let growth = 2;
  const done = (status: NonlinearFit["status"], iterations: number): DampedResult => ({
    status,
    parameters: p,
    residuals,
    iterations,
  });
  for (let iteration = 1; iteration <= options.maxIterations; iteration++) {
    if (!model.jacobian(p, residuals, solver.jacobian, false))
      return done("no-progress", iteration);
    solver.prepare(p, residuals, lower, upper);
    if (square === 0 || solver.gradientNorm <= options.tolerance)
      return done("converged", iteration);
    while (true) {
      solver.find(damping);
      let moved = 0;
      const trial = p.map((value, j) => {
        const next = Math.min(upper[j], Math.max(lower[j], value + solver.step[j]));
        solver.step[j] = next - value;
        if (next !== value) {
          moved = Math.max(
            moved,
            Math.abs(next - value) / Math.max(Math.abs(next), Math.abs(value)),
          );
        }
        return next;
      });
      const promised = solver.predictedFall();
      const found = moved > 0 ? model.residuals(trial) : undefined;
      const trialSquare = found ? sumOfSquares(found) : Infinity;
      const fell = square - trialSquare;
      // At the floor of rounding a fall can no longer be told from a rise.
      const level = moved <= options.tolerance || promised <= 4 * Number.EPSILON * square;
      if (found && fell > 0) {
        p = trial;
        residuals = found;
        square = trialSquare;
        const ratio = Math.min(1, fell / promised);
        const past = 2 * ratio - 1;
        damping = Math.max(1e-15, damping * Math.max(1 / 3, 1 - past * past * past));
        growth = 2;
        if (level) return done("converged", iteration);
        break;
      }
      if (level && damping < 1) return done("converged", iteration);
      if (level || damping > MOST_DAMPING) return done(stuck(solver.gradientNorm), iteration);
      damping *= growth;
      growth *= 2;
    }
  }
  return done("iteration-limit", options.maxIterations);
}

/** Differences of the residuals know the gradient to about this; anything smaller is a minimum. */
function stuck(gradientNorm: number): NonlinearFit["status"] {
  return gradientNorm < 1e-5 ? "converged" : "no-progress";
}

function sumOfSquares(values: readonly number[]): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return sum;
}
