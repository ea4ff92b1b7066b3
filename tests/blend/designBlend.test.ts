import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BlendInput, designBlend, MIN_SHARE_PCT } from "../../src/blend/design.js";
import { keepsConditions, limitRows } from "../../src/blend/limits.js";
import { blendPassing } from "../../src/blend/material.js";
import { bucketSensitivity, practicalParts } from "../../src/blend/parts.js";
import type { BandAim, BlendLimit } from "../../src/blend/target.js";
import { relaxLimits } from "../../src/blend/tradeoffs.js";
import { render, renderAll } from "../../src/words/render.js";
import { near } from "../strength/near.js";
import { bruteForceBounds } from "../support/bruteForceBounds.js";
import { curve, GRAVEL, nearestTo, randomMaterials, SAND, SOIL, THREE } from "./materials.js";

const SIZES = [0.063, 0.125, 0.25, 0.5, 1, 2, 4, 8];
const POWER = { kind: "power", exponent: 0.3, topSizeMm: 20 } as const;
const BAND = [
  { sizeMm: 0.002, lowPct: 8, highPct: 12 },
  { sizeMm: 0.063, lowPct: 18, highPct: 30 },
  { sizeMm: 2, lowPct: 50, highPct: 65 },
];
const sharesOf = (input: BlendInput) => designBlend(input).shares.map(({ sharePct }) => sharePct);
/** All blends in steps of 1 point that keep the limits. */
function grid(limits: readonly BlendLimit[] = []): number[][] {
  const rows = limitRows(THREE, limits);
  const all: number[][] = [];
  for (let a = 0; a <= 100; a += 1) {
    for (let b = 0; b <= 100 - a; b += 1) {
      const shares = [a / 100, b / 100, (100 - a - b) / 100];
      if (keepsConditions(THREE, rows, shares)) all.push(shares);
    }
  }
  return all;
}
const passingOf = (shares: readonly number[], sizeMm: number) =>
  shares.reduce(
    (sum, share, j) => sum + share * blendPassing(THREE[j].curve, sizeMm).passingPct,
    0,
  );

describe("nearest to a curve", () => {
  it("does as well as every active set tried in turn, for up to six materials", () => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const count = 2 + (seed % 5);
      const materials = randomMaterials(seed, count, SIZES);
      const target = SIZES.map((sizeMm) => ({
        sizeMm,
        passingPct: 100 * (sizeMm / 8) ** 0.35,
        weight: 1 + (seed % 3) * sizeMm,
      }));
      const found = nearestTo(materials, target);
      const roots = target.map(({ weight }) => Math.sqrt(weight));
      const wanted = bruteForceBounds(
        SIZES.map((size, i) =>
          materials.map((of) => roots[i] * blendPassing(of.curve, size).passingPct),
        ),
        target.map(({ passingPct }, i) => roots[i] * passingPct),
        materials.map(({ minSharePct }) => minSharePct / 100),
        materials.map(({ maxSharePct }) => maxSharePct / 100),
      );
      const total = target.reduce((sum, { weight }) => sum + weight, 0);
      near(found.rmsDifferencePct ** 2 * total, wanted, { rel: 1e-8, abs: 1e-8 }, `seed ${seed}`);
      expect(found.optimalityResidual).toBeLessThan(1e-12);
    }
  });

  it("tells which bound each share lies on, from -1 to 1", () => {
    const target = [{ sizeMm: 0.063, passingPct: 33 }];
    // 3 + 42 s = 33 asks for 5/7 of soil.
    const bounds = (minSharePct: number, maxSharePct: number) =>
      nearestTo([{ ...SOIL, minSharePct, maxSharePct }, SAND], target).shares.map(
        ({ sharePct, bound }) => [Number(sharePct.toFixed(6)), bound],
      );
    expect(bounds(10, 90)).toEqual([
      [71.428571, 0],
      [28.571429, 0],
    ]);
    expect(bounds(80, 90)).toEqual([
      [80, -1],
      [20, 0],
    ]);
    expect(bounds(10, 60)).toEqual([
      [60, 1],
      [40, 0],
    ]);
  });

  it("does not depend on the order of the materials or the scale of the weights", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1000 }),
        fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
        (seed, scale) => {
          const materials = randomMaterials(seed, 4, SIZES);
          const points = SIZES.map((sizeMm) => ({ sizeMm, passingPct: 100 * (sizeMm / 8) ** 0.3 }));
          const a = nearestTo(materials, points);
          const b = nearestTo(
            [...materials].reverse(),
            points.map((point) => ({ ...point, weight: scale })),
          );
          near(b.rmsDifferencePct, a.rmsDifferencePct, { rel: 1e-8, abs: 1e-8 }, "difference");
        },
      ),
      { numRuns: 40, seed: 4 },
    );
  });

  it("tells when two materials are alike, and still finds the least difference", () => {
    const found = nearestTo(
      [SOIL, { ...SAND }, { ...SAND, id: "same sand" }],
      SIZES.map((sizeMm) => ({ sizeMm, passingPct: 100 * (sizeMm / 20) ** 0.3 })),
    );
    expect(found.unique).toBe(false);
    const two = nearestTo(
      [SOIL, SAND],
      SIZES.map((sizeMm) => ({ sizeMm, passingPct: 100 * (sizeMm / 20) ** 0.3 })),
    );
    near(found.rmsDifferencePct, two.rmsDifferencePct, { rel: 1e-9, abs: 0 }, "difference");
    // A result is JSON, which has no infinity.
    expect(found.condition).toBeNull();
    expect(two.condition).toBeGreaterThanOrEqual(1);
  });
});

