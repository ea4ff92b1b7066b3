import { phrase } from "../../words/say.js";
import { fredlundPassing } from "./fredlundPassing.js";
import { fredlundSlopes } from "./fredlundSlopes.js";
import type { GradingModel } from "./gradingModel.js";
import { sizeNear } from "./sizeNear.js";

/**
 * Unimodal curve of Fredlund et al. (2000):
 * 100 (ln(e + (a / d)^n))^−m (1 − (ln(1 + dr / d) / ln(1 + dr / dm))^7), with dm fixed at 0.0001 mm.
 *
 * @example
 * fredlund.evaluate(0.063, [0.5, 2, 0.8, 0.001]) // => 31.8147
 */
export const fredlund: GradingModel = {
  name: "fredlund",
  title: phrase`Fredlund unimodal`,
  parameters: [
    { name: "a", unit: "mm", scale: "logarithm", lower: 1e-5, upper: 1e4 },
    { name: "n", unit: "", scale: "plain", lower: 0.05, upper: 20 },
    { name: "m", unit: "", scale: "plain", lower: 0.02, upper: 20 },
    { name: "residualSize", unit: "mm", scale: "logarithm", lower: 1e-6, upper: 10 },
  ],
  evaluate: (sizeMm, values) => fredlundPassing(sizeMm, values[0], values[1], values[2], values[3]),
  slopes: (sizeMm, values) =>
    fredlundSlopes(sizeMm, values[0], values[1], values[2], values[3]).slice(1),
  starts: (curve) =>
    [60, 85].flatMap((pct) =>
      [0.8, 2, 4].flatMap((n) => [0.4, 1, 2].map((m) => [sizeNear(curve, pct), n, m, 0.001])),
    ),
  source: phrase`Fredlund et al. 2000; five-parameter unimodal form named in its abstract (read), equation from memory`,
};
