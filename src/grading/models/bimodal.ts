import { normalCdf } from "../../numerics/distributions.js";
import { say } from "../../words/message.js";
import { type GradingModel, sizeNear } from "./gradingModel.js";
import { fredlund, normalDensity } from "./unimodal.js";

/**
 * Two lognormal gradings mixed, for gap-graded soils: 100 (w Φ(ln(d / d1) / s1) + (1 − w) Φ(ln(d / d2) / s2)).
 *
 * @example
 * bimodalLognormal.evaluate(0.1, [0.4, 0.1, 1, 1000, 1]) // => 20
 */
export const bimodalLognormal: GradingModel = {
  name: "bimodal-lognormal",
  title: say`Bimodal lognormal`,
  parameters: [
    { name: "fineShare", unit: "", scale: "plain", lower: 0.001, upper: 0.999 },
    { name: "fineMedian", unit: "mm", scale: "logarithm", lower: 1e-6, upper: 1e4 },
    { name: "fineSpread", unit: "", scale: "plain", lower: 0.05, upper: 10 },
    { name: "coarseMedian", unit: "mm", scale: "logarithm", lower: 1e-6, upper: 1e4 },
    { name: "coarseSpread", unit: "", scale: "plain", lower: 0.05, upper: 10 },
  ],
  evaluate(sizeMm, [share, median1, spread1, median2, spread2], slopes) {
    const z1 = Math.log(sizeMm / median1) / spread1;
    const z2 = Math.log(sizeMm / median2) / spread2;
    const [fine, coarse] = [normalCdf(z1), normalCdf(z2)];
    if (slopes) {
      const steep1 = (-100 * share * normalDensity(z1)) / spread1;
      const steep2 = (-100 * (1 - share) * normalDensity(z2)) / spread2;
      slopes.set([
        100 * (fine - coarse),
        steep1 / median1,
        steep1 * z1,
        steep2 / median2,
        steep2 * z2,
      ]);
    }
    return 100 * (share * fine + (1 - share) * coarse);
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
  source: say`Bimodal lognormal: Buchan et al. (named there, read); equation from memory`,
};

const [A, N, M, RESIDUAL] = fredlund.parameters;

/**
 * Two-mode curve of Fredlund et al. (2000): two of their one-mode curves mixed by a share, with one
 * residual size for both. Eight parameters: only for gap-graded soils with many points.
 *
 * @example
 * fredlundBimodal.evaluate(0.063, [0.5, 0.5, 2, 0.8, 0.5, 2, 0.8, 0.001]) // => 31.8147
 */
export const fredlundBimodal: GradingModel = {
  name: "fredlund-bimodal",
  title: say`Fredlund two-mode`,
  parameters: [
    { name: "fineShare", unit: "", scale: "plain", lower: 0.001, upper: 0.999 },
    { ...A, name: "fineA" },
    { ...N, name: "fineN" },
    { ...M, name: "fineM" },
    { ...A, name: "coarseA" },
    { ...N, name: "coarseN" },
    { ...M, name: "coarseM" },
    RESIDUAL,
  ],
  evaluate(sizeMm, [share, a1, n1, m1, a2, n2, m2, residualMm], slopes) {
    const [ofFine, ofCoarse] = slopes ? [new Float64Array(4), new Float64Array(4)] : [];
    const fine = fredlund.evaluate(sizeMm, [a1, n1, m1, residualMm], ofFine);
    const coarse = fredlund.evaluate(sizeMm, [a2, n2, m2, residualMm], ofCoarse);
    const rest = 1 - share;
    if (slopes && ofFine && ofCoarse) {
      slopes[0] = fine - coarse;
      for (let j = 0; j < 3; j++) {
        slopes[1 + j] = share * ofFine[j];
        slopes[4 + j] = rest * ofCoarse[j];
      }
      slopes[7] = share * ofFine[3] + rest * ofCoarse[3];
    }
    return share * fine + rest * coarse;
  },
  starts: (curve) =>
    [0.25, 0.4, 0.55, 0.75].flatMap((share) =>
      [1.5, 3].flatMap((n) =>
        [0.7, 1.5].map((m) => [
          share,
          sizeNear(curve, 70 * share),
          n,
          m,
          sizeNear(curve, 100 * share + 70 * (1 - share)),
          n,
          m,
          0.001,
        ]),
      ),
    ),
  source: say`Fredlund et al. 2000 (abstract read, which names a bimodal form); equation from memory`,
};
