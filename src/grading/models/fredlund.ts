import { powerOf } from "../../numerics/powerOf.js";
import { phrase } from "../../words/say.js";
import type { GradingModel } from "./gradingModel.js";
import { sizeNear } from "./sizeNear.js";

/** Smallest grain: a fixed value, because no sedimentation test measures it. */
const SMALLEST_MM = 1e-4;

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
  evaluate(sizeMm, [a, n, m, residualMm]) {
    if (sizeMm <= SMALLEST_MM) return 0;
    const fine = Math.log1p(residualMm / sizeMm) / Math.log1p(residualMm / SMALLEST_MM);
    return 100 * powerOf(Math.log(Math.E + powerOf(a / sizeMm, n)), -m) * (1 - powerOf(fine, 7));
  },
  slopes(sizeMm, [a, n, m, residualMm]) {
    const power = powerOf(a / sizeMm, n);
    if (sizeMm <= SMALLEST_MM || !Number.isFinite(power)) return [0, 0, 0, 0];
    const [above, below] = [Math.log1p(residualMm / sizeMm), Math.log1p(residualMm / SMALLEST_MM)];
    const ratio = above / below;
    const level = Math.log(Math.E + power);
    const main = 100 * powerOf(level, -m);
    const cut = 1 - powerOf(ratio, 7);
    const steep = (-m * main * cut * power) / (level * (Math.E + power));
    const ratioSlope = (1 / (sizeMm + residualMm) - ratio / (SMALLEST_MM + residualMm)) / below;
    return [
      (steep * n) / a,
      steep * Math.log(a / sizeMm),
      -main * cut * Math.log(level),
      -7 * main * powerOf(ratio, 6) * ratioSlope,
    ];
  },
  starts: (curve) =>
    [60, 85].flatMap((pct) =>
      [0.8, 2, 4].flatMap((n) => [0.4, 1, 2].map((m) => [sizeNear(curve, pct), n, m, 0.001])),
    ),
  source: phrase`Fredlund et al. 2000; five-parameter unimodal form named in its abstract (read), equation from memory`,
};
