import { powerOf } from "../../numerics/powerOf.js";
import { phrase } from "../../words/say.js";
import type { GradingModel } from "./gradingModel.js";
import { sizeNear } from "./sizeNear.js";
import { straightLine } from "./straightLine.js";

/**
 * Weibull (Rosin–Rammler) grading: 100 (1 − exp(−(d / d63)^n)); at d63 63.2 % pass.
 *
 * @example
 * weibull.evaluate(0.5, [0.5, 0.9]) // => 63.2121
 */
export const weibull: GradingModel = {
  name: "weibull",
  title: phrase`Weibull (Rosin–Rammler)`,
  parameters: [
    { name: "size63", unit: "mm", scale: "logarithm", lower: 1e-6, upper: 1e4 },
    { name: "exponent", unit: "", scale: "plain", lower: 0.02, upper: 20 },
  ],
  evaluate: (sizeMm, [size63Mm, exponent]) =>
    -100 * Math.expm1(-powerOf(sizeMm / size63Mm, exponent)),
  slopes(sizeMm, [size63Mm, exponent]) {
    const power = powerOf(sizeMm / size63Mm, exponent);
    const steep = 100 * Math.exp(-power) * power;
    // A power beyond the largest number has long since flattened the curve.
    if (!Number.isFinite(steep)) return [0, 0];
    return [(-steep * exponent) / size63Mm, steep * Math.log(sizeMm / size63Mm)];
  },
  starts(curve) {
    const line = straightLine(
      curve.points
        .filter(({ passingPct }) => passingPct > 0.5 && passingPct < 99.5)
        .map(({ sizeMm, passingPct }) => ({
          x: Math.log(sizeMm),
          y: Math.log(-Math.log1p(-passingPct / 100)),
        })),
    );
    return line && line.slope > 0
      ? [[Math.exp(-line.intercept / line.slope), line.slope]]
      : [[sizeNear(curve, 63.2), 1]];
  },
  source: phrase`R = exp(−(d/k)^n): codecogs (read); regression form: Doll 2017 (read)`,
};
