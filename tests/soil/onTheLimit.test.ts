import { describe, expect, it } from "vitest";
import type { LimitsRecord } from "../../src/lab/limits.js";
import { classifyBs5930 } from "../../src/soil/classification/bs5930.js";
import { classifyIso14688, gradedTerm } from "../../src/soil/classification/iso14688.js";
import { classifyUscs } from "../../src/soil/classification/uscs.js";
import { usdaTexture } from "../../src/soil/classification/usdaTexture.js";
import { analyseCompaction } from "../../src/soil/compaction/compactionTest.js";
import { moistureWindow } from "../../src/soil/compaction/moistureWindow.js";
import { consistencyLimits } from "../../src/soil/consistency/limits.js";
import { longBoxShrinkage } from "../../src/soil/consistency/longBox.js";
import { surveyGradings } from "../../src/soil/survey/surveyGradings.js";
import type { SurveyRow } from "../../src/soil/survey/surveyRow.js";
import { render, renderAll } from "../../src/words/render.js";

/** A value exactly on a limit, and one beside it: what a sheet with round numbers hits. */
const file = "sheets/soil.csv";
const codes = (findings: readonly { readonly severity: string; readonly code: string }[]) =>
  findings.map(({ severity, code }) => `${severity} ${code}`);

/** Points as [measure, water]; threads as water. */
function limits(
  liquidLimitMethod: "cup" | "cone",
  points: readonly (readonly [number, number])[],
  threads: readonly number[],
  more: Partial<LimitsRecord> = {},
) {
  return consistencyLimits({
    file,
    liquidLimitMethod,
    liquidLimitPoints: points.map(([measure, waterContentPct], index) => ({
      measure,
      waterContentPct,
      row: index + 3,
    })),
    plasticLimitPoints: threads.map((waterContentPct, index) => ({
      waterContentPct,
      row: index + 20,
    })),
    nonPlastic: false,
    ...more,
  });
}

describe("points of a liquid limit", () => {
  const cup = (low: number, high: number, middle = 25) =>
    limits(
      "cup",
      [
        [low, 36],
        [middle, 34],
        [high, 32],
      ],
      [20],
    ).findings;
  const cone = (low: number, high: number, middle = 20) =>
    limits(
      "cone",
      [
        [low, 32],
        [middle, 34],
        [high, 36],
      ],
      [20],
    ).findings;

  it("lie within 15 to 35 blows, or 15 to 25 mm", () => {
    expect([cup(15, 35), cone(15, 25)]).toEqual([[], []]);
    for (const found of [cup(14.9, 35), cup(15, 35.1), cone(14.9, 25), cone(15, 25.1)]) {
      expect(codes(found)).toEqual(["warning liquid-limit-range"]);
    }
    expect(render(cup(14.9, 35)[0].message)).toContain("far from the limit at 25 blows");
    expect(render(cone(15, 25.1)[0].expected)).toBe("15 to 25 mm of penetration");
  });

  it("lie on both sides of 25 blows, or 20 mm, or on it", () => {
    expect([cup(25, 35, 30), cup(15, 25, 20), cone(20, 25, 22), cone(15, 20, 18)]).toEqual([
      [],
      [],
      [],
      [],
    ]);
    for (const found of [cup(26, 35, 30), cup(15, 24, 20), cone(21, 25, 22), cone(15, 19, 18)]) {
      expect(codes(found)).toEqual(["warning liquid-limit-outside"]);
    }
    expect(renderAll(cup(26, 35, 30)[0]).value).toBe("26 to 35 blows");
  });

  it("are three at least, and a line that is level slopes the wrong way", () => {
    const two = limits(
      "cup",
      [
        [20, 35],
        [30, 33],
      ],
      [20],
    );
    expect(renderAll(two.findings)).toMatchObject([
      { code: "few-liquid-limit-points", value: "2", row: 3 },
    ]);
    for (const method of ["cup", "cone"] as const) {
      const level = limits(
        method,
        [
          [18, 34],
          [20, 34],
          [25, 34],
        ],
        [20],
      );
      expect(codes(level.findings)).toEqual(["error flow-line"]);
    }
  });

  it("of the cone give the water at 20 mm, of the cup at 25 blows", () => {
    const line = limits(
      "cone",
      [
        [15, 30],
        [20, 35],
        [25, 40],
      ],
      [20],
    );
    expect(line.liquidLimitPct).toBeCloseTo(35, 9);
    expect(line.flowLine).toMatchObject({ method: "cone" });
    expect(line.flowLine!.slope).toBeCloseTo(1, 9);
    expect(line.flowLine!.intercept).toBeCloseTo(15, 9);
    const at = (blows: number) => 40 - 10 * Math.log10(blows / 25);
    const cupLine = limits(
      "cup",
      [
        [16, at(16)],
        [20, at(20)],
        [32, at(32)],
      ],
      [20],
    );
    expect(cupLine.liquidLimitPct).toBeCloseTo(40, 9);
    expect(cupLine.flowLine!.slope).toBeCloseTo(-10, 9);
    expect(cupLine.flowLine!.intercept).toBeCloseTo(40 + 10 * Math.log10(25), 9);
  });
});

