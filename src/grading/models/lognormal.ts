import { normalCdf } from "../../numerics/normalCdf.js";
import { normalQuantile } from "../../numerics/normalQuantile.js";
import { phrase } from "../../words/say.js";
import type { GradingModel } from "./gradingModel.js";
import { normalDensity } from "./normalDensity.js";
import { sizeNear } from "./sizeNear.js";
import { straightLine } from "./straightLine.js";

/**
 * Lognormal grading: 100 Φ(ln(d / d50) / s), s the standard deviation of ln d.
 *
 * @example
 * lognormal.evaluate(0.1, [0.1, 1.5]) // => 50
 * lognormal.evaluate(0.063, [0.1, 1.5]) // => 37.9032
 */
export const lognormal: GradingModel = {
  name: "lognormal",
  title: phrase`Lognormal`,
  parameters: [
    { name: "median", unit: "mm", scale: "logarithm", lower: 1e-6, upper: 1e4 },
    { name: "spread", unit: "", scale: "plain", lower: 0.02, upper: 15 },
  ],
  evaluate: (sizeMm, [medianMm, spread]) => 100 * normalCdf(Math.log(sizeMm / medianMm) / spread),
  slopes(sizeMm, [medianMm, spread]) {
    const z = Math.log(sizeMm / medianMm) / spread;
    const steep = (-100 * normalDensity(z)) / spread;
    return [steep / medianMm, steep * z];
  },
  starts(curve) {
    const line = straightLine(
      curve.points
        .filter(({ passingPct }) => passingPct > 0.5 && passingPct < 99.5)
        .map(({ sizeMm, passingPct }) => ({
          x: Math.log(sizeMm),
          y: normalQuantile(passingPct / 100),
        })),
    );
    if (line && line.slope > 0) return [[Math.exp(-line.intercept / line.slope), 1 / line.slope]];
    const spread = Math.log(sizeNear(curve, 84) / sizeNear(curve, 16)) / 2 || 1;
    return [[sizeNear(curve, 50), spread]];
  },
  source: phrase`Buchan et al. (in its list of forms, read); equation from memory`,
};
