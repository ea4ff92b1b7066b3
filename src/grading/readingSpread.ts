import type { GradingCurve } from "./gradingCurve.js";
import { passingAtSize } from "./passingAtSize.js";

/** Percentage points that no laboratory does better than, so that no point weighs without end. */
const FLOOR_PCT = 0.2;

/**
 * Standard deviation of the passing at each size among resampled curves: the weights of a fit.
 *
 * Reading errors alone would give points near 0 and 100 % next to no doubt; `floorPct` is added in
 * square for what a smooth model cannot follow.
 *
 * @param floorPct percentage points; default 0.2 (common practice, no source).
 * @throws RangeError for fewer than 2 curves or a floor not above 0.
 *
 * @example
 * const curve = (pct) => ({ points: [{ sizeMm: 0.063, passingPct: pct, origin: "sieve" }, { sizeMm: 2, passingPct: 80, origin: "sieve" }] });
 * readingSpread([curve(20), curve(23)], [0.063, 2]) // => [2.131, 0.200]
 */
export function readingSpread(
  curves: readonly GradingCurve[],
  sizesMm: readonly number[],
  floorPct: number = FLOOR_PCT,
): number[] {
  if (curves.length < 2) {
    throw new RangeError(`invalid \`curves\`: ${curves.length}; expected at least 2`);
  }
  if (!(floorPct > 0)) {
    throw new RangeError(`invalid \`floorPct\`: ${floorPct}; expected above 0`);
  }
  return sizesMm.map((sizeMm) => {
    const values = curves.flatMap((curve) => passingAtSize(curve, sizeMm) ?? []);
    if (values.length < 2) return floorPct;
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const square = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
    return Math.hypot(floorPct, Math.sqrt(square / (values.length - 1)));
  });
}
