import { describe, expect, it } from "vitest";
import type { LimitsRecord } from "../../src/lab/limits.js";
import { analyseCompaction } from "../../src/soil/compaction/compactionTest.js";
import { moistureWindow } from "../../src/soil/compaction/moistureWindow.js";
import {
  airVoidsDensity,
  oversizeDensity,
  zeroAirVoidsDensity,
} from "../../src/soil/compaction/phaseRelations.js";
import {
  consistencyLimits,
  onePointLiquidLimit,
  plasticLimitRepeats,
} from "../../src/soil/consistency/limits.js";
import { longBoxShrinkage } from "../../src/soil/consistency/longBox.js";
import { render } from "../../src/words/render.js";

const record = (more: Partial<LimitsRecord>): LimitsRecord => ({
  file: "sheets/limits.csv",
  liquidLimitMethod: "cup",
  liquidLimitPoints: [],
  plasticLimitPoints: [],
  nonPlastic: false,
  ...more,
});
const threads = (...water: number[]) =>
  water.map((waterContentPct, index) => ({ waterContentPct, row: index + 9 }));

describe("the one-point liquid limit", () => {
  it("has the factors computed from its exponent", () => {
    // 20 to 30 blows; computed, not published.
    const factors = [20, 21, 22, 23, 24, 25, 26, 27, 28, 29, 30].map((blows) =>
      Number((onePointLiquidLimit(100, blows)! / 100).toFixed(3)),
    );
    expect(factors).toEqual([
      0.973, 0.979, 0.985, 0.99, 0.995, 1, 1.005, 1.009, 1.014, 1.018, 1.022,
    ]);
  });

  it("is taken where one point is all there is, and says so", () => {
    const points = [{ measure: 22, waterContentPct: 40, row: 5 }];
    const found = consistencyLimits(
      record({ liquidLimitPoints: points, plasticLimitPoints: threads(20, 21) }),
    );
    expect(found.onePoint).toBe(true);
    expect(found.liquidLimitPct).toBeCloseTo(39.39, 2);
    expect(found.liquidLimitInterval95).toBeUndefined();
    expect(found.findings).toMatchObject([{ code: "one-point-liquid-limit", row: 5 }]);
  });

  it.each([
    ["cup", 19],
    ["cup", 31],
    ["cone", 20],
  ] as const)("is not taken for the %s at %d", (liquidLimitMethod, measure) => {
    const points = [{ measure, waterContentPct: 40, row: 5 }];
    const found = consistencyLimits(record({ liquidLimitMethod, liquidLimitPoints: points }));
    expect(found.liquidLimitPct).toBeUndefined();
    expect(found.findings.map(({ code }) => code)).toContain("flow-line");
  });
});

describe("repeated plastic limits", () => {
  it("gives mean, range and the interval by Student's t", () => {
    const found = plasticLimitRepeats([18, 19, 20])!;
    expect(found).toMatchObject({ plasticLimitPct: 19, threads: 3, rangePct: 2, apart: false });
    // s = 1, s / √3 = 0.577, t(0.975, 2) = 4.303.
    expect(found.interval95![1] - 19).toBeCloseTo(4.3027 / Math.sqrt(3), 3);
    expect(plasticLimitRepeats([19])!.interval95).toBeUndefined();
    expect(plasticLimitRepeats([])).toBeUndefined();
    expect(() => plasticLimitRepeats([-1])).toThrow("invalid `waterContentsPct[0]`: -1");
  });

  it("threads far apart are told; the index has an interval from both limits", () => {
    const liquidLimitPoints = [
      { measure: 15, waterContentPct: 42, row: 2 },
      { measure: 20, waterContentPct: 40.8, row: 3 },
      { measure: 28, waterContentPct: 39.1, row: 4 },
    ];
    const found = consistencyLimits(
      record({ liquidLimitPoints, plasticLimitPoints: threads(17, 19.5, 18) }),
    );
    expect(found.findings.map(({ code }) => code)).toContain("plastic-limit-apart");
    const [low, high] = found.plasticityIndexInterval95!;
    expect((low + high) / 2).toBeCloseTo(found.plasticityIndexPct!, 9);
    const widths = [found.liquidLimitInterval95!, found.plasticLimitInterval95!].map(
      ([a, b]) => b - a,
    );
    expect(high - low).toBeCloseTo(Math.hypot(...widths), 9);
  });
});

