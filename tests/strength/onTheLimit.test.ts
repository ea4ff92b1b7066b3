import { describe, expect, it } from "vitest";
import type { SpecimenRecord } from "../../src/lab/specimens.js";
import { ASPECT_RATIO_TABLES, correctAspectRatio } from "../../src/strength/aspectRatio.js";
import { batchScatter } from "../../src/strength/batches.js";
import {
  CHARACTERISTIC_RULES,
  characteristicStrength,
} from "../../src/strength/characteristicStrength.js";
import { fiellerContent } from "../../src/strength/contentInterval.js";
import {
  acceptanceRisks,
  acceptanceWords,
  designAcceptance,
  judgeLot,
  operatingCharacteristic,
} from "../../src/strength/control/acceptance.js";
import { controlChart } from "../../src/strength/control/controlChart.js";
import { includedSpecimens } from "../../src/strength/includedBlocks.js";
import { leastCement, roundUpToStep } from "../../src/strength/leastCement.js";
import {
  fewBlocksFindings,
  modelFindings,
  nearestBlocks,
} from "../../src/strength/modelFindings.js";
import { testProgramme } from "../../src/strength/programme.js";
import { strengthBound } from "../../src/strength/regression/bounds.js";
import { fitStrength } from "../../src/strength/regression/fit.js";
import { lackOfFit } from "../../src/strength/regression/lackOfFit.js";
import type { StrengthModel } from "../../src/strength/regression/model.js";
import { compareModels } from "../../src/strength/regression/modelComparison.js";
import { residualChecks } from "../../src/strength/regression/residuals.js";
import { robustStrength } from "../../src/strength/regression/robustFit.js";
import { strengthByAge } from "../../src/strength/strengthByAge.js";
import { trialFindings } from "../../src/strength/trials.js";
import type { Text } from "../../src/words/message.js";
import { render } from "../../src/words/render.js";
import { blocksOf, fitted, SIXTEEN } from "./blocks.js";

/** Values exactly on a limit and beside it, and the numbers that sentences say, worked out by hand. */
/** Contents and strengths, as "4 1.5, 6 2". */
const pairs = (text: string) => text.split(", ").map((pair) => pair.split(" ").map(Number));
const MEAN = { statistic: "mean", confidence: 0.95 } as const;

describe("blocks in the curve", () => {
  const found = (specimens: readonly SpecimenRecord[], model: StrengthModel = "linear") =>
    includedSpecimens({ file: "blocks.csv", specimens }, { ageDays: 28, model }).findings;
  const codes = (text: string, model?: StrengthModel) =>
    found(blocksOf(pairs(text)), model).map(({ code }) => code);

  it("are in another unit from six times their like on, or thirty times the sheet", () => {
    const among = (strength: number) =>
      codes(`4 2, 4 2, 4 2.1, 6 2, 6 2, 6 2.1, 8 2, 8 2, 8 2.1, 4 ${strength}`);
    expect(among(11.9)).not.toContain("mixed-units");
    expect(among(12)).toContain("mixed-units");
    expect(among(2 / 6)).toContain("mixed-units");
    expect(among(2 / 5.9)).not.toContain("mixed-units");
    // Two blocks alike are no group of two others: the whole sheet counts, whose median is 2.
    const alone = (strength: number) => codes(`3 ${strength}, 3 2, 5 2, 7 2.1, 9 1.9`);
    expect(alone(59)).not.toContain("mixed-units");
    expect(alone(60)).toContain("mixed-units");
    expect(codes("4 1, 8 40")).not.toContain("mixed-units");
  });

  it("have a fraction for a content below 0.5 where the others are 2 or more", () => {
    const content = (odd: number, others: number) =>
      codes(`${odd} 1, ${others} 2, ${others} 2.2, ${others + 2} 3`).includes("cement-as-fraction");
    expect([content(0.49, 2), content(0.5, 2), content(0.49, 1.9), content(0, 2)]).toEqual([
      true,
      false,
      false,
      false,
    ]);
    const [fraction] = found(blocksOf(pairs("6 2, 6 2.2, 0.045 1, 8 3")));
    expect([fraction.row, fraction.value, render(fraction.expected)]).toEqual([
      4,
      "0.045 %",
      "percent, for example 4.5 %",
    ]);
  });

  it("are enough with one more than the coefficients, at as many contents", () => {
    expect(codes("4 1, 6 2")).toEqual(["too-few-blocks"]);
    expect(codes("4 1, 6 2, 6 2.1")).toEqual([]);
    expect(codes("4 1, 6 2, 8 2.6", "quadratic")).toEqual(["too-few-blocks"]);
    expect(codes("4 1, 6 2, 8 2.6, 8 2.7", "quadratic")).toEqual([]);
    expect(codes("4 1, 6 2, 6 2.1, 4 1.1", "quadratic")).toEqual(["too-few-contents"]);
    const [few] = found(blocksOf(pairs("4 1, 6 2")), "quadratic");
    expect([few.value, render(few.message), render(few.expected)]).toEqual([
      "2",
      "2 blocks of 28 days are too few for the quadratic model.",
      "at least 4; many more for a narrow band",
    ]);
    const [contents] = found(blocksOf(pairs("6 2, 4 1, 6 2.1, 4 1.1")), "quadratic");
    expect([contents.value, render(contents.expected)]).toEqual([
      "4 %, 6 %",
      "at least 3 contents, better one more to see whether the shape fits",
    ]);
  });

  it("scatter, unless blocks of a content or all of them are alike", () => {
    expect(codes("4 2, 6 2, 8 2")).toEqual(["no-scatter"]);
    expect(codes("4 1, 4 1, 6 2, 8 3")).toEqual(["no-scatter"]);
    expect(codes("4 1, 6 2, 8 3")).toEqual([]);
    expect(codes("4 1, 4 1.1, 6 2, 6 2, 8 3")).toEqual([]);
  });

  it("are far from the mean of their like, without themselves", () => {
    const far = found(blocksOf(pairs("4 2, 4 2.1, 4 1.9, 4 6, 6 3, 6 3.1, 8 4, 8 4.1")));
    expect(far.map(({ code, row }) => [code, row])).toEqual([["outlying-block", 5]]);
    // Four degrees of freedom, at 1 − 0.05/16 = 0.9969: between 4.60 at 0.995 and 5.60 at 0.9975 by table.
    expect(render(far[0].expected)).toBe("about 2.00 MPa; studentised residual within ±5.3");
  });
});