describe("a power curve fitted within ranges", () => {
  it("finds an exponent that made the target", () => {
    const fitted = designBlend({
      materials: THREE,
      target: { kind: "power", exponent: { min: 0.1, max: 0.8 }, topSizeMm: 20 },
    });
    for (let n = 0.1; n <= 0.8; n += 0.02) {
      const fixed = designBlend({ materials: THREE, target: { ...POWER, exponent: n } });
      expect(fitted.rmsDifferencePct).toBeLessThanOrEqual(fixed.rmsDifferencePct + 1e-9);
    }
    expect(fitted.target.atEndOfRange).toBe(false);
    // A material that is itself the power curve is found with its exponent.
    const sizesMm = [0.063, 0.25, 1, 4, 16];
    const own = curve(...sizesMm.map((d) => [d, 100 * (d / 25) ** 0.37] as const), [25, 100]);
    const exact = designBlend({
      materials: [{ ...SOIL, curve: own }, GRAVEL],
      target: {
        kind: "power",
        exponent: { min: 0.2, max: 0.6 },
        topSizeMm: { min: 15, max: 40 },
        sizesMm,
      },
    });
    near(exact.target.exponent, 0.37, { rel: 0, abs: 1e-4 }, "exponent");
    near(exact.target.topSizeMm, 25, { rel: 1e-3, abs: 0 }, "top size");
    near(exact.rmsDifferencePct, 0, { rel: 0, abs: 1e-3 }, "difference");
  });

  it("says when it stands at an end of its range", () => {
    const { target } = designBlend({
      materials: THREE,
      target: { kind: "power", exponent: { min: 0.6, max: 0.8 }, topSizeMm: 20 },
    });
    expect(target).toMatchObject({ exponent: 0.6, atEndOfRange: true });
  });
});