describe("the long box", () => {
  it.each([
    [12, [18, 18]],
    [12.1, [16, 18]],
    [39, [14, 14]],
    [50.1, [undefined, 12]],
    [60.1, [undefined, undefined]],
  ])("%d mm: the two tables are shown side by side", (mm, advice) => {
    expect(longBoxShrinkage(mm).advice.map(({ soilToCement }) => soilToCement)).toEqual(advice);
  });

  it("scales another box to 600 mm and never calls itself linear shrinkage of the bar", () => {
    const found = longBoxShrinkage(15, 300);
    expect([found.per600Mm, found.shrinkagePct]).toEqual([30, 5]);
    expect(render(found.caution)).toContain("not the linear shrinkage of the laboratory bar");
    expect(() => longBoxShrinkage(600)).toThrow("invalid `shrinkageMm`: 600");
    expect(() => longBoxShrinkage(0, 0)).toThrow("invalid `boxLengthMm`: 0");
  });
});

describe("moistureWindow", () => {
  // A parabola by hand: 2000 − 10 (w − 11)² in dry density.
  const points = [7, 9, 11, 13, 15].map((water, index) => ({
    waterContentPct: water,
    moistMassG: (2000 - 10 * (water - 11) ** 2) * (1 + water / 100),
    row: index + 5,
  }));
  const analysis = analyseCompaction({ file: "c.csv", mouldVolumeCm3: 1000, points });

  it("ends where the parabola falls to the share", () => {
    const window = moistureWindow(analysis, 98)!;
    // 2 % of 2000 = 40 = 10 (w − 11)²: 2 points either side.
    expect(window.minDryDensityKgM3).toBeCloseTo(1960, 6);
    expect(window.driestPct).toBeCloseTo(9, 1);
    expect(window.wettestPct).toBeCloseTo(13, 1);
    expect([window.openDry, window.openWet]).toEqual([false, false]);
  });

  it("says where the tests end before the window does", () => {
    expect(moistureWindow(analysis, 90)).toMatchObject({
      driestPct: 7,
      wettestPct: 15,
      openDry: true,
      openWet: true,
    });
  });

  it("needs a top and a share", () => {
    expect(moistureWindow({ curve: [] })).toBeUndefined();
    expect(() => moistureWindow(analysis, 0)).toThrow("invalid `relativePct`: 0");
  });
});

describe("points that cannot be", () => {
  const water = [7, 9, 11, 13, 15, 17];
  const record = (mistake: number) => ({
    file: "c.csv",
    mouldVolumeCm3: 1000,
    points: water.map((waterContentPct, index) => ({
      waterContentPct,
      moistMassG:
        (1900 - 8 * (waterContentPct - 11) ** 2 + (index === 4 ? mistake : 0)) *
        (1 + waterContentPct / 100),
      row: index + 5,
    })),
  });
  const options = { particleDensityKgM3: 2650 };

  it("are told, and left out of the fit only where that is asked for", () => {
    // 15 %: without air 1896 kg/m³; the mistake brings the point to 1972.
    const kept = analyseCompaction(record(200), options);
    const left = analyseCompaction(record(200), { ...options, rejectAboveZeroAir: true });
    expect(kept.points.some(({ rejected }) => rejected)).toBe(false);
    expect(left.points.filter(({ rejected }) => rejected)).toMatchObject([{ row: 9 }]);
    for (const { findings } of [kept, left]) {
      expect(findings.map(({ code }) => code)).toContain("above-zero-air-voids");
    }
    expect(left.peak!.optimumWaterPct).toBeCloseTo(11, 6);
    expect(Math.abs(kept.peak!.optimumWaterPct - 11)).toBeGreaterThan(0.5);
  });
});

describe("lines of air and oversize", () => {
  it("5 % of air takes 5 % off the density without air", () => {
    expect(airVoidsDensity(10, 2700, 5)).toBeCloseTo(0.95 * zeroAirVoidsDensity(10, 2700), 9);
    expect(() => airVoidsDensity(10, 2700, 100)).toThrow("invalid `airVoidsPct`: 100");
  });

  it("oversize: volumes of both parts add up", () => {
    const whole = oversizeDensity({
      dryDensityKgM3: 1900,
      waterContentPct: 12,
      oversizePct: 20,
      oversizeParticleDensityKgM3: 2650,
    });
    // 80 kg at 1900 and 20 kg at 2650, and the water of the 80 kg alone.
    expect(100 / whole.dryDensityKgM3).toBeCloseTo(80 / 1900 + 20 / 2650, 12);
    expect(whole.waterContentPct).toBeCloseTo(9.6, 12);
    expect(() =>
      oversizeDensity({
        dryDensityKgM3: 1900,
        waterContentPct: 12,
        oversizePct: 100,
        oversizeParticleDensityKgM3: 2650,
      }),
    ).toThrow("invalid `oversizePct`: 100");
  });
});
