import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { characteristicSizes } from "../../src/grading/characteristics.js";
import { fractions } from "../../src/grading/fractions.js";
import { analyseSieve } from "../../src/grading/sieveAnalysis.js";
import { render, renderAll } from "../../src/words/render.js";
import cases from "../reference/gradingWorkedExamples.json" with { type: "json" };
import { frozen, sieveRecord } from "./gradingCases.js";

/** Printed to one decimal. */
const PRINTED = 0.06;
const passing = (record: ReturnType<typeof sieveRecord>) =>
  analyseSieve(record).rows.map(({ passingPct }) => passingPct);
const codes = (record: Parameters<typeof analyseSieve>[0]) =>
  analyseSieve(record).findings.map(({ severity, code }) => `${severity} ${code}`);

describe("published sieve analyses", () => {
  it.each(["sieve-das-ex2.1-2.2", "sieve-das8-2.4"] as const)("%s", (id) => {
    const { input, published } = cases[id];
    const record = sieveRecord(input.opening_mm, input.mass_retained_g, input.pan_g);
    passing(record).forEach((pct, index) => {
      expect(Math.abs(pct - published.percent_finer[index])).toBeLessThan(PRINTED);
    });
    // The book reads its sizes off a hand-drawn graph: two editions of it differ by 10 %.
    const { d10, d30, d60, cu, cc } = characteristicSizes(analyseSieve(record));
    expect(Math.abs(d10! / published.D10_mm - 1)).toBeLessThan(0.15);
    expect(Math.abs(d30! / published.D30_mm - 1)).toBeLessThan(0.15);
    expect(Math.abs(d60! / published.D60_mm - 1)).toBeLessThan(0.15);
    expect(Math.abs(cu! / published.Cu - 1)).toBeLessThan(0.2);
    expect(Math.abs(cc! / published.Cc - 1)).toBeLessThan(0.3);
  });

  it("fractions of Das example 2.1", () => {
    const { input, published } = cases["sieve-das-ex2.1-2.2"];
    const curve = analyseSieve(sieveRecord(input.opening_mm, input.mass_retained_g, input.pan_g));
    const { gravelPct, sandPct, finesPct } = fractions(curve, "astm");
    expect(gravelPct).toBeCloseTo(published.gravel_pct, 1);
    expect(Math.abs(sandPct! - published.sand_pct)).toBeLessThan(PRINTED);
    expect(Math.abs(finesPct! - published.fines_pct)).toBeLessThan(PRINTED);
  });

  it("Smith example 1.2, printed in whole numbers", () => {
    const { input, published } = cases["sieve-smith-1.2"];
    const record = sieveRecord(input.opening_mm, input.mass_retained_g, input.pan_g);
    expect(record.dryMassG).toBeCloseTo(published.total_g, 9);
    passing(record).forEach((pct, index) => {
      expect(Math.abs(pct - published.percent_passing[index])).toBeLessThan(1);
    });
  });

  it("composite set of the Waterloo hand-out", () => {
    const { input, published } = cases["sieve-composite-cive153"];
    const record = {
      ...sieveRecord(
        [4.75, 1.18],
        [input.cumulative_retained_4_75_g, input.fine_cumulative_retained_1_18_g],
        233,
      ),
      dryMassG: input.total_initial_g,
      splits: [{ sizeMm: input.split_sieve_mm, dryMassG: input.fine_subsample_before_wash_g }],
    };
    const [split, fine] = analyseSieve(record).rows;
    expect(Math.abs(split.passingPct - published.percent_passing_4_75)).toBeLessThan(0.05);
    expect(Math.abs(fine.passingPct - published.percent_passing_1_18)).toBeLessThan(0.05);
    expect(
      Math.abs(fine.retainedPct - published.percent_of_total_retained_in_fine_to_1_18),
    ).toBeLessThan(0.05);
    expect([split.portion, fine.portion]).toEqual([0, 1]);
  });
});

