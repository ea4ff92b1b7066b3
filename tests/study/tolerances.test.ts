import { describe, expect, it } from "vitest";
import { moistureWindow } from "../../src/soil/compaction/moistureWindow.js";
import { specifiedMix, toleranceFindings } from "../../src/study/specifiedMix.js";
import { rammedDensityText, toleranceTable } from "../../src/tables/mix.js";
import { render } from "../../src/words/render.js";
import { rowsOf } from "../support/blockText.js";
import { exampleResult } from "../support/exampleResult.js";
import { computeStudy, readStudy } from "../support/saidStudy.js";
import { copyStudy } from "../support/studyCopy.js";

async function edited(...edits: readonly (readonly [string | RegExp, string])[]) {
  const copy = copyStudy("reading-room");
  for (const [from, to] of edits) copy.edit("study.yaml", from, to);
  const { study, findings } = await readStudy(copy.folder);
  return study ? computeStudy(study, findings) : { findings, result: undefined };
}

const ALL = /tolerances:\n( {2}.*\n)+/;
const codes = (findings: readonly { code: string }[]) =>
  findings.map(({ code }) => code).filter((code) => code.startsWith("tolerance"));

describe("the specified mix", () => {
  it("takes the entered tolerances", async () => {
    const result = await exampleResult("reading-room");
    const lines = specifiedMix(result);
    expect(lines.every(({ basis }) => basis === "entered")).toBe(true);
    const cement = lines.find(({ kind }) => kind === "cement");
    expect(cement).toMatchObject({ value: 6, low: expect.closeTo(5.94, 9) });
    const density = lines.find(({ kind }) => kind === "density");
    expect(density?.low).toBeCloseTo(0.96 * result.compaction!.peak!.maximumDryDensityKgM3, 9);
    const lift = lines.find(({ kind }) => kind === "lift");
    expect([lift?.low, lift?.high]).toEqual([expect.closeTo(0.085, 12), expect.closeTo(0.115, 12)]);
    expect(codes(result.findings)).toEqual([]);
  });

  it("says of the rammed density what its value is and what its least is", async () => {
    const words = async (name: "bus-shelter" | "reading-room") => {
      const { config, ...result } = await exampleResult(name);
      const line = specifiedMix({ config, ...result }).find(({ kind }) => kind === "density")!;
      return [
        render(rammedDensityText(line, config.units)),
        rowsOf(toleranceTable({ config, ...result })).find(([name]) => name.startsWith("Dry"))?.[5],
      ];
    };
    // By hand: 0.96 × 2010.4 = 1930.
    expect(await words("reading-room")).toEqual([
      "1954 kg/m³: mean dry density of 20 blocks of 28 days; at least 1930 kg/m³: 96 % of the maximum of the compaction test, as entered",
      "value: mean dry density of 20 blocks of 28 days; least: 96 % of the maximum of the compaction test, as entered",
    ]);
    expect((await words("bus-shelter"))[1]).toMatch(
      /^value: mean dry density of \d+ blocks of 28 days; least: the lightest block that the strengths rest on$/,
    );
  });

  it("falls back to what was tested, and marks what is only common", async () => {
    const result = await exampleResult("bus-shelter");
    const basis = Object.fromEntries(specifiedMix(result).map((line) => [line.kind, line]));
    expect(basis.share.basis).toBe("common practice");
    // 5 % less of 5.5 would be below the least content, 5.41.
    expect(basis.cement).toMatchObject({
      basis: "least cement",
      low: result.strength.leastCement.cementPct,
    });
    expect(basis.moisture).toMatchObject({
      basis: "compaction test",
      low: moistureWindow(result.compaction!)?.driestPct,
    });
    expect(basis.density).toMatchObject({
      basis: "lightest block",
      low: result.mix?.density.lowKgM3,
    });
    expect(basis.lift.basis).toBe("common practice");
  });

  it("is the moisture that a crew may reach, with its water", async () => {
    const { mix, compaction } = await exampleResult("reading-room");
    const { recipe, water, record } = mix!;
    const target = recipe.targetMoisturePct;
    const { low, high } = water.window.moisturePct;
    expect([low, high]).toEqual([expect.closeTo(target - 1.5, 9), expect.closeTo(target + 1.5, 9)]);
    // By hand: 9.2 % against the 11.5 % that the test alone would let in.
    expect(high).toBeLessThan(moistureWindow(compaction!)!.wettestPct);
    const { dryMassWithCementKg, water: held } = record.batch;
    const wettest = (dryMassWithCementKg * (target + 1.5)) / 100 - held.inMaterialsKg;
    expect(water.window.toAddKg.high).toBeCloseTo(wettest, 9);
  });

  it("lets a site be narrower on each side, and never wider", async () => {
    const ends = async (site: string) => {
      const { result } = await edited(
        ["moisture: { below: 1.5 %, above: 1.5 % }", "moisture: { below: 0.5 %, above: 1.5 % }"],
        [/^site:\n/m, `site:\n  tolerance: ${site}\n`],
      );
      const { recipe, water } = result!.mix!;
      const { low, high } = water.window.moisturePct;
      const line = specifiedMix(result!).find(({ kind }) => kind === "moisture");
      expect([line?.low, line?.high]).toEqual([low, high]);
      return [recipe.targetMoisturePct - low, high - recipe.targetMoisturePct];
    };
    expect(await ends("1 %")).toEqual([expect.closeTo(0.5, 9), expect.closeTo(1, 9)]);
    expect(await ends("3 %")).toEqual([expect.closeTo(0.5, 9), expect.closeTo(1.5, 9)]);
  });

  it("has no line for a material that the mix does without", async () => {
    const result = await exampleResult("reading-room");
    const { recipe } = result.mix!;
    const [soil, ...others] = recipe.materials;
    const without = { ...soil, sharePct: 0, dryMassKg: 0 };
    const lines = specifiedMix({
      ...result,
      mix: { ...result.mix!, recipe: { ...recipe, materials: [without, ...others] } },
    });
    expect(lines.flatMap(({ kind, id }) => (kind === "share" ? [id] : []))).toEqual(
      others.map(({ id }) => id),
    );
  });

  it("uses the batching variation that the robustness was computed with", async () => {
    const { result } = await edited([ALL, ""]);
    const [soil, sand] = specifiedMix(result!);
    expect(soil.basis).toBe("batching variation");
    expect(soil.low).toBeCloseTo(0.97 * soil.value, 9);
    expect(sand.basis).toBe("common practice");
  });

  it("takes 98 % of the maximum density where no block was weighed, and marks it", async () => {
    const result = await exampleResult("reading-room");
    const { densityPct: _, ...tolerances } = result.config.tolerances ?? {};
    const { valueKgM3 } = result.mix!.density;
    const density = { ...result.mix!.density, lowKgM3: valueKgM3, highKgM3: valueKgM3 };
    const unweighed = {
      ...result,
      config: { ...result.config, tolerances },
      mix: { ...result.mix!, density },
    };
    const line = specifiedMix(unweighed).find(({ kind }) => kind === "density");
    expect(line).toMatchObject({ basis: "common practice" });
    expect(line?.low).toBeCloseTo(0.98 * result.compaction!.peak!.maximumDryDensityKgM3, 9);
    const told = toleranceFindings(unweighed).map(({ code }) => code);
    expect(told).toContain("tolerance-not-stated");
  });

  it("has no lines without a mix", async () => {
    const result = await exampleResult("reading-room");
    expect(specifiedMix({ ...result, mix: undefined })).toEqual([]);
  });
});

