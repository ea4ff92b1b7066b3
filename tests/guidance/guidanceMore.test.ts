import { describe, expect, it } from "vitest";
import { resampleReadings } from "../../src/grading/uncertainty/readingErrors.js";
import { checkGuidance, estimatedConsistency, guidanceVerdicts } from "../../src/guidance/check.js";
import { compareGuidance } from "../../src/guidance/comparison.js";
import { type ConsistencyLimit, envelopeEntry, published } from "../../src/guidance/entry.js";
import { probabilityPercent, verdictProbability } from "../../src/guidance/probability.js";
import { GUIDANCE_ENTRIES } from "../../src/guidance/published/recommendations.js";
import { render } from "../../src/words/render.js";
import { curveOf, frozen, sieveRecord } from "../grading/gradingCases.js";

const entry = (id: string) => GUIDANCE_ENTRIES.find((each) => each.id === id)!;
const CURVE = curveOf([0.002, 18], [0.02, 30], [0.063, 40], [2, 80], [20, 100]);

describe("what is read off the curve", () => {
  it("is each fraction between the boundaries of the entry", () => {
    const soil = curveOf([0.002, 10], [0.063, 30], [2, 80], [20, 100]);
    const all = published({
      ...entry("morel-clay"),
      fractions: (["clay", "silt", "fines", "sand", "gravel", "sandAndGravel"] as const).map(
        (fraction) => ({ fraction, minPct: 15, maxPct: 60 }),
      ),
    });
    const { criteria } = checkGuidance(soil, all);
    expect(
      criteria.map(({ what, measuredPct, byPct, verdict }) => [
        render(what),
        measuredPct,
        byPct,
        verdict,
      ]),
    ).toEqual([
      ["clay", 10, 5, "outside"],
      ["silt", 20, 5, "inside"],
      ["silt and clay", 30, 15, "inside"],
      ["sand", 50, 10, "inside"],
      ["gravel", 20, 5, "inside"],
      ["sand and gravel", 70, 10, "outside"],
    ]);
    const { verdict, criteria: alone } = guidanceVerdicts(all)(soil);
    expect([verdict, alone]).toEqual(["outside", criteria.map((each) => each.verdict)]);
    const [clay] = checkGuidance(curveOf([0.063, 30], [2, 80]), all).criteria;
    expect(render(clay.text)).toBe("clay: not measured; recommended 15 to 60 %.");
  });

  it("and an estimate of consistency says that it is none of a test", () => {
    const index = { quantity: "plasticityIndexPct", minPct: 2, maxPct: 30 } as const;
    expect([1.25, 12.34, 30].map((pct) => render(estimatedConsistency(index, pct)))).toEqual([
      "plasticity index: estimated 1.3 %, recommended 2 to 30 %: outside by 0.8 points; not measured on the blend.",
      "plasticity index: estimated 12.3 %, recommended 2 to 30 %: inside by 10.3 points; not measured on the blend.",
      "plasticity index: estimated 30.0 %, recommended 2 to 30 %: inside by 0.0 points; not measured on the blend.",
    ]);
    const below = { quantity: "liquidLimitPct", maxPct: 45, below: true } as const;
    expect(render(estimatedConsistency(below, 45))).toContain(
      "recommended below 45 %: outside by 0.0",
    );
  });
});

describe("what is not read off the curve", () => {
  it("counts where it was measured, and is told where it was not", () => {
    const soil = { plasticityIndexPct: 12, liquidLimitPct: 30, linearShrinkagePct: 3 };
    const good = curveOf([0.002, 12], [0.063, 32], [2, 80], [20, 100]);
    const plain = checkGuidance(good, entry("walker-2005"), soil);
    expect(plain.verdict).toBe("inside");
    expect(plain.others?.map(({ verdict }) => verdict)).toEqual(Array(3).fill("not measured"));
    const [at, over] = [2, 2.01].map((organicPct) =>
      checkGuidance(good, entry("walker-2005"), { ...soil, organicPct }),
    );
    expect([at.verdict, over.verdict]).toEqual(["inside", "outside"]);
    expect(render(over.others![0].text)).toBe(
      "organic matter: 2.0 %, recommended up to 2 %: outside.",
    );
  });

  it("an entry that limits nothing else is judged by it alone", () => {
    const check = (dryDensityKgM3?: number) =>
      checkGuidance(CURVE, entry("hall-djerbib-2004"), { dryDensityKgM3 }).verdict;
    expect([check(), check(1900), check(1700)]).toEqual(["incomplete", "inside", "outside"]);
  });

  it("takes the largest grain from the curve", () => {
    expect(checkGuidance(CURVE, entry("nmac-re-soil")).others?.[0]).toMatchObject({
      measured: 20,
      verdict: "inside",
    });
    const stony = curveOf([2, 50], [60, 100]);
    expect(checkGuidance(stony, entry("nmac-re-soil")).verdict).toBe("outside");
  });
});

