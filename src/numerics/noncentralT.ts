import { checkThat } from "../quantities/checkNumber.js";
import { normalCdf, normalQuantile } from "./distributions.js";
import { findRoot } from "./findRoot.js";

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
  checkThat(!Number.isNaN(x), { x }, "a number");
  checkThat(df > 0 && df < Infinity, { df }, "a finite number above 0");
  checkThat(Number.isFinite(delta), { delta }, "a finite number");
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
  checkThat(p > 0 && p < 1, { p }, "strictly between 0 and 1");
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
  checkThat(Number.isInteger(n) && n >= 2, { n }, "a whole number, at least 2");
  checkThat(coverage > 0 && coverage < 1, { coverage }, "strictly between 0 and 1");
  checkThat(confidence > 0 && confidence < 1, { confidence }, "strictly between 0 and 1");
  const key = `${n} ${coverage} ${confidence}`;
  const root = Math.sqrt(n);
  const factor =
    FACTORS.get(key) ??
    noncentralTQuantile(confidence, n - 1, normalQuantile(coverage) * root) / root;
  FACTORS.set(key, factor);
  return factor;
}

/** Each is a search of a millisecond, and a study asks for the same few at each cement content. */
const FACTORS = new Map<string, number>();
