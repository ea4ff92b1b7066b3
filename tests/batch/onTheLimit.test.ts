import { describe, expect, it } from "vitest";
import { DEFAULT_BULK_DENSITIES, sandBulking } from "../../src/batch/bulkDensity.js";
import { carbonComparison, carbonSaving, mixCarbon } from "../../src/batch/carbon.js";
import { cementComparison, savingTrap } from "../../src/batch/cementComparison.js";
import { costRange, mixSaving } from "../../src/batch/cost.js";
import {
  type EarthElement,
  elementQuantities,
  elementsFindings,
  elementsQuantities,
  type NamedElement,
  type WallOpening,
} from "../../src/batch/element.js";
import { FIELD_TESTS } from "../../src/batch/fieldTests.js";
import { formworkDuration } from "../../src/batch/formworkDuration.js";
import { mixRecord } from "../../src/batch/mixRecord.js";
import { type RecipeInput, recipe, saturationMoisturePct } from "../../src/batch/recipe.js";
import { truckLoads } from "../../src/batch/supply.js";
import { waterByMoisture, waterWindow } from "../../src/batch/water.js";
import { weighOut } from "../../src/batch/weighOut.js";
import type { Finding } from "../../src/findings/finding.js";
import { render, renderAll } from "../../src/words/render.js";

/** Values exactly on a limit and beside it, and the numbers that sentences say, worked out by hand. */
const SOIL = {
  id: "soil",
  name: "Soil",
  sharePct: 100,
  looseBulkDensityKgM3: 1200,
  moisturePct: 6,
};
const INPUT: RecipeInput = {
  materials: [SOIL],
  cementPct: 8,
  cementBulkDensityKgM3: 1200,
  targetMoisturePct: 10,
  batchDryMassKg: 10,
};

describe("a recipe", () => {
  const soilWith = (more: object) => recipe({ ...INPUT, materials: [{ ...SOIL, ...more }] });

  it("takes shares that add up within a twentieth", () => {
    const sum = (sharePct: number) => () => soilWith({ sharePct });
    expect(sum(99.95)).not.toThrow();
    expect(sum(100.05)).not.toThrow();
    expect(sum(99.94)).toThrow("sum 99.94; expected 100");
    expect(sum(100.06)).toThrow("sum 100.06; expected 100");
  });

  it("knows how much water the pores hold, and no heap as dense as its grains", () => {
    // 1000 (1 / 1250 − 1 / 2500) is 40 %.
    expect(saturationMoisturePct(1250, 2500)).toBeCloseTo(40, 9);
    const found = (moisturePct: number, looseBulkDensityKgM3: number) =>
      renderAll(
        soilWith({ moisturePct, looseBulkDensityKgM3, particleDensityKgM3: 2500 }).findings,
      ).filter(({ code }) => code !== "materials-too-wet");
    expect(found(39.9, 1250)).toEqual([]);
    expect(found(40.1, 1250)).toMatchObject([
      {
        severity: "error",
        code: "moisture-over-saturation",
        column: "materials.soil.moisture",
        value: "40.1 %",
        expected: "at most 40.0 %",
        message:
          "Soil: all pores of the loose heap are full at 40.0 % of the dry mass, so it cannot hold 40.1 %.",
      },
    ]);
    expect(found(0, 2499)).toEqual([]);
    expect(found(0, 2500)).toMatchObject([
      {
        code: "bulk-density-over-particle",
        column: "materials.soil.loose-bulk-density",
        value: "2500 kg/m³",
        expected: "below 2500 kg/m³, the density of the grains",
      },
    ]);
  });

  it("says the cement, and by how much its heaps are too wet", () => {
    expect(render(recipe(INPUT).message)).toBe(
      "Cement 8 % of the dry mass of soil and aggregate, cement not counted in that mass.",
    );
    // 10 kg hold 1.2 kg of water; 10 % of 10.8 kg of solids are 1.08 kg; 1.2 / 10.8 is 11.1 %.
    const { findings, water } = soilWith({ moisturePct: 12 });
    expect(water.surplusKg).toBeCloseTo(0.12, 9);
    expect(renderAll(findings)).toMatchObject([
      {
        code: "materials-too-wet",
        value: "11.1 %",
        message:
          "The materials bring more water than the mix may have: 0.1 kg too much in this batch.",
        expected: "at most 10.0 % moisture",
      },
    ]);
  });

  it("weighed on a coarse scale holds what the scale shows", () => {
    // 10.6 kg of moist soil read as 10.5, 0.8 kg of cement as 1: 1 / (10.5 / 1.06) is 10.095 %.
    const weighed = weighOut(recipe(INPUT), 0.5);
    expect(weighed.lines.map(({ exactKg, weighedKg }) => [exactKg, weighedKg])).toEqual([
      [expect.closeTo(10.6, 9), 10.5],
      [expect.closeTo(0.8, 9), 1],
    ]);
    expect(render(weighed.message)).toBe(
      "Weighed to 0.5 kg the batch holds 10.10 % cement; the recipe asks for 8 %. No share moves by more than 2.10 points.",
    );
    expect(weighed.waterKg).toBe(0.5);
    // Densities stay: 10.5 / 1.06 kg of soil and 1 kg of cement, both 1.2 kg a litre.
    const { materials, cement, looseVolumeL } = weighed.batch!;
    expect(materials[0].looseVolumeL).toBeCloseTo(10.5 / 1.06 / 1.2, 9);
    expect(cement.looseVolumeL).toBeCloseTo(1 / 1.2, 9);
    expect(looseVolumeL).toBeCloseTo((10.5 / 1.06 + 1) / 1.2, 9);
    const undense = { ...INPUT, materials: [{ ...SOIL, looseBulkDensityKgM3: undefined }] };
    expect(weighOut(recipe(undense), 0.5).batch!.looseVolumeL).toBeNull();
    expect(weighed.cementChangePct).toBeCloseTo(106 / 10.5 - 8, 9);
    // Half a step is read as one, less as none.
    expect(weighOut(recipe(INPUT), 1.6).status).toBe("ok");
    const coarse = weighOut(recipe(INPUT), 1.601);
    expect(coarse.status).toBe("too-coarse");
    expect(coarse.lines.map(({ sharePct, changePct }) => [sharePct, changePct])).toEqual([
      [null, null],
      [null, null],
    ]);
  });
});

