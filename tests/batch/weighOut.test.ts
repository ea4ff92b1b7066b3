import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gradingChange } from "../../src/batch/gradingChange.js";
import { recipe } from "../../src/batch/recipe.js";
import { scaleRecipe } from "../../src/batch/scaleRecipe.js";
import { weighOut } from "../../src/batch/weighOut.js";
import { searchableTotal } from "../../src/batch/wholeParts.js";
import { render } from "../../src/words/render.js";
import { near } from "../strength/near.js";

const EXACT = { rel: 1e-10, abs: 1e-12 };

const MIX = fc.record({
  soilPct: fc.integer({ min: 20, max: 90 }),
  densities: fc.array(fc.integer({ min: 900, max: 1700 }), { minLength: 3, maxLength: 3 }),
  moisturePct: fc.integer({ min: 0, max: 9 }),
  cementPct: fc.integer({ min: 3, max: 12 }),
  mixerVolumeL: fc.integer({ min: 120, max: 400 }),
});

type Mix = typeof MIX extends fc.Arbitrary<infer T> ? T : never;

const mixOf = ({ soilPct, densities, moisturePct, cementPct, mixerVolumeL }: Mix) =>
  recipe({
    materials: [
      {
        id: "soil",
        name: "Soil",
        sharePct: soilPct,
        looseBulkDensityKgM3: densities[0],
        moisturePct,
      },
      {
        id: "sand",
        name: "Sand",
        sharePct: 100 - soilPct,
        looseBulkDensityKgM3: densities[1],
        moisturePct: 4,
        bulkingPct: 15,
      },
    ],
    cementPct,
    cementBulkDensityKgM3: densities[2],
    targetMoisturePct: 11,
    mixerVolumeL,
  });

describe("searchableTotal", () => {
  it("searches as many ratios as it may, and no more", () => {
    const choose = (n: number, k: number): number => (k === 0 ? 1 : (choose(n - 1, k - 1) * n) / k);
    for (const count of [1, 2, 4, 6, 9]) {
      const total = searchableTotal(count, 5000);
      expect(choose(total, count)).toBeLessThanOrEqual(250_000 * (1 + 1e-9));
      if (total < 5000) expect(choose(total + 1, count)).toBeGreaterThan(250_000);
      expect(searchableTotal(count, count)).toBe(count);
    }
  });
});

describe("gradingChange", () => {
  const curve = (at: number) => ({
    points: [
      { sizeMm: 0.063, passingPct: at, origin: "sieve" as const },
      { sizeMm: 2, passingPct: 100, origin: "sieve" as const },
    ],
  });
  it("grows with the shares that move, and is nothing when none does", () => {
    const shares = (soil: number) => [
      { id: "soil", sharePct: soil },
      { id: "sand", sharePct: 100 - soil },
    ];
    const curves = { soil: curve(50), sand: curve(0) };
    near(gradingChange(curves, shares(60), shares(54)).changePct, -3, EXACT, "down");
    near(gradingChange(curves, shares(60), shares(60)).changePct, 0, EXACT, "none");
    near(
      gradingChange(curves, shares(10), [{ id: "soil", sharePct: 100 }]).changePct,
      45,
      { rel: 0, abs: 1e-9 },
      "sand gone",
    );
    expect(() => gradingChange({}, shares(60), shares(60))).toThrow("no curve of soil");
  });
});

describe("a trial batch", () => {
  it("scaled to full size and back is the same batch", () => {
    fc.assert(
      fc.property(MIX, fc.double({ min: 0.01, max: 500, noNaN: true }), (of, factor) => {
        const batch = mixOf(of);
        const { water, ...amounts } = scaleRecipe(batch, factor);
        for (const [key, value] of Object.entries(water)) {
          const wanted = factor * batch.water[key as keyof typeof water];
          expect(value, key).toBeCloseTo(wanted, 6);
        }
        for (const key of ["dryMassKg", "dryMassWithCementKg", "rammedMassKg"] as const) {
          expect(amounts[key] / batch[key] / factor, key).toBeCloseTo(1, 9);
        }
        const back = scaleRecipe(scaleRecipe(batch, factor), 1 / factor);
        near(back.cement.dryMassKg, batch.cement.dryMassKg, { rel: 1e-14, abs: 0 }, "cement");
        near(back.water.toAddKg, batch.water.toAddKg, { rel: 1e-13, abs: 1e-13 }, "water");
        near(back.looseVolumeL!, batch.looseVolumeL!, { rel: 1e-14, abs: 0 }, "volume");
      }),
      { seed: 32 },
    );
  });

  it("weighed on a scale says how far it is from the recipe", () => {
    fc.assert(
      fc.property(MIX, fc.constantFrom(0.001, 0.01, 0.1, 0.5), (of, stepKg) => {
        const trial = scaleRecipe(mixOf(of), 1 / 20);
        const found = weighOut(trial, stepKg);
        if (found.status === "too-coarse") {
          expect(found.batch).toBeNull();
          return;
        }
        const dry = found.lines.map(({ weighedKg, id }) => {
          const moisture = { soil: of.moisturePct, sand: 4, cement: 0 } as Record<string, number>;
          return weighedKg / (1 + moisture[id] / 100);
        });
        const cementPct = (100 * dry[2]) / (dry[0] + dry[1]);
        near(found.cementPct!, cementPct, EXACT, "cement");
        near(found.cementChangePct!, cementPct - of.cementPct, { rel: 1e-8, abs: 1e-9 }, "change");
        for (const { exactKg, weighedKg } of found.lines) {
          expect(Math.abs(exactKg - weighedKg)).toBeLessThanOrEqual(stepKg / 2 + 1e-12);
        }
      }),
      { seed: 33, numRuns: 200 },
    );
  });

  it("says when the scale is too coarse for it", () => {
    const trial = scaleRecipe(
      mixOf({
        soilPct: 60,
        densities: [1200, 1500, 1200],
        moisturePct: 5,
        cementPct: 3,
        mixerVolumeL: 120,
      }),
      1 / 50,
    );
    const found = weighOut(trial, 0.5);
    expect([found.status, found.cementPct]).toEqual(["too-coarse", null]);
    expect(render(found.message)).toContain("Cement");
  });
});