describe("consistency", () => {
  /** Reported limits, so that they are exact. */
  const reported = (liquidLimitPct: number, plasticLimitPct: number) =>
    limits("cup", [], [], { reported: { liquidLimitPct, plasticLimitPct } });
  const doubts = (liquid: number, plastic: number) =>
    codes(reported(liquid, plastic).findings).slice(1);

  it("threads may lie two points apart", () => {
    const found = (range: number) =>
      limits(
        "cup",
        [
          [20, 35],
          [25, 34],
          [30, 33],
        ],
        [18, 18 + range],
      ).findings;
    expect(found(2)).toEqual([]);
    expect(renderAll(found(2.25))).toMatchObject([
      {
        code: "plastic-limit-apart",
        row: 20,
        value: "2.3 points",
        expected: "within 2 points of water (common practice, no source)",
      },
    ]);
  });

  it("of liquid limit, plastic limit and index the third follows from two", () => {
    const third = (given: NonNullable<LimitsRecord["reported"]>) => {
      const { liquidLimitPct, plasticLimitPct, plasticityIndexPct } = limits("cup", [], [], {
        reported: given,
      });
      return [liquidLimitPct, plasticLimitPct, plasticityIndexPct];
    };
    expect(third({ liquidLimitPct: 40, plasticLimitPct: 25 })).toEqual([40, 25, 15]);
    expect(third({ liquidLimitPct: 40, plasticityIndexPct: 15 })).toEqual([40, 25, 15]);
    // Both limits win over an index that does not fit them.
    expect(third({ liquidLimitPct: 40, plasticLimitPct: 25, plasticityIndexPct: 12 })).toEqual([
      40, 25, 15,
    ]);
    expect(third({ liquidLimitPct: 40 })).toEqual([40, undefined, undefined]);
    expect(third({ plasticLimitPct: 25, plasticityIndexPct: 12 })).toEqual([undefined, 25, 12]);
  });

  it("limits may meet, and not cross", () => {
    expect(doubts(20, 20)).toEqual([]);
    expect(doubts(20, 20.5)).toEqual(["error limits-crossed"]);
    expect(reported(20, 20).plasticityIndexPct).toBe(0);
  });

  it("an index may lie on the U-line, and on the A-line counts as above it", () => {
    // 0.9 (28 − 8) is 18; 0.73 (120 − 20) is 73.
    expect(reported(28, 10).uLinePct).toBe(18);
    expect(doubts(28, 10)).toEqual([]);
    expect(doubts(28, 9.9)).toEqual(["warning above-u-line"]);
    const [, told] = reported(28, 9).findings;
    expect(renderAll(told)).toMatchObject({ value: "LL 28.0, PI 19.0" });
    expect(render(told.expected)).toContain("up to 18.0 at this liquid limit");
    expect(reported(120, 47)).toMatchObject({ aLinePct: 73, aboveALine: true });
    expect(reported(120, 47.1).aboveALine).toBe(false);
  });

  it("a bar may keep its length", () => {
    const bar = (dryLengthMm: number) =>
      limits("cup", [], [], { shrinkageBar: { wetLengthMm: 140, dryLengthMm } });
    expect(bar(140)).toMatchObject({ linearShrinkagePct: 0, findings: [] });
    expect(renderAll(bar(141.4).findings)).toMatchObject([{ code: "bar-grew", value: "−1.0 %" }]);
  });

  it("the long box's tables break where their sources do", () => {
    const parts = (shrinkageMm: number) =>
      longBoxShrinkage(shrinkageMm).advice.map(({ soilToCement }) => soilToCement);
    expect([0, 12, 12.1, 15, 15.1, 24, 24.1, 30, 30.1].map(parts)).toEqual([
      [18, 18],
      [18, 18],
      [16, 18],
      [16, 18],
      [16, 16],
      [16, 16],
      [14, 16],
      [14, 16],
      [14, 14],
    ]);
    expect([39, 39.1, 45, 45.1, 50, 50.1, 60, 60.1].map(parts)).toEqual([
      [14, 14],
      [12, 14],
      [12, 14],
      [12, 12],
      [12, 12],
      [undefined, 12],
      [undefined, 12],
      [undefined, undefined],
    ]);
  });
});

