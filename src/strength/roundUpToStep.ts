import { checkPositive } from "./checkOption.js";

/** Root finding ends within this much of the true content, percent points. */
const ROOT_ERROR_PCT = 1e-9;

/**
 * Rounds a cement content up, never down, to a step that can be weighed out on site.
 *
 * @param stepPct step in percent points, for example 0.1, 0.25 or 0.5.
 * @throws RangeError where the step is not above 0. Source: own arithmetic.
 *
 * @example
 * roundUpToStep(7.31, 0.25) // => 7.5
 * roundUpToStep(7.5, 0.5) // => 7.5
 */
export function roundUpToStep(cementPct: number, stepPct: number): number {
  checkPositive("stepPct", stepPct);
  const steps = Math.ceil((cementPct - ROOT_ERROR_PCT) / stepPct);
  // 83 × 0.1 is 8.3 only after the binary remainder is taken off.
  return Number((steps * stepPct).toFixed(10));
}
