import { phrase } from "../../words/say.js";
import { fredlund } from "./fredlund.js";
import type { GradingModel } from "./gradingModel.js";
import { sizeNear } from "./sizeNear.js";

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
  title: phrase`Fredlund two-mode`,
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
  evaluate: (sizeMm, [share, a1, n1, m1, a2, n2, m2, residualMm]) =>
    share * fredlund.evaluate(sizeMm, [a1, n1, m1, residualMm]) +
    (1 - share) * fredlund.evaluate(sizeMm, [a2, n2, m2, residualMm]),
  slopes(sizeMm, [share, a1, n1, m1, a2, n2, m2, residualMm]) {
    const [fine, coarse] = [
      [a1, n1, m1, residualMm],
      [a2, n2, m2, residualMm],
    ];
    const [fa, fn, fm, fr] = fredlund.slopes(sizeMm, fine);
    const [ca, cn, cm, cr] = fredlund.slopes(sizeMm, coarse);
    const rest = 1 - share;
    return [
      fredlund.evaluate(sizeMm, fine) - fredlund.evaluate(sizeMm, coarse),
      share * fa,
      share * fn,
      share * fm,
      rest * ca,
      rest * cn,
      rest * cm,
      share * fr + rest * cr,
    ];
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
  source: phrase`Fredlund et al. 2000: a bimodal form is named in its abstract (read); equation from memory`,
};
