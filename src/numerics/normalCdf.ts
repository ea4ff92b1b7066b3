import cdf from "@stdlib/stats-base-dists-normal-cdf";

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
  return cdf(x, 0, 1);
}
