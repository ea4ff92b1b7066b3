import { bench, describe } from "vitest";
import { createRandom } from "../../src/numerics/random.js";
import { compareForms } from "../../src/strength/compareForms.js";
import { fitStrength } from "../../src/strength/fitStrength.js";
import { includedSpecimens } from "../../src/strength/includedSpecimens.js";
import { leastCement } from "../../src/strength/leastCement.js";
import { strengthBands } from "../../src/strength/strengthBands.js";

const random = createRandom(60);
const blocks = Array.from({ length: 60 }, (_, index) => {
  const cementPct = 4 + 1.5 * (index % 5);
  const strengthMpa = 0.3 + 0.35 * cementPct + 0.25 * random.normal();
  return { id: `B${index}`, cementPct, strengthMpa, ageDays: 28, row: index + 2 };
});
const fit = fitStrength(blocks, { form: "linear", ageDays: 28 });

describe("sixty blocks", () => {
  bench("split and check", () => {
    includedSpecimens({ file: "blocks.csv", specimens: blocks });
  });
  bench("fit a line", () => {
    fitStrength(blocks, { form: "linear", ageDays: 28 });
  });
  bench("compare four forms", () => {
    compareForms(blocks, { ageDays: 28 });
  });
  bench("all bands at 61 contents", () => {
    strengthBands(fit);
  });
  bench("least cement by the tolerance bound", () => {
    leastCement(fit, { strengthMpa: 2, statistic: "tolerance", confidence: 0.95 });
  });
});
