import { tQuantile } from "../../numerics/distributions.js";
import type { NonlinearFit } from "../../numerics/levenbergMarquardt.js";
import { checkThat } from "../../quantities/checkNumber.js";
import { say, type Text } from "../../words/message.js";
import { fineToCoarse, type GradingCurve, type GradingPoint } from "../curve.js";
import type { GradingModel, GradingModelName } from "./gradingModel.js";
import { GRADING_MODELS } from "./gradingModels.js";
import { ROUGH, sizesFit } from "./sizesFit.js";

export interface GradingFitParameter {
  readonly name: string;
  readonly unit: "mm" | "";
  readonly value: number;
  /** Absent, like the interval, where the data give none: no degree of freedom, or a parameter on a bound. */
  readonly standardError?: number;
  /** 95 % confidence limits by Student's t; for sizes worked out on the logarithm, hence not symmetric. */
  readonly interval95?: readonly [number, number];
}

export interface GradingFitPoint {
  readonly sizeMm: number;
  readonly measuredPct: number;
  readonly fittedPct: number;
  /** Error that the fit gave this point, percentage points beside the others; absent where all were alike. */
  readonly sdPct?: number;
}

export interface GradingFit {
  readonly model: GradingModelName;
  readonly title: Text;
  readonly source: Text;
  readonly converged: boolean;
  readonly message: string;
  readonly parameters: readonly GradingFitParameter[];
  /** Count of points that the fit used. */
  readonly points: number;
  readonly degreesOfFreedom: number;
  /** √(Σ residual² / degrees of freedom), percentage points; absent without a degree of freedom. */
  readonly residualSdPct?: number;
  /** Akaike's criterion corrected for few points; absent where there are too few for it. */
  readonly aicc?: number;
  /** When not to trust the fit. */
  readonly warnings: readonly Text[];
  readonly fitted: readonly GradingFitPoint[];
}

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
  checkThat(model !== undefined, { name }, "a grading model");
  const points = tellingPoints(fineToCoarse(curve.points));
  const count = model.parameters.length;
  const told = `${points.length} points that tell`;
  checkThat(points.length >= count, { curve: told }, `at least ${count} for “${name}”`);
  const sd = sdPct && relativeErrors(points, sdPct);
  const { solution, values } = fitPoints(model, points, starts ?? model.starts({ points }), sd);
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
    ...doubt(solution.parameters[index], solution.standardErrors[index], scale, free),
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
    checkThat(value > 0 && value < Infinity, { sdPct: `${value} at ${sizeMm} mm` }, "above 0");
    return value;
  });
  const scale = Math.sqrt(sd.reduce((sum, value) => sum + 1 / value ** 2, 0) / sd.length);
  return sd.map((value) => value * scale);
}

/** The points from the last 0 % to the first 100 %: those beyond say nothing new. */
export function tellingPoints(points: readonly GradingPoint[]): GradingPoint[] {
  const first = Math.max(
    0,
    points.findLastIndex(({ passingPct }) => passingPct <= 0),
  );
  const full = points.findIndex(({ passingPct }) => passingPct >= 100);
  return points.slice(first, full < 0 ? undefined : full + 1);
}

/** Starts that are followed to the end, the best of those that the model offers. */
const STARTS = 2;

interface PointFit {
  readonly solution: NonlinearFit;
  readonly values: readonly number[];
}

/**
 * Least squares of a grading model on points, from the best few of several starts.
 *
 * @throws RangeError where no start gives a finite curve.
 */
function fitPoints(
  model: GradingModel,
  points: readonly Pick<GradingPoint, "sizeMm" | "passingPct">[],
  starts: readonly (readonly number[])[],
  sdPct?: readonly number[],
): PointFit {
  const passing = points.map(({ passingPct }) => passingPct);
  const { solve, misfit, toValues } = sizesFit(
    model,
    points.map(({ sizeMm }) => sizeMm),
    sdPct,
  );
  const ends = starts
    .map((start) => ({ start, misfit: misfit(passing, start) }))
    .filter((candidate) => Number.isFinite(candidate.misfit))
    .sort((a, b) => a.misfit - b.misfit)
    .slice(0, STARTS)
    .map(({ start }) => solve(passing, start, ROUGH));
  if (ends.length === 0) throw new RangeError("invalid `starts`: none gives a finite curve");
  const best = ends.reduce((a, b) => (b.residualSumOfSquares < a.residualSumOfSquares ? b : a));
  const settled = solve(passing, toValues(best.parameters));
  // What never moved, neither on the way to the valley nor in it.
  const unmoved = settled.unmoved.map((still, j) => still && best.unmoved[j]);
  return { solution: { ...settled, unmoved }, values: toValues(settled.parameters) };
}

/** Degrees of freedom below which a residual error is mostly luck; common practice, no source. */
const FEW = 3;

/** When not to trust a fit, in plain sentences. */
function gradingFitWarnings(
  parameters: readonly GradingFitParameter[],
  { activeBounds, unmoved, message }: NonlinearFit,
  {
    converged,
    degreesOfFreedom,
  }: { readonly converged: boolean; readonly degreesOfFreedom: number },
): Text[] {
  const name = (index: number) => `“${parameters[index].name}”`;
  return [
    ...(converged ? [] : [say`The fit did not converge: ${message}`]),
    ...parameters.flatMap((_, index) =>
      activeBounds[index] === 0
        ? []
        : [
            say`${name(index)} is at its ${activeBounds[index] < 0 ? say`lower` : say`upper`} bound: the points do not determine it, and the other standard errors take it as known.`,
          ],
    ),
    ...parameters.flatMap((_, index) =>
      unmoved[index] ? [say`${name(index)} did not leave its starting value.`] : [],
    ),
    ...parameters.flatMap(({ standardError }, index) =>
      standardError === undefined && degreesOfFreedom > 0 && activeBounds[index] === 0
        ? [say`The points do not determine ${name(index)}: no standard error can be given.`]
        : [],
    ),
    ...(degreesOfFreedom < FEW
      ? [
          say`Only ${degreesOfFreedom}{0, plural, one { degree} other { degrees}} of freedom: the standard errors are very uncertain.`,
        ]
      : []),
  ];
}
