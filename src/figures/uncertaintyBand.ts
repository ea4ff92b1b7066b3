import type { GradingCurve } from "../grading/gradingCurve.js";
import { passingAtSize } from "../grading/passingAtSize.js";
import { say } from "../words/say.js";
import type { ChartBand } from "./chartBand.js";

/** Half of a 95 % interval in standard errors of a normal distribution. */
const HALF_95 = 1.96;

/**
 * The doubt about a measured curve as a band for `gradingChart`: passing ± 1.96 standard deviations at
 * each of its sizes, kept within 0 and 100 %.
 *
 * @param spread of the stated reading errors: `uncertainty.spread` of a material, `blendSpread` of a result.
 * @param aboutCurve which curve of the chart it belongs to, counted from 0; default 0.
 * @throws RangeError where the spread names a size that the curve does not reach.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.063, passingPct: 30, origin: "sieve" }, { sizeMm: 2, passingPct: 99, origin: "sieve" }] };
 * const band = uncertaintyBand("Site soil", curve, [{ sizeMm: 0.063, sdPct: 1 }, { sizeMm: 2, sdPct: 1 }]);
 * band.points // => [{ sizeMm: 0.063, lowPct: 28.04, highPct: 31.96 }, { sizeMm: 2, lowPct: 97.04, highPct: 100 }]
 */
export function uncertaintyBand(
  name: string,
  curve: GradingCurve,
  spread: readonly { readonly sizeMm: number; readonly sdPct: number }[],
  aboutCurve = 0,
): ChartBand {
  return {
    name: say`${name}: 95 % within the reading errors`,
    aboutCurve,
    points: spread.map(({ sizeMm, sdPct }) => {
      const passing = passingAtSize(curve, sizeMm);
      if (passing === undefined) {
        throw new RangeError(`invalid \`spread\`: ${sizeMm} mm; expected sizes of the curve`);
      }
      return {
        sizeMm,
        lowPct: Math.max(0, passing - HALF_95 * sdPct),
        highPct: Math.min(100, passing + HALF_95 * sdPct),
      };
    }),
  };
}
