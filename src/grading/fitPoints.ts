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
  const weight = points.map((_, index) => 1 / (sdPct?.[index] ?? 1));
  const toStep = (value: number, index: number) =>
    model.parameters[index].scale === "logarithm" ? Math.log(value) : value;
  const toValues = (steps: readonly number[]) =>
    steps.map((step, index) =>
      model.parameters[index].scale === "logarithm" ? Math.exp(step) : step,
    );
  const lower = model.parameters.map(({ lower: bound }, index) => toStep(bound, index));
  const upper = model.parameters.map(({ upper: bound }, index) => toStep(bound, index));
  const residuals = (steps: readonly number[]): number[] => {
    const values = toValues(steps);
    return points.map(
      ({ sizeMm, passingPct }, i) => (model.evaluate(sizeMm, values) - passingPct) * weight[i],
    );
  };
  const jacobian = (steps: readonly number[]): number[][] => {
    const values = toValues(steps);
    // Along the logarithm of a size the slope is the size times that along the size.
    const stretch = values.map((value, index) =>
      model.parameters[index].scale === "logarithm" ? value : 1,
    );
    return points.map(({ sizeMm }, i) =>
      model.slopes(sizeMm, values).map((slope, index) => slope * stretch[index] * weight[i]),
    );
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
  const quick = quickFit(
    model,
    points.map(({ sizeMm }) => sizeMm),
    sdPct,
  );
  const passing = points.map(({ passingPct }) => passingPct);
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
