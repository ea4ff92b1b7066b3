import type { GradingCurve } from "./gradingCurve.js";

/**
 * Percent passing at a size: a straight line of passing on the logarithm of size between two points.
 * Outside the measured range it is known only where it cannot be otherwise: 100 above a point that
 * passes 100, 0 below a point that passes 0.
 *
 * @returns `undefined` outside the measured range.
 * @throws RangeError where the size is not positive.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.1, passingPct: 10, origin: "sieve" }, { sizeMm: 10, passingPct: 100, origin: "sieve" }] };
 * passingAtSize(curve, 1) // => 55
 * passingAtSize(curve, 20) // => 100
 * passingAtSize(curve, 0.01) // => undefined
 */
export function passingAtSize({ points }: GradingCurve, sizeMm: number): number | undefined {
  if (!(sizeMm > 0)) throw new RangeError(`invalid \`sizeMm\`: ${sizeMm}; expected above 0`);
  const above = points.findIndex((point) => point.sizeMm >= sizeMm);
  if (above < 0) return points.at(-1)?.passingPct === 100 ? 100 : undefined;
  const high = points[above];
  if (high.sizeMm === sizeMm) return high.passingPct;
  if (above === 0) return high.passingPct === 0 ? 0 : undefined;
  const low = points[above - 1];
  const part = Math.log(sizeMm / low.sizeMm) / Math.log(high.sizeMm / low.sizeMm);
  return low.passingPct + part * (high.passingPct - low.passingPct);
}