describe("each line of BS 5930", () => {
  it.each([
    [95.5, 4.5, "SW", "well-graded sand"],
    [95, 5, "SW-SC", "well-graded clayey sand"],
    [85.5, 14.5, "SW-SC", "well-graded clayey sand"],
    [85, 15, "SCI", "very clayey sand"],
    [65.5, 34.5, "SCI", "very clayey sand"],
    [65, 35, "CIS", "sandy clay of intermediate plasticity"],
    [35.5, 64.5, "CIS", "sandy clay of intermediate plasticity"],
    [35, 65, "CI", "clay of intermediate plasticity"],
  ] as const)("sand %f, fines %f: %s, %s", (sandPct, finesPct, symbol, name) => {
    const found = classifyBs5930({
      gravelPct: 0,
      sandPct,
      finesPct,
      cu: 6,
      cc: 3,
      liquidLimitPct: 40,
      plasticityIndexPct: 20,
    });
    expect([found.symbol, found.name]).toEqual([symbol, name]);
  });

  it("calls a soil uniform below Cu 4 or 6, and gapped outside Cc 1 to 3", () => {
    const symbol = (gravelPct: number, cu: number, cc: number) =>
      classifyBs5930({ gravelPct, sandPct: 97 - gravelPct, finesPct: 3, cu, cc }).symbol;
    expect([symbol(80, 4, 1), symbol(80, 3.9, 1), symbol(0, 6, 3), symbol(0, 5.9, 3)]).toEqual([
      "GW",
      "GPu",
      "SW",
      "SPu",
    ]);
    expect([symbol(0, 6, 0.99), symbol(0, 6, 3.01)]).toEqual(["SPg", "SPg"]);
  });

  it("takes a point on the A-line for clay", () => {
    const fine = (plasticityIndexPct: number) =>
      classifyBs5930({
        gravelPct: 0,
        sandPct: 10,
        finesPct: 90,
        // 0.73 (120 − 20) is 73.
        liquidLimitPct: 120,
        plasticityIndexPct,
      }).symbol;
    expect([fine(73), fine(72.9)]).toEqual(["CE", "ME"]);
  });
});

describe("each term of grading of ISO 14688-2", () => {
  it("is said to fit, or to be by Cu alone", () => {
    const term = (cu: number, cc: number) => {
      const { term: word, reason } = gradedTerm(cu, cc);
      return [word, render(reason).includes("by Cu alone")];
    };
    expect([term(5.9, 0.9), term(5.9, 1), term(6, 0.9), term(6, 1), term(15, 1)]).toEqual([
      ["even-graded", false],
      ["even-graded", true],
      ["medium-graded", false],
      ["medium-graded", true],
      ["medium-graded", true],
    ]);
    expect([term(15.1, 1), term(15.1, 3), term(15.1, 0.99), term(15.1, 3.01)]).toEqual([
      ["multi-graded", false],
      ["multi-graded", false],
      ["gap-graded", false],
      ["gap-graded", false],
    ]);
    expect(render(gradedTerm(5.94, 0.955).reason)).toBe("Cu 5.9, Cc 0.95: even-graded.");
  });
});

