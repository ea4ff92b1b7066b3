import { join } from "node:path";
import { bench, describe } from "vitest";
import { blendChart } from "../../src/figures/blend/blendChart.js";
import { changeBench, newBench } from "../../src/page/bench.js";
import { chartSvg } from "../../src/page/chartSvg.js";
import { solveBench } from "../../src/page/solve.js";
import { openOnBench, tuneBlend, tuneMix } from "../../src/page/tune.js";
import { readStudy } from "../../src/study/readStudy.js";
import { EXAMPLES } from "../support/studyCopy.js";

// Aims: a move of a slider under 16 ms, the recipe when it rests under 50 ms, a study on the bench under 250 ms.

const { study: four, findings } = await readStudy(join(EXAMPLES, "reading-room"));
if (!four) throw new Error("reading-room has errors");
const [, , sand] = four.materials;
const fifth = { ...sand.config, id: "fifth", name: "Fifth material" };
const study = {
  ...four,
  config: { ...four.config, materials: [...four.config.materials, fifth] },
  materials: [...four.materials, { ...sand, config: fifth }],
};
const { open } = openOnBench(study, findings);
if (!open) throw new Error("the study cannot be opened");
const names = { name: "the study's mix", basis: "" };
const start = newBench(open.start);

describe("the mix page, five materials with 250 draws, warm", () => {
  let share = 55;
  bench("a move of a slider: blend, verdicts, strength and chart", () => {
    share = share > 50 ? share - 0.1 : 55;
    const { now } = changeBench(start, { kind: "share", index: 0, pct: share, during: true });
    const { blend, result } = tuneBlend(open, now);
    const components = result.materials.map(({ name, curve }) => ({ name, curve }));
    chartSvg(blendChart("Grading", blend, [], components), {
      widthPx: 640,
      heightPx: 400,
      locale: "en",
      idPrefix: "bench",
    });
  });

  const tuned = tuneBlend(open, open.start);
  bench("the recipe when it rests", () => {
    tuneMix(open, tuned, names);
  });

  bench("nearest to the target", () => {
    solveBench(open, open.start, "target");
  });

  bench("a study laid on the bench", () => {
    openOnBench(study, findings);
  });
});
