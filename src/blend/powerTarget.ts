import { powerOf } from "../numerics/powerOf.js";
import type { TargetPoint } from "./blendMaterial.js";

/**
 * The power curve that packs grains densely, at the sizes asked for.
 *
 * Formula: passing = 100 (size / topSize)^exponent, and 100 at or above the top size.
 *
 * @param exponent more than 0, at most 1. Fuller and Thompson's is 0.5; for earth 0.20 to 0.25 is told
 * (from memory, no source read), because the binder must be more than in concrete.
 * Source: formula and range 0.3 to 0.6 for concrete in Das, Fundamentals of Geotechnical Engineering,
 * 5th ed., problem 2.15, as reproduced (read).
 * @throws RangeError where exponent or a size is out of range.
 *
 * @example
 * powerTarget(0.5, 20, [5, 20]) // => [{ sizeMm: 5, passingPct: 50 }, { sizeMm: 20, passingPct: 100 }]
 */
export function powerTarget(
  exponent: number,
  topSizeMm: number,
  sizesMm: readonly number[],
): TargetPoint[] {
  if (!(exponent > 0 && exponent <= 1)) {
    throw new RangeError(`invalid \`exponent\`: ${exponent}; expected more than 0, at most 1`);
  }
  if (!(topSizeMm > 0)) {
    throw new RangeError(`invalid \`topSizeMm\`: ${topSizeMm}; expected more than 0`);
  }
  return sizesMm.map((sizeMm, index) => {
    if (!(sizeMm > 0)) {
      throw new RangeError(`invalid \`sizesMm[${index}]\`: ${sizeMm}; expected more than 0`);
    }
    return { sizeMm, passingPct: 100 * Math.min(1, powerOf(sizeMm / topSizeMm, exponent)) };
  });
}
