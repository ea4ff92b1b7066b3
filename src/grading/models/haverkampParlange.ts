import { powerOf } from "../../numerics/powerOf.js";
import { phrase } from "../../words/say.js";
import type { GradingModel } from "./gradingModel.js";
import { sizeNear } from "./sizeNear.js";

/**
 * Curve of the Haverkamp–Parlange form: 100 (1 + (dg / d)^N)^−M.
 *
 * @example
 * haverkampParlange.evaluate(0.063, [0.1, 2.5, 0.2]) // => 75.1421
 */
export const haverkampParlange: GradingModel = {
  name: "haverkamp-parlange",
  title: phrase`Haverkamp–Parlange`,
  parameters: [
    { name: "dg", unit: "mm", scale: "logarithm", lower: 1e-6, upper: 1e4 },
    { name: "N", unit: "", scale: "plain", lower: 0.05, upper: 30 },
    { name: "M", unit: "", scale: "plain", lower: 0.005, upper: 30 },
  ],
  evaluate: (sizeMm, [dg, n, m]) => 100 * powerOf(1 + powerOf(dg / sizeMm, n), -m),
  slopes(sizeMm, [dg, n, m]) {
    const power = powerOf(dg / sizeMm, n);
    if (!Number.isFinite(power)) return [0, 0, 0];
    const passing = 100 * powerOf(1 + power, -m);
    const steep = (-m * passing * power) / (1 + power);
    return [(steep * n) / dg, steep * Math.log(dg / sizeMm), -passing * Math.log1p(power)];
  },
  starts: (curve) =>
    [40, 75].flatMap((pct) =>
      [0.7, 1.5, 4].flatMap((n) => [0.15, 0.5, 1.5].map((m) => [sizeNear(curve, pct), n, m])),
    ),
  source: phrase`Haverkamp and Parlange 1986, from memory`,
};
