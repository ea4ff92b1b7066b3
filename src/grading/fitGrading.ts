import { levenbergMarquardt } from "../numerics/levenbergMarquardt.js";
import { tQuantile } from "../numerics/tQuantile.js";
import type { GradingCurve, GradingPoint } from "./gradingCurve.js";
import type { GradingFit, GradingFitParameter } from "./gradingFit.js";
import { gradingFitWarnings } from "./gradingFitWarnings.js";
import type { GradingModel, GradingModelName } from "./models/gradingModel.js";
import { GRADING_MODELS } from "./models/gradingModels.js";

/** Starts that are followed to the end, the best of those that the model offers. */
const STARTS = 3;
/** Variance below which points count as met exactly, squared percentage points: no sheet is that sharp. */
const SMALLEST_VARIANCE = 1e-12;

/**
 * Fits a closed-form curve to measured points by bounded nonlinear least squares on the passing.
 *
 * Problem: minimise Σ (model − measured)² in percentage points, every point alike, sizes stepped by
 * their logarithm. Algorithm: Levenberg–Marquardt from the {@link STARTS} best of the model's starts;
 * the best end is kept. Points beyond the first 100 % and before the last 0 % say nothing new and are
 * left out. Standard errors from the linearised covariance; sizes by the delta method.
 * AICc = n ln(RSS / n) + 2 k + 2 k (k + 1) / (n − k − 1), k parameters and the variance counted
 * (Hurvich and Tsai 1989, from memory). The points of one curve are cumulative, so their errors hang
 * together: take the intervals as lower limits of the doubt.
 *
 * @param starts other starts than the model's own: values in the order of its parameters.
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
  const run = runFrom(model, points);
  const candidates = (starts ?? model.starts({ points }))
    .map((values) => ({ values, misfit: misfit(model, points, values) }))
    .filter((start) => Number.isFinite(start.misfit))
    .sort((a, b) => a.misfit - b.misfit)
    .slice(0, STARTS);
  const ends = candidates.map(({ values }) => run(values));
  if (ends.length === 0) throw new RangeError("invalid `starts`: none gives a finite curve");
  const best = ends.reduce((kept, end) =>
    end.residualSumOfSquares < kept.residualSumOfSquares ? end : kept,
  );

  const values = natural(model, best.parameters);
  const free = points.length - count;
  const parameters = model.parameters.map(({ name: own, unit, scale }, index) => {
    const half = free > 0 ? tQuantile(0.975, free) * best.standardErrors[index] : Number.NaN;
    const step = best.parameters[index];
    const back = scale === "logarithm" ? Math.exp : (value: number) => value;
    return {
      name: own,
      unit,
      value: values[index],
      standardError: best.standardErrors[index] * (scale === "logarithm" ? values[index] : 1),
      interval95: [back(step - half), back(step + half)],
    } satisfies GradingFitParameter;
  });
  const n = points.length;
  const k = count + 1;
  const variance = Math.max(best.residualSumOfSquares / n, SMALLEST_VARIANCE);
  return {
    model: name,
    title: model.title,
    source: model.source,
    converged: best.status === "converged",
    message: best.message,
    parameters,
    points: n,
    degreesOfFreedom: free,
    residualSdPct: free > 0 ? Math.sqrt(best.residualSumOfSquares / free) : Number.NaN,
    ...(n - k - 1 > 0
      ? { aicc: n * Math.log(variance) + 2 * k + (2 * k * (k + 1)) / (n - k - 1) }
      : {}),
    warnings: gradingFitWarnings(model, best, free),
    fitted: points.map(({ sizeMm, passingPct }) => ({
      sizeMm,
      measuredPct: passingPct,
      fittedPct: model.evaluate(sizeMm, values),
    })),
  };
}

/** The points from the last 0 % to the first 100 %. */
function telling(points: readonly GradingPoint[]): GradingPoint[] {
  const first = Math.max(0, points.findLastIndex(({ passingPct }) => passingPct <= 0));
  const full = points.findIndex(({ passingPct }) => passingPct >= 100);
  return points.slice(first, full < 0 ? undefined : full + 1);
}

function natural(model: GradingModel, steps: readonly number[]): number[] {
  return steps.map((step, index) =>
    model.parameters[index].scale === "logarithm" ? Math.exp(step) : step,
  );
}

function misfit(
  model: GradingModel,
  points: readonly GradingPoint[],
  values: readonly number[],
): number {
  return points.reduce(
    (sum, { sizeMm, passingPct }) => sum + (model.evaluate(sizeMm, values) - passingPct) ** 2,
    0,
  );
}

function runFrom(model: GradingModel, points: readonly GradingPoint[]) {
  const toStep = (value: number, index: number) =>
    model.parameters[index].scale === "logarithm" ? Math.log(value) : value;
  const lower = model.parameters.map(({ lower: bound }, index) => toStep(bound, index));
  const upper = model.parameters.map(({ upper: bound }, index) => toStep(bound, index));
  const residuals = (steps: readonly number[]): number[] => {
    const values = natural(model, steps);
    return points.map(({ sizeMm, passingPct }) => model.evaluate(sizeMm, values) - passingPct);
  };
  return (values: readonly number[]) =>
    levenbergMarquardt({
      residuals,
      start: values.map((value, index) =>
        Math.min(upper[index], Math.max(lower[index], toStep(value, index))),
      ),
      lower,
      upper,
    });
}
