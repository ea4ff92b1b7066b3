import quantile from "@stdlib/stats-base-dists-chisquare-quantile";

/**
 * The value that a chi-square variable with `df` degrees of freedom falls below with probability `p`.
 *
 * @param p Probability, 0 to 1; 1 gives Infinity.
 * @param df Degrees of freedom, above 0, whole or not.
 * @throws RangeError outside those ranges.
 *
 * Source: computed by the stdlib package `@stdlib/stats-base-dists-chisquare-quantile`.
 *
 * @example
 * chiSquareQuantile(0.95, 10) // => 18.30704
 */
export function chiSquareQuantile(p: number, df: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`invalid \`p\`: ${p}; expected 0 to 1`);
  if (!(df > 0)) throw new RangeError(`invalid \`df\`: ${df}; expected above 0`);
  return quantile(p, df);
}
