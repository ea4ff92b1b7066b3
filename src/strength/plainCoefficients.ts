import type { LeastSquaresFit } from "../numerics/leastSquaresFit.js";
import { tCdf } from "../numerics/tCdf.js";
import { tQuantile } from "../numerics/tQuantile.js";
import { type ContentBasis, toPlainCoefficients } from "./contentBasis.js";
import type { StrengthCoefficient } from "./strengthFit.js";
import type { StrengthFormFacts } from "./strengthForm.js";

/** Coefficients on c or ln c, as the formula names them: value T b, variance T C Tᵀ. */
export function plainCoefficients(
  facts: StrengthFormFacts,
  basis: ContentBasis,
  solved: LeastSquaresFit,
  confidence: number,
): StrengthCoefficient[] {
  const dot = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, value, index) => sum + value * b[index], 0);
  const t = tQuantile((1 + confidence) / 2, solved.degreesOfFreedom);
  return toPlainCoefficients(facts, basis).map((turn, index) => {
    const value = dot(turn, solved.coefficients);
    const standardError = Math.sqrt(
      dot(
        turn,
        solved.covariance.map((row) => dot(turn, row)),
      ),
    );
    return {
      name: facts.coefficientNames[index],
      value,
      standardError,
      low: value - t * standardError,
      high: value + t * standardError,
      // An exact fit leaves no doubt of a coefficient that differs from zero.
      pValue:
        standardError > 0
          ? 2 * tCdf(-Math.abs(value / standardError), solved.degreesOfFreedom)
          : Number(value === 0),
    };
  });
}
