import { powerOf } from "../numerics/powerOf.js";

/** Range of blows within which one point may stand for the flow line. */
const FEWEST_BLOWS = 20;
const MOST_BLOWS = 30;
const EXPONENT = 0.121;

/**
 * Liquid limit from a single point of the cup.
 *
 * Formula: LL = w (N / 25)^0.121 (limecalculator.com, read; Sowers 1965 has 0.12, read in the help of
 * the R package soilphysics). Between 20 and 30 blows the exponents differ by less than 0.1 % of LL.
 * It takes the slope of the flow line for known, so several points are better.
 *
 * @returns percent, or `undefined` outside 20 to 30 blows.
 * @throws RangeError where a value is not positive.
 *
 * @example
 * onePointLiquidLimit(40, 22) // => 39.39
 * onePointLiquidLimit(40, 12) // => undefined
 */
export function onePointLiquidLimit(waterContentPct: number, blows: number): number | undefined {
  for (const [name, value] of Object.entries({ waterContentPct, blows })) {
    if (!(value > 0)) throw new RangeError(`invalid \`${name}\`: ${value}; expected above 0`);
  }
  if (blows < FEWEST_BLOWS || blows > MOST_BLOWS) return undefined;
  return waterContentPct * powerOf(blows / 25, EXPONENT);
}
