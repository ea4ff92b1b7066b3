import type { SpecimenRecord } from "../lab/specimenRecord.js";
import type { LeastSquaresFit } from "../numerics/leastSquaresFit.js";
import type { StrengthFormFacts } from "./strengthForm.js";

/**
 * AICc of normal errors: n (ln(2π RSS/n) + 1) + 2k + 2k(k+1)/(n−k−1), k counting the coefficients
 * and the variance. A form fitted to ln f gets + 2 Σ ln f, the Jacobian of the logarithm, so that all
 * forms are judged as densities of the same strengths in MPa. Null with too few blocks, or where the
 * residuals are rounding error (the criterion then has no floor). Weights add − Σ ln w.
 * Source: Hurvich & Tsai 1989 for the correction; the Jacobian term after Akaike (from memory).
 */
export function correctedAic(
  facts: StrengthFormFacts,
  solved: LeastSquaresFit,
  used: readonly SpecimenRecord[],
  weights: readonly number[],
): number | null {
  const n = used.length;
  const k = solved.coefficients.length + 1;
  const size = solved.fitted.reduce((sum, value) => sum + value * value, 0);
  if (n - k - 1 <= 0 || solved.residualSumOfSquares <= 1e-24 * size) return null;
  const jacobian =
    facts.strengthScale === "logarithm"
      ? 2 * used.reduce((sum, { strengthMpa }) => sum + Math.log(strengthMpa), 0)
      : 0;
  const deviance =
    n * (Math.log((2 * Math.PI * solved.residualSumOfSquares) / n) + 1) -
    weights.reduce((sum, weight) => sum + Math.log(weight), 0);
  return deviance + jacobian + 2 * k + (2 * k * (k + 1)) / (n - k - 1);
}
