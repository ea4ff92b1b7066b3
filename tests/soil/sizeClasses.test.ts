import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { classifyBs5930 } from "../../src/soil/classification/bs5930.js";
import { classifyCurve } from "../../src/soil/classification/classifyCurve.js";
import { classifyIso14688, gradedTerm } from "../../src/soil/classification/iso14688.js";
import { sizeShares } from "../../src/soil/classification/sizeClass.js";
import { usdaFromCurve, usdaTexture } from "../../src/soil/classification/usdaTexture.js";
import { render, renderAll } from "../../src/words/render.js";
import { curveOf } from "../grading/gradingCases.js";
import cases from "../reference/soilWorkedExamples.json" with { type: "json" };

const bs = (gravelPct: number, sandPct: number, more: object = {}) =>
  classifyBs5930({ gravelPct, sandPct, finesPct: 100 - gravelPct - sandPct, ...more });
const iso = (gravelPct: number, sandPct: number, clayPct?: number, more: object = {}) =>
  classifyIso14688({ gravelPct, sandPct, finesPct: 100 - gravelPct - sandPct, clayPct, ...more });

describe("sizeShares", () => {
  it("takes what is finer than cobbles as 100", () => {
    // 80 % pass 63 mm: 40 % gravel, 24 % sand, 16 % fines, 8 % of them clay.
    const whole = curveOf([0.002, 8], [0.063, 16], [2, 40], [63, 80], [200, 100]);
    const shares = sizeShares(whole, "iso14688")!;
    expect(shares.gravelPct).toBeCloseTo(50, 9);
    expect(shares.sandPct).toBeCloseTo(30, 9);
    expect(shares.finesPct).toBeCloseTo(20, 9);
    expect(shares.clayPct).toBeCloseTo(10, 9);
    const parts = sizeShares(curveOf([0.075, 10], [4.75, 40], [75, 80], [150, 100]), "astm")!;
    expect([parts.gravelPct, parts.sandPct, parts.finesPct]).toEqual([50, 37.5, 12.5]);
  });

  it("grades the same part, without the cobbles, up to its upper end", () => {
    // In parts of what passes 75 mm: 5, 37.5, 50 and 100; D10 0.075 (0.5 / 0.075)^(5 / 32.5) mm, D60
    // 4.75 (75 / 4.75)^(10 / 50) mm.
    const stony = curveOf([0.075, 4], [0.5, 30], [4.75, 40], [75, 80], [150, 100]);
    const cu = (4.75 * (75 / 4.75) ** 0.2) / (0.075 * (0.5 / 0.075) ** (5 / 32.5));
    expect(sizeShares(stony, "astm")!.cu).toBeCloseTo(cu, 9);
    const scalped = curveOf([0.075, 5], [0.5, 37.5], [4.75, 50], [75, 100]);
    expect(sizeShares(scalped, "astm")!.cu).toBeCloseTo(cu, 9);
    // No sieve at 75 mm: 80 % are read there off the line from 50 to 112.5 mm, D60 of the part is 48 %.
    const between = curveOf([0.075, 4], [50, 40], [112.5, 100]);
    const whole = 40 + (60 * Math.log(75 / 50)) / Math.log(112.5 / 50);
    const part = (0.6 * whole - 40) / 60;
    const { cu: read } = sizeShares(between, "astm")!;
    expect(part).toBeGreaterThan(0);
    const d60 = 50 * (112.5 / 50) ** part;
    const d10 = 0.075 * (50 / 0.075) ** ((0.1 * whole - 4) / 36);
    expect(read).toBeCloseTo(d60 / d10, 6);
    for (const system of ["iso14688", "bs5930"] as const) {
      const clean = curveOf([0.063, 1], [0.6, 10], [2, 40], [63, 80], [200, 100]);
      const whole = curveOf([0.063, 1.25], [0.6, 12.5], [2, 50], [63, 100]);
      expect(classifyCurve(clean, system).name).toBe(classifyCurve(whole, system).name);
      expect(sizeShares(clean, system)!.cu).toBeCloseTo(sizeShares(whole, system)!.cu!, 9);
    }
  });

  it("are 100 at most where one fraction is the whole, as a division of a number by itself may not be", () => {
    const whole = 0.2242152466367713;
    expect((100 * whole) / whole).toBeGreaterThan(100);
    for (const system of ["iso14688", "bs5930"] as const) {
      const shares = sizeShares(curveOf([0.06, 0], [2, 0], [63, whole]), system)!;
      expect(shares).toMatchObject({ gravelPct: 100, sandPct: 0, finesPct: 0 });
    }
    expect(classifyCurve(curveOf([0.06, 0], [2, 0], [63, whole]), "iso14688").label).toBe("Gr");
  });

  it("are none where the curve does not reach a boundary; clay alone may be missing", () => {
    const noClay = sizeShares(curveOf([0.063, 16], [2, 40], [63, 80], [200, 100]), "iso14688");
    expect(noClay).toMatchObject({ finesPct: 20 });
    expect(noClay!.clayPct).toBeUndefined();
    expect(sizeShares(curveOf([0.1, 16], [2, 40], [63, 100]), "iso14688")).toBeUndefined();
    expect(sizeShares(curveOf([0.063, 16], [1, 40]), "iso14688")).toBeUndefined();
    expect(
      sizeShares(curveOf([0.063, 0], [2, 0], [63, 0], [200, 100]), "iso14688"),
    ).toBeUndefined();
  });
});

