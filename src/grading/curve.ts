import { monotoneCubic } from "../numerics/monotoneCubic.js";

/** Percent by dry mass finer than a size. */
export interface GradingPoint {
  readonly sizeMm: number;
  readonly passingPct: number;
  readonly origin: "sieve" | "sedimentation";
}

/**
 * A grading curve: points with strictly increasing size and non-decreasing passing.
 * Between points the curve is a straight line of passing against the logarithm of size.
 */
export interface GradingCurve {
  readonly points: readonly GradingPoint[];
}

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
  return low.sizeMm * (high.sizeMm / low.sizeMm) ** part;
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

/** Passing as a smooth function of the logarithm of size that rises only where the points do. */
function cubicPassing({ points }: GradingCurve): (logSize: number) => number {
  return monotoneCubic(
    points.map(({ sizeMm }) => Math.log(sizeMm)),
    points.map(({ passingPct }) => passingPct),
  );
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
