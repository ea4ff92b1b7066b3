import { noncentralTQuantile } from "./noncentralTQuantile.js";
import { normalQuantile } from "./normalQuantile.js";

/**
 * The factor k for which `mean - k s` of `n` normal results lies below a fraction `coverage` of the
 * whole population, with the stated confidence (one-sided tolerance limit, both mean and s unknown).
 *
 * `k = t(confidence; n - 1, z √n) / √n`, with t the noncentral t quantile and z the standard normal
 * quantile of `coverage`.
 *
 * @param n Number of results, whole, at least 2.
 * @param coverage Fraction of the population, between 0 and 1: 0.95 for a 5 % fractile.
 * @param confidence Between 0 and 1.
 * @throws RangeError for arguments outside those ranges.
 *
 * Source: Owen, *Tables of factors for one-sided tolerance limits* (1963), from memory; checked against
 * the noncentral t of SciPy.
 *
 * @example
 * toleranceFactor(6, 0.95, 0.75) // => 2.336
 * toleranceFactor(10, 0.95, 0.95) // => 2.911
 */
export function toleranceFactor(n: number, coverage: number, confidence: number): number {
  if (!Number.isInteger(n) || n < 2) {
    throw new RangeError(`invalid \`n\`: ${n}; expected a whole number, at least 2`);
  }
  for (const [name, value] of Object.entries({ coverage, confidence })) {
    if (!(value > 0 && value < 1)) {
      throw new RangeError(`invalid \`${name}\`: ${value}; expected strictly between 0 and 1`);
    }
  }
  const root = Math.sqrt(n);
  return noncentralTQuantile(confidence, n - 1, normalQuantile(coverage) * root) / root;
}
