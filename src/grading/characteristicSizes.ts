import type { GradingCurve } from "./gradingCurve.js";
import { sizeAtPassing } from "./sizeAtPassing.js";

/** Sizes in mm at which 10, 15 … 90 % pass; `undefined` where the measured curve does not reach that. */
export interface CharacteristicSizes {
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
 * @example
 * const curve = { points: [{ sizeMm: 0.1, passingPct: 0, origin: "sieve" }, { sizeMm: 10, passingPct: 100, origin: "sieve" }] };
 * const { d50, cu, cc } = characteristicSizes(curve);
 * [d50, cu, cc] // => [1, 10.0, 0.631]
 */
export function characteristicSizes(curve: GradingCurve): CharacteristicSizes {
  const at = (passingPct: number) => sizeAtPassing(curve, passingPct);
  const [d10, d30, d60] = [at(10), at(30), at(60)];
  return {
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