describe("gravel as much as sand", () => {
  const half = { gravelPct: 49, sandPct: 49, finesPct: 2, cu: 10, cc: 2 };

  it("is sand, in every system", () => {
    expect(classifyUscs(half).symbol).toBe("SW");
    expect(classifyBs5930(half).symbol).toBe("SW");
    expect(classifyIso14688({ ...half, clayPct: 0 }).symbol).toBe("grSa");
    const more = { ...half, gravelPct: 49.1, sandPct: 48.9 };
    expect(classifyUscs(more).symbol).toBe("GW");
    expect(classifyBs5930(more).symbol).toBe("GW");
    expect(classifyIso14688({ ...more, clayPct: 0 }).symbol).toBe("saGr");
  });

  it("in a fine soil makes it sandy", () => {
    const plastic = { liquidLimitPct: 30, plasticityIndexPct: 15 };
    const fine = (gravelPct: number, sandPct: number) => ({
      gravelPct,
      sandPct,
      finesPct: 100 - gravelPct - sandPct,
      ...plastic,
    });
    expect(classifyBs5930(fine(20, 20)).symbol).toBe("CLS");
    expect(classifyBs5930(fine(20.1, 19.9)).symbol).toBe("CLG");
    expect(classifyUscs(fine(15, 15)).groupName).toBe("sandy lean clay with gravel");
    expect(classifyUscs(fine(15.1, 14.9)).groupName).toBe("gravelly lean clay");
    expect(classifyUscs(fine(7.5, 7.5)).groupName).toBe("lean clay with sand");
    expect(classifyUscs(fine(7.6, 7.5)).groupName).toBe("lean clay with gravel");
    expect(classifyUscs(fine(7.4, 7.5)).groupName).toBe("lean clay");
  });
});

describe("each line of ISO 14688-2", () => {
  // Gravel, sand, fines and the clay of the fines; halves are exact in a double.
  it.each([
    // Fines of 5 and 15 % in a coarse soil.
    [0, 95.5, 4.5, 4, "Sa", "sand"],
    [0, 95, 5, 0.5, "Sa", "slightly silty sand"],
    [0, 85.5, 14.5, 1, "Sa", "slightly silty sand"],
    [0, 85, 15, 1, "siSa", "silty sand"],
    // Clay of a fifth of the fines.
    [0, 80, 20, 3.5, "siSa", "silty sand"],
    [0, 80, 20, 4, "clSa", "clayey sand"],
    // Fines of 40 %.
    [0, 60.5, 39.5, 0, "siSa", "silty sand"],
    [0, 60, 40, 0, "saSi", "sandy silt"],
    // Clay of a tenth, a fifth and two fifths of the fines.
    [0, 0, 100, 9.5, "Si", "silt"],
    [0, 0, 100, 10, "clSi", "clayey silt"],
    [0, 0, 100, 19.5, "clSi", "clayey silt"],
    [0, 0, 100, 20, "siCl", "silty clay"],
    [0, 0, 100, 39.5, "siCl", "silty clay"],
    [0, 0, 100, 40, "Cl", "clay"],
    // A fifth of sand, of gravel, of both; the main word is not said twice.
    [19.5, 20, 60.5, 0, "saSi", "sandy silt"],
    [20, 19.5, 60.5, 0, "grSi", "gravelly silt"],
    [20, 20, 60, 0, "grsaSi", "sandy gravelly silt"],
    [60, 20, 20, 0, "sasiGr", "silty sandy gravel"],
  ] as const)(
    "gravel %f, sand %f, fines %f, clay %f: %s, %s",
    (gravelPct, sandPct, finesPct, clayPct, symbol, name) => {
      const found = classifyIso14688({ gravelPct, sandPct, finesPct, clayPct });
      expect([found.symbol, found.name]).toEqual([symbol, name]);
    },
  );

  it("asks for clay from 5 % fines on", () => {
    const missing = (sandPct: number) =>
      renderAll(
        classifyIso14688({ gravelPct: 0, sandPct, finesPct: 100 - sandPct, cu: 7, cc: 0.5 }),
      ).missing;
    expect([missing(95.5), missing(95)]).toEqual([[], ["clay content"]]);
  });

  it("takes shares that add up within half a percent, and no more clay than fines", () => {
    const sum = (sandPct: number) => () =>
      classifyIso14688({ gravelPct: 0, sandPct, finesPct: 50, clayPct: 50 });
    expect(sum(50.5)).not.toThrow();
    expect(sum(49.5)).not.toThrow();
    expect(sum(50.75)).toThrow("invalid sum of gravel, sand and fines: 100.75; expected 100");
    expect(sum(49.25)).toThrow("99.25");
    expect(() =>
      classifyIso14688({ gravelPct: 0, sandPct: 50, finesPct: 50, clayPct: 50.5 }),
    ).toThrow("invalid `clayPct`: 50.5; expected at most the fines, 50");
  });
});

