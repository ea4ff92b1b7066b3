import { describe, expect, it } from "vitest";
import type { TableBlock } from "../../src/blocks/block.js";
import { attributeChanges } from "../../src/study/attribution.js";
import { compareStudies } from "../../src/study/compareStudies.js";
import { computeStudy } from "../../src/study/computeStudy.js";
import { readStudy } from "../../src/study/readStudy.js";
import { attributionTable, studyComparisonTable } from "../../src/tables/studyComparison.js";
import { renderAll } from "../../src/words/render.js";
import { copyStudy } from "../support/studyCopy.js";

type Edit = readonly [file: string, from: string | RegExp, to: string];

async function opened(...edits: readonly Edit[]) {
  const copy = copyStudy("reading-room");
  for (const [file, from, to] of edits) copy.edit(file, from, to);
  const { study, findings } = await readStudy(copy.folder);
  const { result } = computeStudy(study!, findings);
  return { study: study!, result: result! };
}

const REQUIRED: Edit = ["study.yaml", "strength: 1.5 MPa", "strength: 1.8 MPa"];
const LONGER: Edit = ["study.yaml", "length: 6.4 m", "length: 8 m"];
const DEARER: Edit = ["study.yaml", "price: 29 to 34 per t", "price: 40 per t"];
const COARSER: Edit = ["study.yaml", "exponent: 0.25", "exponent: 0.255"];
const STRONGER: Edit = ["sheets/blocks.csv", ",17.97,1961,,", ",29.97,1961,,"];

describe("what a difference is due to", () => {
  it("is shared out among the parts that changed, in the order of the analysis, and adds up", async () => {
    const [a, b] = [await opened(), await opened(REQUIRED, LONGER, DEARER, COARSER, STRONGER)];
    const steps = attributeChanges(a.study, b.study);
    expect(steps.map(({ parts }) => parts)).toEqual([
      ["target"],
      ["tests"],
      ["requirement"],
      ["element"],
      ["supply"],
      ["rest"],
    ]);
    const keysOf = (part: string) =>
      Object.keys(steps.find(({ parts }) => `${parts}` === part)!.changes);
    expect(keysOf("target")).toEqual(expect.arrayContaining(["share.site-soil", "fines"]));
    expect(keysOf("target")).not.toContain("cement");
    expect(keysOf("tests")).toEqual(expect.arrayContaining(["least-cement", "bound"]));
    expect(keysOf("requirement")).toContain("least-cement");
    expect(keysOf("requirement")).not.toContain("made");
    expect(keysOf("element")).toEqual(expect.arrayContaining(["made", "cement-mass", "cost-low"]));
    expect(keysOf("supply")).toEqual(["cost-low", "cost-high"]);
    const { results } = compareStudies(a.result, b.result);
    for (const { key, difference, kind } of results) {
      if (difference === null || kind === "whole") continue;
      const sum = steps.reduce((total, { changes }) => total + (changes[key] ?? 0), 0);
      expect(Math.abs(sum - difference), key).toBeLessThan(1e-6 * Math.max(1, Math.abs(sum)));
    }
    const table = renderAll(attributionTable(a.result, b.result, steps)) as TableBlock;
    expect(table.columns.map(({ header }) => header)).toEqual([
      "Result",
      "Target and limits",
      "What was tested",
      "Requirement",
      "Element and site",
      "Cement, prices, carbon",
    ]);
    const made = table.rows.find(([name]) => `${name}`.startsWith("Rammed volume"))!;
    expect(made).toEqual(["Rammed volume to make, m³", "–", "–", "–", "+1.814", "–"]);
    expect(table.notes!.join(" ")).toContain(
      "Changed without an effect on these results: The rest.",
    );
  }, 60_000);

  it("takes parts together that hold only as a whole, and says what became unknown", async () => {
    const a = await opened();
    const renamed = await opened(
      ["study.yaml", "  - id: gravel\n    name", "  - id: stones\n    name"],
      ["study.yaml", /material: gravel/, "material: stones"],
      ["study.yaml", "river-sand: 13 %, gravel: 32 %", "river-sand: 13 %, stones: 32 %"],
    );
    const [whole] = attributeChanges(a.study, renamed.study);
    expect(whole.parts).toEqual(["materials", "tests"]);
    expect(whole.changes).toMatchObject({ "share.gravel": null, "share.stones": null });
    expect(whole.changes.cement).toBeUndefined();

    const untested = await opened(["study.yaml", "exponent: 0.25", "exponent: 0.4"]);
    const steps = attributeChanges(a.study, untested.study);
    expect(steps[0].parts).toEqual(["target"]);
    expect(steps[0].changes).toMatchObject({ cement: null, "cost-low": null, optimum: null });
    const table = renderAll(attributionTable(a.result, untested.result, steps)) as TableBlock;
    const cement = table.rows.find(([name]) => `${name}`.startsWith("Cement, as specified"))!;
    expect(cement[1]).toBe("not comparable");
    const [results] = renderAll(studyComparisonTable(a.result, untested.result)) as TableBlock[];
    const pair = results.rows.find(([name]) => `${name}`.startsWith("Cement, as specified"))!;
    expect(pair.slice(1)).toEqual(["6.00", "–", "–"]);
    const nothing = attributeChanges(a.study, a.study);
    expect(nothing).toEqual([]);
    expect(renderAll(attributionTable(a.result, a.result, nothing))).toMatchObject({
      kind: "note",
      text: "No part of the study changed a result.",
    });
  }, 60_000);
});