describe("a band", () => {
  const value: Record<Exclude<BandAim, "nearest-middle">, (shares: readonly number[]) => number> = {
    "most-site-soil": ([soil]) => -100 * soil,
    "least-cost": (shares) => shares.reduce((sum, share, j) => sum + share * THREE[j].costPerT!, 0),
    "least-carbon": (shares) =>
      shares.reduce((sum, share, j) => sum + share * THREE[j].carbonKgPerT!, 0),
  };

  it.each(Object.keys(value) as (keyof typeof value)[])("is kept, and then %s", (aim) => {
    const found = designBlend({ materials: THREE, target: { kind: "band", points: BAND, aim } });
    expect(found.status).toBe("ok");
    expect(found.rmsDifferencePct).toBe(0);
    const shares = found.shares.map(({ sharePct }) => sharePct / 100);
    const inside = grid().filter((of) =>
      BAND.every(({ sizeMm, lowPct, highPct }) => {
        const passing = passingOf(of, sizeMm);
        return passing >= lowPct && passing <= highPct;
      }),
    );
    expect(inside.length).toBeGreaterThan(10);
    const best = Math.min(...inside.map(value[aim]));
    expect(value[aim](shares)).toBeLessThanOrEqual(best + 1e-6);
    // A step of the grid cannot be far from the best of all.
    expect(value[aim](shares)).toBeGreaterThan(best - 3);
  });

  it("that nothing keeps is left by least", () => {
    const points = [
      { sizeMm: 0.063, lowPct: 50, highPct: 60 },
      { sizeMm: 2, lowPct: 20, highPct: 40 },
    ];
    const found = designBlend({ materials: THREE, target: { kind: "band", points } });
    const breach = (shares: readonly number[]) =>
      points.reduce((sum, { sizeMm, lowPct, highPct }) => {
        const passing = passingOf(shares, sizeMm);
        return sum + Math.max(lowPct - passing, passing - highPct, 0) ** 2;
      }, 0);
    const best = Math.min(...grid().map(breach));
    near(2 * found.rmsDifferencePct ** 2, best, { rel: 0.02, abs: 0 }, "breach");
    expect(2 * found.rmsDifferencePct ** 2).toBeLessThanOrEqual(best + 1e-6);
  });

  it("is kept first, and its middle sought within it", () => {
    // One material lies in the band far from its middle, the other outside but near the middle.
    const one = (id: string, fines: number, sand: number) => ({
      id,
      minSharePct: 0,
      maxSharePct: 100,
      curve: curve([0.063, fines], [2, sand], [20, 100]),
    });
    const points = [
      { sizeMm: 0.063, lowPct: 10, highPct: 50 },
      { sizeMm: 2, lowPct: 49, highPct: 51 },
    ];
    const found = designBlend({
      materials: [one("near", 30, 52), one("inside", 12, 50)],
      target: { kind: "band", points },
      maxMaterials: 1,
    });
    expect(found.shares.map(({ sharePct }) => Number(sharePct.toFixed(9)))).toEqual([0, 100]);
    expect(found.rmsDifferencePct).toBe(0);
  });

  it("has a middle", () => {
    const found = designBlend({ materials: THREE, target: { kind: "band-middle", points: BAND } });
    expect(found.points.map(({ targetPct }) => targetPct)).toEqual([10, 24, 57.5]);
  });
});

