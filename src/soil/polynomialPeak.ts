import { leastSquares } from "../numerics/leastSquares.js";

export interface PolynomialPeak {
  readonly x: number;
  readonly y: number;
  /** NaN without a degree of freedom. */
  readonly xStandardError: number;
  readonly yStandardError: number;
  readonly residualSd: number;
  readonly degreesOfFreedom: number;
  /** Height of the fitted polynomial. */
  at(x: number): number;
}

/**
 * The top of a parabola (degree 2) or cubic (degree 3) laid through points by least squares.
 *
 * Standard errors by the delta method: the top moves by −p′(coefficient) / p″ for each coefficient.
 *
 * @returns `undefined` where there are too few points or no top within their range.
 */
export function polynomialPeak(
  points: readonly { readonly x: number; readonly y: number }[],
  degree: 2 | 3,
): PolynomialPeak | undefined {
  const xs = points.map(({ x }) => x);
  const [low, high] = [Math.min(...xs), Math.max(...xs)];
  if (new Set(xs).size <= degree) return undefined;
  // Centred and scaled to −1…1, so that the powers are not nearly parallel.
  const middle = (low + high) / 2;
  const half = (high - low) / 2;
  const powers = (u: number) => [1, u, u * u, u * u * u].slice(0, degree + 1);
  const fit = leastSquares(
    points.map(({ x }) => powers((x - middle) / half)),
    points.map(({ y }) => y),
  );
  if (fit.status !== "ok") return undefined;
  const [, b, c, d = 0] = fit.coefficients;
  const top = topOf(b, c, d);
  if (top === undefined || Math.abs(top) > 1) return undefined;
  const value = (u: number) =>
    powers(u).reduce((sum, power, index) => sum + power * fit.coefficients[index], 0);
  const bend = 2 * c + 6 * d * top;
  const byHeight = powers(top);
  const byPlace = byHeight.map((_, power) =>
    power === 0 ? 0 : -(power * byHeight[power - 1]) / bend,
  );
  return {
    x: middle + half * top,
    y: value(top),
    xStandardError: half * Math.sqrt(quadraticForm(fit.covariance, byPlace)),
    yStandardError: Math.sqrt(quadraticForm(fit.covariance, byHeight)),
    residualSd: fit.residualSd,
    degreesOfFreedom: fit.degreesOfFreedom,
    at: (x) => value((x - middle) / half),
  };
}

/** Where b + 2 c u + 3 d u² is 0 and falling. */
function topOf(b: number, c: number, d: number): number | undefined {
  if (Math.abs(d) <= 1e-12 * Math.abs(c)) return c < 0 ? -b / (2 * c) : undefined;
  const inside = c * c - 3 * b * d;
  // The top is the root with p″ = −2 √(c² − 3 b d); this form does not cancel for a small d.
  if (!(inside > 0)) return undefined;
  const root = Math.sqrt(inside);
  return c < 0 ? b / (root - c) : -(c + root) / (3 * d);
}

function quadraticForm(matrix: readonly (readonly number[])[], vector: readonly number[]): number {
  return matrix.reduce(
    (sum, row, i) =>
      sum + vector[i] * row.reduce((inner, entry, j) => inner + entry * vector[j], 0),
    0,
  );
}