describe("the water of a batch", () => {
  it("keeps to a window that may end at the target", () => {
    const batch = recipe(INPUT);
    const window = waterWindow(batch, { driestPct: 10, wettestPct: 10 });
    expect(render(window.message)).toBe("Ram between 10.0 and 10.0 %, best at 10.0 %.");
    expect(() => waterWindow(batch, { driestPct: 10.1, wettestPct: 12 })).toThrow(
      "hold the target",
    );
    expect(() => waterWindow(batch, { driestPct: 8, wettestPct: 9.9 })).toThrow("hold the target");
    expect(render(waterWindow(batch, { tolerancePct: 1.5 }).message)).toBe(
      "Ram between 8.5 and 11.5 %, best at 10.0 %.",
    );
    expect(waterWindow(batch, { tolerancePct: 12 }).moisturePct).toEqual({ low: 0, high: 22 });
  });

  it("is too much only beyond the wet end", () => {
    // 1.35 kg in 10.8 kg of solids are 12.5 %.
    const wet = recipe({ ...INPUT, materials: [{ ...SOIL, moisturePct: 13.5 }] });
    const at = (wettestPct: number) => waterWindow(wet, { driestPct: 8, wettestPct });
    expect(at(12.5).status).toBe("ok");
    expect(render(at(12.4).message)).toBe(
      "The materials alone make the mix 12.5 % wet, above the window: dry them first.",
    );
    expect(at(12.4).presentMoisturePct).toBeCloseTo(12.5, 9);
  });
});

describe("whole parts", () => {
  it("are searched to 60 in all, and not beyond", () => {
    /** One part of sand to so many of soil, in materials of the same density. */
    const record = (soilParts: number) => {
      const share = (parts: number) => (100 * parts) / (soilParts + 1);
      const heap = { looseBulkDensityKgM3: 1200, moisturePct: 0 };
      return mixRecord({
        state: "proposed",
        reasons: [],
        materials: [
          { id: "soil", name: "Soil", sharePct: share(soilParts), ...heap },
          { id: "sand", name: "Sand", sharePct: share(1), ...heap },
        ],
        cementPct: 0,
        targetMoisturePct: 9,
        batchDryMassKg: 100,
        water: { tolerancePct: 1 },
        tolerances: { shares: { sand: { low: share(1), high: share(1) } } },
      }).parts!;
    };
    for (const soilParts of [19, 29, 39, 59]) {
      const { materials, withinTolerance, message } = record(soilParts);
      expect(materials.map(({ measure }) => measure)).toEqual([soilParts, 1]);
      expect(withinTolerance).toBe(true);
      expect(render(message)).toBe("The mix may be made by these parts.");
    }
    const beyond = record(60);
    expect(beyond.withinTolerance).toBe(false);
    // The nearest of 60 in all is 59 to 1: 1.67 % where 1 in 61, 1.64 %, is wanted.
    expect(render(beyond.message)).toBe(
      "Do not use these parts: they make another mix (Sand 1.67 %, where 1.64 to 1.64 % are allowed). Weigh every material.",
    );
  });

  it("leave out a share below what can be weighed, and keep one on it", () => {
    const used = (sharePct: number) =>
      mixRecord({
        state: "proposed",
        reasons: [],
        materials: [
          { ...SOIL, sharePct: 100 - sharePct },
          { ...SOIL, id: "sand", name: "Sand", sharePct },
        ],
        cementPct: 8,
        cementBulkDensityKgM3: 1200,
        targetMoisturePct: 10,
        batchDryMassKg: 100,
        water: { tolerancePct: 1 },
        tolerances: { shares: {} },
      });
    expect(used(0.05).notUsed).toEqual([]);
    const [told] = renderAll(used(0.049).findings);
    expect(told).toMatchObject({
      code: "share-too-small",
      column: "materials.sand",
      value: "0.049 %",
      expected: "none, or at least 0.05 % of the dry soil and aggregate",
    });
    expect(used(0.049).shares.map(({ sharePct }) => sharePct)).toEqual([100]);
  });
});

