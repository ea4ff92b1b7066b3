import { describe, expect, it } from "vitest";
import { suppliedAmounts } from "../../src/batch/supply.js";
import { supplyTerms } from "../../src/study/studyRecord.js";
import type { StudyResult } from "../../src/study/studyResult.js";
import {
  blendFitTable,
  blendLimitsTable,
  blendPartsTable,
  blendRelaxTable,
  blendSharesTable,
  bucketTable,
} from "../../src/tables/blend.js";
import { carbonTable, comparisonTable, mixReferences } from "../../src/tables/carbon.js";
import { compareMixTable, costTable } from "../../src/tables/cost.js";
import { recipeTable, toleranceTable } from "../../src/tables/mix.js";
import { quantitiesTable, siteOrderList } from "../../src/tables/quantities.js";
import { render } from "../../src/words/render.js";
import { headsOf, itemsOf, notesOf, rowsOf } from "../support/blockText.js";

const SOIL = {
  id: "soil",
  name: "Soil",
  role: "soil",
  minSharePct: 20,
  maxSharePct: 80,
  looseBulkDensityKgM3: 1250,
  moisturePct: 6,
};
const SAND = {
  id: "sand",
  name: "Sand",
  role: "sand",
  minSharePct: 0,
  maxSharePct: 35.7,
  looseBulkDensityKgM3: 1500,
  moisturePct: 4,
  bulkingPct: 12,
  haulKm: 15,
};

describe("tables of the blend", () => {
  const blend = {
    status: "ok",
    target: { kind: "power", exponent: 0.3, topSizeMm: 20 },
    shares: [
      { id: "soil", sharePct: 64.26, bound: 0 },
      { id: "sand", sharePct: 35.74, bound: 1 },
      { id: "clay", sharePct: 0, bound: -1 },
    ],
    points: [{ sizeMm: 0.063, targetPct: 17.76, blendPct: 21.24, differencePct: 3.48 }],
    rmsDifferencePct: 2.346,
    worst: { sizeMm: 0.25, differencePct: -4.26 },
    unique: true,
    limits: [
      { label: "clay", unit: "%", side: "min", limit: 9, value: 11.34, active: false },
      { label: "fines", unit: "%", side: "max", limit: 25, value: 25, active: true },
      {
        label: "sand",
        unit: "%",
        side: "max",
        limit: 40,
        value: 44.4,
        active: false,
        estimate: true,
      },
    ],
  } as never;

  it("share, allowed range and what holds it; nothing that is not used but as such", () => {
    const table = blendSharesTable(blend, [SOIL, SAND] as never);
    expect(headsOf(table)).toEqual(["Material", "Share of dry mass [%]", "Allowed [%]", "Limit"]);
    expect(rowsOf(table)).toEqual([
      ["Soil", "64.3", "20 to 80", "between its limits"],
      ["Sand", "35.7", "0 to 35.7", "at its largest allowed"],
      ["clay", "0.0", "", "not used"],
    ]);
    // shares that the study sets are held, but by none of its limits
    const wide = [SOIL, { ...SAND, maxSharePct: 90 }];
    const set = blendSharesTable(blend, wide as never);
    expect(render(set.caption)).toBe("Shares of the blend, as the study gives them");
    expect(rowsOf(set)[1]).toEqual(["Sand", "35.7", "0 to 90", "given"]);
    // A share that was rounded may lie 0.05 off its limit: 35.74 on 35.7 as above, not on 35.68.
    const beside = [SOIL, { ...SAND, maxSharePct: 35.68 }];
    expect(rowsOf(blendSharesTable(blend, beside as never))[1][3]).toBe("given");
    expect(notesOf(table)[1]).toBe(
      "Root mean square difference from the target: 2.35 points; largest: −4.3 points at 0.25 mm.",
    );
  });

  it("is called by what was sought", () => {
    const caption = (design: object, target?: object) =>
      render(
        blendSharesTable({ ...(blend as object), ...design } as never, [], target as never).caption,
      );
    const band = { target: { kind: "band" } };
    expect(caption({})).toBe("Shares of the blend nearest to the target");
    expect(caption(band)).toBe("Shares of the blend that keeps to the band");
    expect(caption(band, { kind: "band", objective: "least-cost" })).toBe(
      "Shares of the blend that keeps to the band with the least cost",
    );
    expect(caption({ status: "infeasible" })).toContain("no blend keeps them all");
  });

  it("target before blend, and limits with their status", () => {
    expect(headsOf(blendFitTable(blend))).toEqual([
      "Size [mm]",
      "Target [%]",
      "Blend [%]",
      "Difference [points]",
    ]);
    expect(rowsOf(blendFitTable(blend))).toEqual([["0.063", "17.8", "21.2", "3.5"]]);
    const table = blendLimitsTable(blend);
    expect(headsOf(table)).toEqual(["Quantity", "Limit", "Blend", "Status"]);
    expect(rowsOf(table)).toEqual([
      ["clay", "at least 9 %", "11.3 %", "inside"],
      ["fines", "at most 25 %", "25.0 %", "on the limit"],
      ["sand (estimate)", "at most 40 %", "44.4 %", "outside"],
    ]);
  });

  it("what relaxing buys, parts, and a miscounted bucket", () => {
    const relaxed = [
      {
        label: "clay",
        unit: "%",
        side: "min",
        limit: 9,
        relaxedTo: 8,
        gainPct: 0.456,
        siteSoilPct: 61.26,
        costPerT: 12.34,
      },
    ];
    const relax = blendRelaxTable(blend, relaxed as never);
    expect(headsOf(relax)).toEqual([
      "Limit",
      "Now",
      "Relaxed to",
      "Nearer to the target [points]",
      "Site soil [%]",
      "Cost [per t]",
    ]);
    expect(rowsOf(relax)).toEqual([["clay", "at least 9 %", "8 %", "0.46", "61.3", "12.3"]]);
    const parts = blendPartsTable({
      status: "ok",
      by: "volume",
      message: "Two to one.",
      materials: [
        { id: "soil", parts: 2, sharePct: 66.66, changePct: 2.44 },
        { id: "clay", parts: 0, sharePct: 0, changePct: 0 },
      ],
      rmsDifferencePct: 2.567,
      optimumRmsDifferencePct: 2.346,
    } as never);
    expect(headsOf(parts).slice(1)).toEqual([
      "Parts",
      "Share of dry mass [%]",
      "Against the best blend [points]",
    ]);
    expect(rowsOf(parts)).toEqual([["soil", "2", "66.7", "2.4"]]);
    expect(notesOf(parts)[1]).toContain(
      "differ from the target by 2.57 points, the best blend by 2.35",
    );
    const change = { id: "soil", change: -1, rmsDifferencePct: 3.456, keepsLimits: false };
    const worst = { sizeMm: 0.5, differencePct: -7.66 };
    expect(rowsOf(bucketTable([{ ...change, worst }] as never))).toEqual([
      ["one less of soil", "3.46", "0.5 mm (−7.7 points)", "broken"],
    ]);
  });
});

