import cdf from "@stdlib/stats-base-dists-normal-cdf";
import quantile from "@stdlib/stats-base-dists-normal-quantile";

/**
 * The value that a standard normal variable falls below with probability `p`.
 *
 * @param p Probability, 0 to 1; 0 and 1 give ∓Infinity.
 * @throws RangeError outside that range.
 *
 * Source: computed by the stdlib package `@stdlib/stats-base-dists-normal-quantile` (some eleven digits in
 * the tails), then one Newton step on the cumulative probability.
 *
 * @example
 * normalQuantile(0.95) // => 1.644854
 */
export function normalQuantile(p: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`invalid \`p\`: ${p}; expected 0 to 1`);
  if (p === 0 || p === 1) return p === 0 ? -Infinity : Infinity;
  // In the lower tail the probability keeps its digits, so the upper half is found by mirror.
  if (p > 0.5) return -normalQuantile(1 - p);
  const x = quantile(p, 0, 1);
  if (p < 1e-300) return x;
  return x - (cdf(x, 0, 1) - p) * Math.sqrt(2 * Math.PI) * Math.exp((x * x) / 2);
}