describe("what speaks against a curve", () => {
  const fit = fitted(SIXTEEN);
  const blocks = blocksOf(SIXTEEN);
  const evidence = {
    fit,
    lackOfFit: { ...lackOfFit(fit), pValue: 0.5 as number | null },
    models: compareModels(blocks, { ageDays: 28, model: "linear" }),
    checks: residualChecks(fit),
    scatter: { ...batchScatter(blocks, { ageDays: 28 }), pValue: null as number | null },
    cementPct: null,
  };
  const models = (aiccDifference: number) => {
    const { models: all, used, message } = evidence.models;
    const others = all.map((one) => ({
      ...one,
      aiccDifference: one.model === "linear" ? aiccDifference : 0,
    }));
    return { models: others, used, message };
  };
  const calm = { ...evidence, models: models(0) };
  const told = (more: object) =>
    modelFindings({ ...calm, ...more }, "blocks.csv").map(({ code, message }) => [
      code,
      /p (= [\d.]+|below [\d.]+)|by ([\d.]+)\.$/.exec(render(message))?.[0],
    ]);

  it("begins below p 0.05, and at an AICc larger by 4", () => {
    expect(told({})).toEqual([]);
    const lack = (pValue: number) => told({ lackOfFit: { ...evidence.lackOfFit, pValue } });
    expect(lack(0.05)).toEqual([]);
    expect(lack(0.0499)).toEqual([["lack-of-fit", "p = 0.050"]]);
    expect(lack(0.001)).toEqual([["lack-of-fit", "p = 0.0010"]]);
    expect(lack(0.00099)).toEqual([["lack-of-fit", "p below 0.001"]]);
    const scatter = (pValue: number) => told({ scatter: { ...evidence.scatter, pValue } });
    expect(scatter(0.05)).toEqual([]);
    expect(scatter(0.049)).toEqual([["batches-differ", undefined]]);
    expect(told({ models: models(3.99) })).toEqual([]);
    expect(told({ models: models(4) })).toEqual([["clearly-better-model", "by 4.0."]]);
  });

  it("is said of two contents, and of five degrees of freedom", () => {
    const few = (some: readonly (readonly number[])[]) =>
      fewBlocksFindings(fitted(some), "blocks.csv").map(({ code }) => code);
    expect(few(SIXTEEN)).toEqual([]);
    expect(few(SIXTEEN.slice(0, 8))).toEqual(["few-contents"]);
    expect(few([...SIXTEEN.slice(0, 7), SIXTEEN[8]])).toEqual([]);
    expect(few([...SIXTEEN.slice(0, 6), SIXTEEN[8]])).toEqual(["few-degrees-of-freedom"]);
  });

  it("is not asked of the residuals of seven blocks", () => {
    const [seven] = residualChecks(fitted(SIXTEEN.slice(2, 9)));
    const [eight] = residualChecks(fitted(SIXTEEN.slice(1, 9)));
    expect([seven.status, seven.pValue]).toEqual(["not-tested", null]);
    expect(eight.status).toBe("no-doubt");
  });
});

