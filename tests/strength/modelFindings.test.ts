import { describe, expect, it } from "vitest";
import type { SpecimenRecord } from "../../src/lab/specimens.js";
import { batchScatter } from "../../src/strength/batches.js";
import { leastCement } from "../../src/strength/leastCement.js";
import {
  fewBlocksFindings,
  modelFindings,
  nearestBlocks,
} from "../../src/strength/modelFindings.js";
import { type StrengthRequirement, strengthBound } from "../../src/strength/regression/bounds.js";
import { type FitStrengthOptions, fitStrength } from "../../src/strength/regression/fit.js";
import { lackOfFit } from "../../src/strength/regression/lackOfFit.js";
import { compareModels } from "../../src/strength/regression/modelComparison.js";
import { residualChecks } from "../../src/strength/regression/residuals.js";
import { render } from "../../src/words/render.js";
import published from "../reference/strengthLackOfFit.json" with { type: "json" };
import { blocksOf, fitted, SIXTEEN } from "./blocks.js";
import { near } from "./near.js";

const PUBLISHED = blocksOf(
  Object.entries(published.strengthByCementPct).flatMap(([content, strengths]) =>
    strengths.map((kPa) => [Number(content), kPa / 1000]),
  ),
);
const MEAN = { statistic: "mean", confidence: 0.95 } as const;

function found(
  blocks: readonly SpecimenRecord[],
  requirement: StrengthRequirement,
  options: Partial<FitStrengthOptions> = {},
) {
  const asked = { model: "linear", ageDays: 28, ...options } as const;
  const fit = fitStrength(blocks, asked);
  if (fit.status !== "ok") throw new Error(render(fit.message));
  const evidence = {
    fit,
    lackOfFit: lackOfFit(fit),
    models: compareModels(blocks, asked),
    checks: residualChecks(fit),
    requirement,
    cementPct: leastCement(fit, requirement).batchablePct,
  };
  const scatter = batchScatter(blocks, { ageDays: 28 });
  return { evidence, findings: modelFindings({ ...evidence, scatter }, "blocks.csv") };
}

const codes = (...args: Parameters<typeof found>) =>
  found(...args).findings.map(({ code }) => code);

describe("the published set that a straight line does not fit", () => {
  it("gives the published regression and lack of fit", () => {
    const { fit, lackOfFit: lack } = found(PUBLISHED, { strengthMpa: 2, ...MEAN }).evidence;
    const [a, b] = fit.coefficients.map(({ value }) => value);
    near(a, published.recomputed.a, { rel: 0, abs: 5e-5 }, "a");
    near(b, published.recomputed.b, { rel: 0, abs: 5e-5 }, "b");
    near(fit.residualSd, published.recomputed.s, { rel: 0, abs: 5e-4 }, "s");
    near(lack.fValue!, published.recomputed.lackOfFitF, { rel: 0, abs: 0.005 }, "F");
    expect([lack.lackDegreesOfFreedom, lack.pureDegreesOfFreedom]).toEqual(published.recomputed.df);
  });

  it("says so, names the better form, and that the blocks at the content found do not bear it out", () => {
    const requirement = { strengthMpa: 4.3, ...MEAN };
    const { evidence, findings } = found(PUBLISHED, requirement);
    // The line calls 10 % enough.
    expect(evidence.cementPct).toBe(10);
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([
      ["lack-of-fit", "warning"],
      ["clearly-better-model", "warning"],
      ["nearest-blocks-miss", "warning"],
    ]);
    expect(render(findings[1].remedy)).toContain("strength.model: logarithmic");
    const linear = evidence.models.models.find(({ model }) => model === "linear")!;
    expect(render(evidence.models.message)).toContain(
      `(difference ${linear.aiccDifference!.toFixed(1)} to the best)`,
    );
    const tens = published.strengthByCementPct["10"];
    const mean = tens.reduce((sum, kPa) => sum + kPa / 1000, 0) / tens.length;
    expect(render(findings[2].message)).toContain(`the 10 blocks nearest to it (at 10 %)`);
    expect(render(findings[2].message)).toContain(`a mean of ${mean.toFixed(2)} MPa`);
    expect(render(findings[2].message)).toMatch(/ MPa and a bound of \d\.\d\d MPa; the curve/);
    const bound = strengthBound(evidence.fit, 10, requirement);
    expect(render(findings[2].message)).toContain(
      `a bound of ${bound.toFixed(2)} MPa. The content`,
    );
    expect(render(findings[2].expected)).toBe(
      "a bound of at least 4.30 MPa from the nearest blocks alone, as the curve is in doubt",
    );
    // Their mean, 4.33 MPa, is above 4.3 but not proved to be; 4.4 MPa it does not even reach.
    expect(render(findings[2].remedy)).toContain("too few to prove it");
    const [higher] = found(PUBLISHED, { strengthMpa: 4.4, ...MEAN }).findings.slice(-1);
    expect(higher.code).toBe("nearest-blocks-against");
    expect(render(higher.remedy)).toContain("Do not build on this content");
  });

  it("holds the nearest blocks against nothing where no requirement or no content is known", () => {
    const { evidence } = found(PUBLISHED, { strengthMpa: 4.3, ...MEAN });
    for (const open of [{ requirement: undefined }, { cementPct: null }]) {
      expect(modelFindings({ ...evidence, ...open }, "blocks.csv").map(({ code }) => code)).toEqual(
        ["lack-of-fit", "clearly-better-model"],
      );
    }
  });

  it("is content where the nearest blocks agree, and still tells the doubt", () => {
    expect(codes(PUBLISHED, { strengthMpa: 2.3, ...MEAN })).toEqual([
      "lack-of-fit",
      "clearly-better-model",
      "nearest-blocks-agree",
    ]);
  });

  it("has no doubt of lack of fit with the form that fits", () => {
    expect(codes(PUBLISHED, { strengthMpa: 4, ...MEAN }, { model: "quadratic" })).not.toContain(
      "lack-of-fit",
    );
  });
});

