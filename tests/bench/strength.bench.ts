import { bench, describe } from "vitest";
import { createRandom } from "../../src/numerics/random.js";
import { batchScatter } from "../../src/strength/batches.js";
import { includedSpecimens } from "../../src/strength/includedBlocks.js";
import { leastCement } from "../../src/strength/leastCement.js";
import { testProgramme } from "../../src/strength/programme.js";
import { strengthBands } from "../../src/strength/regression/bounds.js";
import { fitStrength } from "../../src/strength/regression/fit.js";
import { compareModels } from "../../src/strength/regression/modelComparison.js";
import { residualChecks } from "../../src/strength/regression/residuals.js";
import { robustStrength } from "../../src/strength/regression/robustFit.js";

const random = createRandom(60);
const blocks = Array.from({ length: 60 }, (_, index) => {
  const cementPct = 4 + 1.5 * (index % 5);
  const strengthMpa = 0.3 + 0.35 * cementPct + 0.25 * random.normal();
  const batch = `${cementPct}-${index % 2}`;
  return { id: `B${index}`, batch, cementPct, strengthMpa, ageDays: 28, row: index + 2 };
});
const fit = fitStrength(blocks, { model: "linear", ageDays: 28 });

// Beside `tests/reference/scripts/strengthStatsmodels.py time`: OLS and the bands of mean and
// prediction at 61 contents, which ours gives together with the tolerance bound.
describe("sixty blocks", () => {
  bench("fit a line, with all bands at 61 contents", () => {
    strengthBands(fitStrength(blocks, { model: "linear", ageDays: 28 }));
  });
  bench("fit a line", () => {
    fitStrength(blocks, { model: "linear", ageDays: 28 });
  });
  bench("all bands at 61 contents", () => {
    strengthBands(fit);
  });
  bench("fit with weights renewed", () => {
    fitStrength(blocks, { model: "linear", ageDays: 28, variance: "proportional" });
  });
  bench("split and check", () => {
    includedSpecimens({ file: "blocks.csv", specimens: blocks });
  });
  bench("compare four models", () => {
    compareModels(blocks, { ageDays: 28 });
  });
  bench("least cement by the tolerance bound", () => {
    leastCement(fit, { strengthMpa: 2, statistic: "tolerance", confidence: 0.95 });
  });
  bench("checks, robust fit and batches", () => {
    residualChecks(fit);
    robustStrength(fit);
    batchScatter(blocks, { ageDays: 28 });
  });
  bench("plan a programme", () => {
    testProgramme({
      aim: { kind: "difference", differenceMpa: 0.3 },
      ...{ contentsPct: [4, 6, 8, 10], sdMpa: 0.25, ageDays: 28 },
    });
  });
});
