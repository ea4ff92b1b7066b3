import { normalCdf } from "./normalCdf.js";

/** Weights below e^-45 of the largest cannot touch the last digit. */
const DEEPEST = -45;

/**
 * The probability that a noncentral t variable `(Z + delta) / S` is at most `x`.
 *
 * `Z` is standard normal and `S = √(χ²_df / df)` independent of it, so the probability is the mean of
 * `Φ(x s - delta)` over `S`. With `s = eᵘ` the trapezoidal rule on that mean converges faster than any
 * power of the step; every term is positive, so nothing cancels, and no `exp(-delta²/2)` underflows as
 * it does in series for large `delta`. Absolute error about 1e-14.
 *
 * @param df Degrees of freedom, above 0.
 * @param delta Noncentrality, any finite number.
 * @throws RangeError for arguments outside those ranges.
 *
 * Source: the definition of the distribution; Trefethen and Weideman, *The exponentially convergent
 * trapezoidal rule*, SIAM Review 56 (2014), from memory.
 *
 * @example
 * noncentralTCdf(3, 9, 2) // => 0.77327342
 */
export function noncentralTCdf(x: number, df: number, delta: number): number {
  if (Number.isNaN(x)) throw new RangeError("invalid `x`: NaN; expected a number");
  if (!(df > 0 && df < Infinity)) {
    throw new RangeError(`invalid \`df\`: ${df}; expected a finite number above 0`);
  }
  if (!Number.isFinite(delta)) {
    throw new RangeError(`invalid \`delta\`: ${delta}; expected a finite number`);
  }
  if (Math.abs(x) === Infinity) return x > 0 ? 1 : 0;
  const widest = 1 + 9 / Math.sqrt(2 * df);
  // Curvature of the logarithm of the integrand: of the density, and of Φ where it is not yet 0 or 1.
  const slope = Math.min(Math.abs(x) * widest, Math.abs(delta) + 9);
  const step = Math.min(0.06, 0.55 / Math.sqrt(2 * df + slope * slope));
  let total = 0;
  let weights = 0;
  for (const direction of [1, -1]) {
    for (let k = direction === 1 ? 0 : 1; ; k++) {
      const u = direction * k * step;
      const logWeight = df * (u - Math.expm1(2 * u) / 2);
      if (logWeight < DEEPEST) break;
      const weight = Math.exp(logWeight);
      weights += weight;
      total += weight * normalCdf(x * Math.exp(u) - delta);
    }
  }
  return Math.min(1, total / weights);
}
