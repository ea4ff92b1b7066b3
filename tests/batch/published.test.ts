import { describe, expect, it } from "vitest";
import { DEFAULT_BULK_DENSITIES } from "../../src/batch/bulkDensity.js";
import { CONCRETE_AGGREGATE_KG_M3 } from "../../src/batch/carbon.js";
import {
  CEMENT_CARBON_FACTORS,
  CONCRETE_CEMENT_CONTENT,
  MATERIAL_CARBON_FACTORS,
} from "../../src/batch/carbonFactors.js";
import { savingTrap } from "../../src/batch/cementComparison.js";
import { FIELD_TESTS } from "../../src/batch/fieldTests.js";
import { mixRecord } from "../../src/batch/mixRecord.js";
import { toMassShares } from "../../src/batch/volumeParts.js";
import type { SourcedRange } from "../../src/quantities/sourcedRange.js";
import { convertToBase } from "../../src/quantities/units.js";
import { render } from "../../src/words/render.js";
import reference from "../reference/batchExamples.json" with { type: "json" };
import { near } from "../strength/near.js";

// biome-ignore lint/suspicious/noExplicitAny: entries differ in what they hold
const entry = (id: string): any => {
  const found = reference.entries.find((one) => one.id === id);
  if (!found) throw new RangeError(`no entry ${id}`);
  return found;
};

describe("published values that were read", () => {
  it("a bag of 94 lb in a cubic foot is 1506 kg/m³", () => {
    const { lb, kgM3, tolerance } = entry("bag-94-lb");
    near(convertToBase(lb, "lb/ft3", "density")!, kgM3, { rel: 0, abs: tolerance }, "density");
    const cement = DEFAULT_BULK_DENSITIES.find(({ id }) => id === "cement")!;
    expect(cement.high).toBeGreaterThan(kgM3);
  });

  it("the box test's table stands in its form as it was read", () => {
    const { rows } = entry("box-600");
    const box = FIELD_TESTS.find(({ id }) => id === "shrinkage-box")!;
    const shown = box.conclusions.filter(({ basis }) => basis === "read");
    expect(shown).toHaveLength(rows.length);
    rows.forEach(({ gapMm, soilParts }: { gapMm: number; soilParts: number }, index: number) => {
      expect(render(shown[index].seen)).toContain(String(gapMm));
      expect(render(shown[index].means)).toMatch(new RegExp(`1 (cement )?to ${soilParts}\\b`));
    });
  });

  it("one cement, ten clay, ten sand is half the soil's share of 1:20:20 doubled, in any densities", () => {
    const { upper, lower } = entry("nm-300");
    const cement = ([c, clay, sand]: number[]) =>
      toMassShares(
        [
          { id: "clay", parts: clay, looseBulkDensityKgM3: 1100 },
          { id: "sand", parts: sand, looseBulkDensityKgM3: 1500 },
        ],
        { parts: c, looseBulkDensityKgM3: 1506 },
      ).cementPct;
    near(cement(upper), 2 * cement(lower), { rel: 1e-12, abs: 0 }, "twice the cement");
    near(cement(upper), 150_600 / 26_000, { rel: 1e-12, abs: 0 }, "by mass");
  });

  it("the carbon factor's low end is the published 8.2 % below its high end", () => {
    const { kgPerT, lowerPct } = entry("pca-2021");
    const [us] = CEMENT_CARBON_FACTORS;
    near(us.high, kgPerT / 1000, { rel: 1e-12, abs: 0 }, "high");
    near(us.low, us.high * (1 - lowerPct / 100), { rel: 0, abs: 0.0005 }, "low");
  });
});

