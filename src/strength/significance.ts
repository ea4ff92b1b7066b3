import { fCdf } from "../numerics/distributions.js";

/** Usual level of a test: common practice, no source. */
export const LEVEL = 0.05;

/**
 * Chance of an F at least so large: by the F of the exchanged ratio, which keeps its digits where the
 * chance is tiny.
 */
export function upperTailF(fValue: number, degreesAbove: number, degreesBelow: number): number {
  return fValue > 0 ? fCdf(1 / fValue, degreesBelow, degreesAbove) : 1;
}
