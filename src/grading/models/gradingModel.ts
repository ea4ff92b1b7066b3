import { linearRegression } from "simple-statistics";
import type { Text } from "../../words/message.js";
import { type GradingCurve, sizeAtPassing } from "../curve.js";

export type GradingModelName =
  | "power"
  | "lognormal"
  | "bimodal-lognormal"
  | "weibull"
  | "fredlund"
  | "haverkamp-parlange"
  | "skaggs"
  | "fredlund-bimodal";

export interface GradingModelParameter {
  readonly name: string;
  readonly unit: "mm" | "";
  /** How the fit steps: sizes by their logarithm, so that they stay positive. */
  readonly scale: "logarithm" | "plain";
  readonly lower: number;
  readonly upper: number;
}

/** A grading curve in closed form. */
export interface GradingModel {
  readonly name: GradingModelName;
  readonly title: Text;
  readonly parameters: readonly GradingModelParameter[];
  /**
   * Percent passing at a size in mm; `values` in the order of `parameters`.
   *
   * @param slopes where handed in, the slopes along each parameter are written into it: most of what they need
   * is at hand here, and a fit with them takes a tenth of the time.
   */
  evaluate(sizeMm: number, values: readonly number[], slopes?: Float64Array): number;
  /** Sets of values from which a fit may start, made from the measured curve. */
  starts(curve: GradingCurve): readonly (readonly number[])[];
  /** Where the equation comes from, with its honesty mark. */
  readonly source: Text;
}

/** The size at which a percentage passes, or the end of the curve on the side where it is not reached. */
export function sizeNear(curve: GradingCurve, passingPct: number): number {
  const size = sizeAtPassing(curve, passingPct);
  if (size !== undefined) return size;
  const end = passingPct < curve.points[0].passingPct ? curve.points[0] : curve.points.at(-1);
  return end?.sizeMm ?? 1;
}

interface StraightLine {
  readonly slope: number;
  readonly intercept: number;
}

/**
 * Least-squares line y = intercept + slope x, only good enough to start a fit from.
 *
 * @returns `undefined` where the x do not differ.
 */
export function straightLine(
  points: readonly { readonly x: number; readonly y: number }[],
): StraightLine | undefined {
  if (new Set(points.map(({ x }) => x)).size < 2) return undefined;
  const { m: slope, b: intercept } = linearRegression(points.map(({ x, y }) => [x, y]));
  return { slope, intercept };
}

/** The line of what is made of the part that passes, on the logarithm of size: where it crosses zero, and its slope. */
export function lineOnSize(
  { points }: GradingCurve,
  abovePct: number,
  made: (part: number) => number,
): { readonly crossMm: number; readonly slope: number } | undefined {
  const line = straightLine(
    points
      .filter(({ passingPct }) => passingPct > abovePct && passingPct < 99.5)
      .map(({ sizeMm, passingPct }) => ({ x: Math.log(sizeMm), y: made(passingPct / 100) })),
  );
  return line && { crossMm: Math.exp(-line.intercept / line.slope), slope: line.slope };
}