describe("washing", () => {
  it("counts washed-out fines as passing the finest sieve", () => {
    const record = sieveRecord([2, 0.075], [100, 300], 20, { dryMassG: 500, washedDryMassG: 420 });
    const { rows, sets } = analyseSieve(record);
    expect(rows.map(({ passingPct }) => passingPct)).toEqual([80, 20]);
    expect(sets).toEqual([
      { portion: 0, dryMassG: 500, washedOutG: 80, retainedG: 400, lossPct: 0 },
    ]);
  });

  it("gives the same curve whether the whole sample is washed before the split or the split after it", () => {
    // 1000 g: 400 g gravel, 300 g sand, 300 g fines.
    const split = sieveRecord([4, 0.063], [400, 150], 0, {
      dryMassG: 1000,
      splits: [{ sizeMm: 4, dryMassG: 300, washedDryMassG: 150 }],
    });
    const whole = sieveRecord([4, 0.063], [400, 75], 0, {
      dryMassG: 1000,
      washedDryMassG: 700,
      splits: [{ sizeMm: 4, dryMassG: 75 }],
    });
    for (const record of [split, whole]) {
      const { rows, findings } = analyseSieve(record);
      expect(rows[0].passingPct).toBeCloseTo(60, 9);
      expect(rows[1].passingPct).toBeCloseTo(30, 9);
      expect(findings.filter(({ severity }) => severity === "error")).toEqual([]);
    }
  });

  it("chains two splits", () => {
    const record = sieveRecord([10, 2, 0.5], [500, 50, 10], 40, {
      dryMassG: 2000,
      splits: [
        { sizeMm: 10, dryMassG: 200 },
        { sizeMm: 2, dryMassG: 50 },
      ],
    });
    // 75 %, of that 3/4, of that 4/5.
    expect(passing(record)).toEqual([75, 56.25, 45]);
  });
});

