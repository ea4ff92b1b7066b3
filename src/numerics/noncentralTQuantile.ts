import { findRoot } from "./findRoot.js";
import { noncentralTCdf } from "./noncentralTCdf.js";

/**
 * The value that a noncentral t variable falls below with probability `p`.
 *
 * The root of `noncentralTCdf(x, df, delta) = p`, bracketed outwards from `delta`.
 *
 * @param p Probability, strictly between 0 and 1. Digits fade where `p` or `1 - p` nears 1e-13.
 * @param df Degrees of freedom, above 0.
 * @param delta Noncentrality, any finite number.
 * @throws RangeError for arguments outside those ranges.
 *
 * Source: see `noncentralTCdf`.
 *
 * @example
 * noncentralTQuantile(0.95, 9, 2) // => 4.44710279
 */
export function noncentralTQuantile(p: number, df: number, delta: number): number {
  if (!(p > 0 && p < 1)) {
    throw new RangeError(`invalid \`p\`: ${p}; expected strictly between 0 and 1`);
  }
  const excess = (x: number): number => noncentralTCdf(x, df, delta) - p;
  const outwards = excess(delta) < 0 ? 1 : -1;
  let near = delta;
  let reach = (1 + Math.abs(delta) / Math.sqrt(df)) * outwards;
  while (excess(delta + reach) * outwards < 0) {
    near = delta + reach;
    reach *= 2;
  }
  return findRoot(excess, near, delta + reach, { tolerance: 1e-15 });
}
