import { describe, expect, it } from "vitest";
import { classifyCurve } from "../../src/soil/classification/classifyCurve.js";
import { classifyUscs, type UscsInput } from "../../src/soil/classification/uscs.js";
import { renderAll } from "../../src/words/render.js";
import { curveOf } from "../grading/gradingCases.js";
import cases from "../reference/soilWorkedExamples.json" with { type: "json" };

const symbolOf = (input: UscsInput) => classifyUscs(input).symbol;
const fine = (liquidLimitPct: number, plasticityIndexPct: number, more: Partial<UscsInput> = {}) =>
  symbolOf({
    gravelPct: 0,
    sandPct: 10,
    finesPct: 90,
    liquidLimitPct,
    plasticityIndexPct,
    ...more,
  });

it("takes a last digit above 100 for the whole, as a division of a number by itself may give", () => {
  const whole = 0.2242152466367713;
  expect((100 * whole) / whole).toBeGreaterThan(100);
  const curve = curveOf([0.075, 0], [4.75, 0], [75, whole]);
  expect(classifyCurve(curve, "uscs").label).toMatch(/^G/);
});

describe("published classes", () => {
  it("US Army example 1: clayey sand (the fines are given as clay)", () => {
    const { input, published } = cases["uscs-army-1"];
    const coarse = input.retained_No200_pct;
    const gravelPct = (coarse * input.coarse_fraction_retained_No4_pct) / 100;
    expect(
      symbolOf({
        gravelPct,
        sandPct: coarse - gravelPct,
        finesPct: 100 - coarse,
        liquidLimitPct: 35,
        plasticityIndexPct: 18,
      }),
    ).toBe(published.symbol);
  });

  it("US Army example 3: dual symbol (well-graded is given)", () => {
    const { input, published } = cases["uscs-army-3"];
    const coarse = input.retained_No200_pct;
    const gravelPct = (coarse * input.coarse_fraction_retained_No4_pct) / 100;
    expect(
      symbolOf({
        gravelPct,
        sandPct: coarse - gravelPct,
        finesPct: 100 - coarse,
        cu: 20,
        cc: 2,
        liquidLimitPct: input.LL,
        plasticityIndexPct: input.PI,
      }),
    ).toBe(published.symbol);
  });

  it("homeworksource soil 2: lean clay", () => {
    const { input, published } = cases["uscs-3soils-2"];
    const { symbol, groupName } = classifyUscs({
      gravelPct: 0,
      sandPct: 49,
      finesPct: input.fines,
      liquidLimitPct: input.LL,
      plasticityIndexPct: input.PI,
    });
    expect(symbol).toBe(published.symbol);
    // The page prints “lean clay”; with 49 % sand the standard's own name is longer.
    expect(groupName).toBe("sandy lean clay");
  });

  it("pegenius 193: clayey sand", () => {
    const { input, published } = cases["uscs-pegenius-193"];
    expect(
      symbolOf({
        gravelPct: 14,
        sandPct: published.R200 - 14,
        finesPct: published.F200,
        liquidLimitPct: input.LL,
        plasticityIndexPct: input.LL - input.PL,
      }),
    ).toBe(published.symbol);
  });

  it("CE 3400 soil B: poorly graded sand", () => {
    const { input, published } = cases["uscs-ce3400-B"];
    const cu = input.D60 / input.D10;
    const cc = input.D30 ** 2 / (input.D10 * input.D60);
    expect(cu).toBeCloseTo(published.Cu, 9);
    expect(cc).toBeCloseTo(published.Cc, 2);
    expect(
      symbolOf({
        gravelPct: 100 - input.passing_No4,
        sandPct: input.passing_No4,
        finesPct: input.fines,
        cu,
        cc,
      }),
    ).toBe(published.symbol);
  });

  it("US Army exercise 6: silty sand (sand is given as the larger part)", () => {
    const { input, published } = cases["uscs-army-en5453-6"];
    expect(
      symbolOf({
        gravelPct: 10,
        sandPct: 50,
        finesPct: input.fines,
        liquidLimitPct: input.LL,
        plasticityIndexPct: input.PI,
      }),
    ).toBe(published.symbol);
  });

  it("Craig soil G, just below the A-line: silt", () => {
    const { input, published } = cases["bs5930-craig-G"];
    expect(
      symbolOf({
        gravelPct: 0,
        sandPct: input.sand_pct,
        finesPct: input.fines_pct,
        liquidLimitPct: input.LL,
        plasticityIndexPct: input.PI,
      }),
    ).toBe(published.symbol);
  });
});

