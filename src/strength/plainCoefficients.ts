import type { LeastSquaresFit } from "../numerics/leastSquaresFit.js";
import { tCdf } from "../numerics/tCdf.js";
import { tQuantile } from "../numerics/tQuantile.js";
import { type ContentBasis, toPlainCoefficients } from "./contentBasis.js";
import type { StrengthDesign } from "./strengthDesign.js";
import type { StrengthCoefficient } from "./strengthFit.js";
import type { StrengthFormFacts } from "./strengthForm.js";

/**
 * Coefficients on c or ln c, as the formula names them, then those of covariates and batches in their own
 * units: value T b, variance T C Tᵀ.
 */
export function plainCoefficients(
  facts: StrengthFormFacts,
  basis: ContentBasis,
  solved: LeastSquaresFit,
  confidence: number,
  { termNames, termScales }: Pick<StrengthDesign, "termNames" | "termScales">,
): StrengthCoefficient[] {
  const dot = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, value, index) => sum + value * b[index], 0);
  const t = tQuantile((1 + confidence) / 2, solved.degreesOfFreedom);
  const names = [...facts.coefficientNames, ...termNames];
  const curve = toPlainCoefficients(facts, basis).map((turn) => [
    ...turn,
    ...termNames.map(() => 0),
  ]);
  const terms = termScales.map((scale, index) =>
    names.map((_, column) => (column === curve.length + index ? scale : 0)),
  );
  return [...curve, ...terms].map((turn, index) => {
    const value = dot(turn, solved.coefficients);
    const standardError = Math.sqrt(
      dot(
        turn,
        solved.covariance.map((row) => dot(turn, row)),
      ),
    );
    return {
      name: names[index],
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
