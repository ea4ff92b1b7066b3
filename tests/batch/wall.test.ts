import { describe, expect, it } from "vitest";
import { CEMENT_CARBON_FACTORS, CONCRETE_CEMENT_CONTENT } from "../../src/batch/carbonFactors.js";
import { cementComparison } from "../../src/batch/cementComparison.js";
import { mixCost } from "../../src/batch/mixCost.js";
import { recipe } from "../../src/batch/recipe.js";
import { type WallElement, wallQuantities } from "../../src/batch/wallQuantities.js";
import { near } from "../strength/near.js";

const EXACT = { rel: 1e-10, abs: 1e-12 };

const mix = (cementPct: number) =>
  recipe({
    materials: [
      { id: "soil", name: "Soil", sharePct: 60, looseBulkDensityKgM3: 1200, moisturePct: 6 },
      { id: "sand", name: "Sand", sharePct: 40, looseBulkDensityKgM3: 1500, moisturePct: 4 },
    ],
    cementPct,
    cementBulkDensityKgM3: 1200,
    targetMoisturePct: 9,
    batchDryMassKg: 120,
  });

const WALL: WallElement = {
  lengthM: 6.4,
  heightM: 2.7,
  thicknessM: 0.4,
  openings: [{ widthM: 1.2, heightM: 1.3, count: 2 }],
  compactedLiftM: 0.1,
  wastePct: 5,
};

const quantities = (wall: WallElement, cementPct = 8) =>
  wallQuantities(wall, { recipe: mix(cementPct), compactedDryDensityKgM3: 1900, bagMassKg: 25 });

describe("wallQuantities", () => {
  it("adds up by hand", () => {
    const { amounts } = quantities(WALL);
    near(amounts!.netVolumeM3, (6.4 * 2.7 - 3.12) * 0.4, EXACT, "net");
    near(amounts!.mix.dryMassWithCementKg, amounts!.netVolumeM3 * 1.05 * 1900, EXACT, "dry mass");
    near(amounts!.cementKg, (amounts!.mix.dryMassWithCementKg * 8) / 108, EXACT, "cement");
    expect(amounts!.cementBags).toBe(Math.ceil(amounts!.cementKg / 25));
    near(
      amounts!.mix.dryMassWithCementKg,
      amounts!.batches * 120 * 1.08,
      EXACT,
      "batches times a batch",
    );
    near(
      amounts!.mix.materials[1].looseVolumeL,
      (amounts!.mix.dryMassKg * 0.4) / 1.5,
      EXACT,
      "sand",
    );
    expect(amounts!.lifts).toBe(27);
    near(amounts!.lastLiftM, 0.1, { rel: 0, abs: 1e-9 }, "last lift");
  });

  it.each([
    [5, 90.5],
    [6, 107.5],
    [8, 140.7],
    [10, 172.7],
  ])("%i %% cement at 1900 kg/m³ is %f kg in a cubic metre (own arithmetic)", (cement, wanted) => {
    const { amounts } = quantities(WALL, cement);
    near(amounts!.cementKgM3, wanted, { rel: 0, abs: 0.051 }, "cement");
  });

  it("gives the last lift what is left", () => {
    const { amounts } = quantities({ ...WALL, compactedLiftM: 0.4 });
    expect(amounts!.lifts).toBe(7);
    near(amounts!.lastLiftM, 0.3, { rel: 0, abs: 1e-9 }, "last lift");
  });

  it.each([
    [{ lengthM: -1 }, "element.length"],
    [{ thicknessM: 0 }, "element.thickness"],
    [{ wastePct: -2 }, "element.waste"],
    [{ compactedLiftM: 3 }, "element.compacted-lift"],
    [{ openings: [{ widthM: 7, heightM: 1 }] }, "element.openings[0]"],
    [{ openings: [{ widthM: 1, heightM: -1 }] }, "element.openings[0]"],
    [{ openings: [{ widthM: 2, heightM: 2.7, count: 4 }] }, "element.openings"],
  ])("finds %j", (change, column) => {
    const found = quantities({ ...WALL, ...change });
    expect([found.status, found.amounts]).toEqual(["invalid", null]);
    expect(found.findings.map((finding) => finding.column)).toContain(column);
  });
});

describe("cementComparison", () => {
  it("sets cement against cement and carbon against carbon", () => {
    const found = cementComparison({
      earthVolumeM3: 2,
      earthCementKg: 281.4,
      carbonFactor: CEMENT_CARBON_FACTORS[0],
    });
    near(
      found.earthCementCarbonKg.high / 2,
      129.7,
      { rel: 0, abs: 0.1 },
      "130 kg in a cubic metre",
    );
    near(found.concreteCementKg.high, 2 * CONCRETE_CEMENT_CONTENT.high, EXACT, "concrete");
    // A saving of half, not of nineteen twentieths.
    expect(found.cementPctOfConcrete.low).toBeGreaterThan(40);
    const ratio = found.earthCementCarbonKg.low / found.concreteCementCarbonKg.low;
    near(100 * ratio, found.cementPctOfConcrete.high, EXACT, "carbon ratio");
  });

  it("lets the concrete element be thinner", () => {
    const thick = { earthVolumeM3: 4, earthCementKg: 560, carbonFactor: CEMENT_CARBON_FACTORS[0] };
    const found = cementComparison({ ...thick, concreteVolumeM3: 1.5 });
    expect(found.cementPctOfConcrete.low).toBeGreaterThan(100);
  });

  it("refuses a range that runs backwards", () => {
    const carbonFactor = { ...CEMENT_CARBON_FACTORS[0], low: 2 };
    expect(() => cementComparison({ earthVolumeM3: 1, earthCementKg: 1, carbonFactor })).toThrow(
      /us-portland-2021/,
    );
  });
});

describe("mixCost", () => {
  it("takes tonnes moist or dry and cubic metres loose", () => {
    const prices = {
      soil: { amount: 3, per: "t" },
      sand: { amount: 30, per: "m3" },
      cement: { amount: 190, per: "t" },
    } as const;
    const soil = mixCost(mix(8), prices).lines[0];
    near(soil.cost, (3 * 72 * 1.06) / 1000, EXACT, "moist");
    const dry = mixCost(mix(8), prices, { tonneOf: "dry" });
    near(dry.lines[0].cost, (3 * 72) / 1000, EXACT, "dry");
    near(dry.lines[1].cost, (30 * 48) / 1500, EXACT, "by volume");
    near(dry.total, 0.216 + 0.96 + 1.824, EXACT, "total");
  });

  it("shows what has no price instead of counting it as nothing", () => {
    const found = mixCost(mix(8), { cement: { amount: 190, per: "t" } });
    expect(found.status).toBe("incomplete");
    expect(found.findings.map(({ column }) => column)).toEqual([
      "materials.soil.price",
      "materials.sand.price",
    ]);
    expect(found.lines[0].cost).toBeNull();
    expect(() => mixCost(mix(8), { soil: { amount: -1, per: "t" } })).toThrow(
      "invalid `prices.soil.amount`: -1",
    );
  });
});
