import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { carbonComparison, mixCarbon } from "../../src/batch/carbon.js";
import {
  CEMENT_CARBON_FACTORS,
  CONCRETE_CEMENT_CONTENT,
  MATERIAL_CARBON_FACTORS,
} from "../../src/batch/carbonFactors.js";
import { cementComparison, savingTrap } from "../../src/batch/cementComparison.js";
import { costRange, type MaterialPriceRange, mixSaving } from "../../src/batch/cost.js";
import { recipe } from "../../src/batch/recipe.js";
import { suppliedAmounts } from "../../src/batch/supply.js";
import { render } from "../../src/words/render.js";
import { near } from "../strength/near.js";

const EXACT = { rel: 1e-10, abs: 1e-10 };

const mix = (cementPct: number, soilPct = 60) =>
  recipe({
    materials: [
      { id: "soil", name: "Soil", sharePct: soilPct, looseBulkDensityKgM3: 1200, moisturePct: 6 },
      {
        id: "sand",
        name: "Sand",
        sharePct: 100 - soilPct,
        looseBulkDensityKgM3: 1500,
        moisturePct: 4,
      },
    ],
    cementPct,
    cementBulkDensityKgM3: 1200,
    targetMoisturePct: 9,
    batchDryMassKg: 10_000,
  });

const PRICES: Record<string, MaterialPriceRange> = {
  soil: { price: { low: 0, high: 4, per: "t" } },
  sand: {
    price: { low: 25, high: 30, per: "m3" },
    haul: { low: 3, high: 5, per: "t" },
    lossPct: 5,
  },
  cement: { price: { low: 160, high: 210, per: "t" } },
};

describe("costRange", () => {
  it("is amount times price where low and high agree", () => {
    const per = (price: number, unit: "t" | "m3") => ({
      price: { low: price, high: price, per: unit },
    });
    const found = costRange(mix(8), {
      soil: per(3, "t"),
      sand: per(30, "m3"),
      cement: per(190, "t"),
    });
    near(found.lines[0].material!.low, (3 * 6000 * 1.06) / 1000, EXACT, "moist");
    near(found.lines[1].material!.high, (30 * 4000) / 1500, EXACT, "by volume");
    near(found.total.low, 19.08 + 80 + 152, EXACT, "low");
    near(found.total.high, found.total.low, EXACT, "high");
  });

  it("adds waste and haul by hand, and whole bags", () => {
    const found = costRange(mix(8), PRICES);
    const [, sand] = found.lines;
    near(sand.material!.low, (25 * 4000 * 1.05) / 1500, EXACT, "sand");
    near(sand.haul!.high, 5 * 4 * 1.04 * 1.05, EXACT, "haul");
    const bag = { price: { low: 6, high: 6, per: "bag" as const }, bagMassKg: 42 };
    const bags = costRange(mix(8), { ...PRICES, cement: bag });
    near(bags.lines[2].material!.low, 6 * Math.ceil(800 / 42), EXACT, "bags");
    // 4160 kg of moist sand and 5 % of loss are 4368 kg, 2800 L loose: two loads by mass, three by room.
    const byLoad = (bodyM3: number) =>
      costRange(mix(8), {
        ...PRICES,
        sand: {
          ...PRICES.sand,
          haul: { low: 50, high: 60, per: "load" },
          truck: { payloadKg: 4000, bodyM3 },
        },
      }).lines[1].haul!.high;
    near(byLoad(2), 120, EXACT, "loads by mass");
    near(byLoad(1), 180, EXACT, "loads by room");
  });

  it.each<[string, MaterialPriceRange | undefined, string]>([
    ["none", undefined, "price-missing"],
    ["without unit", { price: { low: 3, high: 4 } }, "price-without-unit"],
    ["per bag of no mass", { price: { low: 3, high: 4, per: "bag" } }, "price-without-amount"],
    [
      "haul without unit",
      { price: { low: 3, high: 4, per: "t" }, haul: { low: 1, high: 1 } },
      "price-without-unit",
    ],
    [
      "haul by loads not counted",
      { price: { low: 3, high: 4, per: "t" }, haul: { low: 1, high: 1, per: "load" } },
      "price-without-amount",
    ],
  ])("finds a price: %s", (_, price, code) => {
    const found = costRange(mix(8), { ...PRICES, soil: price });
    expect(found.status).toBe("incomplete");
    expect(found.findings.map((finding) => finding.code)).toEqual([code]);
    expect(found.findings[0].column).toMatch(/^materials\.soil\.(price|haul)$/);
    // What is wrong with the haul is told of the haul.
    const ofHaul = found.findings[0].column!.endsWith("haul");
    expect(/price of haul/.test(render(found.findings[0].message))).toBe(ofHaul);
  });

  it("refuses a range that runs backwards", () => {
    const soil = { price: { low: 5, high: 4, per: "t" as const } };
    expect(() => costRange(mix(8), { ...PRICES, soil })).toThrow(
      "invalid `prices.soil.price.high`",
    );
  });
});