it("the blocks nearest to a content look as far below their mean as the requirement does", () => {
  const fit = fitted(pairs("4 1.0, 4 1.2, 6 2.4, 6 2.6, 8 2.9, 8 3.1"));
  const known = (statistic: "mean" | "prediction" | "tolerance", confidence: number) =>
    nearestBlocks(
      { fit, lackOfFit: lackOfFit(fit), requirement: { strengthMpa: 2, statistic, confidence } },
      7,
    )!.knownMpa;
  // At a tested content its own two blocks alone.
  const at = nearestBlocks(
    { fit, lackOfFit: lackOfFit(fit), requirement: { strengthMpa: 2, ...MEAN } },
    8,
  )!;
  expect([at.contentsPct, at.blocks, at.meanMpa]).toEqual([[8], 2, expect.closeTo(3, 12)]);
  // Half way between 2.5 and 3.0; the blocks scatter by √(0.06/3) = 0.14142.
  expect(known("mean", 0.9)).toBeCloseTo(2.75, 9);
  expect(known("prediction", 0.9)).toBeCloseTo(2.75 - 1.28155 * 0.1414214, 5);
  // A tolerance looks at one block in twenty whatever the confidence.
  expect(known("tolerance", 0.9)).toBeCloseTo(2.75 - 1.644854 * 0.1414214, 5);
});

describe("the least cement", () => {
  const line = (at: (content: number) => number, contents = [4, 6, 8, 10]) =>
    contents.flatMap((content) => [-0.1, 0.1].map((off) => [content, at(content) + off]));
  const next = (
    blocks: readonly (readonly number[])[],
    strengthMpa: number,
    model?: StrengthModel,
  ) => {
    const { status, nextBlocks, message } = leastCement(fitted(blocks, model), {
      strengthMpa,
      ...MEAN,
    });
    return { status, nextBlocks, message: render(message) };
  };

  it("is looked for downwards by the tested range, and no lower than without cement", () => {
    // 2 + 0.2 c is above 1.5 MPa without any cement.
    const none = next(
      line((content) => 2 + 0.2 * content),
      1.5,
    );
    expect([none.status, none.nextBlocks!.cementPct]).toEqual(["below-range", 0]);
    expect(none.message).toContain("at 0 %. Make blocks with contents between 0 and 4 %.");
    // Tested from 8 to 10 %: 6 % is as far as the curve is carried on.
    const narrow = next(
      line((content) => 2 + 0.2 * content, [8, 9, 10]),
      2.1,
    );
    expect(narrow.nextBlocks!.cementPct).toBe(6);
    // A logarithm ends at a tenth of the lowest content.
    const curved = next(
      line((content) => 4 + Math.log(content)),
      1,
      "logarithmic",
    );
    expect(curved.nextBlocks!.cementPct).toBe(0.4);
    // 0.5 c reaches 1.5 MPa at 3 %.
    const inside = next(
      line((content) => 0.5 * content),
      1.5,
    );
    expect(inside.nextBlocks!.cementPct).toBe(3);
    expect(inside.message).toMatch(/gives about 3 % \(2\.\d to 3\.\d %, at 95 % confidence\)/);
    // Nothing lies below no cement at all.
    const zero = next(
      line((content) => 2 + 0.2 * content, [0, 4, 8]),
      1,
    );
    expect([zero.status, zero.nextBlocks]).toEqual(["below-range", null]);
    expect(zero.message).toBe("The lowest tested content, 0 %, already meets the requirement.");
  });

  it("is looked for upwards by the tested range, a tenth above it at the least", () => {
    // 0.5 c gives 7.9 MPa at 15.8 %, and 8.1 at 16.2 %: 16 % is as far as the curve is carried on.
    expect(
      next(
        line((content) => 0.5 * content),
        7.9,
      ).nextBlocks!.cementPct,
    ).toBe(15.8);
    const beyond = next(
      line((content) => 0.5 * content),
      8.1,
    );
    expect([beyond.status, beyond.nextBlocks!.cementPct]).toEqual(["above-range", null]);
    expect(beyond.message).toContain("Carried on to 16 %");
    expect(
      next(
        line((content) => 0.5 * content),
        5.01,
      ).nextBlocks!.cementPct,
    ).toBe(10.1);
  });

  it.each([
    ["mean", "even", "fieller"],
    ["prediction", "even", "fieller"],
    ["tolerance", "even", "inversion"],
    ["mean", "proportional", "fieller"],
    ["prediction", "proportional", "inversion"],
    ["tolerance", "proportional", "inversion"],
  ] as const)(
    "%s, %s: its interval ends where the band does, by %s",
    (statistic, variance, method) => {
      const fit = fitStrength(blocksOf(SIXTEEN), { model: "linear", ageDays: 28, variance });
      const rule = { strengthMpa: 2.4, statistic, confidence: 0.9 };
      const { interval } = leastCement(fit, rule);
      expect(interval!.method).toBe(method);
      // Two-sided 90 %: the upper end where 95 % lie above the requirement, the lower where 5 % do.
      const bound = (content: number, confidence: number) =>
        strengthBound(fit, content, { statistic, confidence });
      expect(bound(interval!.highPct, 0.95)).toBeCloseTo(2.4, 7);
      expect(bound(interval!.lowPct, 0.05)).toBeCloseTo(2.4, 7);
      expect([interval!.lowOpen, interval!.highOpen]).toEqual([false, false]);
      // A curve as flat as it may be, in another unit of strength, is inverted in the same way.
      const flat = SIXTEEN.map(([content, strength]) => [content, strength / 100]);
      const small = fitStrength(blocksOf(flat), { model: "linear", ageDays: 28, variance });
      const other = leastCement(small, { ...rule, strengthMpa: 0.024 }).interval!;
      expect(other.method).toBe(method);
      expect(other.highPct).toBeCloseTo(interval!.highPct, 7);
    },
  );

  it("is told of the content from which the curve falls", () => {
    const falls = (at: (content: number) => number, model: StrengthModel) =>
      leastCement(fitted(line(at), model), { strengthMpa: 1, ...MEAN }).findings.map(
        ({ code, message }) => [code, /from about ([\d.]+) %/.exec(render(message))?.[1]],
      );
    // Highest at 7 %, a step of the search; and falling from the first content on.
    expect(falls((content) => 5 - 0.2 * (content - 7) ** 2, "quadratic")).toEqual([
      ["strength-falls-with-cement", "7.0"],
    ]);
    expect(falls((content) => 5 - 0.2 * content, "linear")).toEqual([
      ["strength-falls-with-cement", "4.0"],
    ]);
    expect(falls((content) => 5 + 0.2 * content, "linear")).toEqual([]);
  });

  it("is rounded up but for the error of the search", () => {
    expect([roundUpToStep(7.5 + 9e-10, 0.5), roundUpToStep(7.5 + 2e-9, 0.5)]).toEqual([7.5, 8]);
    const answer = leastCement(fitted(SIXTEEN), { strengthMpa: 2.4, ...MEAN });
    expect(render(answer.message)).toBe(
      `From ${answer.cementPct!.toFixed(2)} % cement the bound meets the requirement; rounded up, 7 %.`,
    );
    expect(answer.roundUpToPct).toBe(0.5);
    // Rounded up to the highest tested content is not beyond it.
    const highest = leastCement(
      fitted(SIXTEEN),
      { strengthMpa: 3.5, ...MEAN },
      { roundUpToPct: 5 },
    );
    expect([highest.batchablePct, highest.findings]).toEqual([10, []]);
  });
});