/** A batch of 100 kg: the arithmetic of the expectations is done by hand from these. */
const RECIPE = {
  status: "ok",
  materials: [
    {
      id: "soil",
      name: "Soil",
      sharePct: 64.26,
      dryMassKg: 64.26,
      moistMassKg: 68.12,
      looseVolumeL: 51.41,
      partsToCement: 7.71,
    },
    {
      id: "sand",
      name: "Sand",
      sharePct: 35.74,
      dryMassKg: 35.74,
      moistMassKg: 37.17,
      looseVolumeL: 26.69,
      partsToCement: 4.003,
    },
  ],
  cement: {
    id: "cement",
    name: "Cement A",
    sharePct: 8,
    dryMassKg: 8,
    moistMassKg: 8.01,
    looseVolumeL: 6.667,
    partsToCement: 1,
  },
  water: { targetKg: 10.8, inMaterialsKg: 5.285, toAddKg: 5.515, surplusKg: 0 },
  dryMassKg: 100,
  looseVolumeL: 84.77,
  cementPct: 8,
  cementOfAllPct: 7.407,
  cementByVolumePct: 7.864,
  targetMoisturePct: 10,
};
/** 84.77 L in 13 parts. */
const PARTS = {
  by: "parts",
  size: 6.521,
  message: "8 : 4 : 1.",
  withinTolerance: true,
  materials: [
    { id: "soil", measure: 8 },
    { id: "sand", measure: 4 },
  ],
  cement: { id: "cement", measure: 1, sharePct: 7.96 },
};
const line = (
  id: string,
  name: string,
  making: object | null,
  haul: object | null,
  factor?: object,
) => ({
  id,
  name,
  making,
  haul,
  factor,
});
const FACTOR = {
  id: "f",
  name: "Cement factor",
  unit: "kg CO2e/kg",
  low: 0.8,
  high: 0.9,
  source: "Declaration",
  basis: "read",
};
const HAUL = {
  id: "h",
  name: "Road",
  unit: "kg CO2e/t km",
  low: 0.1,
  high: 0.2,
  source: "Tables",
  basis: "memory",
};
const MIX = {
  recipe: RECIPE,
  parts: PARTS,
  density: { valueKgM3: 1900, lowKgM3: 1881, highKgM3: 1938, basis: "blocks" },
  water: {
    basis: "test",
    fromTest: { relativePct: 98 },
    window: {
      status: "ok",
      targetMoisturePct: 10,
      moisturePct: { low: 9.04, high: 11.06 },
      toAddKg: { low: 4.44, target: 5.515, high: 6.66 },
    },
  },
  quantities: {
    netVolumeM3: 4.321,
    madeVolumeM3: 4.753,
    formAreaM2: 33.44,
    lifts: 20,
    compactedLiftM: 0.1,
    lastLiftM: 0.07,
    looseLiftM: 0.163,
    compactedOfLoosePct: 61.4,
    batches: 83.2,
    batchesPerLift: 4.16,
    cementKg: { low: 660.1, high: 680.3 },
    cementBags: { low: 27, high: 28 },
    mix: {
      ...RECIPE,
      materials: [
        { id: "soil", name: "Soil", dryMassKg: 5346, moistMassKg: 5667, looseVolumeL: 4277 },
        { id: "sand", name: "Sand", dryMassKg: 2973, moistMassKg: 3092, looseVolumeL: null },
      ],
      cement: {
        id: "cement",
        name: "Cement A",
        dryMassKg: 665.6,
        moistMassKg: 665.6,
        looseVolumeL: 554.7,
      },
      water: { toAddKg: 458.8 },
    },
  },
  cost: {
    status: "ok",
    message: "All priced.",
    lines: [
      line("soil", "Soil", null, null),
      {
        id: "sand",
        name: "Sand",
        material: { low: 30.2, high: 40.4 },
        haul: { low: 11.1, high: 11.3 },
      },
      { id: "cement", name: "Cement A", material: { low: 99.6, high: 133.3 }, haul: null },
    ].map((each) => ({ material: null, ...each })),
    total: { low: 140.9, high: 185 },
  },
  carbon: {
    status: "ok",
    message: "",
    lines: [
      line("sand", "Sand", { low: 14.4, high: 16.6 }, { low: 4.44, high: 5.56 }),
      line("cement", "Cement A", { low: 532.5, high: 599 }, null, FACTOR),
    ],
    haulFactor: HAUL,
    total: { low: 551.3, high: 621.2 },
    cementPctOfTotal: { low: 86.4, high: 97.6 },
  },
  comparison: {
    earthCementKg: 605.1,
    earthCementCarbonKg: { low: 484, high: 544.6 },
    concreteCementKg: { low: 1296, high: 1512 },
    concreteCementCarbonKg: { low: 1037, high: 1361 },
    cementPctOfConcrete: { low: 40.02, high: 46.69 },
    carbonFactor: FACTOR,
    concreteCement: {
      name: "Ready mix",
      unit: "kg/m³",
      low: 300,
      high: 350,
      source: "Plant",
      basis: "entered",
    },
  },
  carbonComparison: {
    earth: { low: 501, high: 565 },
    concrete: { low: 1100, high: 1450 },
    earthPctOfConcrete: { low: 34.6, high: 51.4 },
  },
};
const CONFIG = {
  units: "SI",
  currency: "EUR",
  materials: [
    SOIL,
    { ...SAND, price: { written: "10 to 13 per t" }, haul: { written: "3.7 per t" }, lossPct: 5 },
  ],
  cement: { name: "Cement A", bagMassKg: 25, price: { written: "3.7 to 4.9 per bag" } },
  batchDryMassKg: 120,
  elements: [{ name: "Wall", wastePct: 10, compactedLiftM: 0.1 }],
  site: {},
  carbon: {},
  strength: { requirement: { ageDays: 28 } },
};
/** The study with the record that its mix is read from. */
const resultOf = (config: object) => {
  const record = {
    batch: RECIPE,
    askedDryMassKg: 120,
    parts: PARTS,
    elements: [{ name: "Wall", amounts: MIX.quantities }],
    total: MIX.quantities,
    batches: 84,
    order: suppliedAmounts(MIX.quantities.mix as never, supplyTerms(config as never)),
    messages: [],
  };
  return { config, mix: { ...MIX, record }, materials: [] } as unknown as StudyResult;
};
const RESULT = resultOf(CONFIG);
const US = resultOf({ ...CONFIG, units: "US" });

