import type { GradingBandPoint } from "../grading/resampleGrading.js";
import { say } from "../words/say.js";
import type { ChartBand } from "./chartBand.js";

/**
 * The doubt about a fitted model as a band for `gradingChart` or `modelChart`.
 *
 * @param points of `resampleGrading`.
 * @param coverage as it was given there; default 0.95.
 * @param aboutCurve which curve of the chart the model is, counted from 0; default 1, as in `modelChart`.
 * @throws RangeError where the coverage is not between 0 and 1.
 *
 * @example
 * modelBand("lognormal", [{ sizeMm: 1, fittedPct: 50, lowPct: 48, highPct: 53 }]).name // => "lognormal: 95 % of its resampled fits"
 */
export function modelBand(
  name: string,
  points: readonly GradingBandPoint[],
  coverage = 0.95,
  aboutCurve = 1,
): ChartBand {
  if (!(coverage > 0 && coverage < 1)) {
    throw new RangeError(`invalid \`coverage\`: ${coverage}; expected between 0 and 1`);
  }
  return {
    name: say`${name}: ${Math.round(100 * coverage)} % of its resampled fits`,
    aboutCurve,
    points: points.map(({ sizeMm, lowPct, highPct }) => ({ sizeMm, lowPct, highPct })),
  };
}
