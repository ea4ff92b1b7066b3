import cdf from "@stdlib/stats-base-dists-t-cdf";

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
  return cdf(x, df);
}
