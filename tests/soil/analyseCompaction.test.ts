import { describe, expect, it } from "vitest";
import type { CompactionRecord } from "../../src/lab/compaction.js";
import { createRandom } from "../../src/numerics/random.js";
import { analyseCompaction } from "../../src/soil/compaction/compactionTest.js";
import { zeroAirVoidsDensity } from "../../src/soil/compaction/phaseRelations.js";
import { render, renderAll } from "../../src/words/render.js";
import cases from "../reference/soilWorkedExamples.json" with { type: "json" };

/** 1 lb is 453.59237 g and 1 ft 304.8 mm, exactly; hence kg/m³ in a pcf. */
const PCF = 453.59237 / 0.3048 ** 3 / 1000;

function record(
  water: readonly number[],
  moistG: readonly number[],
  mouldVolumeCm3 = 1000,
): CompactionRecord {
  return {
    file: "sheets/compaction.csv",
    mouldVolumeCm3,
    points: water.map((waterContentPct, index) => ({
      waterContentPct,
      moistMassG: moistG[index],
      row: index + 7,
    })),
  };
}

const dry = (found: ReturnType<typeof analyseCompaction>) =>
  found.points.map(({ dryDensityKgM3 }) => dryDensityKgM3);

/** A record whose dry densities are the given function of water. */
const made = (water: readonly number[], density: (w: number) => number) =>
  record(
    water,
    water.map((w) => density(w) * (1 + w / 100)),
  );

describe("published compaction tests", () => {
  it("Smith: dry densities, and both fitted tops agree on the maximum", () => {
    const { input, published } = cases["proctor-smith-ex"];
    const moist = input.mould_plus_wet_g.map((mass) => mass - input.mould_g);
    const found = analyseCompaction(record(input.water_pct, moist, input.volume_cm3), {
      particleDensityKgM3: 1000 * input.Gs,
    });
    dry(found).forEach((density, index) => {
      expect(Math.abs(density / 1000 - published.dry_density[index])).toBeLessThan(0.005);
    });
    // Our own recomputation of the same data in Python: cubic 1.888 at 13.24 %, parabola 1.888 at 13.45 %.
    expect(found.peak).toMatchObject({ method: "cubic" });
    expect(found.peak!.optimumWaterPct).toBeCloseTo(13.24, 2);
    expect(Math.abs(found.peak!.maximumDryDensityKgM3 - 1888)).toBeLessThan(1);
    const parabola = found.alternatives.find(({ method }) => method === "three-point parabola")!;
    expect(parabola.optimumWaterPct).toBeCloseTo(13.45, 2);
    expect(parabola.optimumInterval95).toBeUndefined();
  });

  it("UTHM: densities to 0.1 kg/m³; a steep peak shows how far the methods part", () => {
    const { input, published } = cases["proctor-uthm"];
    const water = input.cans_tin_wet_dry_g.map(
      ([tin, wet, dried]) => (100 * (wet - dried)) / (dried - tin),
    );
    // The sheet prints 2.770 for its first water content where its own masses give 2.778.
    water.forEach((pct, index) => {
      expect(Math.abs(pct - published.water_pct[index])).toBeLessThan(0.01);
    });
    const moist = input.mould_plus_wet_kg.map((mass) => 1000 * (mass - input.mould_kg));
    const found = analyseCompaction(record(published.water_pct, moist, 1e6 * input.volume_m3));
    dry(found).forEach((density, index) => {
      expect(Math.abs(density - published.dry_density[index])).toBeLessThan(0.1);
    });
    found.points.forEach(({ bulkDensityKgM3 }, index) => {
      expect(Math.abs(bulkDensityKgM3 - published.wet_density[index])).toBeLessThan(0.1);
    });
    // The sheet takes its highest point for the maximum.
    expect(found.highestPoint.dryDensityKgM3).toBeCloseTo(published.MDD, 0);
    expect(found.highestPoint.waterContentPct).toBeCloseTo(published.OMC, 1);
    expect(found.findings.map(({ code }) => code)).toContain("compaction-methods-differ");
  });

  it("CL137: dry densities", () => {
    const { input, published } = cases["proctor-cl137"];
    const found = analyseCompaction(record(input.water_pct, input.wet_g, input.volume_cm3));
    dry(found).forEach((density, index) => {
      expect(Math.abs(density - published.dry_density[index])).toBeLessThan(0.6);
    });
    // The quadratic misses the points by 18 kg/m³ and has its top below the highest of them.
    expect(found.peak!.method).toBe("three-point parabola");
    expect(found.peak!.optimumWaterPct).toBeCloseTo(11.21, 2);
    expect(Math.abs(found.peak!.maximumDryDensityKgM3 - 1850)).toBeLessThan(1);
    expect(found.alternatives.map(({ method }) => method)).toEqual(["quadratic"]);
  });

  it("Das 9th ed. 6.4: textbook data that cannot be are remarked upon", () => {
    const { input } = cases["proctor-das9-6.4"];
    const moist = input.wet_lb.map((mass) => 453.59237 * mass);
    const found = analyseCompaction(
      record(input.water_pct, moist, (input.volume_ft3 * 304.8 ** 3) / 1000),
      {
        particleDensityKgM3: 1000 * input.Gs,
      },
    );
    expect(found.points[3].dryDensityKgM3 / PCF).toBeCloseTo(120.6, 1);
    const above = found.findings.filter(({ code }) => code === "above-zero-air-voids");
    expect(above[0]).toMatchObject({ severity: "warning", row: 10 });
    expect(render(above[0].message)).toContain("lies above the line of zero air voids");
  });
});