describe("boundaries, from both sides", () => {
  it("liquid limit 50, A-line, PI 4 and 7", () => {
    expect([fine(49.9, 25), fine(50, 25)]).toEqual(["CL", "CH"]);
    expect([fine(49.9, 10), fine(50, 10)]).toEqual(["ML", "MH"]);
    // The A-line at 40 is 14.6.
    expect([fine(40, 14.59), fine(40, 14.61)]).toEqual(["ML", "CL"]);
    expect([fine(60, 29.1), fine(60, 29.3)]).toEqual(["MH", "CH"]);
    expect([fine(22, 3.9), fine(22, 4), fine(22, 7), fine(22, 7.1)]).toEqual([
      "ML",
      "CL-ML",
      "CL-ML",
      "CL",
    ]);
    expect([fine(30, 15, { organic: true }), fine(60, 15, { organic: true })]).toEqual([
      "OL",
      "OH",
    ]);
  });

  it("fines 50, 12 and 5 %", () => {
    const soil = (finesPct: number) =>
      symbolOf({
        gravelPct: 0,
        sandPct: 100 - finesPct,
        finesPct,
        cu: 8,
        cc: 2,
        liquidLimitPct: 30,
        plasticityIndexPct: 15,
      });
    expect([49.9, 50, 12, 12.1, 4.9, 5].map(soil)).toEqual([
      "SC",
      "CL",
      "SW-SC",
      "SC",
      "SW",
      "SW-SC",
    ]);
  });

  it("gravel against sand, Cu and Cc", () => {
    const clean = (gravelPct: number, cu: number, cc = 2) =>
      symbolOf({ gravelPct, sandPct: 100 - gravelPct, finesPct: 0, cu, cc });
    expect([clean(50, 9), clean(50.1, 9)]).toEqual(["SW", "GW"]);
    expect([clean(80, 3.9), clean(80, 4), clean(20, 5.9), clean(20, 6)]).toEqual([
      "GP",
      "GW",
      "SP",
      "SW",
    ]);
    expect([0.99, 1, 3, 3.01].map((cc) => clean(80, 9, cc))).toEqual(["GP", "GW", "GW", "GP"]);
  });
});

