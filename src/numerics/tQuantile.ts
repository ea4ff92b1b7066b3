import quantile from "@stdlib/stats-base-dists-t-quantile";

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
  return quantile(p, df);
}