describe("the top", () => {
  it("is told by itself where no soil of these grains can be so wet and so dense", () => {
    const test = made([26, 28, 30, 32, 34], (w) => 2400 - 6 * (w - 30) ** 2);
    const { findings } = analyseCompaction(test, { particleDensityKgM3: 2650 });
    const [top, ...others] = findings.filter(({ code }) => code === "optimum-above-zero-air-voids");
    expect(others).toEqual([]);
    // 2650 / (1 + 0.30 × 2.65) = 1476 kg/m³.
    expect(render(top.expected!)).toContain("at most 1476 kg/m³");
    expect(render(top.message)).toMatch(
      /^The optimum of the compaction test, 2400 kg\/m³ at 30\.0 %, lies above the line/,
    );
    // 2400 kg/m³ at 3 % leaves room: 2650 / 1.0795 = 2455 kg/m³.
    const dry = made([1, 2, 3, 4, 5], (w) => 2400 - 6 * (w - 3) ** 2);
    const codes = analyseCompaction(dry, { particleDensityKgM3: 2650 }).findings.map(
      ({ code }) => code,
    );
    expect(codes).not.toContain("optimum-above-zero-air-voids");
  });

  it("is found exactly where the points follow the curve", () => {
    const parabola = analyseCompaction(made([6, 8, 10, 12, 14], (w) => 2000 - 6 * (w - 9.7) ** 2));
    expect(parabola.peak).toMatchObject({ method: "quadratic" });
    expect(parabola.peak!.optimumWaterPct).toBeCloseTo(9.7, 9);
    expect(parabola.peak!.maximumDryDensityKgM3).toBeCloseTo(2000, 8);
    const cubic = analyseCompaction(
      made([6, 7.5, 9, 10.5, 12, 14], (w) => 2000 - 6 * (w - 9.7) ** 2 + 0.4 * (w - 9.7) ** 3),
    );
    expect(cubic.peak).toMatchObject({ method: "cubic" });
    expect(cubic.peak!.optimumWaterPct).toBeCloseTo(9.7, 8);
  });

  it("of a cubic is the root where it bends down, whichever way it bends in the middle", () => {
    // y = 2.24 u + u² − 2 u³ on −1 to 1: y′ = −6 (u − 0.8)(u + 7/15), y″(0.8) = −7.6.
    const top = (height: (u: number) => number) => {
      const water = [-1, -0.6, -0.2, 0.2, 0.6, 1].map((u) => 10 + u);
      const found = analyseCompaction(made(water, (w) => 2000 + 100 * height(w - 10)));
      return [found.peak!, ...found.alternatives].find(({ method }) => method === "cubic")!;
    };
    const peak = top((u) => 2.24 * u + u ** 2 - 2 * u ** 3);
    expect(peak.optimumWaterPct).toBeCloseTo(10.8, 9);
    expect(peak.maximumDryDensityKgM3).toBeCloseTo(2140.8, 7);
    expect(top((u) => -2.24 * u + u ** 2 + 2 * u ** 3).optimumWaterPct).toBeCloseTo(9.2, 9);
    // Bent down in the middle: y = u − u² − u³/3, top where u² + 2 u − 1 = 0.
    expect(top((u) => u - u ** 2 - u ** 3 / 3).optimumWaterPct).toBeCloseTo(9 + Math.SQRT2, 9);
  });

  it("of five points is a quadratic only where they follow one", () => {
    // A long dry branch and a steep wet one: no parabola over the whole range.
    const steep = made([6, 8, 10, 12, 14], (w) => 1950 + (w < 11 ? 12 : -60) * (w - 11));
    const found = analyseCompaction(steep);
    expect(found.peak!.method).toBe("three-point parabola");
    expect(found.alternatives[0].method).toBe("quadratic");
    const { optimumWaterPct, maximumDryDensityKgM3 } = found.peak!;
    expect(optimumWaterPct).toBeGreaterThan(9);
    expect(optimumWaterPct).toBeLessThan(12);
    expect(maximumDryDensityKgM3).toBeGreaterThanOrEqual(found.highestPoint.dryDensityKgM3);
    // The curve that is drawn meets the points, and never leaves their range far from the top.
    const driest = found.curve[0];
    expect(driest.dryDensityKgM3).toBeCloseTo(1890, 6);
    expect(found.curve.at(-1)!.dryDensityKgM3).toBeCloseTo(1770, 6);
    // In steps of a fortieth from 5.2 to 12.1 the last is 12.100000000000001.
    const ends = analyseCompaction(
      made([5.2, 7, 9, 11, 12.1], (w) => 1950 + (w < 10 ? 12 : -60) * (w - 10)),
    );
    expect(ends.peak!.method).toBe("three-point parabola");
    expect(ends.curve.at(-1)!.waterContentPct).toBeGreaterThan(12.1);
    expect(ends.curve.at(-1)!.dryDensityKgM3).toBeCloseTo(1824, 6);
    const scattered = made(
      [6, 8, 10, 12, 14],
      (w) => 2000 - 6 * (w - 9.7) ** 2 + (w === 8 ? 3 : 0),
    );
    expect(analyseCompaction(scattered).peak!.method).toBe("quadratic");
  });

  it("of six points is a cubic where that lies closer, and of neither where both miss", () => {
    const water = [6, 7.5, 9, 10.5, 12, 14];
    const spike = analyseCompaction(made(water, (w) => (w === 9 ? 2000 : 1800)));
    expect(spike.peak!.method).toBe("three-point parabola");
    expect(spike.peak!.maximumDryDensityKgM3).toBeCloseTo(2000, 6);
    expect(spike.peak!.optimumWaterPct).toBeCloseTo(9, 6);
  });

  it("is doubted where the methods part by more than one operator repeats", () => {
    const codes = (found: ReturnType<typeof analyseCompaction>) =>
      found.findings.map(({ code }) => code);
    // The quadratic's top lies 200 − 30 kg/m³ away: beyond 35 kg/m³.
    const spike = made([6, 8, 10, 12, 14], (w) => (w === 10 ? 2000 : 1800));
    expect(codes(analyseCompaction(spike))).toContain("compaction-methods-differ");
    const gentle = made([6, 8, 10, 12, 14], (w) => 2000 - 6 * (w - 9.7) ** 2);
    expect(codes(analyseCompaction(gentle))).toEqual([]);
    const [finding] = analyseCompaction(spike).findings;
    expect(render(finding.expected)).toBe(
      "peaks within 10 % of the optimum and 35 kg/m³ of each other: single-operator repeatability (AASHTO T 99, from memory)",
    );
  });

  it("far above the highest reading is told", () => {
    // Readings 4 points of water apart on a steep curve: its top lies between two of them.
    const found = analyseCompaction(made([4, 8, 12, 16], (w) => 2000 - 12 * (w - 10) ** 2));
    expect(found.peak!.maximumDryDensityKgM3 - found.highestPoint.dryDensityKgM3).toBeCloseTo(
      48,
      6,
    );
    const told = found.findings.find(({ code }) => code === "compaction-peak-off-reading")!;
    expect(render(told.message)).toContain("48 kg/m³ above the highest point");
  });

  it.each([
    ["quadratic", [6, 7.5, 9, 10.5, 12, 13.5], 0, 6],
    // The top lies far from the middle of the tests, where a cubic bends by its third power.
    ["cubic", [5, 6, 7, 8, 9, 9.7, 10.4, 11], 1, 1],
  ] as const)(
    "of a %s has intervals that hold the truth about as often as they say",
    (form, waters, third, noise) => {
      let [optimum, maximum] = [0, 0];
      const runs = 400;
      for (let seed = 1; seed <= runs; seed++) {
        const random = createRandom(seed);
        const noisy = made(
          waters,
          (w) => 2000 - 6 * (w - 9.7) ** 2 - third * (w - 9.7) ** 3 + noise * random.normal(),
        );
        const { peak, alternatives } = analyseCompaction(noisy);
        const fit = [peak!, ...alternatives].find(({ method }) => method === form)!;
        const holds = ([low, high]: readonly [number, number], truth: number) =>
          low <= truth && truth <= high;
        if (holds(fit.optimumInterval95!, 9.7)) optimum++;
        if (holds(fit.maximumInterval95!, 2000)) maximum++;
      }
      // 95 % of 400 is 380, standard deviation 4.4.
      for (const held of [optimum, maximum]) {
        expect(held).toBeGreaterThan(362);
        expect(held).toBeLessThan(396);
      }
    },
  );

  it("does not depend on the order of the points, nor on the size of the mould", () => {
    const base = record([6.5, 8.7, 10.6, 12.2, 14.4], [1872, 1966, 2043, 2068, 1996]);
    const back = { ...base, points: base.points.toReversed() };
    expect(analyseCompaction(back)).toEqual(analyseCompaction(base));
    const bigger = {
      ...base,
      mouldVolumeCm3: 2124,
      points: base.points.map((point) => ({
        ...point,
        moistMassG: 2.124 * (point.moistMassG as number),
      })),
    };
    expect(analyseCompaction(bigger).peak!.maximumDryDensityKgM3).toBeCloseTo(
      analyseCompaction(base).peak!.maximumDryDensityKgM3,
      7,
    );
  });

  it("is not invented where the points only rise", () => {
    const found = analyseCompaction(made([6, 8, 10, 12], (w) => 1800 + 20 * w));
    expect(found.peak).toBeUndefined();
    expect(found.curve).toEqual([]);
    expect(found.findings).toMatchObject([{ severity: "error", code: "no-compaction-peak" }]);
  });

  it("is doubted with one point on a side", () => {
    const found = analyseCompaction(made([6, 7, 8, 9, 10.2], (w) => 2000 - 6 * (w - 9.3) ** 2));
    expect(renderAll(found.findings)).toMatchObject([
      { severity: "warning", code: "compaction-one-sided", value: "1 wetter", row: 11 },
    ]);
  });
});