describe("findings", () => {
  const sieved = (panG: number, more = {}) =>
    sieveRecord([4, 1, 0.25], [0, 200, 300], panG, { dryMassG: 600, ...more });

  it("loss: said only beyond the limit of the form of test that is named", () => {
    expect(codes(sieved(100))).toEqual([]);
    expect(codes(sieved(94.01))).toEqual([]);
    expect(codes(sieved(88.01))).toEqual([]);
    expect(codes(sieved(111.99))).toEqual([]);
    expect(codes(sieved(87.99))).toEqual(["error sieve-loss"]);
    expect(codes(sieved(112.01))).toEqual(["error sieve-gain"]);
    for (const [method, panG] of [
      ["BS EN 933-1", 94],
      ["EN ISO 17892-4", 94],
      ["AASHTO T 27", 98.2],
      ["ASTM C136-14", 98.2],
    ] as const) {
      expect(codes(sieved(panG + 0.01, { method }))).toEqual([]);
      expect(codes(sieved(panG - 0.01, { method }))).toEqual(["error sieve-loss"]);
    }
    const [finding] = analyseSieve(sieved(93, { method: "EN 933-1" })).findings;
    expect(render(finding.expected)).toBe(
      "a difference within 1 % of the dry mass (EN 933-1 and BS 1377-2, from memory)",
    );
  });

  it("tells place, value, expectation and remedy", () => {
    const [finding] = analyseSieve(sieved(50)).findings;
    expect(renderAll(finding)).toMatchObject({ file: "sheets/sieve.csv", value: "8.33 %" });
    expect(render(finding.expected)).toContain("2 %");
    expect(render(finding.remedy)).toMatch(/\S/);
  });

  it("more retained than there was", () => {
    expect(codes(sieved(0, { dryMassG: 480 }))).toEqual(["error retained-over-sample"]);
    const cumulative = sieveRecord([4, 2, 1], [100, 250, 380], 20, { dryMassG: 400 });
    expect(codes(cumulative)).toContain("error retained-over-sample");
    // 2 % more than 400 g is still a difference that is allowed.
    const on = (lastG: number) => sieveRecord([4, 1, 0.25], [0, 208, lastG], 0, { dryMassG: 400 });
    expect(codes(on(200))).toEqual([]);
    expect(codes(on(200.01))).toEqual(["error retained-over-sample"]);
  });

  it("says of which portion it speaks, and on which row it ended", () => {
    const of = (...args: Parameters<typeof sieveRecord>) =>
      renderAll(analyseSieve(sieveRecord(...args)).findings);
    const over = { code: "retained-over-sample", row: 5 };
    expect(of([2, 0.063], [0, 120], 0, { dryMassG: 100 })).toMatchObject([
      {
        ...over,
        value: "120.0 g",
        message: "The sieves retain more than the sample that was put on them.",
        expected: "at most 100.0 g on all sieves of this set together",
      },
    ]);
    const splits = [{ sizeMm: 2, dryMassG: 50 }];
    expect(of([2, 0.063], [0, 60], 0, { dryMassG: 100, splits })).toMatchObject([
      {
        ...over,
        value: "60.0 g",
        message: "The sieves retain more than the split subsample that was put on them.",
        expected: "at most 50.0 g on all sieves of this set together",
      },
    ]);
    // Of 100 g, 10 washed out: 85 found of 100, then 46 of 45 and of 40.
    const washed = { dryMassG: 100, washedDryMassG: 90 };
    expect(of([2, 0.063], [0, 70], 5, washed)).toMatchObject([
      {
        code: "sieve-loss",
        value: "15.00 %",
        message:
          "Less mass was found after sieving than was put in: 85.0 g of 100.0 g of the sample, washed-out fines counted.",
      },
    ]);
    const split = { ...washed, splits: [{ sizeMm: 2, dryMassG: 40, washedDryMassG: 35 }] };
    expect(of([2, 0.063], [0, 30], 11, split)).toMatchObject([
      {
        code: "sieve-gain",
        value: "15.00 %",
        message:
          "More mass was found after sieving than was put in: 46.0 g of 40.0 g of the split subsample, washed-out fines counted.",
      },
    ]);
  });

  it("percentages as percentages", () => {
    const of = (...retained: readonly number[]) =>
      analyseSieve(
        sieveRecord([4, 2, 1], retained, 0, { dryMassG: 100, massesUnknown: true }),
      ).findings.map((one) => renderAll(one));
    expect(of(10, 60, 95)).toMatchObject([
      {
        code: "retained-over-sample",
        value: "165.0 %",
        expected: "100 % on all sieves and in the pan together",
      },
      { code: "top-size-unknown", value: "10 %" },
    ]);
    expect(of(0, 60, 40)).toEqual([]);
  });

  it("a sample too small for its grains, and a top size left open", () => {
    expect(codes(sieveRecord([25, 20, 16, 4], [0, 100, 400, 1400], 100))).toContain(
      "warning small-sample",
    );
    expect(codes(sieveRecord([25, 20, 16, 4], [0, 300, 1200, 4200], 500))).toEqual([]);
    expect(codes(sieveRecord([4, 1], [5, 400], 200))).toContain("warning top-size-unknown");
  });

  it("refuses a split sieve that is not in the set, and a mass of nothing", () => {
    expect(() => analyseSieve(sieved(100, { splits: [{ sizeMm: 2, dryMassG: 100 }] }))).toThrow(
      RangeError,
    );
    expect(() => analyseSieve(sieved(100, { dryMassG: 0 }))).toThrow("invalid `dryMassG`: 0");
  });
});

describe("properties", () => {
  const masses = fc.array(fc.double({ min: 0, max: 500, noNaN: true }), {
    minLength: 2,
    maxLength: 9,
  });

  it("the curve does not change when all masses are scaled, never falls, and the input stays as it was", () => {
    fc.assert(
      fc.property(masses, fc.double({ min: 0.01, max: 100, noNaN: true }), (retained, scale) => {
        const openings = retained.map((_, index) => 16 / 2 ** index);
        const record = frozen(sieveRecord(openings, retained, 50));
        const scaled = sieveRecord(
          openings,
          retained.map((mass) => mass * scale),
          50 * scale,
        );
        const [points, other] = [record, scaled].map((each) => analyseSieve(each).points);
        points.forEach(({ passingPct, sizeMm }, index) => {
          expect(other[index].passingPct).toBeCloseTo(passingPct, 7);
          expect(passingPct).toBeGreaterThanOrEqual(points[index - 1]?.passingPct ?? 0);
          expect(sizeMm).toBeGreaterThan(points[index - 1]?.sizeMm ?? 0);
        });
      }),
    );
  });
});
