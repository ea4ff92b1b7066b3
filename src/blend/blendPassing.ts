import type { GradingCurve } from "../grading/gradingCurve.js";

/** Grains below this do not count any more: the curve of an unmeasured fine end is drawn down to it. */
const FINE_END_MM = 0.001;

export interface BlendPassing {
  readonly passingPct: number;
  /** The size is finer than the material's finest measured one: drawn straight to 0 at 0.001 mm. */
  readonly assumed: boolean;
}

/**
 * A material's passing at any size, as blending needs it: log-linear between the points, 100 above the
 * coarsest point if the material passes it whole, and below the finest point a straight line (on the
 * logarithm of size) to 0 at 0.001 mm, told as assumed.
 *
 * @throws RangeError where the size is coarser than the curve and the curve does not reach 100 %.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.1, passingPct: 10, origin: "sieve" }, { sizeMm: 1, passingPct: 100, origin: "sieve" }] };
 * blendPassing(curve, 10) // => { passingPct: 100, assumed: false }
 * blendPassing(curve, 0.01) // => { passingPct: 5, assumed: true }
 */
export function blendPassing(curve: GradingCurve, sizeMm: number): BlendPassing {
  const { points } = curve;
  const [first, last] = [points[0], points[points.length - 1]];
  if (sizeMm >= last.sizeMm) {
    if (sizeMm > last.sizeMm && last.passingPct < 100 - 1e-9) {
      throw new RangeError(
        `invalid \`sizeMm\`: ${sizeMm}; expected at most ${last.sizeMm}, where the curve ends at ${last.passingPct} %`,
      );
    }
    return { passingPct: last.passingPct, assumed: false };
  }
  if (sizeMm < first.sizeMm) {
    const slope = Math.log(sizeMm / FINE_END_MM) / Math.log(first.sizeMm / FINE_END_MM);
    return { passingPct: first.passingPct * Math.max(0, slope), assumed: true };
  }
  const above = points.findIndex((point) => point.sizeMm > sizeMm);
  const [low, high] = [points[above - 1], points[above]];
  const way = Math.log(sizeMm / low.sizeMm) / Math.log(high.sizeMm / low.sizeMm);
  return {
    passingPct: low.passingPct + way * (high.passingPct - low.passingPct),
    assumed: false,
  };
}
