import { leastSquares } from "../numerics/leastSquares.js";
import { normalCdf } from "../numerics/normalCdf.js";
import type { SpreadTest } from "./brownForsythe.js";

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
