import type { GradingPoint } from "./gradingCurve.js";

/** Rows of a sedimentation as points of a curve: increasing size, held within 0 and the separating sieve's passing. */
export function sedimentationPoints(
  rows: readonly { readonly sizeMm: number; readonly passingPct: number }[],
  passingSeparatingPct: number,
): GradingPoint[] {
  return rows
    .map(({ sizeMm, passingPct }): GradingPoint => {
      const held = Math.min(passingSeparatingPct, Math.max(0, passingPct));
      return { sizeMm, passingPct: held, origin: "sedimentation" };
    })
    .sort((a, b) => a.sizeMm - b.sizeMm);
}
