import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { characteristicSizes, finenessModulus } from "../../src/grading/characteristics.js";
import { fineToCoarse, passingAtSize, scalp, sizeAtPassing } from "../../src/grading/curve.js";
import { fractions } from "../../src/grading/fractions.js";
import { fitGrading } from "../../src/grading/models/fit.js";
import { minimumSieveMass } from "../../src/grading/sieveAnalysis.js";
import { classifyCurve } from "../../src/soil/classification/classifyCurve.js";
import cases from "../reference/gradingWorkedExamples.json" with { type: "json" };
import ngi from "../reference/ngiSieves.json" with { type: "json" };
import { curveOf } from "./gradingCases.js";

const CURVE = curveOf([0.002, 8], [0.063, 30], [2, 62], [20, 100]);

describe("passingAtSize and sizeAtPassing", () => {
  it("undo each other within the measured range", () => {
    fc.assert(
      fc.property(fc.double({ min: 8, max: 100, noNaN: true }), (pct) => {
        expect(passingAtSize(CURVE, sizeAtPassing(CURVE, pct)!)).toBeCloseTo(pct, 8);
      }),
    );
  });

  it("know nothing outside it, except what cannot be otherwise", () => {
    expect(passingAtSize(CURVE, 0.001)).toBeUndefined();
    expect(passingAtSize(CURVE, 63)).toBe(100);
    expect(passingAtSize(curveOf([0.1, 0], [1, 90]), 0.05)).toBe(0);
    expect(passingAtSize(curveOf([0.1, 0], [1, 90]), 2)).toBeUndefined();
    expect(sizeAtPassing(CURVE, 5)).toBeUndefined();
    expect(sizeAtPassing(curveOf([0.1, 0], [1, 90]), 95)).toBeUndefined();
  });

  it("read a level stretch at its fine end", () => {
    const level = curveOf([0.1, 20], [1, 50], [4, 50], [8, 100], [16, 100]);
    expect(sizeAtPassing(level, 50)).toBe(1);
    expect(sizeAtPassing(level, 100)).toBe(8);
  });

  it("refuse sizes and percentages that are none", () => {
    expect(() => passingAtSize(CURVE, 0)).toThrow("invalid `sizeMm`: 0");
    expect(() => sizeAtPassing(CURVE, 104.2)).toThrow(
      "invalid `passingPct`: 104.2; expected 0 to 100",
    );
  });
});

describe("a curve given coarse to fine, as laboratories write it", () => {
  const turned = { points: CURVE.points.toReversed() };

  it("reads as the same curve", () => {
    expect(passingAtSize(turned, 0.5)).toBe(passingAtSize(CURVE, 0.5));
    expect(passingAtSize(turned, 63)).toBe(100);
    expect(sizeAtPassing(turned, 45)).toBe(sizeAtPassing(CURVE, 45));
    expect(characteristicSizes(turned)).toEqual(characteristicSizes(CURVE));
    expect(fractions(turned)).toEqual(fractions(CURVE));
    expect(scalp(turned, 2)).toEqual(scalp(CURVE, 2));
    expect(finenessModulus(turned)).toEqual(finenessModulus(CURVE));
    expect(fitGrading(turned, "weibull")).toEqual(fitGrading(CURVE, "weibull"));
    const limits = { liquidLimitPct: 30, plasticityIndexPct: 12 };
    for (const system of ["uscs", "aashto", "usda", "iso14688", "bs5930"] as const) {
      expect(classifyCurve(turned, system, limits)).toEqual(classifyCurve(CURVE, system, limits));
    }
  });

  it("in no order is refused with the reason", () => {
    const mixed = { points: [0, 2, 1].map((at) => CURVE.points[at]) };
    expect(() => passingAtSize(mixed, 1)).toThrow(
      "invalid `points[2].sizeMm`: 0.063 after 2; expected sizes that rise throughout",
    );
    expect(() => characteristicSizes(curveOf([1, 30], [1, 40]))).toThrow("1 after 1");
    expect(fineToCoarse([])).toEqual([]);
  });
});

describe("a last point a hair beyond 100, as sums of shares give it", () => {
  it("passes everything that is coarser", () => {
    const curve = curveOf([0.063, 30], [2, 70], [20, 100.00000000000001]);
    expect(passingAtSize(curve, 63)).toBe(100);
    expect(fractions(curve).gravelPct).toBeCloseTo(30, 9);
  });
});

