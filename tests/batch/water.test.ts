import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sandBulking } from "../../src/batch/bulkDensity.js";
import { type RecipeInput, recipe, saturationMoisturePct } from "../../src/batch/recipe.js";
import { waterByMoisture, waterWindow } from "../../src/batch/water.js";
import { near } from "../strength/near.js";

const EXACT = { rel: 1e-10, abs: 1e-10 };

const mix = (moisturePct: number, change: Partial<RecipeInput> = {}): RecipeInput => ({
  materials: [
    {
      id: "soil",
      name: "Soil",
      sharePct: 100,
      moisturePct,
      looseBulkDensityKgM3: 1200,
      particleDensityKgM3: 2650,
    },
  ],
  cementPct: 8,
  cementBulkDensityKgM3: 1200,
  targetMoisturePct: 10,
  batchDryMassKg: 100,
  ...change,
});

describe("waterWindow", () => {
  it("makes each end of the window when its water is poured in", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 7, noNaN: true }),
        fc.double({ min: 0, max: 2.4, noNaN: true }),
        fc.constantFrom("all-solids" as const, "soil-and-aggregate" as const),
        (moisture, tolerancePct, moistureOf) => {
          const batch = recipe(mix(moisture, { moistureOf }));
          const found = waterWindow(batch, { tolerancePct });
          const solids = moistureOf === "all-solids" ? 108 : 100;
          const reached = (added: number) => (100 * (moisture + added)) / solids;
          near(reached(found.toAddKg.high), 10 + tolerancePct, EXACT, "wet");
          near(found.toAddKg.target, batch.water.toAddKg, EXACT, "target");
          if (found.toAddKg.low > 0)
            near(reached(found.toAddKg.low), 10 - tolerancePct, EXACT, "dry");
        },
      ),
      { seed: 51 },
    );
  });

  it("calls for drying only above the wet end", () => {
    const window = { driestPct: 8.9, wettestPct: 11.2 };
    // Over the target but within the window: no water, and no need to dry.
    const over = waterWindow(recipe(mix(11.5)), window);
    expect([over.status, over.toAddKg.target]).toEqual(["ok", 0]);
    expect(over.toAddKg.high).toBeGreaterThan(0);
    expect(waterWindow(recipe(mix(13)), window).status).toBe("dry-first");
  });

  it("refuses a window that does not hold the target", () => {
    const batch = recipe(mix(5));
    expect(() => waterWindow(batch, { driestPct: 11, wettestPct: 12 })).toThrow(/hold the target/);
    expect(() => waterWindow(batch, { tolerancePct: -1 })).toThrow("invalid `tolerancePct`: -1");
  });
});

describe("saturation", () => {
  it("is where the pores are full, and a wetter heap is found", () => {
    const full = saturationMoisturePct(1200, 2650);
    near(1200 / 2650 + (1200 * full) / 100 / 1000, 1, EXACT, "solids and water fill the volume");
    expect(recipe(mix(full - 0.01, { targetMoisturePct: 60 })).findings).toEqual([]);
    const wet = recipe(mix(full + 0.01, { targetMoisturePct: 60 }));
    expect(wet.findings.map(({ code, column }) => [code, column])).toEqual([
      ["moisture-over-saturation", "materials.soil.moisture"],
    ]);
  });
  it("finds a heap denser than its grains", () => {
    const [soil] = mix(5).materials;
    const dense = recipe(mix(5, { materials: [{ ...soil, particleDensityKgM3: 1100 }] }));
    expect(dense.findings.map(({ code }) => code)).toEqual(["bulk-density-over-particle"]);
    expect(() => saturationMoisturePct(2700, 2650)).toThrow("invalid `dryDensityKgM3`: 2700");
    expect(() => recipe(mix(5, { materials: [{ ...soil, looseBulkDensityKgM3: 0 }] }))).toThrow(
      "invalid `materials[0].looseBulkDensityKgM3`: 0",
    );
  });
});

describe("sandBulking", () => {
  it("turns into a bucket count that holds the same dry sand", () => {
    fc.assert(
      fc.property(fc.integer({ min: 80, max: 160 }), (floodedHeight) => {
        const { bulkingPct } = sandBulking({ dampHeight: 200, floodedHeight });
        if (bulkingPct === null) return;
        const [soil] = mix(5).materials;
        const bulked = recipe(mix(5, { materials: [{ ...soil, bulkingPct }] }));
        const dryL = recipe(mix(5)).materials[0].looseVolumeL!;
        near(bulked.materials[0].looseVolumeL, (dryL * 200) / floodedHeight, EXACT, "volume");
      }),
      { seed: 52 },
    );
  });
  it("does not make a negative bulking out of a misreading", () => {
    expect(sandBulking({ dampHeight: 150, floodedHeight: 160 })).toMatchObject({
      status: "reversed",
      bulkingPct: null,
    });
    expect(() => sandBulking({ dampHeight: 0, floodedHeight: 1 })).toThrow(RangeError);
  });
});

describe("waterByMoisture", () => {
  it("has no more to dry than what the wettest mix leaves", () => {
    const batch = recipe(mix(6));
    // 108 kg of solids: 10.8 kg of water at the target of 10 %, 12.42 kg at 11.5 %.
    const [within, beyond] = waterByMoisture(batch, [12, 13], 11.5);
    expect([within.toAddKg, within.surplusKg]).toEqual([0, 0]);
    near(beyond.surplusKg, 13 - 12.42, EXACT, "above the window");
    near(waterByMoisture(batch, [12])[0].surplusKg, 1.2, EXACT, "above the target");
  });
});