describe("each line of the USDA triangle", () => {
  // Sand, silt, clay; halves are exact in a double, so that a sum of 100 is one.
  it.each([
    [86.5, 11.5, 2, "sand"],
    [86, 12, 2, "loamy sand"],
    [75.5, 19.5, 5, "loamy sand"],
    [75, 20, 5, "sandy loam"],
    [8.5, 80, 11.5, "silt"],
    [8, 80, 12, "silt loam"],
    [15.5, 79.5, 5, "silt loam"],
    [23.5, 50, 26.5, "silt loam"],
    [23, 50, 27, "clay loam"],
    [30.5, 49.5, 20, "loam"],
    [44.5, 49, 6.5, "sandy loam"],
    [44, 49, 7, "loam"],
    [52.5, 28, 19.5, "sandy loam"],
    [52, 28.5, 19.5, "loam"],
    [52.5, 27.5, 20, "sandy clay loam"],
    [45.5, 28, 26.5, "loam"],
    [46, 27.5, 26.5, "sandy clay loam"],
    [45.5, 20, 34.5, "sandy clay loam"],
    [45.5, 19.5, 35, "sandy clay"],
    [45, 20, 35, "clay loam"],
    [45, 25, 30, "clay loam"],
    [20, 53, 27, "silty clay loam"],
    [20.5, 52.5, 27, "clay loam"],
    [10, 50.5, 39.5, "silty clay loam"],
    [10, 50, 40, "silty clay"],
    [30, 30.5, 39.5, "clay loam"],
    [30, 30, 40, "clay"],
    [20, 40, 40, "silty clay"],
    [20, 39.5, 40.5, "clay"],
    [45, 15, 40, "clay"],
    [45.5, 14.5, 40, "sandy clay"],
  ] as const)("sand %f, silt %f, clay %f: %s", (sandPct, siltPct, clayPct, texture) => {
    expect(usdaTexture({ sandPct, siltPct, clayPct }).texture).toBe(texture);
  });
});

describe("gravel before a texture", () => {
  it("is named from 15, 35 and 60 %", () => {
    const name = (gravelPct: number) =>
      usdaTexture({ sandPct: 40, siltPct: 40, clayPct: 20, gravelPct }).name;
    expect([14.9, 15, 34.9, 35, 59.9, 60].map(name)).toEqual([
      "loam",
      "gravelly loam",
      "gravelly loam",
      "very gravelly loam",
      "very gravelly loam",
      "extremely gravelly loam",
    ]);
  });
});