describe("buckets", () => {
  it("are full at nine tenths of what the batch has room for", () => {
    // Room for ten: six of soil and three of sand are the mix, and 9 of 10 is full enough for whole buckets.
    const heap = { looseBulkDensityKgM3: 1000, moisturePct: 0 };
    const buckets = (bucketL: number) =>
      mixRecord({
        state: "proposed",
        reasons: [],
        materials: [
          { id: "soil", name: "Soil", sharePct: 200 / 3, ...heap },
          { id: "sand", name: "Sand", sharePct: 100 / 3, ...heap },
        ],
        cementPct: 0,
        targetMoisturePct: 9,
        batchDryMassKg: 100,
        water: { tolerancePct: 1 },
        tolerances: { shares: { sand: { low: 31.4, high: 35.3 } } },
        buckets: { bucketL },
      }).buckets!;
    const counts = (bucketL: number) => buckets(bucketL).materials.map(({ measure }) => measure);
    expect([buckets(10).step, ...counts(10)]).toEqual([1, 6, 3]);
    // Room for eight: six whole buckets are 75 %; halves fill it with five and a half and two and a half (31.3 %
    // is out), or five and two and a half.
    expect([buckets(12.5).step, ...counts(12.5)]).toEqual([0.5, 5, 2.5]);
  });
});

describe("an element", () => {
  const WALL = {
    kind: "wall",
    lengthM: 4,
    heightM: 2,
    thicknessM: 0.4,
    compactedLiftM: 0.1,
    wastePct: 0,
  } as const;
  const options = { recipe: recipe(INPUT), density: { best: 2000 }, bagMassKg: 25 };
  const faults = (element: EarthElement) =>
    renderAll(elementQuantities(element, options).findings).map(
      ({ column, value, expected }) => `${column} ${value}: ${expected}`,
    );
  const wall = (more: object) => faults({ ...WALL, ...more });
  const opening = (widthM: number, heightM: number, more: Partial<WallOpening> = {}) =>
    wall({ openings: [{ widthM, heightM, ...more }] });

  it("may be one lift high, and have no waste", () => {
    expect([wall({ compactedLiftM: 2 }), wall({ wastePct: 0 })]).toEqual([[], []]);
    expect(wall({ compactedLiftM: 2.1 })).toEqual(["element.compacted-lift 2.1: at most 2 m"]);
    expect(wall({ wastePct: -0.1 })).toEqual(["element.waste -0.1: 0 % or above"]);
    expect(wall({ lengthM: 0 })).toEqual(["element.length 0: above 0 m"]);
    const { amounts } = elementQuantities({ ...WALL, compactedLiftM: 0.3 }, options);
    expect([amounts!.lifts, amounts!.lastLiftM]).toEqual([7, expect.closeTo(0.2, 9)]);
  });

  it("has openings that fit it, and leave something of its face", () => {
    // As wide and as high as the wall fits, one by one; then nothing of the face of 8 m² is left.
    expect(opening(4, 2)).toEqual(["element.openings 8 m²: below 8 m²"]);
    expect(opening(3.9, 2)).toEqual([]);
    expect(opening(4.1, 1)).toEqual(["element.openings[0] 4.1: at most 4 m by 2 m"]);
    expect(opening(1, 2.1)).toEqual(["element.openings[0] 1: at most 4 m by 2 m"]);
    expect(opening(2, 1, { count: 3 })).toEqual([]);
    expect(opening(2, 1, { count: 4 })).toEqual(["element.openings 8 m²: below 8 m²"]);
    expect(opening(1, 1, { count: 0 })).toEqual(["element.openings[0] 1: above 0"]);
  });

  it("has sills from its foot to where the opening just fits", () => {
    expect([opening(1, 1.5, { sillM: 0 }), opening(1, 1.5, { sillM: 0.5 })]).toEqual([[], []]);
    expect(opening(1, 1.5, { sillM: 0.6 })).toEqual([
      "element.openings[0] 0.6: a sill from 0 to 0.5 m",
    ]);
    expect(opening(1, 1.5, { sillM: -0.1 })).toEqual([
      "element.openings[0] -0.1: a sill from 0 to 0.5 m",
    ]);
  });

  it("has openings as wide as the longer side of a ring", () => {
    const ring = (lengthM: number, widthM: number, openM: number) =>
      faults({
        ...WALL,
        kind: "ring",
        plan: { shape: "rectangle", lengthM, widthM },
        openings: [{ widthM: openM, heightM: 1 }],
      });
    expect([ring(3, 5, 5), ring(5, 3, 5)]).toEqual([[], []]);
    for (const found of [ring(3, 5, 5.1), ring(5, 3, 5.1)]) {
      expect(found).toEqual(["element.openings[0] 5.1: at most 5 m by 2 m"]);
    }
    const round = faults({
      ...WALL,
      kind: "ring",
      plan: { shape: "round", diameterM: 3 },
      openings: [{ widthM: 3.1, heightM: 1 }],
    });
    expect(round).toEqual(["element.openings[0] 3.1: at most 3 m by 2 m"]);
  });

  it("has the plan and the forms of its sides", () => {
    const amounts = (element: EarthElement) => {
      const { planAreaM2, formAreaM2, netVolumeM3 } = elementQuantities(element, options).amounts!;
      return [planAreaM2, formAreaM2, netVolumeM3].map((value) => Number(value.toFixed(6)));
    };
    const { lengthM, thicknessM, kind, ...shared } = WALL;
    const section = { shape: "rectangle", widthM: 0.4, depthM: 0.7 } as const;
    // 0.28 m² and 2.2 m around, 2 m high, three of them.
    expect(amounts({ ...shared, kind: "pier", section, count: 3 })).toEqual([0.84, 13.2, 1.68]);
    const plan = { shape: "rectangle", lengthM: 6, widthM: 3 } as const;
    // Outside 18 m around, inside 18 − 8 × 0.4 = 14.8 m, in the middle 16.4 m.
    expect(amounts({ ...shared, kind: "ring", plan, thicknessM: 0.4 })).toEqual([
      6.56, 65.6, 13.12,
    ]);
    expect(amounts({ ...WALL })).toEqual([1.6, 17.6, 3.2]);
  });

  it("leaves something inside where it is a ring", () => {
    const ring = (thicknessM: number) =>
      faults({ ...WALL, kind: "ring", thicknessM, plan: { shape: "round", diameterM: 3 } });
    expect(ring(1.49)).toEqual([]);
    expect(ring(1.5)).toEqual(["element.thickness 1.5: below 1.5 m"]);
    const sides = (lengthM: number, widthM: number, thicknessM: number) =>
      faults({
        ...WALL,
        kind: "ring",
        thicknessM,
        plan: { shape: "rectangle", lengthM, widthM },
      });
    expect([sides(3, 5, 1.49), sides(5, 3, 1.49)]).toEqual([[], []]);
    for (const found of [sides(3, 5, 1.5), sides(5, 3, 1.5)]) {
      expect(found).toEqual(["element.thickness 1.5: below 1.5 m"]);
    }
  });

  it("adds up with others, bags counted once", () => {
    const bench = { ...WALL, kind: "bench", lengthM: 2, heightM: 0.5, wastePct: 10 } as const;
    const { total, each } = elementsQuantities(
      [
        { ...WALL, name: "Wall" },
        { ...bench, name: "Bench" },
      ],
      { ...options, density: { best: 2000, low: 1900, high: 2100 } },
    );
    // 3.2 and 0.4 m³, of the bench 0.44 m³ to make: 3.64 m³; 8 of 108 parts are cement.
    expect(each.map(({ name }) => name)).toEqual(["Wall", "Bench"]);
    expect(total!.netVolumeM3).toBeCloseTo(3.6, 9);
    expect(total!.madeVolumeM3).toBeCloseTo(3.64, 9);
    // Both faces and both ends: (2 (4 + 0.4)) 2 and (2 (2 + 0.4)) 0.5.
    expect(total!.formAreaM2).toBeCloseTo(17.6 + 2.4, 9);
    expect(total!.dryMassKg).toEqual({
      low: expect.closeTo(3.64 * 1900, 6),
      high: expect.closeTo(3.64 * 2100, 6),
    });
    expect(total!.cementKg.high).toBeCloseTo((3.64 * 2100 * 8) / 108, 6);
    expect(total!.cementKgM3).toBeCloseTo((2000 * 8) / 108, 6);
    expect(total!.cementBags).toEqual({ low: 21, high: 23 });
    expect(total!.batches).toBeCloseTo((3.64 * 2000) / 10.8, 6);
    expect(total!.mix.dryMassWithCementKg).toBeCloseTo(3.64 * 2000, 6);
  });

  it("is named by its place where there are several", () => {
    const [good, bad] = [
      { ...WALL, name: "Wall" },
      { ...WALL, name: "Low", heightM: 0 },
    ];
    const columns = (...elements: NamedElement[]) =>
      elementsQuantities(elements, options).findings.map(({ column }) => column);
    expect(columns(good, bad)).toEqual(["element.1.height"]);
    expect(columns(bad, good)).toEqual(["element.0.height"]);
    expect(columns(bad)).toEqual(["element.height"]);
    expect(elementsQuantities([], options).total).toBeNull();
    const { each, total } = elementsQuantities([good, bad], options);
    expect([each.map(({ name }) => name), total]).toEqual([["Wall"], null]);
  });
});

