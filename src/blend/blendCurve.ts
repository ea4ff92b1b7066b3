import type { GradingCurve, GradingPoint } from "../grading/gradingCurve.js";
import { blendPassing } from "./blendPassing.js";

export interface BlendedCurve {
  readonly curve: GradingCurve;
  /**
   * Percent of the blend whose size below the finest sieve was not measured but assumed: the most by
   * which the blend's fine end could be wrong.
   */
  readonly unmeasuredFinesPct: number;
}

/**
 * The grading curve of a blend: at each size that any of its materials was measured at, the mean of
 * the materials' passings weighted by their dry-mass shares.
 *
 * @param parts shares in percent that sum to 100; parts with share 0 are left out.
 *
 * @example
 * const a = { points: [{ sizeMm: 0.1, passingPct: 0, origin: "sieve" }, { sizeMm: 1, passingPct: 100, origin: "sieve" }] };
 * const b = { points: [{ sizeMm: 0.1, passingPct: 40, origin: "sieve" }, { sizeMm: 1, passingPct: 100, origin: "sieve" }] };
 * const { curve } = blendCurve([{ curve: a, sharePct: 50 }, { curve: b, sharePct: 50 }]);
 * curve.points.map(({ passingPct }) => passingPct) // => [20, 100]
 */
export function blendCurve(
  parts: readonly { readonly curve: GradingCurve; readonly sharePct: number }[],
): BlendedCurve {
  const used = parts.filter(({ sharePct }) => sharePct > 0);
  const sizes = [...new Set(used.flatMap(({ curve }) => curve.points.map(({ sizeMm }) => sizeMm)))];
  sizes.sort((a, b) => a - b);
  const coarsestFineEnd = Math.max(...used.map(({ curve }) => curve.points[0].sizeMm));
  const points = sizes.map((sizeMm): GradingPoint => {
    const passingPct = used.reduce(
      (sum, { curve, sharePct }) => sum + (sharePct / 100) * blendPassing(curve, sizeMm).passingPct,
      0,
    );
    return { sizeMm, passingPct, origin: sizeMm < coarsestFineEnd ? "sedimentation" : "sieve" };
  });
  const finest = sizes[0];
  const unmeasuredFinesPct = used.reduce(
    (sum, { curve, sharePct }) =>
      curve.points[0].sizeMm > finest ? sum + (sharePct / 100) * curve.points[0].passingPct : sum,
    0,
  );
  return { curve: { points }, unmeasuredFinesPct };
}
