import { fCdf } from "../numerics/fCdf.js";
import { leastSquares } from "../numerics/leastSquares.js";
import { normalCdf } from "../numerics/normalCdf.js";

const median = (values: readonly number[]) => {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
};

export interface SpreadTest {
  readonly statistic: number;
  readonly pValue: number;
}

/**
 * Brown–Forsythe test of whether groups have one spread: analysis of variance of the distances from each
 * group's median. Null without two groups of two values, or without scatter.
 * Source: Brown & Forsythe 1974 (from memory); proved beside SciPy.
 */
export function brownForsythe(groups: readonly (readonly number[])[]): SpreadTest | null {
  const distances = groups
    .filter((group) => group.length > 1)
    .map((group) => {
      const middle = median(group);
      return group.map((value) => Math.abs(value - middle));
    });
  const all = distances.flat();
  const [between, within] = [distances.length - 1, all.length - distances.length];
  if (between < 1 || within < 1) return null;
  const mean = (values: readonly number[]) =>
    values.reduce((sum, value) => sum + value, 0) / values.length;
  const grand = mean(all);
  let [outer, inner] = [0, 0];
  for (const group of distances) {
    const own = mean(group);
    outer += group.length * (own - grand) ** 2;
    inner += group.reduce((sum, value) => sum + (value - own) ** 2, 0);
  }
  if (inner <= 1e-24 * all.length * grand * grand) return null;
  const statistic = outer / between / (inner / within);
  return { statistic, pValue: statistic > 0 ? fCdf(1 / statistic, within, between) : 1 };
}

/**
 * Koenker's form of the Breusch–Pagan test: n R² of the squared residuals on the fitted values, against
 * χ² with one degree of freedom. `rises` tells whether the scatter grows with strength.
 * Source: Breusch & Pagan 1979, Koenker 1981 (from memory); proved beside statsmodels.
 */
export function breuschPagan(
  residuals: readonly number[],
  fitted: readonly number[],
): (SpreadTest & { readonly rises: boolean }) | null {
  if (residuals.length < 4) return null;
  const solved = leastSquares(
    fitted.map((value) => [1, value]),
    residuals.map((value) => value * value),
  );
  if (solved.status !== "ok" || !Number.isFinite(solved.rSquared)) return null;
  const statistic = residuals.length * solved.rSquared;
  return {
    statistic,
    pValue: 2 * normalCdf(-Math.sqrt(Math.max(0, statistic))),
    rises: solved.coefficients[1] > 0,
  };
}
