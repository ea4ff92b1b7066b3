import { phrase } from "../../words/say.js";
import { fredlund } from "./fredlund.js";
import { fredlundPassing } from "./fredlundPassing.js";
import { fredlundSlopes } from "./fredlundSlopes.js";
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
  evaluate: (sizeMm, values) =>
    values[0] * fredlundPassing(sizeMm, values[1], values[2], values[3], values[7]) +
    (1 - values[0]) * fredlundPassing(sizeMm, values[4], values[5], values[6], values[7]),
  slopes(sizeMm, values) {
    const share = values[0];
    const rest = 1 - share;
    const fine = fredlundSlopes(sizeMm, values[1], values[2], values[3], values[7]);
    const coarse = fredlundSlopes(sizeMm, values[4], values[5], values[6], values[7]);
    return [
      fine[0] - coarse[0],
      share * fine[1],
      share * fine[2],
      share * fine[3],
      rest * coarse[1],
      rest * coarse[2],
      rest * coarse[3],
      share * fine[4] + rest * coarse[4],
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