describe("limits", () => {
  const LIMITS: BlendLimit[] = [
    { kind: "clay", minPct: 8, maxPct: 12 },
    { kind: "plasticity-index", maxPct: 12 },
    { kind: "linear-shrinkage", maxPct: 5 },
    { kind: "cost", maxPerT: 18 },
  ];

  it("are kept by a blend no worse than any of the grid", () => {
    const found = designBlend({ materials: THREE, target: POWER, limits: LIMITS });
    expect(found.status).toBe("ok");
    const shares = found.shares.map(({ sharePct }) => sharePct / 100);
    expect(keepsConditions(THREE, limitRows(THREE, LIMITS), shares)).toBe(true);
    const rms = (of: readonly number[]) =>
      Math.sqrt(
        found.points.reduce(
          (sum, { sizeMm, targetPct }) => sum + (passingOf(of, sizeMm) - targetPct) ** 2,
          0,
        ) / found.points.length,
      );
    const best = Math.min(...grid(LIMITS).map(rms));
    expect(found.rmsDifferencePct).toBeLessThanOrEqual(best + 1e-9);
    // Between two limits a grid of whole points comes no nearer than about its own step.
    expect(found.rmsDifferencePct).toBeGreaterThan(best - 2);
    expect(found.limits.filter(({ active }) => active).length).toBeGreaterThan(0);
    expect(found.limits.filter(({ estimate }) => estimate)).toHaveLength(2);
  });

  it("weights plasticity by what passes 0.425 mm", () => {
    const found = designBlend({
      materials: [{ ...SOIL, minSharePct: 50, maxSharePct: 50 }, SAND],
      target: POWER,
      limits: [{ kind: "plasticity-index", maxPct: 18 }],
    });
    near(
      found.limits[0].value,
      (0.5 * 70 * 18) / (0.5 * 70 + 0.5 * 45),
      { rel: 1e-12, abs: 0 },
      "PI",
    );
  });

  it("are judged by what the materials bring, as worked out by hand", () => {
    const limits: BlendLimit[] = [
      { kind: "clay", minPct: 1, maxPct: 90 },
      { kind: "fines", maxPct: 90 },
      { kind: "silt", maxPct: 90 },
      { kind: "silt", clayMm: 0.063, siltMm: 0.425, maxPct: 90 },
      { kind: "passing", sizeMm: 2, minPct: 10 },
      { kind: "top-size", sizeMm: 20 },
      { kind: "site-soil", minPct: 5 },
      { kind: "plasticity-index", maxPct: 90 },
      { kind: "linear-shrinkage", minPct: 1 },
      { kind: "cost", maxPerT: 90 },
      { kind: "carbon", maxKgPerT: 90 },
    ];
    const found = designBlend({
      materials: [
        { ...SOIL, minSharePct: 60, maxSharePct: 60 },
        { ...SAND, minSharePct: 40, maxSharePct: 40 },
      ],
      target: POWER,
      limits,
    });
    // Below its finest sieve the sand's 3 % fall to nothing at 0.001 mm, straight on the logarithm of size.
    const clay = 0.6 * 22 + (0.4 * 3 * Math.log(2)) / Math.log(63);
    const fines = 0.6 * 45 + 0.4 * 3;
    // Of what passes 0.425 mm, 42 parts are soil and 18 sand.
    const wanted: readonly (readonly [number, string, string, string, number, boolean])[] = [
      [0, "clay", "%", "min", clay, false],
      [0, "clay", "%", "max", clay, false],
      [1, "fines", "%", "max", fines, false],
      [2, "silt", "%", "max", fines - clay, false],
      [3, "silt", "%", "max", 0.6 * (70 - 45) + 0.4 * (45 - 3), false],
      [4, "passing 2 mm", "%", "min", 0.6 * 85 + 0.4 * 95, false],
      [5, "passing 20 mm (top size)", "%", "min", 100, false],
      [6, "share of site soil", "%", "min", 60, false],
      [7, "plasticity index", "%", "max", (42 * 18) / 60, true],
      [8, "linear shrinkage", "%", "min", (42 * 9) / 60, true],
      [9, "cost", "per t", "max", 0.6 * 2 + 0.4 * 20, false],
      [10, "carbon", "kg per t", "max", 0.6 * 1 + 0.4 * 5, false],
    ];
    expect(
      found.limits.map(({ index, label, unit, side, value, estimate }) => [
        index,
        render(label),
        unit,
        side,
        value,
        estimate,
      ]),
    ).toEqual(
      wanted.map(([index, label, unit, side, value, estimate]) => [
        index,
        label,
        unit,
        side,
        expect.closeTo(value, 9),
        estimate,
      ]),
    );
    expect(found.limits.filter(({ active }) => active).map(({ index }) => index)).toEqual([5]);
    near(found.costPerT, 9.2, { rel: 1e-12, abs: 0 }, "cost");
    near(found.carbonKgPerT, 2.6, { rel: 1e-12, abs: 0 }, "carbon");
    near(found.siteSoilPct, 60, { rel: 1e-12, abs: 0 }, "site soil");
  });

  it("exclude a blend also where a band is the target", () => {
    const { status, conflict, score } = designBlend({
      materials: THREE,
      target: { kind: "band", points: BAND, aim: "least-cost" },
      limits: [{ kind: "clay", minPct: 25 }],
    });
    expect([status, score]).toEqual(["infeasible", [Infinity]]);
    near(conflict?.alone[0].nearest, 22, { rel: 1e-12, abs: 0 }, "nearest");
  });

  it("hold the number of materials: the best pair of all pairs", () => {
    const found = designBlend({ materials: THREE, target: POWER, maxMaterials: 2 });
    const pairs = [
      [SOIL, SAND],
      [SOIL, GRAVEL],
      [SAND, GRAVEL],
    ].map((pair) =>
      designBlend({
        materials: pair,
        target: { ...POWER, sizesMm: found.points.map(({ sizeMm }) => sizeMm) },
      }),
    );
    near(
      found.rmsDifferencePct,
      Math.min(...pairs.map(({ rmsDifferencePct }) => rmsDifferencePct)),
      { rel: 1e-9, abs: 0 },
      "best pair",
    );
    expect(found.shares.filter(({ sharePct }) => sharePct > 0)).toHaveLength(2);
  });

  it("keep a share already on site, and a top size", () => {
    const fixed = { ...SAND, minSharePct: 20, maxSharePct: 20 };
    expect(sharesOf({ materials: [SOIL, fixed, GRAVEL], target: POWER })[1]).toBeCloseTo(20, 9);
    const found = designBlend({
      materials: THREE,
      target: POWER,
      limits: [{ kind: "top-size", sizeMm: 8 }],
    });
    near(found.shares[1].sharePct, 100, { rel: 1e-9, abs: 0 }, "only the sand passes 8 mm");
  });

  it("say what relaxing them buys, by solving again", () => {
    const input = {
      materials: THREE,
      target: POWER,
      limits: [{ kind: "clay", minPct: 10 }] as const,
    };
    const design = designBlend(input);
    const [relaxed] = relaxLimits(input, design);
    expect(renderAll(relaxed)).toMatchObject({ label: "clay", side: "min", relaxedTo: 9 });
    const again = designBlend({ ...input, limits: [{ kind: "clay", minPct: 9 }] });
    expect(relaxed.gainPct).toBe(design.rmsDifferencePct - again.rmsDifferencePct);
    expect(relaxed.gainPct).toBeGreaterThan(0);
  });

  it("buy what one limit on price or carbon less would, by hand", () => {
    // Of soil s: fines 3 + 42 s, cost 20 − 18 s, carbon 5 − 4 s; the target asks for 0.4, each limit for 0.5.
    const bought = (limit: BlendLimit, byPct?: number) => {
      const input = {
        materials: [SOIL, SAND],
        target: { kind: "curve", points: [{ sizeMm: 0.063, passingPct: 19.8 }] } as const,
        limits: [limit],
      };
      const design = designBlend(input);
      return relaxLimits(input, design, byPct).map((relaxed) => [
        render(relaxed.label),
        relaxed.side,
        relaxed.unit,
        relaxed.limit,
        ...[relaxed.relaxedTo, relaxed.rmsDifferencePct, relaxed.gainPct, relaxed.siteSoilPct].map(
          (value) => Number(value.toFixed(6)),
        ),
      ]);
    };
    expect(bought({ kind: "cost", maxPerT: 11 })).toEqual([
      ["cost", "max", "per t", 11, 11.55, 2.916667, 1.283333, 46.944444],
    ]);
    expect(bought({ kind: "cost", maxPerT: 11 }, 10)).toEqual([
      ["cost", "max", "per t", 11, 12.1, 1.633333, 2.566667, 43.888889],
    ]);
    expect(bought({ kind: "carbon", maxKgPerT: 3 })).toEqual([
      ["carbon", "max", "kg per t", 3, 3.15, 2.625, 1.575, 46.25],
    ]);
    // A percentage by a point at least: 5 % of 24 would be 1.2, of 10 half a point.
    expect(bought({ kind: "fines", minPct: 24 })).toEqual([
      ["fines", "min", "%", 24, 22.8, 3, 1.2, 47.142857],
    ]);
    expect(bought({ kind: "fines", maxPct: 10 })).toEqual([
      ["fines", "max", "%", 10, 11, 8.8, 1, 19.047619],
    ]);
    // Nothing relaxes a top size.
    expect(bought({ kind: "top-size", sizeMm: 20 })).toEqual([]);
    expect(bought({ kind: "clay", minPct: 25 })).toEqual([]);
  });

  it("relax a share on that side alone on which the blend stands", () => {
    const relaxedWith = (minSharePct: number, maxSharePct: number) => {
      const input = {
        materials: [{ ...SOIL, minSharePct, maxSharePct }, SAND],
        target: { kind: "curve", points: [{ sizeMm: 0.063, passingPct: 33 }] } as const,
      };
      // 5/7 of soil would meet the point; a point of share is 0.42 points of passing.
      return relaxLimits(input, designBlend(input)).map(({ side, relaxedTo, gainPct }) => [
        side,
        Number(relaxedTo.toFixed(9)),
        Number(gainPct.toFixed(6)),
      ]);
    };
    expect(relaxedWith(80, 90)).toEqual([["min", 76, 1.68]]);
    expect(relaxedWith(10, 60)).toEqual([["max", 63, 1.26]]);
    expect(relaxedWith(10, 90)).toEqual([]);
    expect(relaxedWith(80, 80).map(([side]) => side)).toEqual(["min", "max"]);
  });
});

