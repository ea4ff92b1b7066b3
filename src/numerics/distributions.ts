import stdlibFCdf from "@stdlib/stats-base-dists-f-cdf";
import stdlibNormalCdf from "@stdlib/stats-base-dists-normal-cdf";
import stdlibNormalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import stdlibTCdf from "@stdlib/stats-base-dists-t-cdf";
import stdlibTQuantile from "@stdlib/stats-base-dists-t-quantile";

/**
 * The probability that a standard normal variable is at most `x`.
 *
 * @throws RangeError for `x` not a number.
 *
 * Source: computed by the stdlib package `@stdlib/stats-base-dists-normal-cdf`.
 *
 * @example
 * normalCdf(1.644854) // => 0.95
 */
export function normalCdf(x: number): number {
  if (Number.isNaN(x)) throw new RangeError("invalid `x`: NaN; expected a number");
  return stdlibNormalCdf(x, 0, 1);
}

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
  const x = stdlibNormalQuantile(p, 0, 1);
  if (p < 1e-300) return x;
  return x - (stdlibNormalCdf(x, 0, 1) - p) * Math.sqrt(2 * Math.PI) * Math.exp((x * x) / 2);
}

/**
 * The probability that a Student t variable with `df` degrees of freedom is at most `x`.
 *
 * @param df Degrees of freedom, above 0, whole or not.
 * @throws RangeError for `x` not a number or `df` not above 0.
 *
 * Source: computed by the stdlib package `@stdlib/stats-base-dists-t-cdf`.
 *
 * @example
 * tCdf(2.228139, 10) // => 0.975
 */
export function tCdf(x: number, df: number): number {
  if (Number.isNaN(x)) throw new RangeError("invalid `x`: NaN; expected a number");
  if (!(df > 0)) throw new RangeError(`invalid \`df\`: ${df}; expected above 0`);
  return stdlibTCdf(x, df);
}

/**
 * The value that a Student t variable with `df` degrees of freedom falls below with probability `p`.
 *
 * @param p Probability, 0 to 1; 0 and 1 give ∓Infinity.
 * @param df Degrees of freedom, above 0, whole or not.
 * @throws RangeError outside those ranges.
 *
 * Source: computed by the stdlib package `@stdlib/stats-base-dists-t-quantile`.
 *
 * @example
 * tQuantile(0.975, 10) // => 2.228139
 */
export function tQuantile(p: number, df: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`invalid \`p\`: ${p}; expected 0 to 1`);
  if (!(df > 0)) throw new RangeError(`invalid \`df\`: ${df}; expected above 0`);
  return stdlibTQuantile(p, df);
}

/**
 * The probability that an F variable with `d1` and `d2` degrees of freedom is at most `x`.
 *
 * @param d1 Degrees of freedom of the numerator, above 0.
 * @param d2 Degrees of freedom of the denominator, above 0.
 * @throws RangeError for `x` not a number or degrees of freedom not above 0.
 *
 * Source: computed by the stdlib package `@stdlib/stats-base-dists-f-cdf`.
 *
 * @example
 * fCdf(4.102821, 2, 10) // => 0.95
 */
export function fCdf(x: number, d1: number, d2: number): number {
  if (Number.isNaN(x)) throw new RangeError("invalid `x`: NaN; expected a number");
  if (!(d1 > 0)) throw new RangeError(`invalid \`d1\`: ${d1}; expected above 0`);
  if (!(d2 > 0)) throw new RangeError(`invalid \`d2\`: ${d2}; expected above 0`);
  return stdlibFCdf(x, d1, d2);
}