describe("tolerances that reach beyond what was tested", () => {
  it.each([
    ["cement: 1 %", "cement: 2 %", "tolerance-below-least-cement"],
    ["below: 1.5 %, above: 1.5 %", "below: 1.5 %, above: 4 %", "tolerance-outside-window"],
    ["below: 1.5 %, above: 1.5 %", "below: 3 %, above: 1 %", "tolerance-outside-window"],
    ["density: 96 %", "density: 90 %", "tolerance-below-blocks"],
    ["density: 96 %", "density: 99 %", "tolerance-above-blocks"],
    ["lift: 15 mm", "lift: 100 mm", "tolerance-as-large-as-lift"],
  ])("%s → %s", async (from, to, code) => {
    const { result, findings } = await edited([from, to]);
    expect(result).toBeDefined();
    expect(codes(findings)).toEqual([code]);
    // A crew that keeps to the tolerance, and is allowed what nothing was tested for, reads it.
    const { doubts } = result!.mix!.record;
    expect(doubts).toHaveLength(/below-least|outside-window|below-blocks/.test(code) ? 2 : 0);
    expect(findings.find((finding) => finding.code === code)).toMatchObject({
      severity: "warning",
      file: "study.yaml",
      column: `tolerances.${from.startsWith("below") ? "moisture" : from.split(":")[0]}`,
    });
  });
});