describe("a share too small to be weighed", () => {
  /** Passing 0.063 mm 45 % of the soil, 3 % of the sand: a target with so much of the soil. */
  const withSoil = (sharePct: number) => ({
    kind: "curve" as const,
    points: [{ sizeMm: 0.063, passingPct: 3 + (42 * sharePct) / 100 }],
  });
  const band = (lowPct: number, highPct: number) => ({
    kind: "band" as const,
    points: [{ sizeMm: 0.063, lowPct, highPct }],
  });

  it("is none, and the rest is solved again", () => {
    const found = designBlend({ materials: [SOIL, SAND], target: withSoil(0.04) });
    expect(found.shares.map(({ sharePct }) => sharePct)).toEqual([0, 100]);
    expect([found.notUsed, found.hardlyUsed]).toEqual([["soil"], []]);
    const more = designBlend({ materials: [SOIL, SAND], target: withSoil(0.06) });
    expect(more.shares[0].sharePct).toBeCloseTo(0.06, 9);
    expect(more.notUsed).toEqual([]);
  });

  it("is kept where the user asks for it", () => {
    const asked = { ...SOIL, minSharePct: 0.01 };
    const found = designBlend({ materials: [asked, SAND], target: withSoil(0.04) });
    expect(found.shares[0].sharePct).toBeCloseTo(0.04, 9);
    expect([found.notUsed, found.hardlyUsed]).toEqual([[], ["soil"]]);
  });

  it("is raised to what can be weighed where a limit or the band needs it", () => {
    const materials = [{ ...SOIL, costPerT: 90 }, SAND];
    const limits = [{ kind: "fines", minPct: 3 + 0.42 * 0.01 }] as const;
    const wide = band(3 + 0.42 * 0.01, 30);
    for (const input of [
      { materials, target: withSoil(0), limits },
      { materials, target: { ...wide, aim: "least-cost" as const } },
    ]) {
      const found = designBlend(input);
      expect(found.status).toBe("ok");
      expect(found.shares[0].sharePct).toBeCloseTo(MIN_SHARE_PCT, 6);
      expect([found.notUsed, found.hardlyUsed]).toEqual([[], ["soil"]]);
    }
  });

  it("stays as it is where a limit lets it be neither none nor more", () => {
    const found = designBlend({
      materials: [SOIL, SAND],
      target: withSoil(0.02),
      limits: [{ kind: "fines", minPct: 3 + 0.42 * 0.01, maxPct: 3 + 0.42 * 0.03 }],
    });
    expect(found.status).toBe("ok");
    expect(found.shares[0].sharePct).toBeCloseTo(0.02, 6);
    expect(found.hardlyUsed).toEqual(["soil"]);
    // The band alone is given up for it.
    const soft = designBlend({
      materials: [{ ...SOIL, maxSharePct: 0.03 }, SAND],
      target: band(3 + 0.42 * 0.01, 3 + 0.42 * 0.03),
    });
    expect(soft.notUsed).toEqual(["soil"]);
  });

  it("has no part, and no miscounted bucket", () => {
    // Two sands alike but for their fines; whole parts would gladly take some of the third.
    const input = {
      materials: [SOIL, SAND, { ...GRAVEL, curve: SAND.curve, maxSharePct: 0.04 }],
      target: withSoil(38),
    };
    const design = designBlend(input);
    expect(design.notUsed).toEqual(["gravel"]);
    const parts = practicalParts(input, design, { by: "mass", maxTotal: 12 });
    expect(parts.materials[2]).toMatchObject({ parts: 0, sharePct: 0, changePct: 0 });
    const changes = bucketSensitivity(
      input,
      design,
      parts.materials.map((line) => line.parts),
      [1, 1, 1],
    );
    expect(new Set(changes.map(({ id }) => id))).toEqual(new Set(["soil", "sand"]));
  });
});

