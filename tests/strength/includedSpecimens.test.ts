import { describe, expect, it } from "vitest";
import type { SpecimenRecord } from "../../src/lab/specimens.js";
import { inUnits } from "../../src/quantities/format.js";
import {
  type IncludedSpecimensOptions,
  includedSpecimens,
} from "../../src/strength/includedBlocks.js";
import { render } from "../../src/words/render.js";
import { blocksOf, SIXTEEN } from "./blocks.js";

const run = (
  specimens: readonly SpecimenRecord[],
  options: Partial<IncludedSpecimensOptions> = {},
) => includedSpecimens({ file: "sheets/blocks.csv", specimens }, { ageDays: 28, ...options });

const codes = (
  specimens: readonly SpecimenRecord[],
  options: Partial<IncludedSpecimensOptions> = {},
) => run(specimens, options).findings.map(({ code, row }) => [code, row]);

const changed = (index: number, change: Partial<SpecimenRecord>) =>
  blocksOf(SIXTEEN).map((block, at) => (at === index ? { ...block, ...change } : block));

describe("includedSpecimens", () => {
  it("has nothing to say of a clean sheet", () => {
    const found = run(blocksOf(SIXTEEN));
    expect(found.findings).toEqual([]);
    expect(found.included).toHaveLength(16);
  });

  it("keeps the excluded with their reason, and takes nothing out of itself", () => {
    const found = run(changed(2, { excluded: "dropped" }));
    expect(found.included.map(({ id }) => id)).not.toContain("B3");
    expect(found.included).toHaveLength(15);
    expect(
      found.findings.map(({ code, severity, file, row }) => [code, severity, file, row]),
    ).toEqual([["excluded-block", "note", "sheets/blocks.csv", 4]]);
  });

  it("takes blocks of one age, and notes the others", () => {
    const { included, findings } = run(changed(5, { ageDays: 7 }));
    expect(included.map(({ id }) => id)).not.toContain("B6");
    expect(included).toHaveLength(15);
    expect(findings).toMatchObject([{ code: "other-ages", row: 7, column: "age", value: "7 d" }]);
    expect(codes([])).toEqual([["too-few-blocks", undefined]]);
  });

  it("wants enough blocks and contents for the form", () => {
    expect(codes(blocksOf(SIXTEEN.slice(0, 4)))).toEqual([["one-cement-content", 2]]);
    expect(codes(blocksOf(SIXTEEN.slice(0, 8)), { model: "quadratic" })).toEqual([
      ["too-few-contents", 2],
    ]);
    expect(codes(blocksOf(SIXTEEN.slice(3, 5)))).toEqual([["too-few-blocks", 2]]);
  });

  it("warns of strengths without scatter", () => {
    const same = SIXTEEN.map(([content]) => [content, content / 3]);
    expect(codes(blocksOf(same))).toEqual([["no-scatter", 2]]);
  });

  it("warns where every content is one batch, and not where one has two", () => {
    const batched = blocksOf(SIXTEEN).map((block) => ({ ...block, batch: `M${block.cementPct}` }));
    expect(codes(batched)).toEqual([["one-batch-a-content", 2]]);
    const two = batched.map((block, index) => (index === 0 ? { ...block, batch: "N" } : block));
    expect(codes(two)).toEqual([]);
  });

  it("names an outlying block and keeps it in", () => {
    const found = run(changed(9, { strengthMpa: 1.4 }));
    expect(found.findings.map(({ code, row, severity }) => [code, row, severity])).toEqual([
      ["outlying-block", 11, "warning"],
    ]);
    expect(render(found.findings[0].message)).toMatch(
      / \(studentised residual about their mean [−-]\d+\.\d\)\.$/,
    );
    expect(found.included).toHaveLength(16);
    const shown = [found.findings[0], inUnits(found.findings[0], "US")].map(
      ({ value = "", expected }) => [render(value), render(expected).split(";")[0]],
    );
    expect(shown).toEqual([
      ["1.40 MPa", "about 2.98 MPa"],
      ["203 psi", "about 432 psi"],
    ]);
  });

  it("accuses nobody because the curve has the wrong shape", () => {
    const bent = SIXTEEN.map(([content, strength]) => [
      content,
      content === 10 ? strength - 2 : strength,
    ]);
    expect(codes(blocksOf(bent))).toEqual([]);
  });

  it("finds the outlier of single blocks against the curve", () => {
    const singles = [4, 5, 6, 7, 8, 9, 10, 11].map((content, index) => [
      content,
      0.4 * content + 0.03 * (-1) ** index - (content === 8 ? 1.5 : 0),
    ]);
    expect(codes(blocksOf(singles))).toEqual([["outlying-block", 6]]);
  });
});

describe("what is allowed, and what does not go together", () => {
  it("a weak control without cement is a warning, and takes part", () => {
    const weak = [[0, 0.07], ...SIXTEEN.map(([content, strength]) => [content, strength + 1])];
    const { findings, included } = run(blocksOf(weak));
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([
      ["mixed-units", "warning"],
    ]);
    expect(included[0]).toMatchObject({ cementPct: 0, strengthMpa: 0.07 });
  });

  it("an age of 0 is an age like others, until its logarithm is asked for", () => {
    const green = changed(5, { ageDays: 0 });
    expect(codes(green, { ageDays: 28 })).toEqual([["other-ages", 7]]);
    expect(codes(green, { ageDays: 28, covariates: ["ln age"] })).toContainEqual([
      "age-without-logarithm",
      7,
    ]);
  });

  it("takes blocks of all ages where age is a covariate", () => {
    const mixed = blocksOf(SIXTEEN).map((block, index) => ({
      ...block,
      ageDays: index % 2 ? 7 : 28,
      strengthMpa: block.strengthMpa * (index % 2 ? 0.7 : 1),
    }));
    const found = run(mixed, { ageDays: 28, covariates: ["ln age"] });
    expect(found.included).toHaveLength(16);
    expect(found.findings).toEqual([]);
    // One block of 28 days among 25 of other ages is enough for a curve with age in it.
    const few = mixed.map((block, index) => ({
      ...block,
      ageDays: index === 0 ? 28 : 7 + (index % 3) * 28,
    }));
    expect(codes(few, { ageDays: 28, covariates: ["ln age"] })).toEqual([]);
    expect(codes(few, { ageDays: 28 })).toContainEqual(["too-few-blocks", 2]);
  });
});