describe("common practice, as a check of our arithmetic only", () => {
  it("seven, two, one is ten units: parts to recipe to whole parts and back", () => {
    const { parts, cementByVolumePct } = entry("seven-two-one");
    const [soil, sand, cement] = parts;
    const shares = toMassShares(
      [
        { id: "soil", parts: soil, looseBulkDensityKgM3: 1200 },
        { id: "sand", parts: sand, looseBulkDensityKgM3: 1400 },
      ],
      { parts: cement, looseBulkDensityKgM3: 1200 },
    );
    near(shares.cementByVolumePct, cementByVolumePct, { rel: 1e-12, abs: 0 }, "by volume");
    // By mass it is another number: 1200 in 7 x 1200 + 2 x 1400.
    near(shares.cementPct, 120_000 / 11_200, { rel: 1e-12, abs: 0 }, "by mass");
    const record = mixRecord({
      state: "proposed",
      reasons: [],
      tolerances: { shares: {} },
      water: { tolerancePct: 1 },
      materials: shares.materials.map(({ id, sharePct }) => ({
        id,
        name: id,
        sharePct,
        moisturePct: 3,
        looseBulkDensityKgM3: id === "soil" ? 1200 : 1400,
      })),
      cementPct: shares.cementPct,
      cementBulkDensityKgM3: 1200,
      targetMoisturePct: 10,
      batchDryMassKg: 100,
    });
    const whole = record.parts!;
    expect([...whole.materials, whole.cement!].map(({ measure }) => measure)).toEqual(parts);
  });

  it("calling 400 lb against 5000 lb of concrete 90 % is cement against whole concrete", () => {
    const { cementLb, concreteLb, calledPct } = entry("concrete-5000-lb");
    const concreteVolumeM3 = (concreteLb * 0.45359237) / 2350;
    const found = savingTrap({ earthCementKg: cementLb * 0.45359237, concreteVolumeM3 });
    near(found.falseSavingPct, calledPct, { rel: 0, abs: 2.5 }, "as it was called");
    expect(found.savingPct.high).toBeLessThan(calledPct / 2);
  });
});

describe("factors and general values", () => {
  it("are those of the record, each with its range and its mark", () => {
    const line = ({ id, low, high, unit, basis }: SourcedRange) =>
      `${id}: ${low} to ${high} ${unit}, ${basis}`;
    // A second copy by hand. 470 and 520 lb/yd³ are 279 and 309 kg/m³.
    expect(
      [...CEMENT_CARBON_FACTORS, ...MATERIAL_CARBON_FACTORS, CONCRETE_CEMENT_CONTENT].map(line),
    ).toEqual([
      "us-portland-2021: 0.846 to 0.922 kg CO2e/kg, read",
      "uk-average-to-cem-i: 0.832 to 0.912 kg CO2e/kg, memory",
      "site-soil: 0 to 0.024 kg CO2e/kg, memory",
      "aggregate: 0.005 to 0.0075 kg CO2e/kg, memory",
      "road-haul: 0.07 to 0.2 kg CO2e/(t km), memory",
      "us-3000-psi: 280 to 310 kg/m³, memory",
    ]);
    expect(DEFAULT_BULK_DENSITIES.map((one) => `${line(one)}, about ${one.valueKgM3}`)).toEqual([
      "soil: 1000 to 1450 kg/m3, memory, about 1200",
      "sand: 1200 to 1600 kg/m3, memory, about 1400",
      "gravel: 1350 to 1650 kg/m3, memory, about 1500",
      "cement: 830 to 1650 kg/m3, read, about 1200",
    ]);
    expect(CONCRETE_AGGREGATE_KG_M3).toEqual({ low: 1800, high: 1900 });
  });
});

it("the forms of the field tests come in the order in which a soil is met", () => {
  expect(FIELD_TESTS.map(({ id }) => id)).toEqual([
    "wash-and-smell",
    "jar",
    "ribbon",
    "plastic-ball",
    "shrinkage-box",
    "ball-and-drop",
  ]);
});

describe("general bulk densities", () => {
  it("keeps each default within its range", () => {
    for (const { valueKgM3, low, high } of DEFAULT_BULK_DENSITIES) {
      expect(valueKgM3).toBeGreaterThan(low);
      expect(valueKgM3).toBeLessThan(high);
    }
  });
});
