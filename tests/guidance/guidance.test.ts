import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CAUTIONS, type CautionWork, cautionsFor } from "../../src/guidance/cautions.js";
import {
  checkGuidance,
  guidanceFindings,
  isForStabilisedEarth,
  selectionClass,
} from "../../src/guidance/check.js";
import { sourceMark } from "../../src/guidance/entry.js";
import { deriveBand, powerEnvelope } from "../../src/guidance/envelope.js";
import { GUIDANCE_ENTRIES } from "../../src/guidance/published/recommendations.js";
import { render, renderAll } from "../../src/words/render.js";
import { curveOf } from "../grading/gradingCases.js";

const entry = (id: string) => GUIDANCE_ENTRIES.find((each) => each.id === id)!;

describe("deriveBand", () => {
  it("every soil within the fraction limits lies within the band, and the band is no wider than that", () => {
    const limits = fc.tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 60 }));
    fc.assert(
      fc.property(limits, limits, limits, (...given) => {
        const fractions = given.map(([a, b], index) => ({
          minPct: Math.min(a, b),
          maxPct: Math.max(a, b),
          ...(index < 2 ? { upToMm: [0.002, 0.063][index] } : {}),
        }));
        // Every whole-number soil that meets the limits, by trial.
        const passing: [number, number][] = [];
        for (let clay = fractions[0].minPct; clay <= fractions[0].maxPct; clay++) {
          for (let silt = fractions[1].minPct; silt <= fractions[1].maxPct; silt++) {
            const rest = 100 - clay - silt;
            if (rest >= fractions[2].minPct && rest <= fractions[2].maxPct)
              passing.push([clay, clay + silt]);
          }
        }
        if (passing.length === 0) {
          expect(() => deriveBand(fractions)).toThrow(RangeError);
          return;
        }
        deriveBand(fractions).forEach(({ lowPct, highPct }, index) => {
          const seen = passing.map((each) => each[index]);
          expect([lowPct, highPct]).toEqual([Math.min(...seen), Math.max(...seen)]);
        });
      }),
    );
  });

  it("takes limits that just let one soil through, and refuses those that let none", () => {
    const band = (...limits: [number, number][]) =>
      deriveBand(
        limits.map(([minPct, maxPct], index) => ({
          minPct,
          maxPct,
          ...(index < limits.length - 1 ? { upToMm: [0.002, 0.063][index] } : {}),
        })),
      ).map(({ lowPct, highPct }) => [lowPct, highPct]);
    expect(band([0, 100], [0, 100])).toEqual([[0, 100]]);
    expect(() => band([0, 100.5], [0, 100])).toThrow("invalid `fractions[0]`: 0 to 100.5");
    expect(() => band([-0.5, 100], [0, 100])).toThrow("-0.5 to 100");
    expect(band([20, 20], [80, 80])).toEqual([[20, 20]]);
    // The smallest add up to 100: each is what it must be; or the largest do.
    expect(band([10, 30], [20, 40], [70, 90])).toEqual([
      [10, 10],
      [30, 30],
    ]);
    expect(band([5, 10], [10, 20], [30, 70])).toEqual([
      [10, 10],
      [30, 30],
    ]);
    expect(() => band([10, 30], [20, 40], [70.5, 90])).toThrow("they add up to 100.5 to 160");
    expect(() => band([5, 10], [10, 20], [30, 69.5])).toThrow("they add up to 45 to 99.5");
  });

  it("refuses limits the wrong way round", () => {
    expect(() =>
      deriveBand([
        { minPct: 20, maxPct: 5 },
        { minPct: 0, maxPct: 100 },
      ]),
    ).toThrow("invalid `fractions[0]`: 20 to 5");
  });
});