describe("compareGuidance", () => {
  it("shows where sources disagree, about limits and about this soil", () => {
    const { checks, disagreements } = compareGuidance(
      frozen(CURVE),
      ["walker-2005", "keable-sazs-ars", "craterre-pise"].map(entry),
    );
    expect(checks).toHaveLength(3);
    const clay = disagreements.find(({ what }) => render(what).startsWith("clay"))!;
    expect(clay.sides.map(({ id, verdict }) => [id, verdict])).toEqual([
      ["walker-2005", "inside"],
      ["keable-sazs-ars", "outside"],
      ["craterre-pise", "inside"],
    ]);
    expect(clay).toMatchObject({ verdictsDiffer: true, irreconcilable: false, measuredPct: 18 });
  });

  it("differs in a verdict only where one side finds the soil inside and another outside", () => {
    const clay = (minPct: number, maxPct: number) => ({
      ...entry("morel-clay"),
      fractions: [{ fraction: "clay" as const, minPct, maxPct }],
    });
    // 18 % clay: inside both, outside both, and one of each.
    const [inside, outside, apart] = [
      [clay(5, 20), clay(5, 19)],
      [clay(5, 15), clay(5, 10)],
      [clay(5, 20), clay(5, 15)],
    ].map((entries) => compareGuidance(CURVE, entries).disagreements[0]);
    expect([inside, outside, apart].map(({ verdictsDiffer }) => verdictsDiffer)).toEqual([
      false,
      false,
      true,
    ]);
    // Limits that meet in one value can both be kept.
    const [meeting] = compareGuidance(CURVE, [clay(5, 10), clay(10, 20)]).disagreements;
    expect(meeting.irreconcilable).toBe(false);
  });

  it("says where no soil can please both", () => {
    const high = {
      ...entry("morel-clay"),
      id: "high",
      fractions: [{ fraction: "clay" as const, minPct: 20, maxPct: 30 }],
    };
    const [found] = compareGuidance(CURVE, [entry("morel-clay"), high]).disagreements;
    expect(found.irreconcilable).toBe(true);
    expect(render(found.text)).toContain("No soil meets all of them.");
  });

  it("never sets silt to 0.02 mm beside silt to 0.063 mm", () => {
    const { disagreements } = compareGuidance(CURVE, [
      entry("darchitectures-pise"),
      entry("walker-2005"),
    ]);
    expect(disagreements.filter(({ what }) => render(what).startsWith("silt"))).toEqual([]);
    expect(compareGuidance(CURVE, [entry("walker-2005")]).disagreements).toEqual([]);
    expect(() => compareGuidance(CURVE, [])).toThrow("invalid `entries`");
    const [{ sides }] = compareGuidance(CURVE, [
      entry("walker-2005"),
      entry("morel-clay"),
    ]).disagreements;
    expect(sides.map(({ id, remembered }) => [id, remembered])).toEqual([
      ["walker-2005", true],
      ["morel-clay", undefined],
    ]);
  });
});

describe("an envelope of the study's own", () => {
  const own = envelopeEntry({
    file: "sheets/envelope.csv",
    title: "Our pit",
    source: "trial walls",
    points: [
      { sizeMm: 0.063, lowPct: 15, highPct: 30, row: 5 },
      { sizeMm: 2, lowPct: 50, highPct: 85, row: 6 },
    ],
  });

  it("is checked like a published one and never passed off as one", () => {
    const check = checkGuidance(CURVE, own);
    expect(check.verdict).toBe("outside");
    expect(check.criteria[0]).toMatchObject({ sizeMm: 0.063, byPct: 10, verdict: "outside" });
    expect(render(check.honesty)).toContain("supplied with this study");
    expect(render(check.caution)).toContain("no proof");
  });

  it("can be set beside published ones", () => {
    const { checks } = compareGuidance(CURVE, [own, entry("rew-practitioner")]);
    expect(checks.map(({ entry: { id } }) => id)).toEqual(["own", "rew-practitioner"]);
  });
});

describe("verdictProbability", () => {
  const sieve = (finesG: number) =>
    sieveRecord([20, 2, 0.075], [0, 300, 700 - finesG], finesG, { dryMassG: 1000 });
  const probability = (finesG: number) => {
    const curves = resampleReadings({ sieve: sieve(finesG) }, { seed: 2, resamples: 300 });
    const measured = curveOf([0.075, finesG / 10], [2, 70], [20, 100]);
    return verdictProbability(measured, curves, entry("rew-practitioner"));
  };

  it("a curve well within is sure; one on the limit is not, and the limit is named", () => {
    expect(probability(150)).toMatchObject({ verdict: "inside", sameVerdict: 1 });
    expect(render(probability(150).text)).toContain("do not change this verdict");
    const border = probability(249);
    expect(border.sameVerdict).toBeGreaterThan(0.3);
    expect(border.sameVerdict).toBeLessThan(0.9);
    expect(render(border.text)).toContain("passing 0.075 mm could differ");
  });

  it("needs curves", () => {
    expect(() => verdictProbability(CURVE, [], entry("morel-clay"))).toThrow("invalid `curves`");
  });
});

