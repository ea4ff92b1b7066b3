import type { SpecimenRecord } from "../lab/specimenRecord.js";
import type { LeastSquaresFit } from "../numerics/leastSquaresFit.js";
import type { StrengthFormFacts } from "./strengthForm.js";

/** A leverage this near 1 leaves nothing of the block's own residual. */
const FULL_LEVERAGE = 1 - 1e-10;

/**
 * Root of the mean of (f − prediction without that block)², MPa, by the identity e/(1 − h): no
 * refitting. For a form in ln f the prediction is carried back to MPa before the difference.
 */
export function leaveOneOutError(
  facts: StrengthFormFacts,
  solved: LeastSquaresFit,
  used: readonly SpecimenRecord[],
): number | null {
  let sum = 0;
  for (let index = 0; index < used.length; index += 1) {
    if (solved.leverages[index] > FULL_LEVERAGE) return null;
    const deleted = solved.residuals[index] / (1 - solved.leverages[index]);
    const { strengthMpa } = used[index];
    const error =
      facts.strengthScale === "logarithm"
        ? strengthMpa - Math.exp(Math.log(strengthMpa) - deleted)
        : deleted;
    sum += error * error;
  }
  return Math.sqrt(sum / used.length);
}
