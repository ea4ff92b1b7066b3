import { powerOf } from "../../numerics/powerOf.js";
import { phrase } from "../../words/say.js";
import type { GradingModel } from "./gradingModel.js";
import { sizeNear } from "./sizeNear.js";
import { straightLine } from "./straightLine.js";

/**
 * Power curve with a top size: 100 (d / D)^n up to D, 100 beyond. With n = 0.5 it is the curve that
 * Fuller and Thompson (1907) gave for dense concrete aggregate.
 *
 * @example
 * power.evaluate(5, [20, 0.5]) // => 50
 */
export const power: GradingModel = {
  name: "power",
  title: phrase`Power curve (Talbot)`,
  parameters: [
    { name: "topSize", unit: "mm", scale: "logarithm", lower: 1e-3, upper: 1e3 },
    { name: "exponent", unit: "", scale: "plain", lower: 0.01, upper: 5 },
  ],
  evaluate: (sizeMm, [topSizeMm, exponent]) =>
    sizeMm >= topSizeMm ? 100 : 100 * powerOf(sizeMm / topSizeMm, exponent),
  slopes(sizeMm, [topSizeMm, exponent]) {
    if (sizeMm >= topSizeMm) return [0, 0];
    const passing = 100 * powerOf(sizeMm / topSizeMm, exponent);
    return [(-exponent * passing) / topSizeMm, passing * Math.log(sizeMm / topSizeMm)];
  },
  starts(curve) {
    const line = straightLine(
      curve.points
        .filter(({ passingPct }) => passingPct > 1 && passingPct < 99.5)
        .map(({ sizeMm, passingPct }) => ({ x: Math.log(sizeMm), y: Math.log(passingPct / 100) })),
    );
    const top = sizeNear(curve, 100);
    const slope = line && line.slope > 0.02 ? line.slope : 0.3;
    const lineTop = line && line.slope > 0.02 ? Math.exp(-line.intercept / line.slope) : top;
    return [
      [lineTop, slope],
      [top, slope],
      [sizeNear(curve, 95), slope],
    ];
  },
  source: phrase`Equation with n from 0.3 to 0.6: Das, Fundamentals of Geotechnical Engineering, 5th ed., problem 2.15 (read); Talbot and Richart 1923, from memory`,
};