describe("sentences with numbers", () => {
  it("of the formwork", () => {
    const use = {
      formAreaM2: 40,
      formsAtHandM2: 12,
      hoursToSetAndRam: 6,
      workingHoursADay: 8,
      strippingHours: 36,
    };
    expect(render(formworkDuration(use).message)).toBe(
      "4 uses of the formwork, 2.3 days each, 9.0 days in all, stripped after 36 h as entered; local rules and curing govern.",
    );
    expect(formworkDuration({ ...use, workingHoursADay: 24 }).days).toBeCloseTo(7, 9);
  });

  it("of damp sand", () => {
    // A quarter more room: a bucket of it holds 1 − 1 / 1.25 less.
    const found = sandBulking({ dampHeight: 125, floodedHeight: 100 });
    expect(found.bulkingPct).toBeCloseTo(25, 9);
    expect(render(found.message)).toContain("holds 20 % less dry sand");
    expect(sandBulking({ dampHeight: 100, floodedHeight: 100 })).toMatchObject({
      status: "ok",
      bulkingPct: 0,
    });
    expect(sandBulking({ dampHeight: 99, floodedHeight: 100 }).status).toBe("reversed");
  });

  it("of cement against cement", () => {
    const range = { name: "Cement", unit: "kg/m3", source: "by hand", basis: "entered" } as const;
    const concreteCement = { id: "content", low: 250, high: 400, ...range };
    const carbonFactor = { id: "factor", low: 0.8, high: 0.9, ...range };
    const walls = { earthCementKg: 300, concreteVolumeM3: 2, concreteCement };
    const found = cementComparison({ ...walls, earthVolumeM3: 3, carbonFactor });
    expect(render(found.statement)).toBe(
      "The earth element holds 38 to 60 % of the cement of a concrete element of 2.00 m³ (cement against cement, by hand).",
    );
    expect(found).toMatchObject({
      earthCementKgM3: 100,
      concreteCementKg: { low: 500, high: 800 },
      cementPctOfConcrete: { low: 37.5, high: 60 },
      earthCementCarbonKg: { low: 240, high: 270 },
      concreteCementCarbonKg: { low: 400, high: 720 },
    });
    const compared = (more: object) => () =>
      cementComparison({ ...walls, earthVolumeM3: 3, carbonFactor, ...more });
    expect(compared({ carbonFactor: { ...carbonFactor, low: 0.9 } })).not.toThrow();
    expect(compared({ carbonFactor: { ...carbonFactor, low: 0.91 } })).toThrow(
      "invalid range `factor`: 0.91 to 0.9; expected above 0, low first",
    );
    expect(compared({ concreteCement: { ...concreteCement, low: 0 } })).toThrow("0 to 400");
    expect(render(savingTrap({ ...walls, concreteDensityKgM3: 2400 }).text)).toBe(
      "300 kg of cement stand where 4800 kg of concrete would have stood. To call that 94 % less cement sets cement against stone: the concrete would have held 500 to 800 kg of cement, so the saving is 40 to 63 %.",
    );
  });

  it("of carbon, and of what makes it", () => {
    const range = {
      name: "Factor",
      unit: "kg CO2e/kg",
      source: "by hand",
      basis: "entered",
    } as const;
    const soil = { id: "soil-factor", low: 0, high: 0.01, ...range };
    const cement = { id: "cement-factor", low: 0.8, high: 0.9, ...range };
    const batch = recipe({ ...INPUT, batchDryMassKg: 1000 });
    const of = (more: object, options: object = {}) =>
      mixCarbon(batch, { factors: { soil, cement, ...more }, ...options });
    // 80 kg of cement and 1000 kg of soil: 64 to 72 and 0 to 10.
    const found = of({});
    expect(render(found.message)).toBe("64 to 82 kg CO2e for making and haul of the materials.");
    expect(found.total).toEqual({ low: 64, high: 82 });
    expect(found.cementPctOfTotal).toEqual({ low: expect.closeTo(87.805, 3), high: 100 });
    expect(found.haulFactor).toBeNull();
    // 1060 kg as carried, 10 km: 10.6 tonne kilometres.
    const road = { id: "road", low: 0.1, high: 0.2, ...range };
    const hauled = of({}, { haulKm: { soil: 10 }, haulFactor: road });
    expect(hauled.lines[0].haul).toEqual({
      low: expect.closeTo(1.06, 12),
      high: expect.closeTo(2.12, 12),
    });
    expect(hauled.haulFactor).toEqual(road);
    const firm = of({ soil: { ...soil, low: 0.01 } }).cementPctOfTotal;
    expect(firm).toEqual({ low: expect.closeTo(86.486, 3), high: expect.closeTo(87.805, 3) });
    expect(of({ soil: { ...soil, high: 0 } }).total).toEqual({ low: 64, high: 72 });
    expect(() => of({ soil: { ...soil, low: -0.01 } })).toThrow(
      "invalid range `soil-factor`: -0.01 to 0.01",
    );
    expect(() => of({ soil: { ...soil, low: 0.02 } })).toThrow("expected 0 or above, low first");
    expect(() => of({ soil: { ...soil, high: Infinity } })).toThrow("0 to Infinity");
    expect(() => of({}, { haulKm: { soil: -1 }, haulFactor: road })).toThrow("`haulKm.soil`: -1");
    const unknown = of({ soil: undefined });
    expect([unknown.status, render(unknown.message)]).toEqual([
      "incomplete",
      "No factor for Soil: not in the total.",
    ]);
    const concrete = {
      wastePct: 0,
      concreteVolumeM3: 1,
      concreteCementCarbonKg: { low: 200, high: 300 },
      aggregate: soil,
    };
    expect(carbonComparison({ carbon: unknown, ...concrete })).toBeNull();
    expect(carbonSaving(unknown, found)).toBeNull();
    expect(carbonSaving(found, unknown)).toBeNull();
    // 1800 to 1900 kg of stone at 0 to 0.01.
    expect(carbonComparison({ carbon: found, ...concrete })!.concrete).toEqual({
      low: 200,
      high: 319,
    });
  });

  it("of what costs less, at prices that may be nothing", () => {
    const at = (cementPct: number) => recipe({ ...INPUT, cementPct, batchDryMassKg: 1000 });
    const saving = (low: number, high: number, soilPrice = 0) =>
      mixSaving({
        mix: at(6),
        other: at(8),
        prices: {
          soil: { price: { low: soilPrice, high: soilPrice, per: "t" } },
          cement: { price: { low, high, per: "t" } },
        },
      });
    // 20 kg of cement: 2 to 4 of money.
    expect(saving(100, 200).saved).toEqual({
      low: expect.closeTo(2, 9),
      high: expect.closeTo(4, 9),
    });
    expect(saving(100, 200).savedCementKg).toBeCloseTo(20, 9);
    // What only one of the mixes holds costs the whole of its price: 1 t of sand.
    const prices = {
      soil: { price: { low: 10, high: 20, per: "t" as const } },
      sand: { price: { low: 30, high: 40, per: "t" as const } },
      cement: { price: { low: 0, high: 0, per: "t" as const } },
    };
    const sandy = recipe({
      ...INPUT,
      materials: [{ ...SOIL, id: "sand", name: "Sand", moisturePct: 0 }],
      batchDryMassKg: 1000,
    });
    const dry = recipe({
      ...INPUT,
      materials: [{ ...SOIL, moisturePct: 0 }],
      batchDryMassKg: 1000,
    });
    expect(mixSaving({ mix: dry, other: sandy, prices }).saved).toEqual({ low: 10, high: 30 });
    expect(mixSaving({ mix: sandy, other: dry, prices }).saved).toEqual({ low: -30, high: -10 });
    expect(render(saving(0, 200).message)).toBe("This mix costs less at all prices given.");
    expect(render(saving(0, 0).message)).toBe("This mix costs less at all prices given.");
    expect(() => saving(-1, 200)).toThrow("`prices.cement.price.low`: -1");
    expect(() => saving(201, 200)).toThrow(
      "`prices.cement.price.high`: 200; expected at least 201",
    );
  });
});

