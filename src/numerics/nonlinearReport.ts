import type { GaussNewtonStep } from "./gaussNewtonStep.js";
import type { NonlinearFit } from "./nonlinearFit.js";
import type { NonlinearModel } from "./nonlinearModel.js";
import { unscaledCovariance } from "./unscaledCovariance.js";

const MESSAGES: Record<NonlinearFit["status"], string> = {
  converged: "the residuals are at right angles to every direction left free",
  "iteration-limit": "stopped at the most iterations allowed; the fit may still improve",
  "no-progress": "no step lessens the sum of squares, though the gradient is not small",
  "invalid-start": "the fit could not start",
};

/** From the last point and its Jacobian to everything a nonlinear fit reports. */
export function nonlinearReport(
  model: NonlinearModel,
  solver: GaussNewtonStep,
  start: readonly number[],
  found: {
    status: NonlinearFit["status"];
    parameters: number[];
    residuals: number[];
    iterations: number;
    message?: string;
  },
): NonlinearFit {
  const { parameters, residuals, status } = found;
  const count = parameters.length;
  const residualSumOfSquares = residuals.reduce((sum, r) => sum + r * r, 0);
  const degreesOfFreedom = Math.max(0, residuals.length - count);
  const variance = degreesOfFreedom > 0 ? residualSumOfSquares / degreesOfFreedom : NaN;
  const covariance = parameters.map(() => new Array<number>(count).fill(NaN));
  if (status !== "invalid-start") {
    const free = parameters.map((_, j) => j).filter((j) => !solver.held[j]);
    const { matrix } = unscaledCovariance(solver.qr);
    free.forEach((a, row) => {
      free.forEach((b, column) => {
        covariance[a][b] = matrix[row][column] * variance;
      });
    });
  }
  const standardErrors = covariance.map((row, j) => Math.sqrt(row[j]));
  return {
    status,
    message: found.message ?? MESSAGES[status],
    parameters,
    standardErrors,
    covariance,
    correlation: covariance.map((row, a) =>
      row.map((value, b) =>
        a === b ? value / value : value / standardErrors[a] / standardErrors[b],
      ),
    ),
    residuals,
    residualSumOfSquares,
    degreesOfFreedom,
    residualSd: Math.sqrt(variance),
    activeBounds: parameters.map((value, j) => {
      if (value === model.lower[j]) return -1;
      return value === model.upper[j] ? 1 : 0;
    }),
    unmoved: parameters.map((value, j) => value === start[j]),
    iterations: found.iterations,
    evaluations: model.evaluations,
    gradientNorm: status === "invalid-start" ? NaN : solver.gradientNorm,
  };
}