describe("the recipe", () => {
  it("dry before moist mass, loose volume, ratio and whole parts with their size", () => {
    const table = recipeTable(RESULT);
    expect(headsOf(table)).toEqual([
      "Material",
      "Share of dry mass [%]",
      "Dry mass [kg]",
      "Moist mass [kg]",
      "Loose volume [L]",
      "Volumes to one of cement",
      "Whole parts by volume",
    ]);
    expect(rowsOf(table)).toEqual([
      ["Soil", "64.3", "64.3", "68.1", "51.4", "7.71", "8"],
      ["Sand", "35.7", "35.7", "37.2", "26.7", "4.00", "4"],
      ["Cement A", "8 (of dry mass)", "8.00", "8.01", "6.67", "1.00", "1"],
      ["Water to add", "–", "–", "5.51", "5.51", "–", "–"],
    ]);
    expect(notesOf(table)).toEqual([
      "Shares are percentages of the dry mass of soil and aggregate; cement is a percentage of that mass, in addition to the 100 %. Cement is 7.4 % of all dry mass and 7.9 % of the loose volumes.",
      "Water for 10.0 % of the dry mass of all solids, the optimum of the compaction test; the damp materials bring 5.29 kg of it.",
      "Ram between 9.0 and 11.1 %, where the compaction test keeps 98 % of its maximum dry density: add 4.44 kg to 6.66 kg.",
      "Loose volumes count the bulking of damp material over dry: Sand 12 %. It changes with moisture: repeat the flooding test when the heap is damper or drier.",
      "Of the 120 kg asked for, the batch is what whole buckets of soil and aggregate hold; cards, log and order list are of this batch.",
      "Whole parts: 8 : 4 : 1. These parts hold 8.0 % cement by dry mass of soil and aggregate; the recipe asks for 8 %. One part of this batch is about 6.52 L.",
    ]);
  });

  it("in pounds and cubic feet", () => {
    // 64.26 / 0.45359237; 68.12 / 0.45359237; 51.41 L / 28.316846592.
    expect(headsOf(recipeTable(US)).slice(2, 5)).toEqual([
      "Dry mass [lb]",
      "Moist mass [lb]",
      "Loose volume [ft³]",
    ]);
    expect(rowsOf(recipeTable(US))[0].slice(2, 5)).toEqual(["142", "150", "1.82"]);
  });

  it("tolerances from low to high", () => {
    const table = toleranceTable({
      ...RESULT,
      strength: { leastCement: { cementPct: 7.801 } },
    } as never);
    expect(headsOf(table)).toEqual(["Item", "Value", "From", "To", "Checked on site by", "Basis"]);
    // ± 5 % of a share and of cement, but never below the least: 7.801 is printed as 7.81.
    expect(rowsOf(table).map((row) => row.slice(0, 4))).toEqual([
      ["Soil", "64.3 %", "61.0 %", "67.5 %"],
      ["Sand", "35.7 %", "34.0 %", "37.5 %"],
      ["Cement A", "8.00 %", "7.81 %", "8.40 %"],
      ["Moisture at compaction", "10.0 %", "9.0 %", "11.1 %"],
      ["Dry density, rammed", "1900 kg/m³", "1881 kg/m³", "–"],
      ["Compacted lift thickness", "100 mm", "80.0 mm", "120 mm"],
    ]);
    // 100 × 8.05 is a little more than 805 to a computer: no reason to round it up.
    const exact = { ...RESULT, strength: { leastCement: { cementPct: 8.05 } } };
    expect(rowsOf(toleranceTable(exact as never))[2][2]).toBe("8.05 %");
  });
});