it("refuses a range, an amount or a list that is none", () => {
  expect(() => recipe({ ...INPUT, materials: [] })).toThrow(
    "`materials`: []; expected at least one",
  );
  expect(() => recipe({ ...INPUT, batchDryMassKg: undefined })).toThrow("expected one of the two");
  expect(() => recipe({ ...INPUT, batchDryMassKg: 0 })).toThrow("`batchDryMassKg`: 0");
  expect(() => recipe({ ...INPUT, cementBulkDensityKgM3: 0 })).toThrow(
    "`cementBulkDensityKgM3`: 0",
  );
  const wall: EarthElement = {
    kind: "wall",
    lengthM: 4,
    thicknessM: 0.4,
    heightM: 2,
    compactedLiftM: 0.1,
    wastePct: 0,
  };
  const density = (of: { best: number; low?: number; high?: number }) => () =>
    elementQuantities(wall, { recipe: recipe(INPUT), density: of, bagMassKg: 25 });
  expect(density({ best: 1900, low: 1900, high: 1900 })).not.toThrow();
  expect(density({ best: 1900, low: 1901 })).toThrow(
    "`density`: 1901, 1900, 1900; expected low first",
  );
  expect(density({ best: 1900, high: 1899 })).toThrow("`density`: 1900, 1900, 1899");
  expect(() =>
    truckLoads({ moistMassKg: -1, looseVolumeL: 1 }, { payloadKg: 1, bodyM3: 1 }),
  ).toThrow("`moistMassKg`: -1");
});