describe("classifyBs5930", () => {
  it("Craig, Problem 1.1, soil G", () => {
    const { input, published } = cases["bs5930-craig-G"];
    const found = bs(0, input.sand_pct, {
      liquidLimitPct: input.LL,
      plasticityIndexPct: input.PI,
    });
    expect(found.symbol).toBe(published.symbol);
    expect(found.name).toContain("silt of low plasticity");
    expect(renderAll(found.path).join(" ")).toContain("below the A-line (8.8)");
  });

  const clay = { liquidLimitPct: 40, plasticityIndexPct: 20 };
  it.each([
    [0, 65, clay, "CIS"],
    [0, 65.1, clay, "SCI"],
    [20, 45, clay, "CIS"],
    [45, 20, clay, "CIG"],
    [0, 35, clay, "CI"],
    [0, 85, clay, "SCI"],
    [0, 85.1, { ...clay, cu: 8, cc: 1.5 }, "SW-SC"],
    [0, 95.1, { cu: 8, cc: 1.5 }, "SW"],
    [0, 95.1, { cu: 5.9, cc: 1.5 }, "SPu"],
    [0, 95.1, { cu: 8, cc: 3.1 }, "SPg"],
    [80, 18, { cu: 4, cc: 1 }, "GW"],
    [0, 20, { ...clay, organic: true }, "CIO"],
  ])("%d gravel, %d sand, %j: %s", (gravel, sand, more, symbol) => {
    expect(bs(gravel, sand, more).symbol).toBe(symbol);
  });

  it.each([
    [34.9, "CL"],
    [35, "CI"],
    [49.9, "CI"],
    [50, "CH"],
    [69.9, "CH"],
    [70, "CV"],
    [89.9, "CV"],
    [90, "CE"],
  ])("a liquid limit of %d gives %s", (liquidLimitPct, symbol) => {
    expect(bs(0, 10, { liquidLimitPct, plasticityIndexPct: 60 }).symbol).toBe(symbol);
  });

  it("says what is missing instead of guessing", () => {
    expect(renderAll(bs(0, 30).missing)).toEqual(["liquid limit and plasticity index"]);
    expect(renderAll(bs(0, 97).missing)).toEqual(["D10, D30 and D60"]);
    expect(bs(0, 30).symbol).toBeUndefined();
    expect(() => bs(0, 101)).toThrow("invalid `sandPct`: 101");
  });
});

