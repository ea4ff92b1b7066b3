import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { checkGuidance } from "../../src/guidance/check.js";
import { verdictProbability } from "../../src/guidance/probability.js";
import { guidanceEntry } from "../../src/guidance/published/recommendations.js";
import { type OpenStudy, openOnBench, tuneBlend, tuneMix } from "../../src/page/tune.js";
import type { PageState } from "../../src/page/view/app.js";
import { mixFacts } from "../../src/page/view/bucketCard.js";
import { inventedMark } from "../../src/page/view/keepView.js";
import { gradingFigure } from "../../src/page/view/plotCard.js";
import { moistureRange } from "../../src/page/view/sheetCard.js";
import { criterionLines, strengthSentence } from "../../src/page/view/verdictCard.js";
import { readStudy } from "../../src/study/readStudy.js";
import { render } from "../../src/words/render.js";
import { exampleResult } from "../support/exampleResult.js";
import { openBench } from "../support/openBench.js";
import { copyStudy, EXAMPLES } from "../support/studyCopy.js";

describe("the moisture beside the slider", () => {
  it.each([
    ["reading-room", "with its tolerance the mix may hold 7.7 to 10.7 %"],
    ["bus-shelter", "the compaction test allows 6.6 to 10.9 %"],
  ])("%s: the range that cards and tables print", async (name, words) => {
    const open = await openBench(name);
    expect(render(moistureRange({ open } as PageState)!)).toBe(words);
  });
});

describe("the chart of the blend", () => {
  it.each([
    ["reading-room", "fractions by ISO 14688-1"],
    ["bus-shelter", "fractions by ASTM D2487 sieves"],
  ])("%s: names fractions by the boundaries of the study's units", async (name, words) => {
    const open = await openBench(name);
    const figure = gradingFigure({ open, tuned: tuneBlend(open, open.start) } as PageState)!;
    expect(render(figure.altText)).toContain(words);
  });
});

describe("the lines of a verdict", () => {
  it("name each limit once, with an estimate where nothing was measured on the blend", async () => {
    const open = await openBench("reading-room");
    const tuned = tuneBlend(open, open.start);
    const entry = guidanceEntry("walker-2005")!;
    const curve = {
      points: [
        [0.002, 4.9],
        [0.063, 23],
        [2, 60],
        [20, 100],
      ].map(([sizeMm, passingPct]) => ({ sizeMm, passingPct, origin: "sieve" as const })),
    };
    const wetter = {
      points: curve.points.map((point) => ({
        ...point,
        passingPct: point.sizeMm === 0.002 ? 5.1 : point.passingPct,
      })),
    };
    const study = {
      name: "Blend",
      check: checkGuidance(curve, entry),
      probability: verdictProbability(curve, [curve, curve, wetter, wetter, wetter], entry),
    };
    const lines = criterionLines(study, tuned.estimates).map(({ state, text, sure = "" }) =>
      [state, render(text), render(sure)].join(" | "),
    );
    expect(lines.slice(0, 4)).toEqual([
      "inside | passing 0.063 mm: 23.0 %, recommended 20 to 50 %: inside by 3.0 points. | inside in over 99 of 100 draws of the reading errors",
      "outside | clay: 4.9 %, recommended 5 to 20 %: outside by 0.1 points. | outside in 40 of 100 draws of the reading errors",
      "inside | silt: 18.1 %, recommended 10 to 30 %: inside by 8.1 points. | inside in over 99 of 100 draws of the reading errors",
      "inside | sand and gravel: 77.0 %, recommended 45 to 80 %: inside by 3.0 points. | inside in over 99 of 100 draws of the reading errors",
    ]);
    const shrinkage = tuned.estimates.find(({ kind }) => kind === "linear-shrinkage")!.valuePct!;
    const [value, by] = [shrinkage, shrinkage - 5].map((pct) => pct.toFixed(1));
    expect(lines).toContain(
      `unknown | linear shrinkage: estimated ${value} %, recommended up to 5 %: outside by ${by} points; not measured on the blend. | `,
    );
    expect(lines).toContain("unknown | liquid limit: not measured; recommended below 45 %. | ");
  });
});

