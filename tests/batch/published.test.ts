import { describe, expect, it } from "vitest";
import { DEFAULT_BULK_DENSITIES } from "../../src/batch/bulkDensity.js";
import { CEMENT_CARBON_FACTORS } from "../../src/batch/carbonFactors.js";
import { savingTrap } from "../../src/batch/cementComparison.js";
import { FIELD_TESTS, SHRINKAGE_BOX } from "../../src/batch/fieldTests.js";
import { mixRecord } from "../../src/batch/mixRecord.js";
import { toMassShares } from "../../src/batch/volumeParts.js";
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
    const shown = SHRINKAGE_BOX.conclusions.filter(({ basis }) => basis === "read");
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
