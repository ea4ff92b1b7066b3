import type { GradingCurve, GradingPoint } from "../grading/gradingCurve.js";
import { sizeAtPassing } from "../grading/sizeAtPassing.js";
import { say } from "../words/say.js";
import type { WrongTurn } from "./exercise.js";

/** The two points that a reading lies between, and where wrong ways of reading it off end. */
export interface WrongReadings {
  readonly low: GradingPoint;
  readonly high: GradingPoint;
  readonly turns: readonly WrongTurn<number>[];
}

/**
 * The wrong ways of reading a size at a passing off a grading chart: between the lines of the axis as if
 * they stood evenly, passing taken for retained, the nearest sieve in place of the curve.
 *
 * @throws RangeError where the curve does not reach the percentage between two points.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.1, passingPct: 0, origin: "sieve" }, { sizeMm: 10, passingPct: 100, origin: "sieve" }] };
 * readOffWrongly(curve, 60).turns.map(({ value }) => value) // => [6.04, 0.631, 0.1, 10]
 */
export function readOffWrongly(curve: GradingCurve, passingPct: number): WrongReadings {
  const { points } = curve;
  const above = points.findIndex((point) => point.passingPct >= passingPct);
  if (above < 1) {
    throw new RangeError(
      `invalid \`passingPct\`: ${passingPct}; expected a percentage between two points of the curve`,
    );
  }
  const [low, high] = [points[above - 1], points[above]];
  const part = (passingPct - low.passingPct) / (high.passingPct - low.passingPct);
  const turned = sizeAtPassing(curve, 100 - passingPct);
  const nearest = say`This is a sieve's own size. The curve reaches the percentage between two sieves.`;
  return {
    low,
    high,
    turns: [
      {
        value: low.sizeMm + part * (high.sizeMm - low.sizeMm),
        text: say`This is read as if the sizes stood evenly along the axis. They stand by their logarithm: half-way between 1 and 10 lies 3.2.`,
      },
      ...(turned === undefined
        ? []
        : [
            {
              value: turned,
              text: say`This is the size that ${passingPct} % stay on: the axis was read from above. It counts what passes.`,
            },
          ]),
      { value: low.sizeMm, text: nearest },
      { value: high.sizeMm, text: nearest },
    ],
  };
}
