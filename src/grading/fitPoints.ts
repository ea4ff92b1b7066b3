import { levenbergMarquardt } from "../numerics/levenbergMarquardt.js";
import type { GradingPoint } from "./gradingCurve.js";
import type { GradingModel } from "./models/gradingModel.js";
import { quickFit } from "./quickFit.js";

/** Starts that are followed to the end, the best of those that the model offers. */
const STARTS = 2;

type Solution = ReturnType<typeof levenbergMarquardt>;

export interface PointFit {
  readonly solution: Solution;
  /** Parameters as the solver steps them: sizes by their logarithm. */
  readonly steps: readonly number[];
  readonly values: readonly number[];
}

/**
 * Least squares of a grading model on points, from the best few of several starts.
 *
 * @throws RangeError where no start gives a finite curve.
 */
export function fitPoints(
  model: GradingModel,
  points: readonly Pick<GradingPoint, "sizeMm" | "passingPct">[],
  starts: readonly (readonly number[])[],
  sdPct?: readonly number[],
): PointFit {
  const n = points.length;
  const count = model.parameters.length;
  const sizes = points.map(({ sizeMm }) => sizeMm);
  const passing = points.map(({ passingPct }) => passingPct);
  const weight = points.map((_, index) => 1 / (sdPct?.[index] ?? 1));
  const log = model.parameters.map(({ scale }) => scale === "logarithm");
  const toStep = (value: number, index: number) => (log[index] ? Math.log(value) : value);
  // Loops, not array methods: the solvers call these hundreds of times a fit.
  const toValues = (steps: readonly number[]) => {
    const values = new Array<number>(count);
    for (let j = 0; j < count; j++) values[j] = log[j] ? Math.exp(steps[j]) : steps[j];
    return values;
  };
  const lower = model.parameters.map(({ lower: bound }, index) => toStep(bound, index));
  const upper = model.parameters.map(({ upper: bound }, index) => toStep(bound, index));
  const residuals = (steps: readonly number[]): number[] => {
    const values = toValues(steps);
    const found = new Array<number>(n);
    for (let i = 0; i < n; i++) {
      found[i] = (model.evaluate(sizes[i], values) - passing[i]) * weight[i];
    }
    return found;
  };
  const jacobian = (steps: readonly number[]): number[][] => {
    const values = toValues(steps);
    const rows = new Array<number[]>(n);
    for (let i = 0; i < n; i++) {
      const slopes = model.slopes(sizes[i], values);
      for (let j = 0; j < count; j++) {
        // Along the logarithm of a size the slope is the size times that along the size.
        slopes[j] = slopes[j] * (log[j] ? values[j] : 1) * weight[i];
      }
      rows[i] = slopes;
    }
    return rows;
  };
  const candidates = starts
    .map((values) => {
      const start = values.map((value, index) =>
        Math.min(upper[index], Math.max(lower[index], toStep(value, index))),
      );
      return { start, misfit: residuals(start).reduce((sum, r) => sum + r * r, 0) };
    })
    .filter(({ misfit }) => Number.isFinite(misfit))
    .sort((a, b) => a.misfit - b.misfit)
    .slice(0, STARTS);
  if (candidates.length === 0) {
    throw new RangeError("invalid `starts`: none gives a finite curve");
  }
  // Each start is followed to its valley by the quick solver; the slow one settles the last digits.
  const quick = quickFit(model, sizes, sdPct);
  const ends = candidates.map(({ start }) => {
    const end = quick(passing, toValues(start)).values.map(toStep);
    const inside = end.map((step, j) => Math.min(upper[j], Math.max(lower[j], step)));
    return { start, end: inside, misfit: residuals(inside).reduce((sum, r) => sum + r * r, 0) };
  });
  const best = ends.reduce((a, b) => (b.misfit < a.misfit ? b : a));
  const settled = levenbergMarquardt({ residuals, jacobian, start: best.end, lower, upper });
  const solution = {
    ...settled,
    unmoved: settled.parameters.map((step, j) => step === best.start[j]),
  };
  return { solution, steps: solution.parameters, values: toValues(solution.parameters) };
}
