import { powerOf } from "../numerics/powerOf.js";
import { checkThat } from "../quantities/checkNumber.js";

/** Percent by dry mass finer than a size. */
export interface GradingPoint {
  readonly sizeMm: number;
  readonly passingPct: number;
  readonly origin: "sieve" | "sedimentation";
}

/**
 * A grading curve: points of different size, and passing that does not fall as size grows. The functions
 * of this package give them fine to coarse and take them in either order.
 * Between points the curve is a straight line of passing against the logarithm of size, unless a
 * function is asked for another reading.
 */
export interface GradingCurve {
  readonly points: readonly GradingPoint[];
}

/**
 * How a curve is read between two points: a straight line on the logarithm of size, as grading charts are
 * drawn, or on size itself, as some laboratories reckon. D-sizes differ by several percent between them.
 */
export type CurveReading = "log-size" | "size";

/** The reading where nobody asks for another. */
export const DEFAULT_READING: CurveReading = "log-size";

/**
 * Points fine to coarse, from either order.
 *
 * @throws RangeError where sizes neither rise nor fall throughout.
 *
 * @example
 * const point = (sizeMm) => ({ sizeMm, passingPct: 50, origin: "sieve" });
 * fineToCoarse([2, 0.5, 0.063].map(point)).map(({ sizeMm }) => sizeMm) // => [0.063, 0.5, 2]
 */
export function fineToCoarse(points: readonly GradingPoint[]): readonly GradingPoint[] {
  const wrong = firstFall(points);
  if (wrong < 0) return points;
  const turned = points.toReversed();
  if (firstFall(turned) < 0) return turned;
  throw new RangeError(
    `invalid \`points[${wrong}].sizeMm\`: ${points[wrong].sizeMm} after ${points[wrong - 1].sizeMm}; expected sizes that rise throughout, or fall throughout`,
  );
}

/** Place of the first point that is not coarser than the one before; -1 where all are. */
function firstFall(points: readonly GradingPoint[]): number {
  for (let index = 1; index < points.length; index++) {
    if (!(points[index].sizeMm > points[index - 1].sizeMm)) return index;
  }
  return -1;
}

/**
 * Percent passing at a size: a straight line between two points.
 * Outside the measured range it is known only where it cannot be otherwise: 100 above a point that
 * passes 100, 0 below a point that passes 0.
 *
 * @param reading default `log-size`.
 * @returns `undefined` outside the measured range.
 * @throws RangeError where the size is not positive or the curve's sizes are in no order.
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
  reading: CurveReading = DEFAULT_READING,
): number | undefined {
  return passingAmong(fineToCoarse(curve.points), sizeMm, reading);
}

/** `passingAtSize` of points that stand fine to coarse: where many sizes of a curve are read, its order is looked at once. */
export function passingAmong(
  points: readonly GradingPoint[],
  sizeMm: number,
  reading: CurveReading = DEFAULT_READING,
): number | undefined {
  checkThat(sizeMm > 0, { sizeMm }, "above 0");
  let above = 0;
  while (above < points.length && !(points[above].sizeMm >= sizeMm)) above += 1;
  if (above === points.length) return (points.at(-1)?.passingPct ?? 0) >= 100 ? 100 : undefined;
  const high = points[above];
  if (high.sizeMm === sizeMm) return high.passingPct;
  if (above === 0) return high.passingPct <= 0 ? 0 : undefined;
  const low = points[above - 1];
  const part =
    reading === "size"
      ? (sizeMm - low.sizeMm) / (high.sizeMm - low.sizeMm)
      : Math.log(sizeMm / low.sizeMm) / Math.log(high.sizeMm / low.sizeMm);
  return low.passingPct + part * (high.passingPct - low.passingPct);
}

/**
 * The size at which a percentage passes (D10, D60 …), on a straight line between two points. Where the
 * curve runs level at the percentage, the finest such size.
 *
 * Source: reading on the logarithm of size is the usual convention, from memory; the sieve curves of the
 * Norwegian Geotechnical Institute (laboratory results beside EarthArXiv 7592, read) are read on size.
 *
 * @param reading default `log-size`.
 * @returns mm, or `undefined` where the measured curve does not reach the percentage.
 * @throws RangeError where the percentage is not 0 to 100 or the curve's sizes are in no order.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.1, passingPct: 10, origin: "sieve" }, { sizeMm: 10, passingPct: 100, origin: "sieve" }] };
 * sizeAtPassing(curve, 55) // => 1
 * sizeAtPassing(curve, 55, "size") // => 5.05
 * sizeAtPassing(curve, 5) // => undefined
 */
export function sizeAtPassing(
  curve: GradingCurve,
  passingPct: number,
  reading: CurveReading = DEFAULT_READING,
): number | undefined {
  const points = fineToCoarse(curve.points);
  checkThat(passingPct >= 0 && passingPct <= 100, { passingPct }, "0 to 100");
  const above = points.findIndex((point) => point.passingPct >= passingPct);
  if (above < 0) return undefined;
  const high = points[above];
  if (high.passingPct === passingPct) return high.sizeMm;
  if (above === 0) return undefined;
  const low = points[above - 1];
  const part = (passingPct - low.passingPct) / (high.passingPct - low.passingPct);
  return reading === "size"
    ? low.sizeMm + part * (high.sizeMm - low.sizeMm)
    : low.sizeMm * powerOf(high.sizeMm / low.sizeMm, part);
}

/**
 * A part in percent of the whole that it belongs to. Divided before it is multiplied: 100 x / x may come out a
 * last digit above 100, which is no percentage.
 *
 * @example
 * percentOf(80, 20) // => 25
 * percentOf(0.2242152466367713, 0.2242152466367713) // => 100
 */
export function percentOf(whole: number, part: number): number {
  return 100 * (part / whole);
}

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
  checkThat(
    whole !== undefined && whole > 0,
    { screenMm },
    "a size within the measured curve at which something passes",
  );
  const points = fineToCoarse(curve.points);
  const finer = points
    .filter(({ sizeMm }) => sizeMm < screenMm)
    .map((point): GradingPoint => ({ ...point, passingPct: percentOf(whole, point.passingPct) }));
  const at = points.find(({ sizeMm }) => sizeMm >= screenMm);
  return {
    points: [...finer, { sizeMm: screenMm, passingPct: 100, origin: at?.origin ?? "sieve" }],
  };
}