describe("limits that cannot be met", () => {
  it("says how near a limit comes where the shares leave no choice", () => {
    const half = (of: typeof SOIL) => ({ ...of, maxSharePct: 50 });
    const { conflict } = designBlend({
      materials: [half(SOIL), half(SAND)],
      target: { kind: "power", exponent: 0.3, topSizeMm: 20 },
      limits: [{ kind: "fines", minPct: 25 }],
    });
    // Half of the soil's 45 % and of the sand's 3 %.
    expect(conflict?.alone).toHaveLength(1);
    near(conflict?.alone[0].nearest, 24, { rel: 1e-9, abs: 0 }, "nearest");
    near(conflict?.alone[0].shortBy, 1, { rel: 1e-9, abs: 0 }, "short by");
  });

  it("are named with how far, and what a further material would have to bring", () => {
    const { conflict, message, status } = designBlend({
      materials: THREE,
      target: POWER,
      limits: [{ kind: "clay", minPct: 25 }],
    });
    expect(status).toBe("infeasible");
    expect(conflict?.alone).toHaveLength(1);
    near(conflict?.alone[0].nearest, 22, { rel: 1e-12, abs: 0 }, "nearest");
    near(conflict?.alone[0].shortBy, 3, { rel: 1e-12, abs: 0 }, "short by");
    const { sharePct, value } = conflict!.alone[0].furtherMaterial;
    near(0.22 * (100 - sharePct) + (value * sharePct) / 100, 25, { rel: 1e-9, abs: 0 }, "helped");
    expect(render(message)).toMatch(
      /“clay at least 25\.0 %”: the nearest is 22\.0 %, 3\.00 points away/,
    );
  });

  it("say what a further material must bring, or that a fifth of one is not enough", () => {
    const said = (limit: BlendLimit) =>
      render(designBlend({ materials: THREE, target: POWER, limits: [limit] }).message);
    // Clay at most 22 %: with a fifth of a further one 0.8 × 22 + 0.2 × 37 are 25.
    expect(said({ kind: "clay", minPct: 25 })).toBe(
      "No allowed blend of these materials meets the limit “clay at least 25.0 %”: the nearest is 22.0 %, 3.00 points away. A further material that makes up 20 % of the blend must bring at least 37.0 %.",
    );
    // Fines at most 45 %: a fifth would have to bring 120 %; at least 1 %: a fifth, −1.5 %.
    expect(said({ kind: "fines", minPct: 60 })).toBe(
      "No allowed blend of these materials meets the limit “fines at least 60.0 %”: the nearest is 45.0 %, 15.0 points away. A further material must bring more than 60.0 %, and make up more than 20 % of the blend.",
    );
    expect(said({ kind: "fines", maxPct: 0.5 })).toBe(
      "No allowed blend of these materials meets the limit “fines at most 0.500 %”: the nearest is 1.00 %, 0.500 points away. A further material must bring less than 0.500 %, and make up more than 20 % of the blend.",
    );
    // A plasticity index may be more than 100 %, a price less than nothing may not.
    expect(said({ kind: "plasticity-index", minPct: 40 })).toContain(
      "the nearest is 18.0 %, 22.0 points away. A further material that makes up 20 % of the blend must bring at least 128 %.",
    );
    expect(said({ kind: "cost", maxPerT: 1 })).toContain(
      "meets the limit “cost at most 1.00 per t”: the nearest is 2.00 per t, 1.00 per t away. A further material must bring less than 1.00 per t",
    );
    expect(said({ kind: "carbon", maxKgPerT: 0.9 })).toContain(
      "“carbon at most 0.900 kg per t”: the nearest is 1.00 kg per t, 0.100 kg per t away. A further material that makes up 20 % of the blend must bring at most 0.500 kg per t.",
    );
  });

  it("are named where they exclude one another, and no others", () => {
    const { conflict, message } = designBlend({
      materials: THREE,
      target: POWER,
      limits: [
        { kind: "clay", minPct: 15 },
        { kind: "fines", maxPct: 90 },
        { kind: "plasticity-index", maxPct: 12 },
        { kind: "cost", maxPerT: 8 },
      ],
    });
    expect(conflict?.alone).toEqual([]);
    expect(render(message)).toContain(
      "misses plasticity index at most 12.0 % by 1.74 points. Relax",
    );
    expect(conflict?.together).toHaveLength(2);
    expect(conflict?.together.join()).not.toContain("fines");
    expect(conflict?.minBreach.length).toBeGreaterThan(0);
  });

  it("are told where the shares are fixed: those add up, so it is the limit that cannot be met", () => {
    const { conflict, message } = designBlend({
      materials: [
        { ...SOIL, minSharePct: 60, maxSharePct: 60 },
        { ...SAND, minSharePct: 40, maxSharePct: 40 },
      ],
      target: POWER,
      limits: [{ kind: "clay", minPct: 20 }],
    });
    const clay = 0.6 * 22 + 0.4 * blendPassing(SAND.curve, 0.002).passingPct;
    near(conflict?.alone[0].nearest, clay, { rel: 1e-9, abs: 0 }, "nearest");
    expect(render(message)).not.toContain("add up");
  });

  it("are broken least by squares, each beside the largest of its own terms", () => {
    const { conflict } = designBlend({
      materials: [SOIL, SAND],
      target: POWER,
      limits: [
        { kind: "fines", maxPct: 15 },
        { kind: "cost", maxPerT: 8 },
      ],
    });
    // Of a soil share s: fines (42 s − 12) / 30 and cost (12 − 18 s) / 12; squares least at 2.06 / 4.21.
    const soil = 2.06 / 4.21;
    near(conflict?.sharesPct[0], 100 * soil, { rel: 1e-7, abs: 0 }, "soil");
    const [fines, cost] = conflict!.minBreach.map(({ by }) => by);
    near(fines, 42 * soil - 12, { rel: 1e-6, abs: 0 }, "fines");
    near(cost, 12 - 18 * soil, { rel: 1e-6, abs: 0 }, "cost");
  });

  it("leave a cost or a carbon unknown only where a material that is used has none", () => {
    const materials = [SOIL, SAND, { ...GRAVEL, costPerT: undefined }];
    const costs = (fines: number) => {
      const target = { kind: "curve", points: [{ sizeMm: 0.063, passingPct: fines }] } as const;
      const found = designBlend({ materials: [materials[0], materials[2]], target });
      return [found.costPerT, found.carbonKgPerT];
    };
    expect(costs(45)).toEqual([2, 1]);
    expect(costs(23)).toEqual([null, 3.5]);
  });

  it("say that two materials of one curve may share as they like", () => {
    const twin = designBlend({ materials: [SOIL, SAND, { ...SAND, id: "twin" }], target: POWER });
    expect([twin.unique, twin.condition]).toEqual([false, null]);
    const sole = designBlend({ materials: THREE, target: POWER });
    expect(sole.unique).toBe(true);
    expect(sole.condition).toBeGreaterThan(1);
  });

  it("are told of shares that exclude one another, and of too few materials", () => {
    const apart = designBlend({
      materials: [
        { ...SOIL, minSharePct: 60 },
        { ...SAND, minSharePct: 50 },
      ],
      target: POWER,
    });
    expect(render(apart.message)).toBe(
      "The minimum shares add up to 110.0 %: lower them by 10.0 points in all.",
    );
    // Halfway between the smallest and the largest of each.
    expect(apart.conflict?.sharesPct).toEqual([80, 75]);
    const scarce = designBlend({
      materials: [SOIL, SAND].map((of) => ({ ...of, maxSharePct: 40 })),
      target: POWER,
    });
    expect(render(scarce.message)).toBe(
      "The maximum shares add up to 80.00 %: raise them by 20.0 points in all, or add a material.",
    );
    const few = designBlend({
      materials: THREE,
      target: POWER,
      maxMaterials: 1,
      limits: [{ kind: "fines", minPct: 10, maxPct: 20 }],
    });
    expect(few.status).toBe("infeasible");
    expect(render(few.message)).toContain("allow another material");
  });
});
