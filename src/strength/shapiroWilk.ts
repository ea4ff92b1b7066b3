import { normalCdf } from "../numerics/normalCdf.js";
import { normalQuantile } from "../numerics/normalQuantile.js";

const poly = (coefficients: readonly number[], x: number) =>
  coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);

/**
 * Shapiro–Wilk test of whether values come from one normal distribution.
 *
 * W = (Σ aᵢ x₍ᵢ₎)² / Σ (x − x̄)², with Royston's approximations of the weights a and of the
 * distribution of W. A small `pValue` speaks against normality.
 *
 * @param values 3 to 5000 of any unit.
 * @returns null for fewer than 3 values, more than 5000, or values that are all the same.
 * @throws RangeError for a value that is not finite.
 *
 * Source: Royston 1995, Applied Statistics 44, algorithm AS R94 (constants from memory; results proved
 * beside SciPy in `tests/strength`).
 *
 * @example
 * const { w, pValue } = shapiroWilk([2.1, 2.4, 2.2, 2.8, 2.5, 2.3, 4.9]);
 * [w, pValue] // => [0.6660, 0.0016]
 */
export function shapiroWilk(
  values: readonly number[],
): { readonly w: number; readonly pValue: number } | null {
  values.forEach((value, index) => {
    if (!Number.isFinite(value)) {
      throw new RangeError(`invalid \`values[${index}]\`: ${value}; expected a finite number`);
    }
  });
  const n = values.length;
  if (n < 3 || n > 5000) return null;
  const x = [...values].sort((a, b) => a - b);
  const mean = x.reduce((sum, value) => sum + value, 0) / n;
  const squares = x.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const size = Math.max(Math.abs(x[0]), Math.abs(x[n - 1]));
  if (squares <= 1e-24 * n * size * size) return null;
  const weights = royston(n);
  const w = Math.min(1, x.reduce((sum, value, i) => sum + weights[i] * value, 0) ** 2 / squares);
  return { w, pValue: significance(w, n) };
}

/** Weights of the ordered values, ascending, antisymmetric. */
function royston(n: number): number[] {
  if (n === 3) return [-Math.SQRT1_2, 0, Math.SQRT1_2];
  const scores = Array.from({ length: n }, (_, i) => normalQuantile((i + 1 - 0.375) / (n + 0.25)));
  const square = scores.reduce((sum, score) => sum + score * score, 0);
  const u = 1 / Math.sqrt(n);
  const [top, next] = [scores[n - 1], scores[n - 2]];
  const last =
    top / Math.sqrt(square) + poly([0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056], u);
  const fixed = [last];
  let rest = (square - 2 * top * top) / (1 - 2 * last * last);
  if (n > 5) {
    const second =
      next / Math.sqrt(square) + poly([0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633], u);
    fixed.push(second);
    rest = (square - 2 * top * top - 2 * next * next) / (1 - 2 * last * last - 2 * second * second);
  }
  return scores.map((score, i) => {
    if (i >= n - fixed.length) return fixed[n - 1 - i];
    if (i < fixed.length) return -fixed[i];
    return score / Math.sqrt(rest);
  });
}

function significance(w: number, n: number): number {
  if (n === 3) {
    return Math.max(0, (6 / Math.PI) * (Math.asin(Math.sqrt(w)) - Math.asin(Math.sqrt(0.75))));
  }
  const lost = Math.log(Math.max(1 - w, 1e-300));
  if (n <= 11) {
    const gamma = -2.273 + 0.459 * n;
    // Below this W no normal sample falls.
    if (lost >= gamma) return 1e-99;
    const mean = poly([0.544, -0.39978, 0.025054, -6.714e-4], n);
    const sd = Math.exp(poly([1.3822, -0.77857, 0.062767, -0.0020322], n));
    return normalCdf(-(-Math.log(gamma - lost) - mean) / sd);
  }
  const logN = Math.log(n);
  const mean = poly([-1.5861, -0.31082, -0.083751, 0.0038915], logN);
  const sd = Math.exp(poly([-0.4803, -0.082676, 0.0030302], logN));
  return normalCdf(-(lost - mean) / sd);
}