describe("suppliedAmounts", () => {
  it("holds the loss in every form of the amount", () => {
    const terms = { lossPct: 50, bagMassKg: 25, truck: { payloadKg: 3000, bodyM3: 100 } };
    const [soil, sand, cement] = suppliedAmounts(mix(8), { soil: terms, cement: terms });
    near(soil.moistMassKg, 6000 * 1.06 * 1.5, EXACT, "moist");
    near(soil.looseVolumeL!, (6000 / 1.2) * 1.5, EXACT, "loose");
    expect(soil.loads!.loads).toBe(4);
    expect(cement.bags).toBe(48);
    near(sand.moistMassKg, 4160, EXACT, "no loss");
    expect([sand.bags, sand.loads]).toEqual([null, null]);
    expect(() => suppliedAmounts(mix(8), { sand: { lossPct: -1 } })).toThrow("sand.lossPct");
  });
});

describe("mixSaving", () => {
  it("says of the mix that cannot be priced what is missing", () => {
    const other = recipe({
      materials: [{ id: "clay", name: "Clay", sharePct: 100, moisturePct: 5 }],
      cementPct: 8,
      targetMoisturePct: 9,
      batchDryMassKg: 100,
    });
    const { status, message, saved } = mixSaving({ mix: mix(8), other, prices: PRICES });
    expect([status, saved]).toEqual(["incomplete", null]);
    expect(render(message)).toContain("Not the whole cost: 1 price is");
    const turned = mixSaving({ mix: other, other: mix(8), prices: PRICES });
    expect(render(turned.message)).toContain("Not the whole cost: 1 price is");
  });

  it("holds the saving at any prices within the ranges", () => {
    const part = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(part, { minLength: 4, maxLength: 4 }),
        fc.integer({ min: 4, max: 10 }),
        fc.integer({ min: 30, max: 90 }),
        (at, cementPct, soilPct) => {
          const [a, b] = [mix(cementPct, soilPct), mix(8)];
          const { saved } = mixSaving({ mix: a, other: b, prices: PRICES });
          const firm = (range: { low: number; high: number }, way: number) => {
            const price = range.low + way * (range.high - range.low);
            return { low: price, high: price };
          };
          const prices = {
            soil: { price: { ...firm({ low: 0, high: 4 }, at[0]), per: "t" as const } },
            sand: {
              price: { ...firm({ low: 25, high: 30 }, at[1]), per: "m3" as const },
              haul: { ...firm({ low: 3, high: 5 }, at[2]), per: "t" as const },
              lossPct: 5,
            },
            cement: { price: { ...firm({ low: 160, high: 210 }, at[3]), per: "t" as const } },
          };
          const now = costRange(b, prices).total.low - costRange(a, prices).total.low;
          expect(now).toBeGreaterThanOrEqual(saved!.low - 1e-6);
          expect(now).toBeLessThanOrEqual(saved!.high + 1e-6);
        },
      ),
      { seed: 61 },
    );
  });

  it("says which costs less: at all prices, at none, or at some", () => {
    const words = (a: number, b: number, prices: Record<string, MaterialPriceRange> = PRICES) =>
      render(mixSaving({ mix: mix(a), other: mix(b), prices }).message);
    expect(words(6, 8)).toBe("This mix costs less at all prices given.");
    expect(words(8, 6)).toBe("This mix costs more at all prices given.");
    const free = { ...PRICES, cement: { price: { low: 0, high: 210, per: "t" as const } } };
    expect(words(6, 8, free)).toBe("This mix costs less at all prices given.");
    expect(words(8, 6, free)).toBe("This mix costs more at all prices given.");
    // Two tonnes more of sand, 41 to 53 with haul, against 300 kg of cement, 48 to 63, and soil, 0 to 8.
    const other = { mix: mix(6, 60), other: mix(9, 80), prices: PRICES };
    expect(render(mixSaving(other).message)).toBe(
      "Which mix costs less depends on the prices within their ranges.",
    );
  });

  it("is nothing against itself, turns its sign with the sides, and needs all prices", () => {
    near(mixSaving({ mix: mix(8), other: mix(8), prices: PRICES }).saved!.high, 0, EXACT, "none");
    const there = mixSaving({ mix: mix(6), other: mix(9, 40), prices: PRICES });
    const back = mixSaving({ mix: mix(9, 40), other: mix(6), prices: PRICES });
    near(there.saved!.low, -back.saved!.high, EXACT, "sign");
    near(there.savedCementKg, 300, EXACT, "cement");
    expect(mixSaving({ mix: mix(6), other: mix(8), prices: {} }).saved).toBeNull();
  });
});