describe("the entries", () => {
  it("have names of their own, sources, and limits the right way round", () => {
    expect(new Set(GUIDANCE_ENTRIES.map(({ id }) => id)).size).toBe(GUIDANCE_ENTRIES.length);
    for (const {
      source,
      points,
      fractions,
      consistency,
      classes,
      others = [],
      notes,
    } of GUIDANCE_ENTRIES) {
      for (const text of [source.authors, source.title, source.locator, notes]) {
        expect(render(text)).toMatch(/\S/);
      }
      expect(
        points.length + fractions.length + consistency.length + others.length + (classes ? 1 : 0),
      ).toBeGreaterThan(0);
      for (const { min = 0, max = Infinity } of others) expect(min).toBeLessThan(max);
      for (const { lowPct, highPct } of points) expect(lowPct).toBeLessThanOrEqual(highPct);
      for (const { minPct, maxPct } of fractions) expect(minPct).toBeLessThanOrEqual(maxPct);
    }
  });

  it("an entry that was read has the address of what was read; one from memory says how firmly", () => {
    for (const { basis, confidence, source } of GUIDANCE_ENTRIES) {
      if (basis === "memory") expect(confidence).not.toBe("read");
      else expect([confidence, source.address]).toEqual(["read", expect.stringContaining("http")]);
    }
  });

  it.each([
    ["walker-2005", [0.002, 5, 20, 0.063, 20, 50]],
    ["keable-sazs-ars", [0.002, 5, 15, 0.063, 30, 45]],
    ["hb195", [0.002, 0, 20, 0.063, 25, 50]],
    ["craterre-pise", [0.002, 15, 25, 0.06, 35, 60, 2, 85, 100]],
    ["darchitectures-pise", [0.002, 5, 20, 0.02, 30, 50]],
  ] as const)("%s: derived points as worked out by hand, marked as derived", (id, expected) => {
    expect(entry(id).derived).toBe(true);
    expect(
      entry(id).points.flatMap(({ sizeMm, lowPct, highPct }) => [sizeMm, lowPct, highPct]),
    ).toEqual(expected);
  });
});

describe("checkGuidance", () => {
  const soil = (clay: number, fines: number) =>
    curveOf([0.002, clay], [0.063, fines], [2, 80], [20, 100]);
  const good = { liquidLimitPct: 30, plasticityIndexPct: 12, linearShrinkagePct: 4 };

  it("inside: says by how much, and that it proves nothing", () => {
    const check = checkGuidance(soil(12, 35), entry("walker-2005"), good);
    expect(check.verdict).toBe("inside");
    expect(renderAll(check.criteria[0])).toMatchObject({
      what: "passing 0.002 mm",
      verdict: "inside",
      measuredPct: 12,
      byPct: 7,
      sizeMm: 0.002,
    });
    expect(render(check.criteria[0].text)).toBe(
      "passing 0.002 mm: 12.0 %, recommended 5 to 20 %: inside by 7.0 points.",
    );
    expect(render(check.caution)).toContain("no proof");
    expect(render(check.caution)).toContain("2013");
    expect(render(check.honesty)).toContain("from memory");
    expect(render(check.honesty)).toContain("derived by us");
  });

  it("edges, from both sides", () => {
    const at = (clay: number, fines: number) =>
      checkGuidance(soil(clay, fines), entry("walker-2005"), good).verdict;
    expect([at(5, 30), at(4.9, 30), at(20, 40), at(20.1, 40)]).toEqual([
      "inside",
      "outside",
      "inside",
      "outside",
    ]);
    // Silt 30 %, then 30.1 %.
    expect([at(12, 42), at(12, 42.1)]).toEqual(["inside", "outside"]);
    const liquid = (liquidLimitPct: number) =>
      checkGuidance(soil(12, 35), entry("walker-2005"), { ...good, liquidLimitPct }).verdict;
    expect([liquid(44.9), liquid(45)]).toEqual(["inside", "outside"]);
  });

  it("outside: names criterion, size and distance", () => {
    const check = checkGuidance(soil(12, 60), entry("keable-sazs-ars"));
    expect(check.verdict).toBe("outside");
    expect(renderAll(check.criteria[1])).toMatchObject({
      what: "passing 0.063 mm",
      verdict: "outside",
      byPct: 15,
    });
    expect(render(check.criteria[1].text)).toBe(
      "passing 0.063 mm: 60.0 %, recommended 30 to 45 %: outside by 15.0 points.",
    );
  });

  it("incomplete where something was not measured, unless it is outside anyhow", () => {
    const noFineEnd = curveOf([0.063, 35], [2, 80], [20, 100]);
    expect(checkGuidance(noFineEnd, entry("walker-2005"), good).verdict).toBe("incomplete");
    expect(
      checkGuidance(noFineEnd, entry("walker-2005"), { ...good, liquidLimitPct: 60 }).verdict,
    ).toBe("outside");
    expect(checkGuidance(soil(12, 35), entry("walker-2005")).verdict).toBe("incomplete");
  });

  it("judges shrinkage, plasticity and sand together where the source does", () => {
    const verdict = (linearShrinkagePct: number, plasticityIndexPct: number, fines = 35) =>
      checkGuidance(soil(12, fines), entry("burroughs-2008"), {
        linearShrinkagePct,
        plasticityIndexPct,
      }).criteria[0].verdict;
    // Sand is 80 − fines here.
    expect([
      verdict(4, 12),
      verdict(8, 20),
      verdict(8, 20, 14),
      verdict(12, 31),
      verdict(4, 20),
    ]).toEqual(["inside", "inside", "outside", "outside", "not classified"]);
  });
});

