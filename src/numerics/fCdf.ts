import cdf from "@stdlib/stats-base-dists-f-cdf";

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
  return cdf(x, d1, d2);
}