describe("straight lines on size", () => {
  it.each(ngi.curves)(
    "give the published D-sizes of curve $name to the last digit",
    (published) => {
      const curve = curveOf(
        ...published.sizesMm.map((size, i): [number, number] => [size, published.passingPct[i]]),
      );
      const sizes = characteristicSizes(curve, "size");
      expect(sizes.reading).toBe("size");
      for (const key of ["d10", "d30", "d60"] as const) {
        expect(sizes[key]).toBeCloseTo(published[key], 6);
      }
      expect(sizes.cc).toBeCloseTo(published.cc, 5);
      expect(sizes.cu).toBeCloseTo(published.cu, 4);
      const logarithmic = characteristicSizes(curve);
      expect(logarithmic.reading).toBe("log-size");
      expect(logarithmic.d10! / published.d10).toBeLessThan(0.97);
    },
  );

  it("undo each other, and know no more outside the points", () => {
    for (const pct of [10, 30, 50, 60, 90]) {
      const size = sizeAtPassing(CURVE, pct, "size")!;
      expect(passingAtSize(CURVE, size, "size")).toBeCloseTo(pct, 9);
    }
    expect(passingAtSize(CURVE, 0.001, "size")).toBeUndefined();
    expect(passingAtSize(CURVE, 63, "size")).toBe(100);
    expect(sizeAtPassing(CURVE, 2, "size")).toBeUndefined();
  });
});

describe("characteristicSizes", () => {
  it("leaves out what is not reached, and scales with size", () => {
    const coarse = curveOf([0.063, 20], [20, 100]);
    expect(characteristicSizes(coarse)).toMatchObject({
      d10: undefined,
      d15: undefined,
      cu: undefined,
      cc: undefined,
    });
    const sizes = characteristicSizes(CURVE);
    const doubled = characteristicSizes({
      points: CURVE.points.map((point) => ({ ...point, sizeMm: 2 * point.sizeMm })),
    });
    expect(doubled.d50! / sizes.d50!).toBeCloseTo(2, 12);
    expect(doubled.cu).toBeCloseTo(sizes.cu!, 10);
  });

  it("Cu and Cc of published D values (Das 8th ed. problem 2.4)", () => {
    const { D10_mm, D30_mm, D60_mm, Cu, Cc } = cases["sieve-das8-2.4"].published;
    const { cu, cc } = characteristicSizes(curveOf([D10_mm, 10], [D30_mm, 30], [D60_mm, 60]));
    expect(Math.abs(cu! - Cu)).toBeLessThan(0.01);
    expect(Math.abs(cc! - Cc)).toBeLessThan(0.01);
  });
});

describe("fractions", () => {
  it("add up to 100 in every system", () => {
    for (const system of ["iso14688", "bs5930", "astm", "usda"] as const) {
      const { clayPct, siltPct, sandPct, gravelPct, cobblesPct } = fractions(CURVE, system);
      expect(clayPct! + siltPct! + sandPct! + gravelPct! + cobblesPct!).toBeCloseTo(100, 9);
    }
  });

  it("differ between the systems by what lies between their boundaries", () => {
    expect(fractions(CURVE, "astm").finesPct! - fractions(CURVE, "iso14688").finesPct!).toBeCloseTo(
      passingAtSize(CURVE, 0.075)! - 30,
      9,
    );
    expect(fractions(CURVE, "usda").finesPct!).toBeLessThan(30);
  });
});

describe("finenessModulus", () => {
  it("counts every standard sieve, also one that was not used (exam question, 3.75)", () => {
    const { input, published } = cases["fm-gate-3.75"];
    let passing = 100;
    const pairs = input.opening_mm.map((size, index): [number, number] => {
      passing -= input.percent_retained[index];
      return [size, passing];
    });
    expect(finenessModulus(curveOf([4.75, 100], ...pairs)).value).toBeCloseTo(published.FM, 9);
  });

  it("does not give the known-bad 24.58", () => {
    const { input, published } = cases["fm-known-bad-24.58"];
    const curve = curveOf(
      ...input.opening_mm.map((size, index): [number, number] => [
        size,
        input.percent_passing[index],
      ]),
    );
    const { value, interpolatedMm } = finenessModulus(curve);
    expect(value).toBeCloseTo(4.82, 9);
    expect(Math.abs(value! - published.FM_as_printed)).toBeGreaterThan(19);
    expect(interpolatedMm).toEqual([]);
  });

  it("names the sieves it had to read off the curve and does without what it cannot read", () => {
    const metric = curveOf([0.125, 0], [0.25, 20], [0.5, 50], [1, 70], [2, 90], [4, 100]);
    expect(finenessModulus(metric).interpolatedMm).toEqual([0.15, 0.3, 0.6, 1.18, 2.36]);
    expect(finenessModulus(curveOf([1, 20], [4, 100])).value).toBeUndefined();
  });
});

describe("scalp", () => {
  it("keeps the shape below the screen", () => {
    const cut = scalp(CURVE, 2);
    expect(cut.points.at(-1)).toMatchObject({ sizeMm: 2, passingPct: 100 });
    expect(cut.points[0].passingPct / cut.points[1].passingPct).toBeCloseTo(8 / 30, 12);
    expect(scalp(CURVE, 20)).toEqual(CURVE);
    expect(() => scalp(CURVE, 0.001)).toThrow(RangeError);
  });
});

describe("minimumSieveMass", () => {
  it("steps at the sizes of the table", () => {
    expect([4.75, 4.76, 25, 25.1, 90, 90.1].map(minimumSieveMass)).toEqual([
      0.5,
      1,
      6,
      7.5,
      20,
      undefined,
    ]);
  });
});
