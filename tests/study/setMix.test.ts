import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { openOnBench, tuneBlend, tuneMix } from "../../src/page/tune.js";
import { computeStudy } from "../../src/study/computeStudy.js";
import { readStudy } from "../../src/study/readStudy.js";
import { render } from "../../src/words/render.js";
import { copyStudy } from "../support/studyCopy.js";

/** The reading room with a mix that is set by hand. */
async function withMix(mix: string) {
  const { folder, edit } = copyStudy("reading-room");
  edit("study.yaml", "\nbatch:\n", `\nmix: ${mix}\n\nbatch:\n`);
  const { study, findings } = await readStudy(folder);
  const computed = study ? computeStudy(study, findings) : { findings };
  return { result: undefined, ...computed, codes: computed.findings.map(({ code }) => code) };
}

describe("a mix that is set by hand", () => {
  it("is the one that is built, where its blend lies close to what was tested", async () => {
    const { result } = await withMix(
      "{ shares: { site-soil: 56 %, river-sand: 12 %, gravel: 32 % }, cement: 7 %, moisture: 9.5 % }",
    );
    [56, 12, 0, 32].forEach((share, index) => {
      expect(result?.blend?.shares[index].sharePct).toBeCloseTo(share, 9);
    });
    const { recipe } = result!.mix!;
    expect([recipe.cementPct, recipe.targetMoisturePct]).toEqual([7, 9.5]);
    expect(recipe.cement.dryMassKg / recipe.dryMassKg).toBeCloseTo(0.07, 12);
    expect(result?.strength?.chosenCementPct).toBe(6);
    expect(result?.trials[0].pair?.cementPct).toBe(6);
  });

  it("leaves what it does not set as it is", async () => {
    const { result } = await withMix("{ cement: 8 % }");
    expect(result?.mix?.recipe.cementPct).toBe(8);
    expect(result?.blend?.shares[0].sharePct).toBeCloseTo(54.9, 1);
    expect(result?.mix?.recipe.targetMoisturePct).toBe(result?.compaction?.peak?.optimumWaterPct);
  });

  it("gives no recipe below the least cement, beyond the tested contents, or outside the window", async () => {
    for (const [mix, code] of [
      ["{ cement: 5 % }", "mix-below-least-cement"],
      ["{ cement: 11 % }", "mix-beyond-tested-cement"],
      ["{ moisture: 5 % }", "mix-outside-moisture-window"],
      ["{ moisture: 15 % }", "mix-outside-moisture-window"],
    ]) {
      const { result, codes } = await withMix(mix);
      expect(result?.mix, mix).toBeUndefined();
      expect(codes, mix).toContain(code);
    }
  });

  it("keeps to the tolerance around an optimum that is reported alone", async () => {
    const told = async (moisture: string, tolerance?: string) => {
      const { folder, edit } = copyStudy("reading-room");
      writeFileSync(
        join(folder, "sheets/compaction.csv"),
        "optimum water content (%),9.2\nmaximum dry density (kg/m3),2010\n",
      );
      edit("study.yaml", "\nbatch:\n", `\nmix: { moisture: ${moisture} }\n\nbatch:\n`);
      const own = "  moisture: { below: 1.5 %, above: 1.5 % }\n";
      edit("study.yaml", own, tolerance ? own.replaceAll("1.5 %", tolerance) : "");
      const { study, findings } = await readStudy(folder);
      const computed = computeStudy(study!, findings);
      const { open } = openOnBench(study!, findings);
      const tuned = tuneBlend(open!, open!.start);
      const bench = tuneBlend(open!, { ...tuned.mix, moisturePct: Number.parseFloat(moisture) });
      return {
        isMix: computed.result?.mix !== undefined,
        isOnBench: tuneMix(open!, bench, { name: "", basis: "" }).mix !== undefined,
        isStrength: bench.strength.band !== undefined,
        told: computed.findings.flatMap(({ code, message }) =>
          /^mix-(beyond|too|outside|moisture)/.test(code) ? [`${code}: ${render(message)}`] : [],
        ),
      };
    };
    const all = (is: boolean) => ({ isMix: is, isOnBench: is, isStrength: is });
    expect(await told("9.6 %")).toEqual({ ...all(true), told: [] });
    expect(await told("10.4 %")).toEqual({
      ...all(false),
      told: [
        "mix-beyond-reported-optimum: The mix is set to 10.40 % moisture. The compaction sheet reports an optimum of 9.20 % alone, without test points: what density and strength the earth has at another moisture is not known. So there is no recipe.",
      ],
    });
    expect(await told("10.4 %", "1.2 %")).toMatchObject(all(true));
    const wet = await told("15 %", "6 %");
    expect(wet).toMatchObject(all(false));
    expect(wet.told).toEqual([
      "mix-too-wet-for-density: At 15.00 % moisture the earth has 1907.9 kg/m³ without any air, less than the 1929.6 kg/m³ that the wall must have: no ramming reaches that. So there is no recipe.",
    ]);
  });

  it("is only proposed where its blend was not tested, and tells the limits that it breaks", async () => {
    const { result, codes } = await withMix(
      "{ shares: { site-soil: 95 %, gravel: 5 % }, cement: 8 % }",
    );
    expect([result?.testing?.state, result?.mix]).toEqual(["proposed", undefined]);
    expect(codes.filter((code) => code === "tested-blend-breaks-limits").length).toBeGreaterThan(1);
  });

  it("tells every limit that a blend which is built breaks, and those it cannot be held against", async () => {
    const told = async (edits: readonly (readonly [string, string])[]) => {
      const copy = copyStudy("reading-room");
      copy.edit("study.yaml", "\nbatch:\n", "\nmix-from: tested\n\nbatch:\n");
      for (const [from, to] of edits) copy.edit("study.yaml", from, to);
      const { study, findings } = await readStudy(copy.folder);
      const { result } = computeStudy(study!, findings);
      expect(result!.mix, "the tested blend is built").toBeDefined();
      return result!.mix!.record.doubts.map((doubt) => render(doubt));
    };
    const fines: readonly [string, string] = ["fines: { max: 30 % }", "fines: { max: 5 % }"];
    const ofFines = expect.stringMatching(/: fines at most 5\.00 %, by 19\.4 points\.$/);
    const ofIndex = expect.stringMatching(/: plasticity index at most 2\.00 %, by /);
    const first = expect.stringMatching(/^Do not build from this mix/);
    const soil = "The tested blend has 55.0 % of Site soil, two pits mixed.";
    expect(
      await told([
        fines,
        ["plasticity-index: { max: 15 % }", "plasticity-index: { max: 2 % }"],
        ["share: { min: 30 %, max: 90 % }", "share: { min: 30 %, max: 40 % }"],
      ]),
    ).toEqual([first, soil, ofFines, ofIndex]);
    // More materials than allowed, and a soil of no known plasticity, hide no other limit.
    expect(
      await told([
        fines,
        ["\nlimits:\n", "\nmax-materials: 2\nlimits:\n"],
        ["    limits: sheets/site-soil-limits.csv\n", ""],
      ]),
    ).toEqual([
      first,
      "The tested blend has 3 materials.",
      ofFines,
      "It is not known whether the tested blend keeps a limit of the study. Site soil, two pits mixed lacks a value that a limit or the objective needs: a plasticity index (0 if it is not plastic).",
    ]);
  });

  it("is refused with materials that are not there, a wrong sum, or a trial's blend beside it", async () => {
    expect((await withMix("{ shares: { clay: 100 % } }")).codes).toContain("unknown-material");
    expect((await withMix("{ shares: { site-soil: 60 % } }")).result).toBeUndefined();
    const both = await withMix("{ shares: { site-soil: 100 % } }\nmix-from: tested");
    expect(both.codes).toContain("two-mixes");
  });
});