it("counts trucks by what fills them first", () => {
  const loads = (moistMassKg: number, looseVolumeL: number | null) =>
    truckLoads({ moistMassKg, looseVolumeL }, { payloadKg: 10_000, bodyM3: 8 });
  expect(loads(20_000, 16_000)).toEqual({ loads: 2, limitedBy: "mass", lastLoadPct: 100 });
  expect(loads(20_000, 16_400)).toEqual({
    loads: 3,
    limitedBy: "volume",
    lastLoadPct: expect.closeTo(5, 9),
  });
  expect(loads(12_500, null)).toEqual({ loads: 2, limitedBy: "mass alone known", lastLoadPct: 25 });
  expect(loads(0, 0)).toMatchObject({ loads: 0, lastLoadPct: 0 });
});

it("a lift is as much lower than its loose mix as its mass takes less room", () => {
  const wall: EarthElement = {
    kind: "wall",
    lengthM: 4,
    thicknessM: 0.4,
    heightM: 2,
    compactedLiftM: 0.1,
    wastePct: 0,
  };
  // 1 kg of dry soil and 0.08 kg of cement fill 0.9 L loosely; 1.08 kg rammed at 1800 kg/m³ 0.6 L.
  const density = { best: 1800 };
  const { amounts } = elementQuantities(wall, { recipe: recipe(INPUT), density, bagMassKg: 25 });
  expect(amounts!.looseLiftM).toBeCloseTo(0.15, 12);
  expect(amounts!.compactedOfLoosePct).toBeCloseTo(200 / 3, 9);
});

it("parts hold no less cement than the mix where nobody gave it a tolerance", () => {
  // 8.5 %: one part to twelve is nearer, at 8.33 %, and one to eleven, at 9.09 %, is not less.
  const { parts } = mixRecord({
    ...INPUT,
    cementPct: 8.5,
    state: "trial",
    reasons: [],
    water: { driestPct: 0, wettestPct: 30 },
    tolerances: { shares: {} },
  });
  expect([parts!.materials[0].measure, parts!.cement!.measure]).toEqual([11, 1]);
  expect(parts!.cement!.sharePct).toBeCloseTo(100 / 11, 9);
});

