import { cubicPassing } from "./cubicPassing.js";
import type { GradingCurve } from "./gradingCurve.js";

/** How a curve runs between its points. */
export type CurveReading = "log-linear" | "monotone-cubic";

/**
 * Percent passing at a size: a straight line of passing on the logarithm of size between two points.
 * Outside the measured range it is known only where it cannot be otherwise: 100 above a point that
 * passes 100, 0 below a point that passes 0.
 *
 * @param reading `log-linear` (default, as the standards do) or `monotone-cubic`: a smooth curve through
 * the same points that never falls.
 * @returns `undefined` outside the measured range.
 * @throws RangeError where the size is not positive.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.1, passingPct: 10, origin: "sieve" }, { sizeMm: 10, passingPct: 100, origin: "sieve" }] };
 * passingAtSize(curve, 1) // => 55
 * passingAtSize(curve, 20) // => 100
 * passingAtSize(curve, 0.01) // => undefined
 */
export function passingAtSize(
  curve: GradingCurve,
  sizeMm: number,
  reading: CurveReading = "log-linear",
): number | undefined {
  const { points } = curve;
  if (!(sizeMm > 0)) throw new RangeError(`invalid \`sizeMm\`: ${sizeMm}; expected above 0`);
  const above = points.findIndex((point) => point.sizeMm >= sizeMm);
  if (above < 0) return points.at(-1)?.passingPct === 100 ? 100 : undefined;
  const high = points[above];
  if (high.sizeMm === sizeMm) return high.passingPct;
  if (above === 0) return high.passingPct === 0 ? 0 : undefined;
  if (reading === "monotone-cubic") return cubicPassing(curve)(Math.log(sizeMm));
  const low = points[above - 1];
  const part = Math.log(sizeMm / low.sizeMm) / Math.log(high.sizeMm / low.sizeMm);
  return low.passingPct + part * (high.passingPct - low.passingPct);
}
