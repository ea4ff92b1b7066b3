import { monotoneCubic } from "../numerics/monotoneCubic.js";
import type { GradingCurve } from "./gradingCurve.js";

/** Passing as a smooth function of the logarithm of size that rises only where the points do. */
export function cubicPassing({ points }: GradingCurve): (logSize: number) => number {
  return monotoneCubic(
    points.map(({ sizeMm }) => Math.log(sizeMm)),
    points.map(({ passingPct }) => passingPct),
  );
}