it("a part that a scale shows as nothing is outside every tolerance", () => {
  const { scale } = mixRecord({
    ...INPUT,
    state: "trial",
    reasons: [],
    water: { driestPct: 0, wettestPct: 30 },
    tolerances: { shares: {} },
    scaleStepKg: 2,
  });
  expect([scale!.cement!.measure, scale!.cement!.withinTolerance]).toEqual([0, false]);
  expect([scale!.materials[0].measure, scale!.materials[0].withinTolerance]).toEqual([10, true]);
  expect(render(scale!.message)).toBe(
    "Do not use this scale: it makes another mix (Cement 0.00 %). Take a finer scale, or a larger batch.",
  );
});

it("general densities and the shrinkage box are those of the record", () => {
  expect(
    DEFAULT_BULK_DENSITIES.map(({ id, valueKgM3, low, high }) => [id, valueKgM3, low, high]),
  ).toEqual([
    ["soil", 1200, 1000, 1450],
    ["sand", 1400, 1200, 1600],
    ["gravel", 1500, 1350, 1650],
    ["cement", 1200, 830, 1650],
  ]);
  const box = FIELD_TESTS.find(({ id }) => id === "shrinkage-box")!;
  expect(render(box.tools)).toContain("600 mm × 40 mm × 40 mm");
  expect(box.conclusions.map(({ seen }) => render(seen))).toEqual([
    "Gap of 0 to 12 mm in 600 mm",
    "12 mm to 24 mm",
    "25 mm to 39 mm",
    "40 mm to 50 mm",
    "More than 50 mm",
  ]);
});

it("the dropped ball is that of its source: 200 g from 2 m, flattened to less than 50 mm", () => {
  const ball = FIELD_TESTS.find(({ id }) => id === "plastic-ball")!;
  const told = [...ball.steps, ...ball.conclusions.map(({ seen }) => seen)].map((text) =>
    render(text),
  );
  expect(told.join(" ")).toMatch(/200 g .* from 2,?0* m.*less than 50 mm.*20 mm to 30 mm/);
});

