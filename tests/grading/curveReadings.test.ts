import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { characteristicSizes, finenessModulus } from "../../src/grading/characteristics.js";
import { passingAtSize, scalp, sizeAtPassing } from "../../src/grading/curve.js";
import { fractions } from "../../src/grading/fractions.js";
import { minimumSieveMass } from "../../src/grading/sieveAnalysis.js";
import cases from "../reference/gradingWorkedExamples.json" with { type: "json" };
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
