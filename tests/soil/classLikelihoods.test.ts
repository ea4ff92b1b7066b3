import { describe, expect, it } from "vitest";
import { resampleReadings } from "../../src/grading/uncertainty/readingErrors.js";
import { type ClassSystem, classifyCurve } from "../../src/soil/classification/classifyCurve.js";
import { classLikelihoods } from "../../src/soil/curveUncertainty.js";
import { curveOf, sieveRecord } from "../grading/gradingCases.js";

const LIMITS = { liquidLimitPct: 30, plasticityIndexPct: 12 };
const WHOLE = curveOf(
  [0.002, 12],
  [0.05, 38],
  [0.063, 40],
  [0.075, 42],
  [0.425, 60],
  [2, 78],
  [4.75, 90],
  [75, 100],
);

describe("classifyCurve", () => {
  it.each([
    ["uscs", "SC"],
    ["aashto", "A-6(2)"],
    ["usda", "loam"],
    // 12 of 40 % fines are clay: 30 %, silty clay; sand 38 %, gravel 22 %.
    ["iso14688", "grsasiCl"],
    ["bs5930", "CLS"],
  ] as const)("%s: %s, with the way there", (system, label) => {
    const found = classifyCurve(WHOLE, system, LIMITS);
    expect(found.path.length).toBeGreaterThan(1);
    expect(found.label).toBe(label);
  });

  it("a curve that stops short has no class, and an unknown system is refused", () => {
    for (const system of ["uscs", "aashto", "usda", "iso14688", "bs5930"] as const) {
      expect(classifyCurve(curveOf([0.5, 10], [1, 50]), system).label).toBeUndefined();
    }
    expect(() => classifyCurve(WHOLE, "pedology" as ClassSystem)).toThrow("invalid `system`");
  });
});

describe("classLikelihoods", () => {
  it("a soil on the border is of two classes, one far from it of one", () => {
    const near = (pan: number) =>
      sieveRecord([75, 4.75, 2, 0.425, 0.075], [0, 100, 150, 150, 600 - pan], pan, {
        dryMassG: 1000,
      });
    const shares = (pan: number) =>
      classLikelihoods(
        resampleReadings({ sieve: near(pan) }, { seed: 1, resamples: 400 }),
        "uscs",
        { liquidLimitPct: 30, plasticityIndexPct: 15 },
      );
    const border = shares(500);
    expect(border.map(({ label }) => label).sort()).toEqual(["CL", "SC"]);
    expect(border[0].share).toBeLessThan(0.7);
    expect(border.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    expect(shares(350)).toEqual([{ label: "SC", share: 1 }]);
  });

  it("doubtful limits spread a class over the A-line, the same for the same seed", () => {
    // On the A-line at LL 40: PI 14.6.
    const limits = { liquidLimitPct: 40, plasticityIndexPct: 14.6, plasticityIndexErrorPct: 1 };
    const curves = Array.from({ length: 500 }, () => curveOf([0.075, 80], [4.75, 100], [75, 100]));
    const found = classLikelihoods(curves, "uscs", limits, 4);
    expect(found.map(({ label }) => label).sort()).toEqual(["CL", "ML"]);
    expect(found[0].share).toBeLessThan(0.6);
    expect(classLikelihoods(curves, "uscs", limits, 4)).toEqual(found);
  });

  it("refuses what it cannot do", () => {
    expect(() => classLikelihoods([], "uscs")).toThrow("invalid `curves`");
    expect(() => classLikelihoods([WHOLE], "uscs", { liquidLimitErrorPct: -1 })).toThrow(
      "invalid `liquidLimitErrorPct`: -1",
    );
  });
});
