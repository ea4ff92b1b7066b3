import type { GradingCurve } from "./gradingCurve.js";
import { passingAtSize } from "./passingAtSize.js";

/** Fine to coarse. */
const STANDARD_SIEVES_MM = [0.15, 0.3, 0.6, 1.18, 2.36, 4.75, 9.5, 19, 37.5, 75];

export interface FinenessModulus {
  /** `undefined` where the curve does not reach the finest or coarsest standard sieve. */
  readonly value?: number;
  /** Standard sieves that were not in the set: their passing was read off the curve. */
  readonly interpolatedMm: readonly number[];
}

/**
 * Fineness modulus: the cumulative percentages retained on the standard sieves 75, 37.5, 19, 9.5, 4.75,
 * 2.36, 1.18, 0.6, 0.3 and 0.15 mm, summed, divided by 100. Every one of them counts, also a sieve that
 * was not in the set.
 *
 * Source: definition as in dictionaryofconstruction.com (read).
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.3, passingPct: 0, origin: "sieve" }, { sizeMm: 0.6, passingPct: 20, origin: "sieve" }, { sizeMm: 1.18, passingPct: 35, origin: "sieve" }, { sizeMm: 2.36, passingPct: 70, origin: "sieve" }, { sizeMm: 4.75, passingPct: 100, origin: "sieve" }] };
 * finenessModulus(curve).value // => 3.75
 */
export function finenessModulus(curve: GradingCurve): FinenessModulus {
  const passing = STANDARD_SIEVES_MM.map((sizeMm) => passingAtSize(curve, sizeMm));
  const [first, last] = [curve.points[0]?.sizeMm, curve.points.at(-1)?.sizeMm];
  return {
    value: passing.reduce<number | undefined>(
      (sum, pct) => (sum === undefined || pct === undefined ? undefined : sum + (100 - pct) / 100),
      0,
    ),
    interpolatedMm: STANDARD_SIEVES_MM.filter(
      (sizeMm) =>
        sizeMm > first &&
        sizeMm < (last ?? 0) &&
        !curve.points.some((point) => point.sizeMm === sizeMm),
    ),
  };
}
