import { powerOf } from "../numerics/powerOf.js";
import { cubicPassing } from "./cubicPassing.js";
import type { GradingCurve } from "./gradingCurve.js";
import type { CurveReading } from "./passingAtSize.js";

/** Halvings of an interval of the logarithm of size: beyond the last digit. */
const HALVINGS = 60;

/**
 * The size at which a percentage passes (D10, D60 …): the logarithm of size on a straight line of
 * passing between two points. Where the curve runs level at the percentage, the finest such size.
 *
 * Source: log-linear reading is the usual convention, from memory.
 *
 * @param reading `log-linear` (default) or `monotone-cubic`, as in `passingAtSize`.
 * @returns mm, or `undefined` where the measured curve does not reach the percentage.
 * @throws RangeError where the percentage is not 0 to 100.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.1, passingPct: 10, origin: "sieve" }, { sizeMm: 10, passingPct: 100, origin: "sieve" }] };
 * sizeAtPassing(curve, 55) // => 1
 * sizeAtPassing(curve, 5) // => undefined
 */
export function sizeAtPassing(
  curve: GradingCurve,
  passingPct: number,
  reading: CurveReading = "log-linear",
): number | undefined {
  const { points } = curve;
  if (!(passingPct >= 0 && passingPct <= 100)) {
    throw new RangeError(`invalid \`passingPct\`: ${passingPct}; expected 0 to 100`);
  }
  const above = points.findIndex((point) => point.passingPct >= passingPct);
  if (above < 0) return undefined;
  const high = points[above];
  if (high.passingPct === passingPct) return high.sizeMm;
  if (above === 0) return undefined;
  const low = points[above - 1];
  if (reading === "monotone-cubic") return cubicSize(curve, passingPct, low.sizeMm, high.sizeMm);
  const part = (passingPct - low.passingPct) / (high.passingPct - low.passingPct);
  return low.sizeMm * powerOf(high.sizeMm / low.sizeMm, part);
}

/** By halving: the smooth curve never falls, so the size lies where it crosses. */
function cubicSize(curve: GradingCurve, passingPct: number, lowMm: number, highMm: number): number {
  const passing = cubicPassing(curve);
  let [low, high] = [Math.log(lowMm), Math.log(highMm)];
  for (let count = 0; count < HALVINGS; count++) {
    const middle = (low + high) / 2;
    if (passing(middle) < passingPct) low = middle;
    else high = middle;
  }
  return Math.exp(high);
}
