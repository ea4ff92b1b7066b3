import { expect, it } from "vitest";
import { fitGrading } from "../../src/grading/models/fit.js";
import { GRADING_MODELS } from "../../src/grading/models/gradingModels.js";
import { resampleGrading } from "../../src/grading/uncertainty/fitBand.js";
import { createRandom } from "../../src/numerics/random.js";
import scipy from "../reference/gradingScipy.json" with { type: "json" };
import { curveOf } from "./gradingCases.js";

it("bands of 95 % hold the truth about 95 times in 100", () => {
  const truth = [0.12, 2];
  let held = 0;
  for (let seed = 1; seed <= 200; seed++) {
    const random = createRandom(seed);
    const pairs = scipy.sizesMm.map((size): [number, number] => [
      size,
      GRADING_MODELS.lognormal.evaluate(size, truth) + 0.6 * random.normal(),
    ]);
    const noisy = fitGrading({ points: curveOf(...pairs).points }, "lognormal");
    const [band] = resampleGrading(noisy, { sizesMm: [0.1], seed });
    const true50 = GRADING_MODELS.lognormal.evaluate(0.1, truth);
    if (band.lowPct <= true50 && true50 <= band.highPct) held++;
  }
  // 200 × 0.95 = 190; a t quantile in place of a normal one would add a little.
  expect(held).toBeGreaterThanOrEqual(177);
  expect(held).toBeLessThan(200);
});