describe("quantities and orders", () => {
  it("net before made volume, moist masses, bags, lifts and forms", () => {
    expect(itemsOf(quantitiesTable(RESULT))).toEqual({
      "Rammed volume, net of openings": "4.32 m³",
      "Rammed volume to make": "4.75 m³, with 10 % waste",
      "Dry density, rammed": "1900 kg/m³ (blocks)",
      "Soil, moist mass": "5667 kg, 4.28 m³ loose",
      // 3092 × 1.05.
      "Sand, moist mass": "3247 kg, 5 % loss in the heap and on the way included",
      "Cement A":
        "665.6 kg (660.1 kg to 680.3 kg over the blocks' densities), 27 to 28 bags of 25 kg",
      "Water to add": "458.8 kg",
      Batches: "84 of the size above",
      Lifts: "20 of 100 mm rammed, the last of 70.0 mm",
      "Loose lift thickness":
        "at most 163 mm, rammed to about 61 % of it; try it at the first lift",
      "Form area, all faces": "33.4 m², ends and reveals counted",
      "Strip forms after":
        "not entered; 24 hours is common practice without a source, and local rules, engineer and curing govern",
    });
    // 665.6, 660.1 and 680.3 × 1.04; the bags are those that were counted with the loss.
    const lost = { ...CONFIG, cement: { ...CONFIG.cement, lossPct: 4 } };
    expect(itemsOf(quantitiesTable(resultOf(lost)))["Cement A"]).toBe(
      "692.2 kg (686.5 kg to 707.5 kg over the blocks' densities), 27 to 28 bags of 25 kg, 4 % loss in the heap and on the way included",
    );
    // 33.44 m² / 0.09290304; 4.321 m³ / 0.764554857984.
    const us = itemsOf(quantitiesTable(US));
    expect(us["Form area, all faces"]).toContain("360 ft²");
    expect(us["Rammed volume, net of openings"]).toBe("5.65 yd³");
  });

  it("orders from the light to the heavy mix, with truck loads by mass or volume", () => {
    const [table] = siteOrderList(RESULT).blocks;
    expect(headsOf(table)).toEqual([
      "Material",
      "Moist mass, as delivered",
      "Loose, at most",
      "Bags",
    ]);
    // × 0.99 and × 1.02: 5667 → 5610 to 5780; 4.277 m³ → 4.4; of the sand 5 % is lost: 3092 × 1.05.
    expect(rowsOf(table)).toEqual([
      ["Soil", "5610 kg to 5780 kg", "4.4 m³", "–"],
      ["Sand", "3214 kg to 3312 kg", "–", "–"],
      ["Cement A", "659 kg to 679 kg", "–", "27 to 28"],
    ]);
    const truck = { payloadKg: 2000, bodyM3: 1 };
    const [loads] = siteOrderList(RESULT, { truck }).blocks;
    // 4.36 m³ of soil fill five bodies of 1 m³; 3312 kg of sand are two loads.
    expect(rowsOf(loads).map((row) => row[3])).toEqual(["5", "2", "27 to 28 bags"]);
    expect(itemsOf(quantitiesTable(resultOf({ ...CONFIG, site: { truck } })))).toMatchObject({
      "Sand, moist mass": "3247 kg, 2 truck loads, 5 % loss in the heap and on the way included",
    });
  });
});