describe("modelFindings", () => {
  it("is silent about a sound curve", () => {
    expect(codes(blocksOf(SIXTEEN), { strengthMpa: 2, ...MEAN }, { model: "logarithmic" })).toEqual(
      [],
    );
  });

  it("tells residuals that fail, and batches that differ", () => {
    const growing = [4, 6, 8, 10].flatMap((content) =>
      [-1.2, -0.7, -0.2, 0.2, 0.7, 1.2].map((z) => [content, 0.4 * content + 0.05 * content * z]),
    );
    const requirement = { strengthMpa: 2, ...MEAN };
    expect(codes(blocksOf(growing), requirement)).toContain("scatter-grows");
    expect(codes(blocksOf(growing), requirement, { variance: "proportional" })).not.toContain(
      "scatter-grows",
    );
    const batched = blocksOf(SIXTEEN).map((block, index) => ({
      ...block,
      batch: `${block.cementPct}-${index % 2}`,
      strengthMpa: block.strengthMpa + (index % 2 ? 0.5 : 0),
    }));
    expect(codes(batched, requirement)).toContain("batches-differ");
  });
});

describe("fewBlocksFindings", () => {
  const BLOCKS = [
    [4, 1.4],
    [4, 1.6],
    [4, 1.5],
    [6, 2.3],
    [6, 2.5],
    [8, 3.0],
    [8, 3.2],
    [8, 2.9],
  ];
  const few = (pairs: readonly (readonly number[])[]) => fewBlocksFindings(fitted(pairs), "b.csv");

  it("is silent from three contents and six degrees of freedom on", () => {
    expect(fitted(BLOCKS)).toMatchObject({ contentsPct: [4, 6, 8], degreesOfFreedom: 6 });
    expect(few(BLOCKS)).toEqual([]);
  });

  it("tells one degree fewer, and one content fewer, each by itself", () => {
    const [degrees, ...others] = few(BLOCKS.slice(1));
    expect([degrees.code, degrees.severity, others]).toEqual([
      "few-degrees-of-freedom",
      "warning",
      [],
    ]);
    expect(render(degrees.message)).toContain("7 blocks only (degrees of freedom: 5)");
    expect(render(degrees.expected)).toMatch(/^6 degrees .*common practice, no source/);
    const two = BLOCKS.map(([cementPct, mpa]) => [cementPct === 6 ? 8 : cementPct, mpa]);
    const [contents, ...rest] = few(two);
    expect([contents.code, contents.severity, rest]).toEqual(["few-contents", "warning", []]);
    expect(render(contents.message)).toContain("2 cement contents only (4 %, 8 %)");
    expect(render(contents.expected)).toMatch(/^3 cement contents .*common practice, no source/);
  });

  it("judges the distribution of residuals from eight blocks on", () => {
    const normality = (pairs: readonly (readonly number[])[]) =>
      residualChecks(fitted(pairs)).find(({ check }) => check === "normality")!;
    expect(normality(BLOCKS).status).toBe("no-doubt");
    expect(normality(BLOCKS).pValue).toBeGreaterThan(0.05);
    expect(normality(BLOCKS.slice(1))).toMatchObject({ status: "not-tested", pValue: null });
  });
});

describe("nearestBlocks", () => {
  const blocks = blocksOf(SIXTEEN);
  const { evidence } = found(blocks, { strengthMpa: 2, ...MEAN });

  it("lies on the straight line between the means on either side", () => {
    const between = nearestBlocks(evidence, 7)!;
    const mean = (content: number) => {
      const own = SIXTEEN.filter(([at]) => at === content);
      return own.reduce((sum, [, strength]) => sum + strength, 0) / own.length;
    };
    near(between.meanMpa, (mean(6) + mean(8)) / 2, { rel: 1e-12, abs: 0 }, "mean");
    expect([between.contentsPct, between.blocks]).toEqual([[6, 8], 8]);
    expect(between.boundMpa).toBeLessThan(between.meanMpa);
    expect(nearestBlocks(evidence, 12)!.contentsPct).toEqual([10]);
  });

  it("says nothing without replicates", () => {
    const single = found(blocksOf([4, 6, 8, 10].map((c) => [c, 0.3 * c + (c % 4) / 9])), {
      strengthMpa: 2,
      ...MEAN,
    });
    expect(nearestBlocks(single.evidence, 7)).toBeNull();
  });
});

it("calls all the blocks of a curve no second opinion on it, and writes contents in short", () => {
  const spread = [3, 3.2, 2.8, 3.4, 2.6, 3.6];
  const blocksAt = (contents: readonly number[]) =>
    blocksOf(
      contents.flatMap((content, index) =>
        spread.map((mpa, at): [number, number] => [
          content,
          index === 0 ? 2 + at / 1000 : mpa + index - 1,
        ]),
      ),
    );
  const codesOf = (contents: readonly number[]) =>
    codes(blocksAt(contents), { strengthMpa: 2.5, ...MEAN });
  expect(codesOf([4, 8])).toContain("uneven-scatter");
  expect(codesOf([4, 8])).not.toContain("nearest-blocks-agree");
  const words = found(blocksAt([4, 6.0576923076923075, 8]), { strengthMpa: 2.5, ...MEAN });
  const agree = words.findings.find(({ code }) => code === "nearest-blocks-agree")!;
  expect(render(agree.message)).toMatch(/nearest to it \(at 4 %, 6\.06 %\)/);
});