describe("no air left", () => {
  it("air voids are 0 on the line and the line is drawn over the measured range", () => {
    const onLine = made([8, 10, 12, 14], (w) => zeroAirVoidsDensity(w, 2650));
    const found = analyseCompaction(onLine, { particleDensityKgM3: 2650 });
    for (const { airVoidsPct } of found.points) expect(airVoidsPct).toBeCloseTo(0, 9);
    expect(found.zeroAirVoids[0].waterContentPct).toBe(8);
    expect(found.zeroAirVoids.at(-1)!.waterContentPct).toBe(14);
    expect(analyseCompaction(onLine).zeroAirVoids).toEqual([]);
  });

  it("without water it is the particle density", () => {
    expect(zeroAirVoidsDensity(0, 2650)).toBe(2650);
    expect(() => zeroAirVoidsDensity(-1, 2650)).toThrow("invalid `waterContentPct`: -1");
  });
});

describe("misuse", () => {
  it("throws", () => {
    expect(() => analyseCompaction(record([], []))).toThrow("invalid `points`: []");
    expect(() => analyseCompaction(record([8], [0]))).toThrow(RangeError);
    expect(() => analyseCompaction(record([8], [1900], 0))).toThrow("invalid `mouldVolumeCm3`: 0");
  });

  it("refuses a dry density in g/cm³", () => {
    const points = [{ waterContentPct: 10, dryDensityKgM3: 1.9, row: 1 }];
    expect(() => analyseCompaction({ file: "c.csv", points })).toThrow(
      "invalid `points[0].dryDensityKgM3`: 1.9; expected kg/m³, above 100",
    );
  });
});
