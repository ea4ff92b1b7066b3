import {
  type CurveReading,
  DEFAULT_READING,
  fineToCoarse,
  type GradingCurve,
  passingAtSize,
  sizeAtPassing,
} from "./curve.js";

/** Sizes in mm at which 10, 15 … 90 % pass; `undefined` where the measured curve does not reach that. */
export interface CharacteristicSizes {
  /** How the curve was read between its points. */
  readonly reading: CurveReading;
  readonly d10?: number;
  readonly d15?: number;
  readonly d30?: number;
  readonly d50?: number;
  readonly d60?: number;
  readonly d85?: number;
  readonly d90?: number;
  /** Coefficient of uniformity. */
  readonly cu?: number;
  /** Coefficient of curvature. */
  readonly cc?: number;
}

/**
 * The characteristic sizes of a curve and its coefficients of uniformity and curvature.
 *
 * Formula: Cu = D60 / D10, Cc = D30² / (D10 D60) (Das, solution manual chapter 2, read).
 *
 * @param reading default `log-size`, as in `sizeAtPassing`.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.1, passingPct: 0, origin: "sieve" }, { sizeMm: 10, passingPct: 100, origin: "sieve" }] };
 * const { d50, cu, cc } = characteristicSizes(curve);
 * [d50, cu, cc] // => [1, 10.0, 0.631]
 */
export function characteristicSizes(
  curve: GradingCurve,
  reading: CurveReading = DEFAULT_READING,
): CharacteristicSizes {
  const at = (passingPct: number) => sizeAtPassing(curve, passingPct, reading);
  const [d10, d30, d60] = [at(10), at(30), at(60)];
  return {
    reading,
    d10,
    d15: at(15),
    d30,
    d50: at(50),
    d60,
    d85: at(85),
    d90: at(90),
    cu: d10 !== undefined && d60 !== undefined ? d60 / d10 : undefined,
    cc:
      d10 !== undefined && d30 !== undefined && d60 !== undefined
        ? d30 ** 2 / (d10 * d60)
        : undefined,
  };
}

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
  const points = fineToCoarse(curve.points);
  const [first, last] = [points[0]?.sizeMm, points.at(-1)?.sizeMm];
  return {
    value: passing.reduce<number | undefined>(
      (sum, pct) => (sum === undefined || pct === undefined ? undefined : sum + (100 - pct) / 100),
      0,
    ),
    interpolatedMm: STANDARD_SIEVES_MM.filter(
      (sizeMm) =>
        sizeMm > first && sizeMm < (last ?? 0) && !points.some((point) => point.sizeMm === sizeMm),
    ),
  };
}