describe("the sentence of a limit", () => {
  const soil = curveOf([0.002, 12.26], [0.063, 30], [2, 80], [20, 100]);
  const bare = { ...entry("morel-clay"), fractions: [] };
  const told = (measured: Parameters<typeof checkGuidance>[2], ...limits: ConsistencyLimit[]) =>
    checkGuidance(soil, published({ ...bare, consistency: limits }), measured).criteria.map(
      ({ text }) => render(text),
    );

  it("says either end that is open, and what a limit below its top leaves", () => {
    const quantity = "liquidLimitPct";
    expect(
      told(
        { liquidLimitPct: 40.26 },
        { quantity, minPct: 25 },
        { quantity, maxPct: 45 },
        { quantity, minPct: 25, maxPct: 40 },
        { quantity, maxPct: 45, below: true },
        { quantity, minPct: 45, maxPct: 60, below: true },
      ),
    ).toEqual([
      "liquid limit: 40.3 %, recommended from 25 %: inside by 15.3 points.",
      "liquid limit: 40.3 %, recommended up to 45 %: inside by 4.7 points.",
      "liquid limit: 40.3 %, recommended 25 to 40 %: outside by 0.3 points.",
      "liquid limit: 40.3 %, recommended below 45 %: inside by 4.7 points.",
      "liquid limit: 40.3 %, recommended 45 to below 60 %: outside by 4.7 points.",
    ]);
    expect(told({}, { quantity, minPct: 25 })).toEqual([
      "liquid limit: not measured; recommended from 25 %.",
    ]);
  });

  it("says a fraction and a passing in percent", () => {
    const both = published({
      ...bare,
      fractions: [{ fraction: "clay", minPct: 5, maxPct: 12 }],
      points: [{ sizeMm: 0.063, lowPct: 15, highPct: 30 }],
    });
    expect(checkGuidance(soil, both).criteria.map(({ text }) => render(text))).toEqual([
      "passing 0.063 mm: 30.0 %, recommended 15 to 30 %: inside by 0.0 points.",
      "clay: 12.3 %, recommended 5 to 12 %: outside by 0.3 points.",
    ]);
  });

  it("says what else was measured in its own unit", () => {
    const measured = {
      organicPct: 1.26,
      sulphatePct: 0.126,
      saltsPct: 1.996,
      dryDensityKgM3: 1649.6,
      plasticLimitPct: 18.26,
    };
    const others = published({
      ...bare,
      others: [
        { quantity: "organicPct", max: 2 },
        { quantity: "sulphatePct", max: 0.1 },
        { quantity: "saltsPct", max: 2 },
        { quantity: "topSizeMm", max: 25 },
        { quantity: "dryDensityKgM3", min: 1700 },
        { quantity: "plasticLimitPct", min: 16, max: 19 },
      ],
    });
    const check = checkGuidance(soil, others, measured);
    expect(check.others!.map(({ text }) => render(text))).toEqual([
      "organic matter: 1.3 %, recommended up to 2 %: inside.",
      "sulphate: 0.13 %, recommended up to 0.1 %: outside.",
      "soluble salts: 2.00 %, recommended up to 2 %: inside.",
      "largest grain: 20.0 mm, recommended up to 25 mm: inside.",
      "dry density: 1650 kg/m³, recommended from 1700 kg/m³: outside.",
      "plastic limit: 18.3 %, recommended 16 % to 19 %: inside.",
    ]);
    expect(check.verdict).toBe("outside");
    const untested = checkGuidance(soil, others).others!.map(({ text }) => render(text));
    expect(untested[4]).toBe("dry density: not measured; recommended from 1700 kg/m³.");
  });

  it("names what fewer than 95 of 100 draws say", () => {
    const clay = (pct: number) => curveOf([0.002, pct], [0.063, 30], [2, 80], [20, 100]);
    const of = (outside: number) => {
      const curves = Array.from({ length: 40 }, (_, draw) => clay(draw < outside ? 16 : 14));
      return render(verdictProbability(clay(14), curves, entry("morel-clay")).text);
    };
    expect(of(2)).toBe(
      "The reading errors do not change this verdict (95 % of 40 resampled curves).",
    );
    expect(of(3)).toBe(
      "Within the reading errors clay could differ: 93 % of 40 resampled curves give this verdict.",
    );
    // More than 99 of 100, and fewer than one.
    expect([0.99, 0.9901, 0.01, 0.0099].map((share) => render(probabilityPercent(share)))).toEqual([
      "99",
      "over 99",
      "1",
      "below 1",
    ]);
  });
});
