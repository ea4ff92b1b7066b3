import { describe, expect, it } from "vitest";
import { type BlendInput, designBlend } from "../../src/blend/design.js";
import { bucketSensitivity, practicalParts } from "../../src/blend/parts.js";
import { forEachWholeRatio } from "../../src/numerics/wholeRatios.js";
import { near } from "../strength/near.js";
import { curve, THREE } from "./materials.js";

const INPUT: BlendInput = {
  materials: THREE,
  target: { kind: "power", exponent: 0.3, topSizeMm: 20 },
  limits: [{ kind: "clay", minPct: 7, maxPct: 12 }],
};
const DESIGN = designBlend(INPUT);

describe("whole-number ratios", () => {
  it("are all visited, once", () => {
    const seen = new Set<string>();
    let calls = 0;
    forEachWholeRatio([0, 1, 0], 6, (parts, total) => {
      calls += 1;
      expect(parts.reduce((sum, value) => sum + value, 0)).toBe(total);
      seen.add(parts.join());
    });
    // Three parts and what is left of 5: combinations of 8 by 3.
    expect([calls, seen.size]).toEqual([56, 56]);
    expect(() => forEachWholeRatio(new Array(9).fill(0), 60, () => {})).toThrow(RangeError);
  });
});

describe("practical parts", () => {
  it("are the best of all by plain loops, within the limits", () => {
    /** The best of exactly so many parts. */
    const bestOf = Array.from({ length: 13 }, () => Infinity);
    for (let a = 0; a <= 12; a += 1) {
      for (let b = 0; a + b <= 12; b += 1) {
        for (let c = a + b === 0 ? 1 : 0; a + b + c <= 12; c += 1) {
          const sum = a + b + c;
          const fixed = [a, b, c].map((parts) => (100 * parts) / sum);
          const held = designBlend({
            ...INPUT,
            materials: THREE.map((material, j) => ({
              ...material,
              minSharePct: fixed[j],
              maxSharePct: fixed[j],
            })),
          });
          if (held.status === "ok") bestOf[sum] = Math.min(bestOf[sum], held.rmsDifferencePct);
        }
      }
    }
    for (const maxTotal of [4, 7, 12]) {
      const found = practicalParts(INPUT, DESIGN, { by: "mass", maxTotal });
      const best = Math.min(...bestOf.slice(0, maxTotal + 1));
      near(found.rmsDifferencePct, best, { rel: 1e-6, abs: 1e-9 }, `up to ${maxTotal}`);
      expect(found.rmsDifferencePct).toBeGreaterThanOrEqual(found.optimumRmsDifferencePct - 1e-9);
    }
  }, 20_000);

  it("within a band lie nearest to its middle", () => {
    const curveWith = (fines: number) => curve([0.063, fines], [2, 100]);
    const materials = [40, 0].map((fines, j) => ({
      id: `m${j}`,
      minSharePct: 0,
      maxSharePct: 100,
      curve: curveWith(fines),
    }));
    const points = [{ sizeMm: 0.063, lowPct: 10, highPct: 30 }];
    const input: BlendInput = { materials, target: { kind: "band", points } };
    // 40 s = 20 where half is of the first; 1 of 4 and 3 of 4 lie on the band's ends.
    const found = practicalParts(input, designBlend(input), { by: "mass", maxTotal: 4 });
    expect(found.materials.map(({ parts }) => parts)).toEqual([1, 1]);
    expect(found.points).toEqual([
      { sizeMm: 0.063, targetPct: 20, blendPct: 20, differencePct: 0 },
    ]);
  });

  it("look at every size of the target, by its weight", () => {
    const materials = [40, 0].map((fines, j) => ({
      id: `m${j}`,
      minSharePct: 0,
      maxSharePct: 100,
      curve: curve([0.063, fines], [0.5, 60 + fines / 2], [2, 100]),
    }));
    const partsFor = (
      ...points: readonly { sizeMm: number; passingPct: number; weight?: number }[]
    ) => {
      const input: BlendInput = { materials, target: { kind: "curve", points } };
      const found = practicalParts(input, designBlend(input), { by: "mass", maxTotal: 4 });
      return found.materials.map(({ parts }) => parts);
    };
    // At 2 mm all passes of either: what decides stands second, then first.
    const all = { sizeMm: 2, passingPct: 100 };
    expect(partsFor(all, { sizeMm: 0.063, passingPct: 20 })).toEqual([1, 1]);
    expect(partsFor({ sizeMm: 0.063, passingPct: 30 }, all)).toEqual([3, 1]);
    // 10 at 0.063 mm asks for a quarter of the first, 75 at 0.5 mm for three quarters.
    const [fine, coarse] = [
      { sizeMm: 0.063, passingPct: 10 },
      { sizeMm: 0.5, passingPct: 75 },
    ];
    expect(partsFor({ ...fine, weight: 100 }, coarse)).toEqual([1, 3]);
    expect(partsFor(fine, { ...coarse, weight: 100 })).toEqual([3, 1]);
  });

  it("are of no more materials than allowed, also where those allowed meet no limit", () => {
    const few = {
      ...INPUT,
      maxMaterials: 1,
      limits: [{ kind: "fines", minPct: 10, maxPct: 20 }],
    } as const;
    expect(practicalParts(few, designBlend(few), { by: "mass" }).status).toBe("none");
    const two = { ...few, maxMaterials: 2 };
    expect(practicalParts(two, designBlend(two), { by: "mass" }).status).toBe("ok");
  });

  it("by volume allow for density and bulking", () => {
    const found = practicalParts(INPUT, DESIGN, {
      maxTotal: 12,
      looseDryDensityKgM3: [1200, 1500, 1600],
      bulkingPct: [0, 25, 0],
    });
    const kg = [1200, 1500 / 1.25, 1600];
    const mass = found.materials.reduce((sum, { parts }, j) => sum + parts * kg[j], 0);
    found.materials.forEach(({ parts, sharePct, changePct, id }, j) => {
      near(sharePct, (100 * parts * kg[j]) / mass, { rel: 1e-12, abs: 0 }, id);
      near(changePct, sharePct - DESIGN.shares[j].sharePct, { rel: 1e-12, abs: 1e-12 }, id);
    });
    expect(found).toMatchObject({ status: "ok", by: "volume", cementIncluded: false });
    expect(() => practicalParts(INPUT, DESIGN)).toThrow(/looseDryDensityKgM3/);
  });

  it("are none where no small ratio keeps the limits", () => {
    const tight: BlendInput = { ...INPUT, limits: [{ kind: "clay", minPct: 8, maxPct: 8.01 }] };
    const found = practicalParts(tight, designBlend(tight), { by: "mass", maxTotal: 3 });
    expect(found.status).toBe("none");
    expect(found.materials.map(({ parts, sharePct }) => [parts, sharePct])).toEqual([
      [0, 0],
      [0, 0],
      [0, 0],
    ]);
    expect([found.total, found.points, found.rmsDifferencePct]).toEqual([0, [], Number.NaN]);
  });
});

describe("a bucket more or less", () => {
  it("changes the shares as counted by hand", () => {
    const changes = bucketSensitivity(INPUT, DESIGN, [4, 2, 4], [1, 1, 1]);
    expect(changes).toHaveLength(6);
    const more = changes.find(({ id, change }) => id === "soil" && change === 1)!;
    more.sharesPct.forEach((sharePct, j) => {
      near(sharePct, (100 * [5, 2, 4][j]) / 11, { rel: 1e-12, abs: 0 }, `${j}`);
    });
    // Soil carries 22 % clay, 5 of 11 parts.
    near(more.limitValues[0].value, (22 * 5 + 0.5 * 0) / 11, { rel: 0.1, abs: 0 }, "clay");
    expect(changes.some(({ keepsLimits }) => !keepsLimits)).toBe(
      changes.some(({ limitValues }) => limitValues[0].value < 7 || limitValues[0].value > 12),
    );
  });
});
