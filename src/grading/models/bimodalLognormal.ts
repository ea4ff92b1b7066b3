import { normalCdf } from "../../numerics/normalCdf.js";
import { phrase } from "../../words/say.js";
import type { GradingModel } from "./gradingModel.js";
import { normalDensity } from "./normalDensity.js";
import { sizeNear } from "./sizeNear.js";

/**
 * Two lognormal gradings mixed, for gap-graded soils: 100 (w Φ(ln(d / d1) / s1) + (1 − w) Φ(ln(d / d2) / s2)).
 *
 * @example
 * bimodalLognormal.evaluate(0.1, [0.4, 0.1, 1, 1000, 1]) // => 20
 */
export const bimodalLognormal: GradingModel = {
  name: "bimodal-lognormal",
  title: phrase`Bimodal lognormal`,
  parameters: [
    { name: "fineShare", unit: "", scale: "plain", lower: 0.001, upper: 0.999 },
    { name: "fineMedian", unit: "mm", scale: "logarithm", lower: 1e-6, upper: 1e4 },
    { name: "fineSpread", unit: "", scale: "plain", lower: 0.05, upper: 10 },
    { name: "coarseMedian", unit: "mm", scale: "logarithm", lower: 1e-6, upper: 1e4 },
    { name: "coarseSpread", unit: "", scale: "plain", lower: 0.05, upper: 10 },
  ],
  evaluate: (sizeMm, [share, median1, spread1, median2, spread2]) =>
    100 *
    (share * normalCdf(Math.log(sizeMm / median1) / spread1) +
      (1 - share) * normalCdf(Math.log(sizeMm / median2) / spread2)),
  slopes(sizeMm, [share, median1, spread1, median2, spread2]) {
    const z1 = Math.log(sizeMm / median1) / spread1;
    const z2 = Math.log(sizeMm / median2) / spread2;
    const steep1 = (-100 * share * normalDensity(z1)) / spread1;
    const steep2 = (-100 * (1 - share) * normalDensity(z2)) / spread2;
    return [
      100 * (normalCdf(z1) - normalCdf(z2)),
      steep1 / median1,
      steep1 * z1,
      steep2 / median2,
      steep2 * z2,
    ];
  },
  starts: (curve) =>
    [0.2, 0.35, 0.5, 0.65, 0.8].flatMap((share) =>
      [0.7, 2].map((spread) => [
        share,
        sizeNear(curve, 50 * share),
        spread,
        sizeNear(curve, 50 * (1 + share)),
        spread,
      ]),
    ),
  source: phrase`Bimodal lognormal: Buchan et al. (named there, read); equation from memory`,
};