describe("findings with numbers", () => {
  const told = ({ column, value, message, expected }: Finding) =>
    [column, value ?? "", message, expected].map((part) => render(part ?? ""));

  it("of densities that are missing or general, of soil and of cement", () => {
    const general = recipe({
      ...INPUT,
      materials: [{ ...SOIL, densityBasis: "default" }],
      cementDensityBasis: "default",
    });
    expect(general.findings.map(told).map(([column, value]) => [column, value])).toEqual([
      ["materials.soil.loose-bulk-density", "1200 kg/m³"],
      ["cement.loose-bulk-density", "1200 kg/m³"],
    ]);
    expect(general.findings.map(({ severity, code }) => [severity, code])).toEqual([
      ["warning", "bulk-density-default"],
      ["warning", "bulk-density-default"],
    ]);
    const missing = recipe({
      ...INPUT,
      materials: [{ ...SOIL, looseBulkDensityKgM3: undefined }],
      cementBulkDensityKgM3: undefined,
    });
    expect(missing.findings.map(told).map(([column, , message]) => [column, message])).toEqual([
      [
        "materials.soil.loose-bulk-density",
        "Soil has no loose bulk density, so its volume is not known.",
      ],
      [
        "cement.loose-bulk-density",
        "The cement has no loose bulk density, so its volume is not known.",
      ],
    ]);
    const { status, message, dryMassKg } = recipe({
      ...INPUT,
      cementBulkDensityKgM3: undefined,
      batchDryMassKg: undefined,
      mixerVolumeL: 150,
    });
    expect([status, dryMassKg]).toEqual(["incomplete", 100]);
    expect(render(message)).toContain("masses are for 100 kg of dry soil and aggregate.");
    // Without cement nobody asks for its density.
    expect(recipe({ ...INPUT, cementPct: 0, cementBulkDensityKgM3: undefined }).findings).toEqual(
      [],
    );
  });

  it("of openings that do not fit", () => {
    const wall: EarthElement = {
      kind: "wall",
      lengthM: 4,
      thicknessM: 0.4,
      heightM: 2,
      compactedLiftM: 0.1,
      wastePct: 0,
    };
    const opened = (...openings: WallOpening[]) =>
      elementsFindings([wall, { ...wall, openings }]).map(told);
    expect(opened({ widthM: 4.5, heightM: 1 })).toEqual([
      [
        "element.1.openings[0]",
        "4.5",
        "An opening of 4.5 m by 1 m does not fit the element.",
        "at most 4 m by 2 m",
      ],
    ]);
    expect(opened({ widthM: 1, heightM: 1 }, { widthM: 1, heightM: 1.5, sillM: 0.6 })).toEqual([
      [
        "element.1.openings[1]",
        "0.6",
        "An opening with its sill at 0.6 m does not fit the element.",
        "a sill from 0 to 0.5 m",
      ],
    ]);
    expect(opened({ widthM: 4, heightM: 1, count: 2 })).toEqual([
      [
        "element.1.openings",
        "8 m²",
        "The openings together are as large as the face or larger.",
        "below 8 m²",
      ],
    ]);
    expect(elementsFindings([{ ...wall, lengthM: 0, wastePct: -1 }]).map(told)).toEqual([
      ["element.length", "0", "This measure is not above zero: length.", "above 0 m"],
      ["element.waste", "-1", "The waste is below zero.", "0 % or above"],
    ]);
    const ring: EarthElement = {
      kind: "ring",
      plan: { shape: "rectangle", lengthM: 6, widthM: 4 },
      thicknessM: 2,
      heightM: 2,
      compactedLiftM: 2.1,
      wastePct: 0,
    };
    expect(elementsFindings([ring]).map(told)).toEqual([
      [
        "element.compacted-lift",
        "2.1",
        "A lift is deeper than the element is high.",
        "at most 2 m",
      ],
      [
        "element.thickness",
        "2",
        "The ring's walls meet in the middle: nothing is left inside.",
        "below 2 m",
      ],
    ]);
  });

  it("of prices, each with its entry and what it lacks", () => {
    const batch = recipe({ ...INPUT, cementBulkDensityKgM3: undefined });
    const priced = (prices: Parameters<typeof costRange>[1]) =>
      costRange(batch, prices).findings.map(told);
    const [soil, cement] = priced({
      soil: { price: { low: 4, high: 6 }, haul: { low: 2, high: 2, per: "load" } },
      cement: { price: { low: 90, high: 90, per: "m3" } },
    })
      .map(([column, value, message]) => [column, value, message])
      .filter(([column]) => !column.endsWith("haul"));
    expect(soil).toEqual([
      "materials.soil.price",
      "4 to 6",
      "Soil: the price has no unit, so nobody knows what it is for.",
    ]);
    expect(cement).toEqual([
      "cement.price",
      "90 per m3",
      "Cement: this price can be used only with a loose bulk density, which is missing.",
    ]);
    const { message } = costRange(batch, {});
    expect(render(message)).toBe("Not the whole cost: 2 prices are missing or cannot be used.");
  });

  it("of a scale that is too coarse, and of a share that no scale shows", () => {
    // 10 kg of soil and 0.8 kg of cement: a step of 2 kg shows the cement as nothing.
    const coarse = weighOut(recipe(INPUT), 2);
    expect(render(coarse.message)).toBe(
      "The scale's step of 2 kg is too coarse for Cement: make the batch larger or use a finer scale.",
    );
    expect(
      coarse.lines.map(({ exactKg, weighedKg, sharePct }) => [exactKg, weighedKg, sharePct]),
    ).toEqual([
      [expect.closeTo(10.6, 12), 10, null],
      [0.8, 0, null],
    ]);
    // Densities that are not known, or no cement, stay so; what was said of them is said of this batch too.
    const bare = weighOut(
      recipe({ ...INPUT, materials: [{ ...SOIL, looseBulkDensityKgM3: undefined }], cementPct: 0 }),
      0.5,
    ).batch!;
    expect([bare.status, bare.looseVolumeL, bare.cement.dryMassKg]).toEqual([
      "incomplete",
      null,
      0,
    ]);
    expect(bare.dryMassKg).toBeCloseTo(10.5 / 1.06, 12);
    const general = recipe({ ...INPUT, materials: [{ ...SOIL, densityBasis: "default" }] });
    expect(weighOut(general, 0.1).batch!.findings).toEqual(general.findings);
    const sand = { ...SOIL, id: "sand", name: "Sand", sharePct: 0.04 };
    const bands = { shares: { soil: { low: 95, high: 100 } }, cement: { low: 7.6, high: 8.4 } };
    const record = mixRecord({
      ...INPUT,
      state: "trial",
      reasons: [],
      doubts: ["The curve is in doubt."],
      materials: [{ ...SOIL, sharePct: 99.96 }, sand],
      water: { driestPct: 9, wettestPct: 11 },
      tolerances: bands,
    });
    expect(record.findings.map(told).slice(0, 1)).toEqual([
      [
        "materials.sand",
        "0.04 %",
        "Sand: a share this small cannot be weighed, so the mix was made without it.",
        "none, or at least 0.05 % of the dry soil and aggregate",
      ],
    ]);
    expect(record).toMatchObject({
      doubts: ["The curve is in doubt."],
      cementTolerance: bands.cement,
      shares: [{ id: "soil", sharePct: 100, tolerance: bands.shares.soil }],
      notUsed: [{ id: "sand", name: "Sand" }],
    });
  });

  it("of water, by how wet the heap turns out", () => {
    // 10 kg of soil and 0.8 kg of cement want 1.08 kg of water, and bear 1.188 kg at 11 %.
    const rows = waterByMoisture(recipe(INPUT), [0, 10.8, 12], 11);
    expect(rows).toEqual([
      { heapMoisturePct: 0, toAddKg: expect.closeTo(1.08, 12), surplusKg: 0 },
      { heapMoisturePct: 10.8, toAddKg: expect.closeTo(0, 12), surplusKg: 0 },
      { heapMoisturePct: 12, toAddKg: 0, surplusKg: expect.closeTo(0.012, 12) },
    ]);
    const [alone] = waterByMoisture(
      recipe({ ...INPUT, moistureOf: "soil-and-aggregate" }),
      [12],
      11,
    );
    expect(alone.surplusKg).toBeCloseTo(1.2 - 1.1, 12);
  });
});