describe("a compaction test", () => {
  /** Dry densities as a laboratory reports them: exact. */
  const test = (points: readonly (readonly [number, number])[], particleDensityKgM3?: number) =>
    analyseCompaction(
      {
        file,
        points: points.map(([waterContentPct, dryDensityKgM3], index) => ({
          waterContentPct,
          dryDensityKgM3,
          row: index + 4,
        })),
      },
      { particleDensityKgM3 },
    );
  const triangle = [
    [8, 1800],
    [10, 1900],
    [12, 1800],
  ] as const;

  it("has its air voids in percent of the volume", () => {
    const [point] = test(triangle, 2650).points;
    // 1 − 1800 (1 / 2650 + 0.08 / 1000)
    expect(point.airVoidsPct).toBeCloseTo(100 * (1 - 1800 / 2650 - 0.144), 9);
    expect(point.bulkDensityKgM3).toBeCloseTo(1944, 9);
  });

  it("gets a cubic from six points at four waters, a quadratic from four at three", () => {
    const methods = (...water: number[]) => {
      const found = test(water.map((w, index) => [w, 1900 - 5 * (w - 10) ** 2 + (index % 2)]));
      return [found.peak, ...found.alternatives].map((peak) => peak?.method).sort();
    };
    expect(methods(7, 9, 11, 13)).toEqual(["quadratic", "three-point parabola"]);
    expect(methods(7, 7, 9, 11, 13)).not.toContain("cubic");
    expect(methods(7, 7, 9, 9, 11, 13)).toContain("cubic");
    expect(methods(7, 7, 9, 9, 11, 11)).not.toContain("cubic");
    expect(methods(7, 9, 9, 11)).toContain("quadratic");
    expect(methods(7, 9, 11)).toEqual(["three-point parabola"]);
  });

  it("may touch the line without air, and not cross it", () => {
    // 1000 × 2500 / (1000 + 0.2 × 2500)
    const onLine = 2_500_000 / 1500;
    const dense = (top: number) =>
      test(
        [
          [16, 1500],
          [18, 1600],
          [20, top],
          [22, 1400],
        ],
        2500,
      ).findings.filter(({ code, row }) => code === "above-zero-air-voids" && row === 6);
    expect(dense(onLine)).toEqual([]);
    // 2500 / (1 + 0.2 × 2.5)
    expect(renderAll(dense(1800))).toMatchObject([
      {
        value: "1800 kg/m³ at 20.0 %",
        expected: "at most 1667 kg/m³ for particles of 2500 kg/m³",
        message: "This point lies above the line of zero air voids.",
      },
    ]);
    expect(dense(onLine + 0.5)).toHaveLength(1);
  });

  it("has two points on either side of its top", () => {
    const sided = (...water: number[]) =>
      test(water.map((w) => [w, 1900 - 5 * (w - 10) ** 2] as const)).findings;
    expect(sided(7, 9, 11, 13)).toEqual([]);
    expect(renderAll(sided(9, 11, 12, 13))).toMatchObject([
      { code: "compaction-one-sided", value: "1 drier", row: 4 },
    ]);
    expect(renderAll(sided(7, 8, 9, 11))).toMatchObject([
      { code: "compaction-one-sided", value: "1 wetter", row: 7 },
    ]);
    expect(render(sided(7, 8, 9, 11)[0].remedy)).toBe("Compact another point that is wetter.");
  });

  it("takes the least-squares curve only where it follows the points within half a percent", () => {
    // Five even points of a parabola, the middle one e too high: least squares follows it by e 17 / 35, so the
    // squared residuals add up to e² 18 / 35, with two degrees of freedom.
    const method = (e: number) =>
      test([6, 8, 10, 12, 14].map((w) => [w, 2000 - 6 * (w - 10) ** 2 + (w === 10 ? e : 0)]));
    const factor = Math.sqrt(18 / 35 / 2);
    const limit = (0.005 * 2000) / factor;
    const below = method(0.97 * limit);
    expect(below.peak!.method).toBe("quadratic");
    expect(below.peak!.residualSdKgM3).toBeCloseTo(0.97 * limit * factor, 6);
    expect(method(1.03 * limit).peak!.method).toBe("three-point parabola");
  });

  it("doubts a top that other methods put more than 35 kg/m³ or a tenth of the water away", () => {
    // Five points on a parabola but for the middle one, e above it: the least-squares top is e 17 / 35 above
    // the parabola's, the three-point one e: they part by e 18 / 35.
    const found = (e: number) =>
      codes(
        test([6, 8, 10, 12, 14].map((w) => [w, 2000 - 6 * (w - 10) ** 2 + (w === 10 ? e : 0)]))
          .findings,
      );
    const at = (apart: number) => found((apart * 35) / 18);
    expect(at(34.9)).not.toContain("warning compaction-methods-differ");
    expect(at(35.1)).toContain("warning compaction-methods-differ");
  });

  it("keeps its moisture range at the share that is asked for", () => {
    const { peak, curve } = test([6, 8, 10, 12, 14].map((w) => [w, 2000 - 10 * (w - 10) ** 2]));
    const window = moistureWindow({ peak, curve }, 98)!;
    // 2000 − 10 h² = 1960 at h 2, read off straight pieces 0.2 long: within 10 × 0.1² / 40.
    expect(window.minDryDensityKgM3).toBeCloseTo(1960, 6);
    expect(window.driestPct).toBeCloseTo(8, 2);
    expect(window.wettestPct).toBeCloseTo(12, 2);
    expect([window.openDry, window.openWet]).toEqual([false, false]);
    // 2000 − 10 × 4² = 1840 is 92 %: the curve ends there, and does not leave the range.
    expect(moistureWindow({ peak, curve }, 91.9)).toMatchObject({
      driestPct: 6,
      wettestPct: 14,
      openDry: true,
      openWet: true,
    });
    expect(moistureWindow({ peak, curve }, 92.1)).toMatchObject({ openDry: false, openWet: false });
    expect(moistureWindow({ peak, curve }, 100)!.driestPct).toBeCloseTo(10, 6);
    expect(() => moistureWindow({ peak, curve }, 100.1)).toThrow("`relativePct`: 100.1");
    expect(() => moistureWindow({ peak, curve }, 0)).toThrow("`relativePct`: 0");
  });
});

