import { bench, describe } from "vitest";
import { constrainedLeastSquares } from "../../src/numerics/constrainedLeastSquares.js";
import { leastSquares } from "../../src/numerics/leastSquares.js";
import { levenbergMarquardt } from "../../src/numerics/levenbergMarquardt.js";
import { createRandom } from "../../src/numerics/random.js";

const random = createRandom(4);
const size = Array.from({ length: 20 }, (_, i) => 0.002 * 40_000 ** (i / 19));

/** Five made-up gradings and a power-law target, the shape of the blending problem. */
const blend = {
  matrix: size.map((d) =>
    [0.01, 0.3, 1, 5, 20].map((middle) => 100 / (1 + (middle / d) ** (1 + random.uniform()))),
  ),
  target: size.map((d) => 100 * (d / 80) ** 0.5),
  equalities: { matrix: [[1, 1, 1, 1, 1]], target: [1] },
  lower: [0, 0, 0, 0, 0],
  upper: [1, 1, 1, 1, 1],
};

const observed = size.map((d) => 100 / (1 + (2 / d) ** 1.2) + random.normal());

describe("numerics", () => {
  bench("least squares, 5 columns by 20 rows", () => {
    leastSquares(blend.matrix, blend.target);
  });

  bench("constrained least squares, 5 unknowns by 20 rows, sum to one", () => {
    constrainedLeastSquares(blend);
  });

  bench("Levenberg–Marquardt, 2 parameters by 20 points", () => {
    levenbergMarquardt({
      residuals: ([middle, slope]) =>
        size.map((d, i) => 100 / (1 + (middle / d) ** slope) - observed[i]),
      start: [1, 1],
      lower: [1e-3, 0.1],
      upper: [100, 10],
    });
  });
});
