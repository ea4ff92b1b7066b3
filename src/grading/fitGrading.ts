import { tQuantile } from "../numerics/tQuantile.js";
import { fitPoints } from "./fitPoints.js";
import type { GradingCurve, GradingPoint } from "./gradingCurve.js";
import type { GradingFit, GradingFitParameter } from "./gradingFit.js";
import { gradingFitWarnings } from "./gradingFitWarnings.js";
import type { GradingModelName } from "./models/gradingModel.js";
import { GRADING_MODELS } from "./models/gradingModels.js";

/** Variance below which points count as met exactly, squared percentage points: no sheet is that sharp. */
const SMALLEST_VARIANCE = 1e-12;

/**
 * Fits a closed-form curve to measured points by bounded nonlinear least squares on the passing.
 *
 * Problem: minimise Σ ((model − measured) / s)² in percentage points, every point alike (s = 1) unless
 * `sdPct` tells them apart, sizes stepped by their logarithm. Algorithm: Levenberg–Marquardt from the two best of the model's starts;
 * the best end is kept. Points beyond the first 100 % and before the last 0 % say nothing new and are
 * left out. Standard errors from the linearised covariance; sizes by the delta method.
 * AICc = n ln(RSS / n) + 2 k + 2 k (k + 1) / (n − k − 1), k parameters and the variance counted
 * (Hurvich and Tsai 1989, from memory). The points of one curve are cumulative, so their errors hang
 * together: take the intervals as lower limits of the doubt.
 *
 * @param starts other starts than the model's own: values in the order of its parameters.
 * @param sdPct standard deviation of the passing at a size, for example from `readingSpread`. Only
 * their proportions count: they are scaled to a mean square weight of 1, so that the residual error
 * stays in percentage points.
 * @returns `converged: false` where no start came to rest; never throws for that.
 * @throws RangeError where there are fewer different points than parameters.
 *
 * @example
 * const curve = { points: [0.063, 0.25, 1, 4, 16].map((sizeMm) => ({ sizeMm, passingPct: 100 * (sizeMm / 16) ** 0.3, origin: "sieve" })) };
 * const { parameters } = fitGrading(curve, "power");
 * parameters.map(({ value }) => value) // => [16.00, 0.30]
 */
export function fitGrading(
  curve: GradingCurve,
  name: GradingModelName,
  starts?: readonly (readonly number[])[],
  sdPct?: (sizeMm: number) => number,
): GradingFit {
  const model = GRADING_MODELS[name];
  if (!model) throw new RangeError(`invalid \`name\`: ${name}; expected a grading model`);
  const points = telling(curve.points);
  const count = model.parameters.length;
  if (points.length < count) {
    throw new RangeError(
      `invalid \`curve\`: ${points.length} points that tell; expected at least ${count} for “${name}”`,
    );
  }
  const sd = sdPct && relativeErrors(points, sdPct);
  const { solution, steps, values } = fitPoints(
    model,
    points,
    starts ?? model.starts({ points }),
    sd,
  );
  const n = points.length;
  const free = n - count;
  const k = count + 1;
  const variance = Math.max(solution.residualSumOfSquares / n, SMALLEST_VARIANCE);
  // Where the points are met to the last digit there is nothing left to lessen.
  const converged = solution.status === "converged" || variance === SMALLEST_VARIANCE;
  const parameters = model.parameters.map(({ name: own, unit, scale }, index) => ({
    name: own,
    unit,
    value: values[index],
    ...doubt(steps[index], solution.standardErrors[index], scale, free),
  }));
  return {
    model: name,
    title: model.title,
    source: model.source,
    converged,
    message: solution.message,
    parameters,
    points: n,
    degreesOfFreedom: free,
    ...(free > 0 ? { residualSdPct: Math.sqrt(solution.residualSumOfSquares / free) } : {}),
    ...(n - k - 1 > 0
      ? { aicc: n * Math.log(variance) + 2 * k + (2 * k * (k + 1)) / (n - k - 1) }
      : {}),
    warnings: gradingFitWarnings(parameters, solution, { converged, degreesOfFreedom: free }),
    fitted: points.map(({ sizeMm, passingPct }, index) => ({
      sizeMm,
      measuredPct: passingPct,
      fittedPct: model.evaluate(sizeMm, values),
      ...(sd ? { sdPct: sd[index] } : {}),
    })),
  };
}

/** Standard error and 95 % limits in the parameter's own unit, where the fit gives any. */
function doubt(
  step: number,
  error: number,
  scale: "logarithm" | "plain",
  free: number,
): Pick<GradingFitParameter, "standardError" | "interval95"> {
  if (free < 1 || !Number.isFinite(error)) return {};
  const half = tQuantile(0.975, free) * error;
  const back = scale === "logarithm" ? Math.exp : (value: number) => value;
  const interval95 = [back(step - half), back(step + half)] as const;
  // An error beyond all numbers says that the points do not settle the parameter.
  if (!interval95.every(Number.isFinite)) return {};
  return { standardError: error * (scale === "logarithm" ? Math.exp(step) : 1), interval95 };
}

/** Errors scaled so that the mean of 1 / s² is 1. */
function relativeErrors(points: readonly GradingPoint[], sdPct: (sizeMm: number) => number) {
  const sd = points.map(({ sizeMm }) => {
    const value = sdPct(sizeMm);
    if (!(value > 0 && value < Infinity)) {
      throw new RangeError(`invalid \`sdPct\`: ${value} at ${sizeMm} mm; expected above 0`);
    }
    return value;
  });
  const scale = Math.sqrt(sd.reduce((sum, value) => sum + 1 / value ** 2, 0) / sd.length);
  return sd.map((value) => value * scale);
}

/** The points from the last 0 % to the first 100 %. */
function telling(points: readonly GradingPoint[]): GradingPoint[] {
  const first = Math.max(
    0,
    points.findLastIndex(({ passingPct }) => passingPct <= 0),
  );
  const full = points.findIndex(({ passingPct }) => passingPct >= 100);
  return points.slice(first, full < 0 ? undefined : full + 1);
}
