import { describe, expect, it } from "vitest";
import type { KeyValuesBlock } from "../../src/blocks/block.js";
import { leastCementTable } from "../../src/tables/strength.js";
import { render } from "../../src/words/render.js";
import published from "../reference/strengthLackOfFit.json" with { type: "json" };
import { computeStudy, readStudy } from "../support/saidStudy.js";
import { copyStudy, type StudyCopy } from "../support/studyCopy.js";

async function compute({ folder }: StudyCopy) {
  const { study, findings } = await readStudy(folder);
  return study ? computeStudy(study, findings) : { result: undefined, findings };
}

describe("strength in a study", () => {
  it("takes blocks of all ages where age is a covariate, and shows strength against age", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "  model: linear", "  model: linear\n  covariates: { age: true }");
    const { result, findings } = await compute(copy);
    const { fit, byAge, characteristic } = result!.strength;
    expect(fit.blocks).toBeGreaterThan(28);
    expect(findings.map(({ code }) => code)).not.toContain("other-ages");
    expect(byAge!.ages.map(({ ageDays }) => ageDays)).toEqual([7, 28]);
    expect(byAge!.ages[1].meanMpa).toBeGreaterThan(byAge!.ages[0].meanMpa);
    // The characteristic values stay those of the age of the requirement.
    const plain = await compute(copyStudy("reading-room"));
    expect(characteristic).toEqual(plain.result!.strength.characteristic);
    expect(plain.result!.strength.byAge).toBeUndefined();
  });

  it("says that the published blocks speak against the straight line, and against its content", async () => {
    const copy = copyStudy("reading-room");
    const rows = Object.entries(published.strengthByCementPct).flatMap(([content, strengths]) =>
      strengths.map((kPa, index) => `${content}-${index},${content},28,${kPa}`),
    );
    const sheet = ["block,cement (%),age (d),strength (kPa)", ...rows].join("\n");
    copy.write("sheets/blocks.csv", `# Invented data for demonstration\n${sheet}\n`);
    copy.edit("study.yaml", "strength: 1.5 MPa", "strength: 4.3 MPa");
    copy.edit("study.yaml", "statistic: tolerance", "statistic: mean");
    const { result, findings } = await compute(copy);
    expect(result!.strength.chosenCementPct).toBe(10);
    expect(findings.map(({ code }) => code)).toEqual(
      expect.arrayContaining(["lack-of-fit", "clearly-better-model", "nearest-blocks-miss"]),
    );
  });

  it("says what the least cement would be with other blocks", async () => {
    const { result } = await compute(copyStudy("reading-room"));
    const { leastCementOfOthers: others, leastCement } = result!.strength!;
    // The excluded block is of 7 days, and would not stand in this curve.
    expect(others!.map(({ without, withBack }) => [without, withBack])).toEqual([[["L25"], []]]);
    // The far block lies low: without it less cement is enough.
    expect(others![0].cementPct!).toBeLessThan(leastCement!.cementPct!);
    const copy = copyStudy("reading-room");
    copy.edit("sheets/blocks.csv", /^L25,.*\n/m, "");
    const without = await compute(copy);
    expect(without.result!.strength!.leastCement!.cementPct).toBe(others![0].cementPct);
    const items = leastCementTable(result!) as KeyValuesBlock;
    const told = Object.fromEntries(
      items.items.map(({ label, value }) => [render(label), render(value)]),
    );
    expect(told["Without L25, far from the others"]).toMatch(/^\d\.\d\d %, rounded up \d(\.5)? %$/);
  });

  it("fits the means of batches where it is asked to, and says of what the bound speaks", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "  model: linear", "  model: linear\n  batches: means");
    const { result, findings } = await compute(copy);
    const { fit, specimens } = result!.strength!;
    const used = specimens.filter(({ excluded, ageDays }) => !excluded && ageDays === 28);
    const batches = new Map<string, number[]>();
    for (const { batch, cementPct, strengthMpa } of used) {
      const key = `${batch}, ${cementPct} %, 28 d`;
      batches.set(key, [...(batches.get(key) ?? []), strengthMpa]);
    }
    expect(fit.points.map(({ id }) => id)).toEqual([...batches.keys()]);
    for (const { id, strengthMpa } of fit.points) {
      const all = batches.get(id)!;
      expect(strengthMpa).toBeCloseTo(all.reduce((sum, one) => sum + one, 0) / all.length, 12);
    }
    expect(findings.map(({ code }) => code)).toContain("bound-of-batch-means");
    // The rammed density is still that of the blocks.
    const plain = await compute(copyStudy("reading-room"));
    expect(result!.mix!.density.valueKgM3).toBe(plain.result!.mix!.density.valueKgM3);
    copy.edit("study.yaml", "statistic: tolerance", "statistic: mean");
    const ofMean = await compute(copy);
    expect(ofMean.findings.map(({ code }) => code)).not.toContain("bound-of-batch-means");
  });

  it("finds the power model with proportional variance, and does not crash", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "  model: linear", "  model: power\n  variance: proportional");
    const { result, findings } = await compute(copy);
    expect(result).toBeUndefined();
    expect(findings.some(({ severity }) => severity === "error")).toBe(true);
  });

  it("takes a weak control without cement, and blocks crushed at age 0", async () => {
    const copy = copyStudy("reading-room");
    const L01 = "L01,A1,4,7,99.9,99.8,100.1,10.66,1964,,";
    copy.edit(
      "sheets/blocks.csv",
      L01,
      `${L01}\nC1,A0,0,28,100,100,100,0.7,1900,,\nC2,A0,4,0,100,100,100,2,1900,,`,
    );
    const { result, findings } = await compute(copy);
    expect(findings.filter(({ severity }) => severity === "error")).toEqual([]);
    expect(result!.strength.fit.contentsPct[0]).toBe(0);
  });
});