describe("classifyIso14688", () => {
  it.each([
    [55, 35, 1, "saGr", "slightly silty sandy gravel"],
    [55, 19.9, 1, "siGr", "silty gravel"],
    [19.9, 60, 10, "clSa", "clayey sand"],
    [20, 60, 10, "grclSa", "clayey gravelly sand"],
    [0, 60, 3.9, "saSi", undefined],
    [0, 30, 6.9, "saSi", undefined],
    [0, 30, 6.97, "saSi", undefined],
    [0, 30, 7, "saclSi", undefined],
    [0, 30, 14, "sasiCl", undefined],
    [0, 30, 28, "saCl", undefined],
    [0, 96, undefined, "Sa", "sand"],
  ])("%d gravel, %d sand, %s clay: %s", (gravel, sand, clay, symbol, name) => {
    const found = iso(gravel, sand, clay);
    expect(found.symbol).toBe(symbol);
    if (name) expect(found.name).toBe(name);
    expect(render(found.source)).toContain("from memory");
  });

  it("asks for the clay content where fines decide, and refuses more clay than fines", () => {
    expect(renderAll(iso(10, 60).missing)).toEqual(["clay content"]);
    expect(() => iso(10, 80, 11)).toThrow("invalid `clayPct`: 11");
  });

  it("grades coarse soils with less than 15 % fines, and no others", () => {
    const graded = (gravel: number, sand: number, clay: number) => {
      const { missing } = iso(gravel, sand, clay);
      const path = renderAll(iso(gravel, sand, clay, { cu: 20, cc: 2 }).path).join(" ");
      return [renderAll(missing), path.includes("Cu 20.0")];
    };
    expect(graded(60, 25.1, 2)).toEqual([["D10, D30 and D60"], true]);
    expect(graded(60, 25, 2)).toEqual([[], false]);
    expect(graded(10, 80, 2)).toEqual([["D10, D30 and D60"], true]);
    expect(graded(0, 30, 20)).toEqual([[], false]);
  });

  it("names every soil that adds up", () => {
    const share = fc.double({ min: 0, max: 100, noNaN: true });
    fc.assert(
      fc.property(share, share, share, (a, b, c) => {
        const [gravel, sand] = [Math.min(a, b), Math.abs(a - b)];
        const fines = 100 - gravel - sand;
        const { symbol } = iso(gravel, sand, (fines * c) / 100);
        expect(symbol).toMatch(/^(gr)?(sa)?(cl|si)?(Gr|Sa|Si|Cl)$/);
      }),
    );
  });
});

describe("gradedTerm", () => {
  it.each([
    [15.1, 1, "multi-graded"],
    [15.1, 3, "multi-graded"],
    [15.1, 3.1, "gap-graded"],
    [15.1, 0.9, "gap-graded"],
    [15, 0.9, "medium-graded"],
    [6, 0.9, "medium-graded"],
    [5.9, 0.9, "even-graded"],
  ] as const)("Cu %d, Cc %d: %s", (cu, cc, term) => {
    expect(gradedTerm(cu, cc).term).toBe(term);
  });

  it("owns up to the holes of the table", () => {
    expect(render(gradedTerm(10, 1.5).reason)).toContain("no line of the table fits both");
    expect(() => gradedTerm(0, 1)).toThrow("invalid `cu`: 0");
  });
});

describe("USDA with gravel", () => {
  const curve = (gravel: number) =>
    curveOf(
      [0.002, 0.2 * (100 - gravel)],
      [0.05, 0.6 * (100 - gravel)],
      [2, 100 - gravel],
      [60, 100],
    );

  it("the texture does not change with the gravel; the word in front does", () => {
    const names = [0, 14.9, 15, 34.9, 35, 59.9, 60].map(
      (gravel) => usdaTexture(usdaFromCurve(curve(gravel))!).name,
    );
    expect(names).toEqual([
      "loam",
      "loam",
      "gravelly loam",
      "gravelly loam",
      "very gravelly loam",
      "very gravelly loam",
      "extremely gravelly loam",
    ]);
  });

  it("says nothing where clay was not measured", () => {
    expect(usdaFromCurve(curveOf([0.063, 20], [2, 80]))).toBeUndefined();
  });
});