describe("a row of a survey", () => {
  const read = async (cells: string) => {
    const rows: SurveyRow[] = [];
    const text = `id,LL (%),PI (%),0.063,0.5,2,8,16\nA,${cells}\n`;
    for await (const row of surveyGradings([text], { threads: 0, file })) rows.push(row);
    return rows[0];
  };
  const refused = async (cells: string) => {
    const { finding } = await read(cells);
    return finding && `${finding.code}: ${render(finding.expected)}`;
  };

  it("holds percentages of 0 to 100 and limits of 0 to 200", async () => {
    expect(await refused("200,0,0,20,50,80,100")).toBeUndefined();
    expect(await refused("201,12,0,20,50,80,100")).toBe("out-of-range: 0 to 200");
    expect(await refused("30,-1,0,20,50,80,100")).toBe("out-of-range: 0 to 200");
    expect(await refused("30,12,0,20,50,80,100.5")).toBe("out-of-range: 0 to 100");
    expect(await refused("30,12,-0.5,20,50,80,100")).toBe("out-of-range: 0 to 100");
  });

  it("is quoted by its first six cells where it is too long, as is a header that is none", async () => {
    const { finding } = await read("30,12,0,20,50,80,100,101");
    expect(renderAll(finding)).toMatchObject({
      code: "row-too-long",
      value: "A, 30, 12, 0, 20, 50",
    });
    const rows: SurveyRow[] = [];
    const text = "id,0.063,0.5,soil,8,16,32\nA,1,2,3,4,5,6\n";
    for await (const row of surveyGradings([text], { threads: 0, file })) rows.push(row);
    expect(renderAll(rows[0].finding)).toMatchObject({
      code: "wrong-header",
      row: 1,
      value: "id, 0.063, 0.5, soil, 8, 16",
      message: "“soil” is neither a known column nor a sieve.",
    });
  });

  it("may fall by two points, which moves two of them by one", async () => {
    expect(await refused("30,12,10,42,40,80,100")).toBeUndefined();
    expect(await refused("30,12,10,42.5,40,80,100")).toBe("grading-falls: a rising curve");
    const { finding } = await read("30,12,10,44,40,80,100");
    expect(renderAll(finding)).toMatchObject({ row: 2, value: "2.0 points" });
  });

  it("has one point more between its ends than the model has parameters", async () => {
    expect(await refused("30,12,,,40,80,100")).toBeUndefined();
    expect(await refused("30,12,,,,80,100")).toBe(
      "too-few-points: at least 3 from the last 0 % to the first 100 %",
    );
  });
});