describe("blocks lighter than the wall must be", () => {
  it("order no less cement than the wall takes, and the mix says what is wrong", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("sheets/blocks.csv", /,(19|20)\d\d,/g, ",1625,");
    const { study, findings } = await readStudy(copy.folder);
    const { result } = computeStudy(study!, findings);
    const { mix, config } = result!;
    const least = specifiedMix(result!).find(({ kind }) => kind === "density")!.low!;
    expect(least).toBeCloseTo(0.96 * result!.compaction!.peak!.maximumDryDensityKgM3, 9);
    expect(mix!.density.valueKgM3).toBeLessThan(1700);
    const { madeVolumeM3, mix: ordered } = mix!.quantities;
    expect(ordered.dryMassWithCementKg).toBeCloseTo(madeVolumeM3 * least, 6);
    expect(config.elements.length).toBeGreaterThan(0);
    expect(mix!.record.doubts.map((text) => render(text)).join()).toContain(
      "they are not of the same earth",
    );
  });
});

describe("a tolerance of the site", () => {
  it("never lets a crew leave the compaction test, and says so where it would", async () => {
    const found = async (site: string) => {
      const { result, findings } = await edited(
        [ALL, ""],
        [/^site:\n/m, `site:\n  tolerance: ${site}\n`],
      );
      const { water, recipe } = result!.mix!;
      const { low, high } = water.window.moisturePct;
      const window = moistureWindow(result!.compaction!)!;
      const target = recipe.targetMoisturePct;
      return {
        told: findings
          .filter(({ code }) => code === "site-tolerance-cut")
          .map(({ column }) => column),
        ends: [low - window.driestPct, high - window.wettestPct, target - low, high - target],
      };
    };
    const wide = await found("5 %");
    expect(wide.told).toEqual(["site.tolerance"]);
    expect(wide.ends.slice(0, 2)).toEqual([expect.closeTo(0, 9), expect.closeTo(0, 9)]);
    const narrow = await found("0.5 %");
    expect(narrow.told).toEqual([]);
    expect(narrow.ends.slice(2)).toEqual([expect.closeTo(0.5, 9), expect.closeTo(0.5, 9)]);
  });
});

describe("bad entries of tolerances", () => {
  it.each([
    ["cement: 1 %", "cement: 1", "tolerances.cement"],
    ["cement: 1 %", "cement: -1 %", "tolerances.cement"],
    ["{ below: 1.5 %, above: 1.5 % }", "{ below: 1.5 % }", "tolerances.moisture.above"],
    ["{ below: 1.5 %, above: 1.5 % }", "2 %", "tolerances.moisture"],
    ["lift: 15 mm", "lift: 0 mm", "tolerances.lift"],
    ["lift: 15 mm", "lifts: 15 mm", "tolerances.lifts"],
  ])("%s → %s", async (from, to, column) => {
    const { result, findings } = await edited([from, to]);
    expect(result).toBeUndefined();
    expect(findings.map((finding) => finding.column)).toContain(column);
  });
});
