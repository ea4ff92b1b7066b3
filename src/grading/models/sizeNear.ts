import type { GradingCurve } from "../gradingCurve.js";
import { sizeAtPassing } from "../sizeAtPassing.js";

/** The size at which a percentage passes, or the end of the curve on the side where it is not reached. */
export function sizeNear(curve: GradingCurve, passingPct: number): number {
  const size = sizeAtPassing(curve, passingPct);
  if (size !== undefined) return size;
  const end = passingPct < curve.points[0].passingPct ? curve.points[0] : curve.points.at(-1);
  return end?.sizeMm ?? 1;
}