describe("cost and carbon", () => {
  it("purchase before haulage, low to high, and sums of each", () => {
    const table = costTable(RESULT);
    expect(headsOf(table)).toEqual([
      "Material",
      "Price, as entered",
      "Purchase [EUR]",
      "Haulage [EUR]",
    ]);
    expect(rowsOf(table)).toEqual([
      ["Soil", "–", "–", "–"],
      ["Sand", "10 to 13 per t, haulage 3.7 per t, 5 % lost", "30 to 40", "11"],
      ["Cement A", "3.7 to 4.9 per bag", "100 to 133", "–"],
      ["Total", "", "130 to 174", "11"],
      ["Purchase and haulage", "", "", "141 to 185"],
    ]);
    const ranged = "Low adds all low prices, high all high ones";
    expect(notesOf(table).join(" ")).toContain(ranged);
    const { cost } = RESULT.mix!;
    const firm = { ...cost!, total: { low: 150, high: 150 } };
    const one = costTable({ ...RESULT, mix: { ...RESULT.mix!, cost: firm } });
    expect(notesOf(one).join(" ")).not.toContain(ranged);
  });

  it("carbon of manufacture and haulage with the factors used", () => {
    const table = carbonTable(RESULT);
    expect(headsOf(table)).toEqual(["Material", "Manufacture [kg]", "Haulage [kg]"]);
    expect(rowsOf(table)).toEqual([
      ["Sand", "14.4 to 16.6", "4.44 to 5.56"],
      ["Cement A", "533 to 599", "–"],
      ["Manufacture and haulage together", "551 to 621", ""],
    ]);
    expect(notesOf(table).slice(0, 4)).toEqual([
      "Cement makes 86 to 98 % of it.",
      "Cement factor: 0.8 to 0.9 kg CO2e/kg (Declaration; read).",
      "Road: 0.1 to 0.2 kg CO2e/t km (Tables; from memory).",
      "Haulage, one way: Sand 15 km. What has no distance is not hauled in this account.",
    ]);
    // 14.4 kg / 0.45359237
    expect(rowsOf(carbonTable(US))[0][1]).toBe("31.7 to 36.6");
    expect(
      mixReferences(MIX as never).map(({ text, mark }) => [render(text), render(mark)]),
    ).toEqual([
      ["Declaration: carbon of Cement factor", "read"],
      ["Tables: carbon of Road", "from memory"],
      ["Plant: cement in concrete", "as entered, not checked"],
    ]);
  });

  it("hauls what is in the mix, and nothing else", () => {
    const stone = { id: "stone", name: "Stone", role: "gravel", moisturePct: 1, haulKm: 99 };
    const config = { ...CONFIG, materials: [...CONFIG.materials, stone] };
    const notes = notesOf(carbonTable(resultOf(config))).join(" ");
    expect(notes).toContain("Sand 15 km");
    expect(notes).not.toContain("Stone");
  });

  it("earth beside concrete: cement, its carbon, all carbon", () => {
    const table = comparisonTable(RESULT);
    expect(headsOf(table)).toEqual([
      "Element",
      "Cement [kg]",
      "CO₂e of that cement [kg]",
      "CO₂e of all materials [kg]",
    ]);
    expect(rowsOf(table)).toEqual([
      ["Earth, as specified", "605", "484 to 545", "501 to 565"],
      ["Concrete, same volume", "1296 to 1512", "1037 to 1361", "1100 to 1450"],
    ]);
    expect(notesOf(table)[0]).toContain("holds 40 to 47 % of the cement");
    expect(notesOf(table)[1]).toContain("35 to 51 % of the carbon");
    // Beside a concrete wall of its own volume, that is named.
    const thinner = { ...CONFIG, carbon: { concreteVolumeM3: 2.5 } };
    const beside = comparisonTable({ ...RESULT, config: thinner } as never);
    expect(rowsOf(beside)[1][0]).toBe("Concrete of 2.50 m³");
    expect(notesOf(beside)[0]).toBe(
      "The earth element holds 40 to 47 % of the cement of the concrete element.",
    );
  });

  it("what is saved is the other mix less this one", () => {
    const quantities = {
      ...MIX.quantities,
      cementBags: { low: 35, high: 36 },
      mix: {
        ...MIX.quantities.mix,
        cementPct: 10.5,
        cement: { dryMassKg: 873.6 },
        materials: [
          { id: "soil", name: "Soil", moistMassKg: 4000 },
          { id: "sand", name: "Sand", moistMassKg: 5000 },
        ],
      },
    };
    const compared = {
      name: "Old mix",
      basis: "last year",
      quantities,
      cost: { total: { low: 200.4, high: 260.6 } },
      carbon: { total: { low: 700, high: 810 } },
      saving: { saved: { low: 59.5, high: 75.6 }, message: "Costs less." },
      savedCementKg: 208,
      savedCarbonKg: { low: 148.7, high: 188.8 },
    };
    const config = { ...CONFIG, compareMix: { sharesPct: { soil: 45, sand: 55 } } };
    const table = compareMixTable({ config, mix: { ...MIX, compared } } as never);
    expect(headsOf(table)).toEqual(["For the element", "This mix", "Other mix", "Saved"]);
    expect(rowsOf(table)).toEqual([
      ["Cement, % of dry soil and aggregate", "8.0", "10.5", "2.5"],
      ["Cement, kg", "665.6", "873.6", "208.0"],
      ["Cement, bags", "27 to 28", "35 to 36", ""],
      ["Sand and gravel, kg as delivered", "3092", "5000", "1908"],
      ["Cost, EUR", "141 to 185", "200 to 261", "60 to 76"],
      ["Carbon, kg CO₂e", "551.3 to 621.2", "700.0 to 810.0", "148.7 to 188.8"],
    ]);
    expect(notesOf(table)[0]).toBe("Other mix: Soil 45.0 %, Sand 55.0 %; last year");
  });
});