describe("mixCarbon", () => {
  const [soil, aggregate, road] = MATERIAL_CARBON_FACTORS;
  const factors = { soil, sand: aggregate, cement: CEMENT_CARBON_FACTORS[0] };

  it("adds making and haul by hand", () => {
    const found = mixCarbon(mix(8), { factors, haulKm: { sand: 20 }, haulFactor: road });
    near(found.lines[1].making!.high, 4000 * aggregate.high, EXACT, "sand");
    near(found.lines[1].haul!.low, 4.16 * 20 * road.low, EXACT, "haul");
    const low = 800 * factors.cement.low + 4000 * aggregate.low + 4.16 * 20 * road.low;
    near(found.total.low, low, EXACT, "total");
    near(found.cementPctOfTotal.high, (80_000 * factors.cement.low) / low, EXACT, "cement");
  });

  it("agrees with 130 kg in a cubic metre at 8 % and 0.922 (own arithmetic)", () => {
    const wall = recipe({
      materials: [{ id: "soil", name: "Soil", sharePct: 100, moisturePct: 0 }],
      cementPct: 8,
      targetMoisturePct: 9,
      batchDryMassKg: 1900 / 1.08,
    });
    const found = mixCarbon(wall, { factors: { soil, cement: factors.cement } });
    near(found.lines[1].making!.high, 129.8, { rel: 0, abs: 0.1 }, "cement");
  });

  it("says what has no factor and refuses a distance without one", () => {
    const found = mixCarbon(mix(8), { factors: { cement: factors.cement } });
    expect([found.status, found.lines[0].making]).toEqual(["incomplete", null]);
    expect(render(found.message)).toContain("Soil, Sand");
    expect(() => mixCarbon(mix(8), { factors, haulKm: { sand: 5 } })).toThrow(TypeError);
  });

  it("keeps its factors as ranges with their source and mark", () => {
    for (const { low, high, source, basis } of MATERIAL_CARBON_FACTORS) {
      expect(high).toBeGreaterThan(low);
      expect(render(source).length).toBeGreaterThan(20);
      expect(render(source).includes("from memory")).toBe(basis === "memory");
    }
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

describe("savingTrap", () => {
  // Common practice, as a check value only: 400 lb of cement where 5000 lb of ready-mixed concrete would have been.
  it("shows that 90 % against whole concrete is a third or so of cement", () => {
    const lb = 0.45359237;
    const concreteVolumeM3 = (5000 * lb) / 2350;
    const found = savingTrap({ earthCementKg: 400 * lb, concreteVolumeM3 });
    near(found.falseSavingPct, 92, EXACT, "the false saving");
    near(found.concreteMassKg / lb, 5000, EXACT, "whole concrete");
    near(found.savingPct.low, 100 * (1 - (400 * lb) / (280 * concreteVolumeM3)), EXACT, "low");
    expect(found.savingPct.low).toBeGreaterThan(30);
    expect(found.savingPct.high).toBeLessThan(40);
  });

  it("goes below zero where the earth holds more cement, while the false one still shines", () => {
    const found = savingTrap({ earthCementKg: 700, concreteVolumeM3: 2 });
    expect(found.savingPct.high).toBeLessThan(0);
    expect(found.falseSavingPct).toBeGreaterThan(80);
    expect(render(found.text)).toContain("−25 to −13 %");
  });
});

describe("carbonComparison", () => {
  it("takes the waste off again, and sets the ends farthest apart against each other", () => {
    const factors = {
      soil: MATERIAL_CARBON_FACTORS[0],
      sand: MATERIAL_CARBON_FACTORS[1],
      cement: CEMENT_CARBON_FACTORS[0],
    };
    const carbon = mixCarbon(mix(8), { factors });
    const made = (end: "low" | "high") =>
      6000 * factors.soil[end] + 4000 * factors.sand[end] + 800 * factors.cement[end];
    const found = carbonComparison({
      carbon,
      wastePct: 25,
      concreteVolumeM3: 2,
      aggregate: factors.sand,
      concreteCementCarbonKg: { low: 400, high: 600 },
    })!;
    near(found.earth.low, made("low") / 1.25, EXACT, "earth, low");
    near(found.earth.high, made("high") / 1.25, EXACT, "earth, high");
    near(found.concrete.low, 400 + 2 * 1800 * factors.sand.low, EXACT, "concrete, low");
    const { low, high } = found.earthPctOfConcrete;
    near(low, (100 * found.earth.low) / found.concrete.high, EXACT, "least");
    near(high, (100 * found.earth.high) / found.concrete.low, EXACT, "most");
  });
});
