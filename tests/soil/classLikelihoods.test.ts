import { describe, expect, it } from "vitest";
import { resampleReadings } from "../../src/grading/uncertainty/readingErrors.js";
import { type ClassSystem, classifyCurve } from "../../src/soil/classification/classifyCurve.js";
import { drawLimits, limitErrors } from "../../src/soil/consistency/drawnLimits.js";
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

describe("drawLimits", () => {
  const limits = {
    nonPlastic: false,
    liquidLimitPct: 40,
    liquidLimitInterval95: [39.02, 40.98] as const,
    plasticLimitPct: 20,
    plasticityIndexPct: 20,
    plasticityIndexInterval95: [18.04, 21.96] as const,
    findings: [],
  };
  const spreadOf = (values: readonly number[]) => {
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
  };

  it("draws as wide as the intervals, the index always liquid less plastic limit", () => {
    const drawn = drawLimits(limits, limitErrors(limits), 4000, 3);
    expect(spreadOf(drawn.map(({ liquidLimitPct }) => liquidLimitPct!))).toBeCloseTo(0.5, 1);
    expect(spreadOf(drawn.map(({ plasticityIndexPct }) => plasticityIndexPct!))).toBeCloseTo(1, 1);
    for (const { liquidLimitPct, plasticLimitPct, plasticityIndexPct } of drawn) {
      expect(liquidLimitPct! - plasticLimitPct!).toBeCloseTo(plasticityIndexPct!, 9);
    }
    expect(drawLimits(limits, limitErrors(limits), 3, 3)).toEqual(drawn.slice(0, 3));
  });

  it("gives the plastic limit what the liquid one leaves of the index's error, and nothing below 0", () => {
    // 2² is 1.2² and 1.6².
    const errors = { liquidLimitErrorPct: 1.2, plasticityIndexErrorPct: 2 };
    const drawn = drawLimits(limits, errors, 20_000, 5);
    const spread = (key: "liquidLimitPct" | "plasticLimitPct" | "plasticityIndexPct") =>
      spreadOf(drawn.map((one) => one[key]!));
    expect(spread("liquidLimitPct") / 1.2).toBeCloseTo(1, 1);
    expect(spread("plasticLimitPct") / 1.6).toBeCloseTo(1, 1);
    expect(spread("plasticityIndexPct") / 2).toBeCloseTo(1, 1);
    const silty = drawLimits({ ...limits, plasticityIndexPct: 0.5 }, errors, 200, 5);
    expect(Math.min(...silty.map(({ plasticityIndexPct }) => plasticityIndexPct!))).toBe(0);
    // Half of 95 % is 1.96 standard errors.
    expect(
      limitErrors({ liquidLimitInterval95: [36.08, 43.92], plasticityIndexInterval95: undefined }),
    ).toEqual({ liquidLimitErrorPct: expect.closeTo(2, 9), plasticityIndexErrorPct: 0 });
  });

  it("leaves a limit without an interval where it was measured", () => {
    const { liquidLimitInterval95, plasticityIndexInterval95, ...bare } = limits;
    const [drawn] = drawLimits(bare, limitErrors({}), 1, 3);
    expect(drawn).toMatchObject({
      liquidLimitPct: 40,
      plasticLimitPct: 20,
      plasticityIndexPct: 20,
    });
  });
});