describe("rules for a handful of blocks", () => {
  it("are meant for so many and no fewer", () => {
    const status = (blocks: number, id: string) =>
      characteristicStrength([2, 2.1, 2.2, 1.9, 2].slice(0, blocks), id).status;
    expect([status(2, "en1990-normal"), status(3, "en1990-normal")]).toEqual([
      "too-few-blocks",
      "ok",
    ]);
    expect([status(1, "margin-1.65"), status(2, "margin-1.65")]).toEqual(["too-few-blocks", "ok"]);
    expect([status(4, "nzs4298-least-block"), status(5, "nzs4298-least-block")]).toEqual([
      "too-few-blocks",
      "ok",
    ]);
    expect(CHARACTERISTIC_RULES.map(({ id, minBlocks }) => [id, minBlocks])).toEqual([
      ["en1990-normal", 3],
      ["en1990-lognormal", 3],
      ["en1990-normal-known", 1],
      ["en1990-lognormal-known", 1],
      ["tolerance-75", 2],
      ["tolerance-95", 2],
      ["tolerance-95-lognormal", 2],
      ["margin-1.65", 2],
      ["nzs4298-least-block", 5],
    ]);
    for (const knownVariation of [0, 1]) {
      const of = () => characteristicStrength([3], "en1990-normal-known", { knownVariation });
      expect(of).toThrow(`\`knownVariation\`: ${knownVariation}`);
    }
    expect(() => characteristicStrength([], "margin-1.65")).toThrow("`strengthsMpa`: []");
    expect(
      characteristicStrength([3], "en1990-normal-known", { knownVariation: 0.1 }),
    ).toMatchObject({
      status: "ok",
      sdMpa: null,
      // 1.645 √2 is 2.3264; 3 (1 − 0.23264) is 2.3021.
      factor: expect.closeTo(2.3264, 4),
      valueMpa: expect.closeTo(2.3021, 4),
    });
  });

  it("take one standard deviation 1.65 times off", () => {
    // 2 and 3: mean 2.5, standard deviation √0.5.
    const { valueMpa, message } = characteristicStrength([2, 3], "margin-1.65");
    expect(valueMpa).toBeCloseTo(2.5 - 1.65 * Math.SQRT1_2, 12);
    expect(render(message)).toMatch(/factor 1\.65 with 2 blocks\.$/);
  });

  it("of shape have the factors of the record", () => {
    expect(
      ASPECT_RATIO_TABLES.map(({ id, points }) => [
        id,
        points.map(({ ratio, factor }) => `${ratio}: ${factor}`).join(", "),
      ]),
    ).toEqual([
      ["nzs4298", "0.4: 0.5, 0.7: 0.6, 1: 0.7, 3: 0.85, 5: 1"],
      ["heathcote-1992", "0.4: 0.25, 0.7: 0.4, 1: 0.58, 3: 0.9, 5: 1"],
      ["cylinder-c39", "1: 0.87, 1.25: 0.93, 1.5: 0.96, 1.75: 0.98, 2: 1"],
      ["none-2017", "2: 1, 5.81: 1"],
    ]);
  });

  it("of shape end where their tables end", () => {
    const of = (heightMm: number, id: string) =>
      correctAspectRatio({ strengthMpa: 2, heightMm, thicknessMm: 100 }, id);
    expect([of(39.9, "nzs4298").status, of(40, "nzs4298").factor]).toEqual(["outside-table", 0.5]);
    expect([of(200, "cylinder-c39").factor, of(200.1, "cylinder-c39").factor]).toEqual([1, null]);
    expect(render(of(200, "nzs4298").message)).toContain(
      "factor 0.775 at height over thickness 2.00.",
    );
    // 0.87 and 0.93 at 1 and 1.25: 0.9 half way.
    expect(of(112.5, "cylinder-c39").correctedMpa).toBeCloseTo(1.8, 12);
    expect(render(of(99, "cylinder-c39").message)).toBe(
      "Ratio 0.99 lies outside this table, 1 to 2; no factor is given.",
    );
    expect(() => of(100, "none")).toThrow("`tableId`: none; expected one of nzs4298, ");
  });
});

