import { describe, expect, it } from "vitest";
import type { LimitsRecord } from "../../src/lab/limits.js";
import { consistencyLimits } from "../../src/soil/consistency/limits.js";
import cases from "../reference/soilWorkedExamples.json" with { type: "json" };

function record(
  method: "cup" | "cone",
  points: readonly (readonly [number, number])[],
  plastic: readonly number[] = [],
  more: Partial<LimitsRecord> = {},
): LimitsRecord {
  return {
    file: "sheets/limits.csv",
    liquidLimitMethod: method,
    liquidLimitPoints: points.map(([measure, waterContentPct], index) => ({
      measure,
      waterContentPct,
      row: index + 3,
    })),
    plasticLimitPoints: plastic.map((waterContentPct, index) => ({
      waterContentPct,
      row: index + 20,
    })),
    nonPlastic: false,
    ...more,
  };
}

const GOOD = record(
  "cup",
  [
    [17, 36],
    [22, 34.6],
    [28, 33.2],
    [34, 32.1],
  ],
  [18, 18.4],
);

describe("published limits", () => {
  it("fall cone, Smith example 1.3", () => {
    const { input, published } = cases["atterberg-smith-1.3"];
    const plastic = input.PL_tests.map(({ tin, wet, dry }) => (100 * (wet - dry)) / (dry - tin));
    plastic.forEach((water, index) => {
      expect(Math.abs(water - published.PL_each[index])).toBeLessThan(0.05);
    });
    const limits = consistencyLimits(
      record(
        "cone",
        input.penetration_mm.map(
          (depth, index) => [depth, input.water_content_pct[index]] as const,
        ),
        plastic,
      ),
    );
    // Printed in whole numbers.
    expect(Math.abs(limits.liquidLimitPct! - published.LL)).toBeLessThan(0.5);
    expect(Math.abs(limits.plasticLimitPct! - published.PL)).toBeLessThan(0.5);
    expect(Math.abs(limits.plasticityIndexPct! - published.PI)).toBeLessThan(0.5);
    expect(limits.aboveALine).toBe(true);
    // A plasticity index of 36 at a liquid limit of 55 lies below the U-line (42): nothing to remark.
    expect(limits.findings).toEqual([]);
  });

  it("cup, Das problem 4.3", () => {
    const { input, published } = cases["atterberg-das-4.3"];
    const limits = consistencyLimits(
      record(
        "cup",
        input.blows.map((blows, index) => [blows, input.water_content_pct[index]] as const),
        [input.PL],
      ),
    );
    expect(Math.abs(limits.liquidLimitPct! - published.LL)).toBeLessThan(0.1);
    expect(Math.abs(limits.plasticityIndexPct! - published.PI)).toBeLessThan(0.1);
  });

  it("the soil that plots above the U-line (homeworksource, soil 2) is remarked upon", () => {
    const { LL, PL } = cases["uscs-3soils-2"].input;
    const line = (blows: number) => LL - 8 * Math.log10(blows / 25);
    const limits = consistencyLimits(
      record(
        "cup",
        [
          [18, line(18)],
          [25, line(25)],
          [32, line(32)],
        ],
        [PL],
      ),
    );
    expect(limits.aLinePct).toBeCloseTo(cases["uscs-3soils-2"].published.A_line_PI, 2);
    expect(limits.findings.map(({ code }) => code)).toEqual(["above-u-line"]);
  });
});

describe("findings", () => {
  const codes = (given: LimitsRecord) =>
    consistencyLimits(given).findings.map(
      ({ severity, code, row }) => `${severity} ${code}${row ? ` ${row}` : ""}`,
    );

  it("none for a good sheet", () => {
    expect(codes(GOOD)).toEqual([]);
  });

  it("points out of range, from both sides of each edge", () => {
    const at = (low: number, high: number) =>
      codes(
        record(
          "cup",
          [
            [low, 36],
            [25, 34],
            [high, 32],
          ],
          [18],
        ),
      );
    expect(at(15, 35)).toEqual([]);
    expect(at(14, 35)).toEqual(["warning liquid-limit-range 3"]);
    expect(at(15, 36)).toEqual(["warning liquid-limit-range 5"]);
  });

  it("all points on one side, too few, or leaning the wrong way", () => {
    expect(
      codes(
        record(
          "cup",
          [
            [27, 34],
            [30, 33],
            [34, 32],
          ],
          [18],
        ),
      ),
    ).toEqual(["warning liquid-limit-outside 3"]);
    expect(
      codes(
        record(
          "cup",
          [
            [20, 35],
            [30, 33],
          ],
          [18],
        ),
      ),
    ).toEqual(["warning few-liquid-limit-points 3"]);
    expect(
      codes(
        record(
          "cup",
          [
            [18, 33],
            [25, 34],
            [32, 35],
          ],
          [18],
        ),
      ),
    ).toEqual(["error flow-line 3"]);
    expect(
      codes(
        record(
          "cone",
          [
            [17, 35],
            [20, 34],
            [23, 33],
          ],
          [18],
        ),
      ),
    ).toEqual(["error flow-line 3"]);
    expect(
      codes(
        record(
          "cup",
          [
            [25, 33],
            [25, 34],
            [25, 35],
          ],
          [18],
        ),
      ),
    ).toEqual(["error flow-line 3"]);
  });

  it("limits that cross, a bar that grew, non-plastic with a plastic limit", () => {
    expect(codes({ ...GOOD, plasticLimitPoints: [{ waterContentPct: 40, row: 9 }] })).toEqual([
      "error limits-crossed",
    ]);
    expect(codes({ ...GOOD, shrinkageBar: { wetLengthMm: 133, dryLengthMm: 140 } })).toEqual([
      "error bar-grew",
    ]);
    expect(codes({ ...GOOD, nonPlastic: true })).toEqual(["warning non-plastic-with-limit 20"]);
  });

  it("no plasticity index for a non-plastic soil", () => {
    const none = record("cup", [], [], { nonPlastic: true });
    expect(consistencyLimits(none)).toMatchObject({
      nonPlastic: true,
      plasticityIndexPct: undefined,
      findings: [],
    });
  });

  it("misuse throws", () => {
    expect(() => consistencyLimits(record("cup", [[0, 30]]))).toThrow(
      "invalid `liquidLimitPoints[0].measure`: 0",
    );
    expect(() =>
      consistencyLimits({ ...GOOD, shrinkageBar: { wetLengthMm: 0, dryLengthMm: 1 } }),
    ).toThrow(RangeError);
  });
});

describe("consistencyLimits", () => {
  it("does not depend on the order of the points", () => {
    const back = { ...GOOD, liquidLimitPoints: GOOD.liquidLimitPoints.toReversed() };
    expect(consistencyLimits(back).liquidLimitPct).toBeCloseTo(
      consistencyLimits(GOOD).liquidLimitPct!,
      10,
    );
  });

  it("an interval around the limit, none for two points", () => {
    const { liquidLimitInterval95, liquidLimitPct } = consistencyLimits(GOOD);
    expect(liquidLimitInterval95![0]).toBeLessThan(liquidLimitPct!);
    expect(liquidLimitInterval95![1]).toBeGreaterThan(liquidLimitPct!);
    expect(
      consistencyLimits(
        record("cup", [
          [20, 35],
          [30, 33],
        ]),
      ).liquidLimitInterval95,
    ).toBeUndefined();
  });

  it("linear shrinkage of the bar", () => {
    const bar = { ...GOOD, shrinkageBar: { wetLengthMm: 140, dryLengthMm: 131.6 } };
    expect(consistencyLimits(bar).linearShrinkagePct).toBeCloseTo(6, 9);
  });
});