describe("selectionClass", () => {
  it("draws its lines where the abstract of 2008 does", () => {
    const burroughs = (...soil: readonly [number, number, number?]) =>
      selectionClass(entry("burroughs-2008").classes!, ...soil);
    expect([
      burroughs(5.9, 14.9),
      burroughs(6, 14.9),
      burroughs(6, 15, 63.9),
      burroughs(6, 15, 64),
    ]).toEqual(["favourable", "not classified", "favourable", "unfavourable"]);
    expect([burroughs(11, 30, 70), burroughs(11.1, 30, 70), burroughs(11.1, 30.1)]).toEqual([
      "unfavourable",
      "not classified",
      "unfavourable",
    ]);
    expect(burroughs(8, 20)).toBe("not classified");
    // One on its limit and the other beyond it is neither case.
    expect([burroughs(11, 30.1, 70), burroughs(5.9, 15, 50), burroughs(11, 14.9, 50)]).toEqual([
      "not classified",
      "not classified",
      "not classified",
    ]);
    expect(() => burroughs(Number.NaN, 20)).toThrow("invalid `linearShrinkagePct`: NaN");
  });

  it("draws its lines where the thesis of 2001 does, with the share of success", () => {
    const { classes } = entry("burroughs-2001");
    expect([
      selectionClass(classes!, 7, 15.9),
      selectionClass(classes!, 7.1, 16, 59.9),
      selectionClass(classes!, 7.1, 16, 60),
      selectionClass(classes!, 13.1, 30.1),
    ]).toEqual(["favourable", "satisfactory", "not classified", "unfavourable"]);
    const sandy = curveOf([0.002, 15], [0.075, 45], [2.36, 95], [20, 100]);
    const measured = { linearShrinkagePct: 9, plasticityIndexPct: 20 };
    const check = checkGuidance(sandy, entry("burroughs-2001"), measured);
    expect(check.verdict).toBe("inside");
    expect(render(check.criteria[0].text)).toContain(
      "satisfactory (65 % of such soils reached 2 MPa)",
    );
  });
});