describe("the sentence of strength", () => {
  const said = (open: OpenStudy, cementPct: number) =>
    render(strengthSentence(tuneBlend(open, { ...open.start, cementPct }))!);
  const bound =
    "With 8 % cement: mean of the curve 2.90 MPa (95 % confidence interval 2.75 MPa to 3.06 MPa). Required at 28 days: 1.50 MPa; the 95 % / 95 % tolerance bound (exceeded by 95 % of blocks) is 2.16 MPa";

  it("does not say reached without the doubt about the curve", async () => {
    const open = await openBench("reading-room");
    expect(said(open, 8)).toBe(
      `${bound}: reached by the curve, whose bounds are in doubt (see the findings under “Sheets”).`,
    );
    expect(said({ ...open, findings: [] }, 8)).toBe(`${bound}: reached.`);
    expect(said(open, 5)).toMatch(/ is [01]\.\d\d MPa: not reached\.$/);
  });

  it("does not say reached of blocks in another state than the requirement speaks of", async () => {
    const { folder, edit } = copyStudy("reading-room");
    edit("study.yaml", /^ {2}crushed: soaked/m, "  crushed: dry");
    const { study, findings } = await readStudy(folder);
    const { open } = openOnBench(study!, findings);
    expect(said(open!, 8)).toBe(`${bound}. This does not show that the requirement is met.`);
    const { reasons } = tuneBlend(open!, { ...open!.start, cementPct: 8 }).strength;
    expect(reasons.map((reason) => render(reason))).toEqual([
      "The blocks of Trial blend of the reading room were crushed dry; the requirement speaks of blocks crushed soaked. The cement content does not show that the requirement is met.",
    ]);
  });
});

describe("what the element takes", () => {
  const told = (open: OpenStudy) => {
    const { result, mix } = tuneMix(open, tuneBlend(open, open.start), { name: "", basis: "" });
    const { facts, missing } = mixFacts(result, mix!);
    return {
      facts: facts.map(([name, value]) => `${render(name)}: ${render(value)}`),
      missing: missing.map((message) => render(message)),
    };
  };

  it("is in the reader's units, carbon too", async () => {
    expect(told(await openBench("bus-shelter"))).toEqual({
      facts: [
        "Cement: 6.44 lb/ft³",
        "Cement for the element: 752 lb",
        "Cost of the materials: 175 USD",
        "Carbon: 660 to 942 lb CO₂e",
        "Batches: 72",
      ],
      missing: [],
    });
  });

  it("is the sum of several elements, and says so", async () => {
    const { study, findings } = await readStudy(join(EXAMPLES, "bus-shelter"));
    const { config } = study!;
    const [wall] = config.elements;
    const elements = [wall, { ...wall, name: "Second wall" }];
    const { open } = openOnBench({ ...study!, config: { ...config, elements } }, findings);
    expect(told(open!).facts.slice(1, 3)).toEqual([
      "Cement for all elements: 1504 lb",
      "Cost of the materials: 350 USD",
    ]);
  });

  it("says which prices are not in the sum", async () => {
    const { folder, edit } = copyStudy("bus-shelter");
    edit("study.yaml", /^ *price: .*\n/m, "");
    const { study, findings } = await readStudy(folder);
    const { open } = openOnBench(study!, findings);
    expect(told(open!).missing).toEqual([
      "Not the whole cost: 1 price is missing or cannot be used.",
    ]);
  });
});

it("tables of invented data say so in their first line, and others have none", async () => {
  const result = await exampleResult("reading-room");
  expect(inventedMark(result.config.invented, "en").trim()).toMatch(
    /invented for a demonstration\. Do not build/,
  );
  expect(inventedMark(result.config.invented, "en")).toMatch(/\n$/);
  expect(inventedMark(false, "en")).toBe("");
});
