import type { SpecimenRecord } from "../lab/specimenRecord.js";
import type { LeastSquaresFit } from "../numerics/leastSquaresFit.js";
import type { StrengthFitPoint } from "./strengthFit.js";
import type { StrengthFormFacts } from "./strengthForm.js";
import { studentisedResidual } from "./studentisedResidual.js";

/** Fitted value, residual, leverage, studentised residual and Cook's distance of each block. */
export function fitPoints(
  facts: StrengthFormFacts,
  solved: LeastSquaresFit,
  used: readonly SpecimenRecord[],
  weights: readonly number[],
): StrengthFitPoint[] {
  const { residuals, leverages, residualSumOfSquares, degreesOfFreedom, residualSd } = solved;
  return used.map(({ id, row, cementPct, strengthMpa }, index) => {
    const fitted = solved.fitted[index];
    const fittedMpa = facts.strengthScale === "logarithm" ? Math.exp(fitted) : fitted;
    const residual = residuals[index] * Math.sqrt(weights[index]);
    const leverage = leverages[index];
    const ratio = studentisedResidual({
      residual,
      leverage,
      residualSumOfSquares,
      degreesOfFreedom,
    });
    return {
      id,
      row,
      cementPct,
      strengthMpa,
      fittedMpa,
      residualMpa: strengthMpa - fittedMpa,
      leverage,
      studentised: ratio !== null && Number.isFinite(ratio) ? ratio : null,
      cooksDistance:
        ratio === null || residualSd === 0
          ? null
          : (residual ** 2 * leverage) /
            (solved.coefficients.length * residualSd ** 2 * (1 - leverage) ** 2),
    };
  });
}