describe("what a recommendation is known from, and written for", () => {
  it("is said to be read only where the figures were", () => {
    const marks = Object.fromEntries(
      GUIDANCE_ENTRIES.map((each) => [each.id, render(sourceMark(each))]),
    );
    expect(marks).toMatchObject({
      "burroughs-2001": "read",
      "burroughs-2008": "abstract read",
      "hall-djerbib-2004": "abstract read",
      "usace-road-base": "secondary citation",
      "walker-2005": "from memory; not read",
    });
    for (const each of GUIDANCE_ENTRIES) {
      const { basis, source } = each;
      // An abstract or a citation is not passed off as the work.
      if (/abstract/.test(render(source.locator))) expect(basis).toBe("abstract");
      if (/cited/.test(`${source.authors} ${source.title}`)) expect(basis).toBe("cited");
      const { honesty } = checkGuidance(curveOf([0.002, 10], [2, 100]), each);
      expect(render(honesty).includes("were read in the source named")).toBe(basis === "read");
    }
  });

  it("tells a study with cement that it was written for another earth, and what was not tested", () => {
    const place = { file: "study.yaml", column: "guidance" };
    const found = (id: string, measured = {}) =>
      guidanceFindings(entry(id), measured, place).map(({ code }) => code);
    expect(found("walker-2005")).toEqual(["guidance-for-other-earth", "guidance-not-tested"]);
    expect(found("walker-2005", { organicPct: 0.3, saltsPct: 0.1 })).toEqual([
      "guidance-for-other-earth",
    ]);
    expect(found("burroughs-2001")).toEqual([]);
    const [other] = guidanceFindings(entry("walker-2005"), {}, place);
    // as a reader cites them, and none by what a study names it by
    expect(render(other.remedy)).toContain(
      ": Burroughs 2001, Burroughs 2008, Rammed Earth Works blog 2010, Bureau of Indian Standards 1980.",
    );
    expect(other.value).toBeUndefined();
    const [, untested] = guidanceFindings(entry("lehmbau-regeln"), { saltsPct: 0.05 }, place);
    expect(render(untested.message)).toContain("not tested here: sulphate.");
    for (const id of [
      "burroughs-2001",
      "burroughs-2001-values",
      "burroughs-2008",
      "rew-practitioner",
      "is-2110",
    ]) {
      expect(isForStabilisedEarth(entry(id))).toBe(true);
    }
    expect(GUIDANCE_ENTRIES.filter(isForStabilisedEarth)).toHaveLength(5);
  });

  it("a limit of a part of the soil is held against that part", () => {
    // Half of the soil passes 2 mm; 6 % of the whole is finer than 0.005 mm: 12 % of that half.
    const soil = curveOf([0.005, 6], [0.05, 10], [2, 50], [25, 100]);
    const { criteria } = checkGuidance(soil, entry("fdot-sand-clay"));
    expect(criteria[0]).toMatchObject({ verdict: "inside", measuredPct: 12 });
    expect(criteria[1]).toMatchObject({ verdict: "inside", measuredPct: 20 });
    expect(criteria[2]).toMatchObject({ fraction: "silt", verdict: "inside", measuredPct: 8 });
    // Of a hundredth that passes 2 mm a tenth is finer than 0.005 mm; of nothing there is no part.
    const part = (...points: [number, number][]) =>
      checkGuidance(curveOf(...points, [25, 100]), entry("fdot-sand-clay")).criteria[0];
    expect(part([0.005, 0.1], [0.05, 0.2], [2, 1]).measuredPct).toBeCloseTo(10, 9);
    expect(part([0.005, 0], [0.05, 0], [2, 0]).verdict).toBe("not measured");
  });

  it("power curves between 0.33 and 0.50 pass what was worked out for 19 mm", () => {
    const at = (sizeMm: number) =>
      powerEnvelope(19).points.find((point) => point.sizeMm === sizeMm)!;
    for (const [sizeMm, low, high] of [
      [9.5, 70.7, 79.6],
      [4.75, 50, 63.3],
      [0.6, 17.8, 32],
      [0.075, 6.3, 16.1],
    ]) {
      expect(at(sizeMm).lowPct).toBeCloseTo(low, 1);
      expect(at(sizeMm).highPct).toBeCloseTo(high, 1);
    }
    expect(() => powerEnvelope(0.6)).toThrow("`topSizeMm`: 0.6; expected above 0.6 mm");
    expect(powerEnvelope(0.61).points.map(({ sizeMm }) => sizeMm)).toEqual([
      0.075, 0.15, 0.3, 0.6, 0.61,
    ]);
  });
});

describe("cautions", () => {
  it("cover what the house promises, each with its source", () => {
    expect(CAUTIONS.map(({ id }) => id)).toEqual(
      expect.arrayContaining([
        "licensed-practice",
        "cement-burns",
        "silica-dust",
        "form-pressure",
        "lifting",
        "working-height",
        "cured-strength",
        "water-and-frost",
        "no-approval",
        "free-wall",
        "wind",
        "earthquake",
      ]),
    );
    expect(new Set(CAUTIONS.map(({ id }) => id)).size).toBe(CAUTIONS.length);
    for (const { text, source, basis } of CAUTIONS) {
      expect(render(text)).toMatch(/\S/);
      if (basis === "memory") expect(render(source)).toContain("from memory");
      if (basis === "abstract") expect(render(source)).toContain("(abstract read)");
    }
  });

  it("stand where the danger is, and on every page that nothing is approved", () => {
    const ids = (...work: CautionWork[]) => cautionsFor(...work).map(({ id }) => id);
    const all = [...new Set(CAUTIONS.flatMap(({ work }) => work))];
    for (const work of all) expect(ids(work)[0], work).toBe("no-approval");
    expect(ids("dry-work")).toContain("silica-dust");
    expect(ids("wet-mix")).toContain("cement-burns");
    expect(render(cautionsFor("wet-mix").find(({ id }) => id === "cement-burns")!.text)).toContain(
      "gloves",
    );
    expect(ids("ramming")).toEqual(expect.arrayContaining(["form-pressure", "free-wall", "wind"]));
    expect(ids("standing-wall")).toEqual(
      expect.arrayContaining(["earthquake", "wind", "free-wall"]),
    );
    expect(ids(...all)).toHaveLength(CAUTIONS.length);
  });
});