describe("names and paths", () => {
  it.each([
    [{ gravelPct: 5, sandPct: 9, finesPct: 86 }, "lean clay"],
    [{ gravelPct: 5, sandPct: 15, finesPct: 80 }, "lean clay with sand"],
    [{ gravelPct: 12, sandPct: 8, finesPct: 80 }, "lean clay with gravel"],
    [{ gravelPct: 5, sandPct: 30, finesPct: 65 }, "sandy lean clay"],
    // coarse part of a fine soil: 15, 30 %, gravel as much as sand; from the standard's flow chart (from memory)
    [{ gravelPct: 7, sandPct: 7.9, finesPct: 85.1 }, "lean clay"],
    [{ gravelPct: 7, sandPct: 8, finesPct: 85 }, "lean clay with sand"],
    [{ gravelPct: 14, sandPct: 15.9, finesPct: 70.1 }, "lean clay with sand"],
    [{ gravelPct: 14, sandPct: 16, finesPct: 70 }, "sandy lean clay"],
    [{ gravelPct: 15, sandPct: 15, finesPct: 70 }, "sandy lean clay with gravel"],
    [{ gravelPct: 16, sandPct: 14.9, finesPct: 69.1 }, "gravelly lean clay"],
    [{ gravelPct: 60, sandPct: 14.9, finesPct: 25.1 }, "clayey gravel"],
    [{ gravelPct: 15, sandPct: 60, finesPct: 25 }, "clayey sand with gravel"],
    [{ gravelPct: 16, sandPct: 24, finesPct: 60 }, "sandy lean clay with gravel"],
    [{ gravelPct: 24, sandPct: 16, finesPct: 60 }, "gravelly lean clay with sand"],
    [{ gravelPct: 60, sandPct: 20, finesPct: 20 }, "clayey gravel with sand"],
    [{ gravelPct: 75, sandPct: 17, finesPct: 8 }, "well-graded gravel with clay and sand"],
    [{ gravelPct: 14, sandPct: 78, finesPct: 8 }, "well-graded sand with clay"],
  ])("%o is %s", (parts, name) => {
    expect(
      classifyUscs({ ...parts, cu: 9, cc: 2, liquidLimitPct: 32, plasticityIndexPct: 16 })
        .groupName,
    ).toBe(name);
  });

  it("silty clay fines in sand", () => {
    const soil = {
      gravelPct: 5,
      sandPct: 70,
      finesPct: 25,
      liquidLimitPct: 22,
      plasticityIndexPct: 5,
    };
    expect(classifyUscs(soil)).toMatchObject({ symbol: "SC-SM", groupName: "silty, clayey sand" });
  });

  it("needs both coefficients, and says on which side of 50 the liquid limit lies", () => {
    const clean = { gravelPct: 20, sandPct: 78, finesPct: 2 };
    for (const half of [{ cu: 8 }, { cc: 2 }]) {
      const { symbol, missing } = classifyUscs({ ...clean, ...half });
      expect([symbol, renderAll(missing)]).toEqual([undefined, ["D10, D30 and D60"]]);
    }
    const plastic = (liquidLimitPct: number) => {
      const fine = { gravelPct: 0, sandPct: 10, finesPct: 90, plasticityIndexPct: 28 };
      return renderAll(classifyUscs({ ...fine, liquidLimitPct }).path).join(" ");
    };
    expect(plastic(49.9)).toContain("LL 49.9 is below 50;");
    expect(plastic(50)).toContain("LL 50.0 is 50 or more;");
  });

  it("tells every decision", () => {
    const { path } = classifyUscs({ gravelPct: 40, sandPct: 40, finesPct: 20, nonPlastic: true });
    expect(renderAll(path)).toEqual([
      "20.0 % fines, less than 50 %: coarse-grained.",
      "40.0 % gravel does not exceed 40.0 % sand: sand.",
      "Fines above 12 %: named by the fines. The fines are non-plastic: silt, ML.",
    ]);
  });

  it("says what is missing in place of guessing", () => {
    expect(renderAll(classifyUscs({ gravelPct: 0, sandPct: 20, finesPct: 80 }))).toMatchObject({
      missing: ["liquid limit and plasticity index"],
    });
    expect(renderAll(classifyUscs({ gravelPct: 0, sandPct: 98, finesPct: 2 }))).toMatchObject({
      missing: ["D10, D30 and D60"],
    });
    const both = classifyUscs({ gravelPct: 0, sandPct: 92, finesPct: 8 });
    expect(both.symbol).toBeUndefined();
    expect(both.missing).toHaveLength(2);
  });

  it("refuses parts that do not add up", () => {
    expect(() => classifyUscs({ gravelPct: 10, sandPct: 10, finesPct: 10 })).toThrow("invalid sum");
    expect(() => classifyUscs({ gravelPct: -5, sandPct: 85, finesPct: 20 })).toThrow(
      "invalid `gravelPct`: -5",
    );
  });
});
