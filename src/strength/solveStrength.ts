import { leastSquares } from "../numerics/leastSquares.js";
import type { LeastSquaresFit } from "../numerics/leastSquaresFit.js";
import { relativeSpread, type StrengthSpread } from "./strengthSpread.js";

const ROUNDS = 100;

export interface SolvedStrength {
  readonly solved: LeastSquaresFit;
  /** One a block; 1 for all where the scatter is even. */
  readonly weights: readonly number[];
  /** The strength at which the residual standard deviation holds. */
  readonly reference: number;
  readonly converged: boolean;
}

/**
 * Least squares, or, for scatter that grows with strength, least squares with weights
 * (reference/fitted)², renewed until the fitted values stand still.
 */
export function solveStrength(
  rows: readonly (readonly number[])[],
  response: readonly number[],
  spread: StrengthSpread,
): SolvedStrength {
  const reference = response.reduce((sum, value) => sum + value, 0) / response.length;
  let weights = response.map(() => 1);
  let solved = leastSquares(rows, response);
  if (spread === "even" || solved.status !== "ok") {
    return { solved, weights, reference, converged: true };
  }
  for (let round = 0; round < ROUNDS; round += 1) {
    const before = solved.fitted;
    weights = before.map((value) => 1 / relativeSpread(spread, value, reference) ** 2);
    solved = leastSquares(rows, response, { weights });
    const moved = Math.max(...solved.fitted.map((value, i) => Math.abs(value - before[i])));
    if (moved <= 1e-11 * Math.abs(reference)) {
      return { solved, weights, reference, converged: true };
    }
  }
  return { solved, weights, reference, converged: false };
}
