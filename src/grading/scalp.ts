import type { GradingCurve, GradingPoint } from "./gradingCurve.js";
import { passingAtSize } from "./passingAtSize.js";

/**
 * The curve of a material after everything coarser than a size was screened off.
 *
 * Formula: passing' = 100 passing / passing at the screen (California Test 105, 2012, read in part).
 *
 * @throws RangeError where the screen lies outside the measured curve or nothing passes it.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.1, passingPct: 20, origin: "sieve" }, { sizeMm: 10, passingPct: 80, origin: "sieve" }, { sizeMm: 40, passingPct: 100, origin: "sieve" }] };
 * scalp(curve, 10).points.map(({ passingPct }) => passingPct) // => [25, 100]
 */
export function scalp(curve: GradingCurve, screenMm: number): GradingCurve {
  const whole = passingAtSize(curve, screenMm);
  if (whole === undefined || !(whole > 0)) {
    throw new RangeError(
      `invalid \`screenMm\`: ${screenMm}; expected a size within the measured curve at which something passes`,
    );
  }
  const finer = curve.points
    .filter(({ sizeMm }) => sizeMm < screenMm)
    .map((point): GradingPoint => ({ ...point, passingPct: (100 * point.passingPct) / whole }));
  const at = curve.points.find(({ sizeMm }) => sizeMm >= screenMm);
  return {
    points: [...finer, { sizeMm: screenMm, passingPct: 100, origin: at?.origin ?? "sieve" }],
  };
}
