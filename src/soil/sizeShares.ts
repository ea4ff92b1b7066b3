import { fractions } from "../grading/fractions.js";
import type { GradingCurve } from "../grading/gradingCurve.js";
import { passingAtSize } from "../grading/passingAtSize.js";
import type { BoundarySystem } from "../grading/sizeBoundaries.js";

/** Percent of the part that passes the upper end of gravel. */
export interface SizeShares {
  readonly gravelPct: number;
  readonly sandPct: number;
  readonly finesPct: number;
  /** Absent where the curve does not reach clay. */
  readonly clayPct?: number;
}

/**
 * Gravel, sand and fines of the part finer than cobbles, taken as 100: what a classification by size
 * asks for.
 *
 * @returns `undefined` where the curve does not reach the boundaries of fines and sand, or the top of gravel.
 */
export function sizeShares(curve: GradingCurve, system: BoundarySystem): SizeShares | undefined {
  const { boundaries, gravelPct, sandPct, finesPct, clayPct } = fractions(curve, system);
  const whole = passingAtSize(curve, boundaries.gravelMm);
  if (gravelPct === undefined || sandPct === undefined || finesPct === undefined || !whole) {
    return undefined;
  }
  const part = (pct: number) => (100 * pct) / whole;
  return {
    gravelPct: part(gravelPct),
    sandPct: part(sandPct),
    finesPct: part(finesPct),
    ...(clayPct === undefined ? {} : { clayPct: part(clayPct) }),
  };
}