describe("lots of a site", () => {
  const less = { kind: "mean-less-ks", blocks: 2, requiredMpa: 2, factor: 1 } as const;
  const both = { kind: "mean-and-least", blocks: 2, meanMpa: 2.5, minMpa: 2 } as const;

  it("are accepted on their limits", () => {
    // 2.5 and 3.5: mean 3, standard deviation √0.5; 3 − √0.5 is 2.2929.
    const reached = 3 - Math.SQRT1_2;
    const of = (requiredMpa: number) => judgeLot({ ...less, requiredMpa }, [2.5, 3.5]);
    expect([of(reached - 1e-9).status, of(reached + 1e-9).status]).toEqual([
      "accepted",
      "rejected",
    ]);
    expect(render(of(2.3).message)).toContain("2.29 MPa is below 2.3 MPa");
    expect(judgeLot(both, [3, 2]).status).toBe("accepted");
    expect(judgeLot(both, [2.99, 2]).status).toBe("rejected");
    expect(judgeLot(both, [3.1, 1.99]).status).toBe("rejected");
    expect(judgeLot(both, [3, 2])).toMatchObject({ meanMpa: 2.5, minMpa: 2, steps: [] });
    expect(render(acceptanceWords({ ...less, factor: 1.25 }))).toBe(
      "Accept the lot when the mean of its 2 blocks less 1.25 times their standard deviation is at least 2 MPa.",
    );
  });

  it("have risks at the shares that were chosen, a hundredth and a fifth by default", () => {
    const { goodMeanMpa, poorMeanMpa, message } = acceptanceRisks(less, { sdMpa: 0.5 });
    // Normal quantiles 2.3263 and 0.8416.
    expect(goodMeanMpa).toBeCloseTo(2 + 0.5 * 2.3263, 4);
    expect(poorMeanMpa).toBeCloseTo(2 + 0.5 * 0.8416, 4);
    expect(render(message)).toContain("A good lot, 1.0 % of its blocks below 2 MPa");
    expect(acceptanceRisks(both, { sdMpa: 0.5 }).goodMeanMpa).toBeCloseTo(goodMeanMpa, 12);
    // Two standard deviations above the requirement: 2.275 % below it.
    const [below] = operatingCharacteristic(less, { sdMpa: 0.3, meansMpa: [2.6] });
    expect([below.meanMpa, below.belowPct]).toEqual([2.6, expect.closeTo(2.275, 3)]);
    const options = { requiredMpa: 2, builderRisk: 0.05, ownerRisk: 0.1 };
    const bad = { ...options, acceptableQuality: 0.1, rejectableQuality: 0.1 };
    expect(() => designAcceptance(bad)).toThrow("`acceptableQuality`: 0.1; expected below 0.1");
    const { rule, message: words } = designAcceptance({ ...bad, rejectableQuality: 0.35 });
    expect(render(words)).toContain(`${rule!.blocks} blocks a lot, factor `);
  });

  it("are charted by the mean step between neighbours where they are single blocks", () => {
    const lots = [2, 2.4, 2, 2.4, 2].map((value, index) => ({
      label: `${index}`,
      strengthsMpa: [value],
    }));
    const { centreMpa, lowMpa, highMpa, spreadHighMpa, message } = controlChart(lots);
    // Steps of 0.4 each; 3 × 0.4 / 1.1284 is 1.0635.
    expect([centreMpa, lowMpa, highMpa]).toEqual(
      [2.16, 1.0965, 3.2235].map((value) => expect.closeTo(value, 4)),
    );
    expect(spreadHighMpa).toBeNull();
    expect(render(message)).toContain("No lot gives a signal");
  });
});

describe("a programme", () => {
  const plan = { contentsPct: [8, 4, 6, 4], sdMpa: 0.2, ageDays: 28 };

  it("asks at its outermost contents, and not beyond", () => {
    const at = (atPct: number) =>
      testProgramme({ ...plan, aim: { kind: "width", halfWidthMpa: 0.3, atPct } }).status;
    expect([at(4), at(8), at(3.99), at(8.01)]).toEqual([
      "ok",
      "ok",
      "outside-contents",
      "outside-contents",
    ]);
    const { contentsPct, batchesAContent, message, blocks } = testProgramme({
      ...plan,
      aim: { kind: "difference", differenceMpa: 0.5 },
    });
    expect([contentsPct, batchesAContent]).toEqual([[4, 6, 8], 2]);
    expect(render(message)).toContain("at each of 3 contents, from 2 batches each");
    expect(new Set(blocks.map(({ batch }) => batch)).size).toBe(6);
    const single = {
      ...plan,
      batchesAContent: 1,
      aim: { kind: "difference", differenceMpa: 5 },
    } as const;
    // One block a content leaves nothing to tell the scatter by.
    expect(testProgramme(single).blocksAContent).toBe(2);
    expect(() => testProgramme({ ...single, contentsPct: [4, 6, -1] })).toThrow(
      "`contentsPct[2]`: -1",
    );
  });
});

it("a colour is one within the limits of its scale", () => {
  const wrong = (lab: { l: number; a: number; b: number }) =>
    trialFindings([{ id: "A", mix: "x", row: 2, lab, dryToConstantMass: true }], "trials.csv").some(
      ({ code }) => code === "unknown-colour",
    );
  expect([0, 100, -0.1, 100.1].map((l) => wrong({ l, a: 0, b: 0 }))).toEqual([
    false,
    false,
    true,
    true,
  ]);
  expect([-128, 128, -128.1, 128.1].map((a) => wrong({ l: 50, a, b: 0 }))).toEqual([
    false,
    false,
    true,
    true,
  ]);
  expect([-128, 128, -128.1, 128.1].map((b) => wrong({ l: 50, a: 0, b }))).toEqual([
    false,
    false,
    true,
    true,
  ]);
});

it("a curve has an AICc from five blocks on, where a variance and two coefficients leave one to spare", () => {
  expect(fitted(pairs("4 1, 6 2.1, 8 3, 10 3.9")).aicc).toBeNull();
  const five = fitted(pairs("4 1, 6 2.1, 8 3, 10 3.9, 10 4.1"));
  // n (ln 2πσ² + 1) + 2k + 2k(k + 1)/(n − k − 1) with n = 5, k = 3 and σ² = RSS / 5.
  const rss = five.points.reduce((sum, { residualMpa }) => sum + residualMpa ** 2, 0);
  expect(five.aicc).toBeCloseTo(5 * (Math.log((2 * Math.PI * rss) / 5) + 1) + 6 + 24, 9);
  expect(strengthBound(five, 7, { statistic: "prediction" })).toBe(
    strengthBound(five, 7, { statistic: "prediction", confidence: 0.95, coverage: 0.95 }),
  );
});

it("a block that is all the scatter there is has no studentised residual", () => {
  const { points } = fitted(pairs("4 1, 6 2, 8 3, 10 4, 6 2.5"));
  expect(points.map(({ studentised }) => studentised === null)).toEqual([
    false,
    false,
    false,
    false,
    true,
  ]);
});

it("a regression without its blocks, ages or weights says which", () => {
  const asked = { model: "linear", ageDays: 28 } as const;
  const three = blocksOf(pairs("4 1, 6 2, 8 2.6"));
  expect(fitStrength(three, asked).status).toBe("ok");
  expect(fitStrength(three.slice(1), asked)).toMatchObject({ status: "too-few-points", blocks: 2 });
  const aged = three.concat(
    blocksOf(pairs("4 0.7, 8 2")).map((block) => ({ ...block, ageDays: 7 })),
  );
  const at = (ageDays: number) => fitStrength(aged, { ...asked, ageDays, covariates: ["ln age"] });
  expect([at(7), at(28), at(6.9), at(28.1)].map(({ status }) => status)).toEqual([
    "ok",
    "ok",
    "outside-tested",
    "outside-tested",
  ]);
  expect(render(at(90).message)).toContain("crushed at 90 days or later");
  expect(render(at(3).message)).toContain("the tested ages are 7 to 28 days");
});

describe("sentences with numbers", () => {
  const asked = { model: "linear", ageDays: 28 } as const;
  const text = (message: Text) => render(message);

  it("of a curve, and of why there is none", () => {
    expect(text(fitted(SIXTEEN).message)).toBe(
      "f = a + b c, fitted to 16 blocks of 28 days at 4 cement contents.",
    );
    const dense = blocksOf(SIXTEEN).map((block, index) => ({
      ...block,
      dryDensityKgM3: 1900 + 7 * (index % 5),
      ageDays: index % 2 === 0 ? 28 : 7,
    }));
    const covariates = ["ln age", "dry density"] as const;
    expect(text(fitStrength(dense, { ...asked, covariates }).message)).toBe(
      "f = a + b c, with ln age, dry density, fitted to 16 blocks of 7, 28 days at 4 cement contents.",
    );
    const few = (options: object) =>
      text(fitStrength(dense.slice(0, 3), { ...asked, ...options }).message);
    expect(few({})).toBe("The linear model needs at least 3 blocks of 28 days; there are 2.");
    // Two coefficients, two covariates, and one to spare.
    expect(few({ covariates })).toContain("needs at least 5 blocks; there are 3.");
    const same = fitStrength(blocksOf(pairs("4 1, 4 1.1, 4 1.2, 6 2")), {
      ...asked,
      model: "quadratic",
    });
    expect(text(same.message)).toContain(
      "at least 3 different cement contents; the blocks of 28 days have 2.",
    );
    const none = fitStrength(blocksOf(pairs("0 0.4, 4 1, 6 2, 8 3")), { ...asked, model: "power" });
    expect(text(none.message)).toContain("block B1 has 0 % cement and 0.4 MPa.");
    const { message, ages } = strengthByAge(dense, { ...asked, covariates }, 6);
    expect(text(message)).toContain("Strength at 6 % cement by age, from 16 blocks of 2 ages");
    // Of content 6 the odd rows were crushed at 7 days: 2.52 and 2.44, the others 2.31 and 2.22.
    expect(ages.map(({ blocks, blocksMeanMpa }) => [blocks, blocksMeanMpa])).toEqual([
      [2, expect.closeTo(2.48, 12)],
      [2, expect.closeTo(2.265, 12)],
    ]);
  });

  it("of the models beside the one that is used", () => {
    const blocks = blocksOf(SIXTEEN);
    const { models, message } = compareModels(blocks, asked);
    const aicc = (model: StrengthModel) => models.find((one) => one.model === model)!;
    expect(models.map(({ aicc: value }) => value)).toEqual(
      models.map(({ aicc: value }) => value).toSorted((a, b) => a! - b!),
    );
    for (const one of models) {
      expect(one.aiccDifference).toBeCloseTo(one.aicc! - models[0].aicc!, 12);
      expect(one.lackOfFitPValue).toBe(lackOfFit(one.fit).pValue);
    }
    expect(aicc("linear").rank).toBeGreaterThan(1);
    expect(text(message)).toContain(
      `The linear model is used, as chosen. Better by AICc: ${models
        .filter(({ rank }) => rank! < aicc("linear").rank!)
        .map(({ model }) => model)
        .join(", ")} (difference ${aicc("linear").aiccDifference!.toFixed(1)} to the best).`,
    );
    const best = compareModels(blocks, { ageDays: 28, model: models[0].model });
    expect(text(best.message)).toBe(
      `The ${models[0].model} model is used, as chosen. No other model fits these blocks clearly better.`,
    );
    expect(text(compareModels(blocks.slice(0, 3), { ageDays: 28 }).message)).toContain(
      "The straight line is used, as no model was chosen. It could not be fitted: ",
    );
  });

  it("of a content and its interval", () => {
    const found = fiellerContent(fitted(SIXTEEN), { strengthMpa: 2.5, statistic: "mean" });
    expect(text(found.message)).toBe("The contents whose 95 % band contains 2.5 MPa.");
    const falling = leastCement(fitted(pairs("4 3.1, 4 2.9, 6 2.6, 6 2.4, 8 2.1, 8 1.9")), {
      strengthMpa: 2,
      ...MEAN,
    });
    expect([falling.status, falling.cementPct, falling.interval]).toEqual(["falls", null, null]);
    expect(text(falling.message)).toContain("falls with more cement at 4 %, where it meets");
    const rule = { strengthMpa: 2.4, statistic: "prediction", confidence: 0.95 } as const;
    const fit = fitted(SIXTEEN);
    const { batchablePct, lineAtBatchableMpa, boundAtBatchableMpa } = leastCement(fit, rule);
    const [a, b] = fit.coefficients.map(({ value }) => value);
    expect(lineAtBatchableMpa).toBeCloseTo(a + b * batchablePct!, 12);
    expect(boundAtBatchableMpa).toBe(strengthBound(fit, batchablePct!, rule));
    const beyond = leastCement(fit, { strengthMpa: 3.5, ...MEAN }, { roundUpToPct: 4 });
    expect([beyond.batchablePct, beyond.findings.map(({ value }) => value)]).toEqual([
      12,
      ["12 %"],
    ]);
    expect(text(beyond.findings[0].expected)).toBe("at most 10 %");
    // So few blocks that the band's lower edge does not come up to 4.2 MPa within another 6 %.
    const loose = leastCement(fitted(pairs("4 1, 7 2.9, 10 3")), { strengthMpa: 4.2, ...MEAN });
    expect(loose.nextBlocks!.interval!.highPct).toBeNull();
    expect(text(loose.nextBlocks!.reason)).toMatch(
      /about 1\d(\.\d)? % cement \(from \d+\.\d % up without an end in reach, at 95 % confidence\)/,
    );
  });

  it("of a curve that single blocks pull less", () => {
    const odd = SIXTEEN.map(([content, strength], at) => [content, at === 5 ? 4.5 : strength]);
    const { message, maxDifferenceMpa, atPct, reduced } = robustStrength(fitted(odd));
    expect(reduced.map(({ id }) => id)).toContain("B6");
    expect(text(message)).toContain(
      `differs from the least-squares one by ${maxDifferenceMpa!.toFixed(2)} MPa at most, at ${atPct!.toFixed(1)} % cement. Down-weighted: ${reduced.map(({ id }) => id).join(", ")}.`,
    );
    expect(reduced.every(({ weight }) => weight < 1)).toBe(true);
  });

  it("of lots and programmes", () => {
    const rule = { kind: "mean-and-least", blocks: 3, meanMpa: 2.5, minMpa: 2 } as const;
    expect(text(judgeLot(rule, [2, 2.5]).message)).toContain(
      "made for 3 blocks, and the lot has 2: its risks would be others.",
    );
    expect(text(judgeLot(rule, [2.1, 2.2, 1.9]).message)).toBe(
      "The lot does not meet the rule: the mean, 2.07 MPa, is too low; the weakest, 1.90 MPa, is too low.",
    );
    const shares = { acceptableQuality: 0.01, rejectableQuality: 0.2 };
    const designed = designAcceptance({
      requiredMpa: 2,
      ...shares,
      builderRisk: 0.05,
      ownerRisk: 0.1,
    });
    const { ownerRisk } = acceptanceRisks(designed.rule!, { sdMpa: 0.4, ...shares });
    expect(text(designed.message)).toBe(
      `9 blocks a lot, factor 1.53: the owner's risk is then ${(100 * ownerRisk).toFixed(1)} %.`,
    );
    const plan = { contentsPct: [4, 6, 8, 10], sdMpa: 0.2, ageDays: 28 };
    const seen = testProgramme({ ...plan, aim: { kind: "difference", differenceMpa: 0.3 } });
    expect(text(seen.message)).toContain(
      "10 blocks at each of 4 contents, from 2 batches each: a difference of 0.3 MPa is seen with a chance of 90 %, if blocks of one content scatter by 0.2 MPa",
    );
    const wide = testProgramme({ ...plan, aim: { kind: "width", halfWidthMpa: 0.1, atPct: 7 } });
    expect(text(wide.message)).toContain(`known to ±${wide.halfWidthMpa!.toFixed(2)} MPa`);
    // At the mean of the contents the leverage is a quarter of one a block: t(n − 2) 0.2 / √n.
    expect([wide.blocksAContent, wide.halfWidthMpa]).toEqual([
      6,
      expect.closeTo((2.0739 * 0.2) / Math.sqrt(24), 4),
    ]);
    const short = testProgramme({
      ...plan,
      contentsPct: [4, 6],
      aim: { kind: "difference", differenceMpa: 1 },
    });
    expect(text(short.message)).toContain("at least 3 contents for the linear model");
    expect(text(short.message)).toContain("there are 2.");
  });
});
