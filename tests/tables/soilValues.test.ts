import { describe, expect, it } from "vitest";
import type { HydrometerAnalysis } from "../../src/grading/sedimentation/hydrometer.js";
import type { PipetteAnalysis } from "../../src/grading/sedimentation/pipette.js";
import type { SieveAnalysis } from "../../src/grading/sieveAnalysis.js";
import type { CompactionAnalysis } from "../../src/soil/compaction/compactionTest.js";
import type { CurveUncertainty } from "../../src/soil/curveUncertainty.js";
import {
  jarTable,
  pipetteTable,
  sedimentationTable,
  sievingTable,
  sizesTable,
} from "../../src/tables/grading.js";
import { classesTable, intervalsTable } from "../../src/tables/gradingUncertainty.js";
import {
  compactionTable,
  limitsTable,
  modelTable,
  moistureWindowTable,
} from "../../src/tables/soil.js";
import { headsOf, itemsOf, notesOf, rowsOf } from "../support/blockText.js";

const WATER = { water: "modern" } as const;

// Each input has another value in every field, so that no two cells can change places unseen.

describe("tables of a grading", () => {
  const sieve = {
    rows: [
      {
        label: "19 mm",
        sizeMm: 19,
        portion: 0,
        retainedG: 12.34,
        retainedPct: 1.26,
        passingPct: 98.74,
      },
      {
        label: "No. 10",
        sizeMm: 2,
        portion: 1,
        retainedG: 45.67,
        retainedPct: 9.87,
        passingPct: 88.87,
      },
    ],
    sets: [
      { portion: 0, dryMassG: 980.04, washedOutG: 70.26, lossPct: 0.126 },
      { portion: 1, dryMassG: 210.5, washedOutG: 31.4 },
    ],
  } as unknown as SieveAnalysis;

  it("sieving: what stayed in grams, then in percent, then what passed", () => {
    const table = sievingTable("Pit 1", sieve);
    expect(headsOf(table)).toEqual([
      "Sieve",
      "Opening [mm]",
      "Sieved on",
      "Retained [g]",
      "Retained, of the whole [%]",
      "Passing [%]",
    ]);
    expect(rowsOf(table)).toEqual([
      ["19 mm", "19", "Whole sample", "12.3", "1.3", "98.7"],
      ["No. 10", "2", "Subsample", "45.7", "9.9", "88.9"],
    ]);
    expect(notesOf(table)).toEqual([
      "Whole sample: 980.0 g dry, 70.3 g washed out, 0.13 % not recovered.",
      "Subsample: 210.5 g dry, 31.4 g washed out.",
    ]);
  });

  it("sieving: several divisions are numbered, none has no column", () => {
    const third = { portion: 2, dryMassG: 50, washedOutG: 4 };
    const several = { ...sieve, sets: [...sieve.sets, third] } as SieveAnalysis;
    expect(rowsOf(sievingTable("Pit 1", several))[1][2]).toBe("Subsample 1");
    const undivided = { rows: [sieve.rows[0]], sets: [sieve.sets[0]] } as unknown as SieveAnalysis;
    expect(headsOf(sievingTable("Pit 1", undivided))).not.toContain("Sieved on");
  });

  it("characteristic sizes and fractions, each under its own head", () => {
    const table = sizesTable("Sizes", [
      {
        name: "Pit 1",
        sizes: { d10: 0.00123, d30: 0.0345, d60: 0.567, cu: 461, cc: 1.71 },
        fractions: {
          clayPct: 11.14,
          siltPct: 22.26,
          finesPct: 33.4,
          sandPct: 44.44,
          gravelPct: 22.16,
          boundaries: { clayMm: 0.002, siltMm: 0.063, sandMm: 2, gravelMm: 63 },
        },
      } as never,
      {
        name: "Sand",
        sizes: {},
        fractions: { boundaries: { clayMm: 0.002, siltMm: 0.063, sandMm: 2, gravelMm: 63 } },
      } as never,
    ]);
    expect(headsOf(table)).toEqual([
      "Curve",
      "D10 [mm]",
      "D30 [mm]",
      "D60 [mm]",
      "Cu",
      "Cc",
      "Clay [%]",
      "Silt [%]",
      "Fines [%]",
      "Sand [%]",
      "Gravel [%]",
    ]);
    expect(rowsOf(table)).toEqual([
      [
        "Pit 1",
        "0.00123",
        "0.0345",
        "0.567",
        "461",
        "1.71",
        "11.1",
        "22.3",
        "33.4",
        "44.4",
        "22.2",
      ],
      ["Sand", ...Array.from({ length: 10 }, () => "–")],
    ]);
    expect(notesOf(table).at(-1)).toContain(
      "clay below 0.002 mm, silt to 0.063 mm, sand to 2 mm, gravel to 63 mm.",
    );
  });

  const reading = {
    timeMin: 15,
    temperatureC: 21.04,
    correctedReading: 24.56,
    effectiveDepthCm: 11.234,
    viscosityMPaS: 0.98,
    sizeMm: 0.01234,
    finerOfDispersedPct: 56.78,
    passingPct: 34.56,
  };

  it("the fineness modulus of a sand, with what was read off its curve", () => {
    const point = (sizeMm: number, passingPct: number) => ({
      sizeMm,
      passingPct,
      origin: "sieve" as const,
    });
    const fractions = { boundaries: { clayMm: 0.002, siltMm: 0.063, sandMm: 2, gravelMm: 63 } };
    // By hand: 100 + 80 + 65 + 30 of 0.3 to 2.36 mm, all of 0.15 mm: 3.75.
    const curve = {
      points: [point(0.3, 0), point(0.6, 20), point(1.18, 35), point(2.36, 70), point(4.75, 100)],
    };
    const coarse = { points: curve.points.filter(({ sizeMm }) => sizeMm !== 1.18) };
    const entry = (name: string, role: string, of: object) => ({
      name,
      role,
      sizes: {},
      fractions,
      curve: of,
    });
    const notes = (...entries: object[]) => notesOf(sizesTable("Sizes", entries as never))[0];
    expect(notes(entry("River sand", "sand", curve), entry("Soil", "soil", curve))).toBe(
      "Fineness modulus: River sand 3.75.",
    );
    expect(notes(entry("Pit sand", "sand", coarse))).toMatch(
      /^Fineness modulus: Pit sand 3\.\d\d, 1 of its sieves read off the curve\.$/,
    );
    expect(notes(entry("Soil", "soil", curve))).not.toContain("Fineness");
  });

  it("a hydrometer by the units of its record", () => {
    const table = sedimentationTable("Pit 1", {
      rows: [reading],
      ...WATER,
    } as unknown as HydrometerAnalysis);
    expect(headsOf(table)).toEqual([
      "Time [min]",
      "Temperature [°C]",
      "Corrected reading",
      "Effective depth [cm]",
      "Size [mm]",
      "Finer, of the dispersed mass [%]",
      "Passing, of the whole [%]",
    ]);
    expect(rowsOf(table)).toEqual([["15", "21.0", "24.6", "11.23", "0.0123", "56.8", "34.6"]]);
  });

  it("a BS hydrometer in thousandths, with its own size and a computed control", () => {
    const table = sedimentationTable("Pit 1", {
      ...WATER,
      hydrometer: "BS",
      rows: [
        { ...reading, correctedReading: 0.01456, computedControl: 1.00123, bsSizeMm: 0.0131 },
        { ...reading, correctedReading: 0.01456, bsSizeMm: 0.0131 },
      ],
      corrections: { dispersant: 0.0032, calibrationC: 20 },
    } as unknown as HydrometerAnalysis);
    expect(headsOf(table).slice(2, 7)).toEqual([
      "Control, computed",
      "Corrected reading",
      "Effective depth [cm]",
      "Size [mm]",
      "Size, form of BS 1377-2 [mm]",
    ]);
    expect(rowsOf(table)[0].slice(2, 7)).toEqual(["1.23", "14.6", "11.23", "0.0123", "0.0131"]);
    expect(rowsOf(table)[1][2]).toBe("–");
    expect(notesOf(table)[0]).toContain("dispersant's 3.2 units");
  });

  it("a computed control with the digits that count: near 1 those behind the zeros", () => {
    const controls = [1.00123, 1.9999, 2, 3.456].map((computedControl) => ({
      ...reading,
      computedControl,
    }));
    const analysis = { ...WATER, hydrometer: "152H", rows: controls };
    const table = sedimentationTable("Pit 1", analysis as unknown as HydrometerAnalysis);
    expect(rowsOf(table).map((row) => row[2])).toEqual(["1.0012", "1.9999", "2.00", "3.46"]);
  });

  it("says of an old form of test that it was withdrawn, and of no other", () => {
    const notes = (water: string) =>
      notesOf(
        sedimentationTable("Pit 1", {
          ...WATER,
          water,
          method: "our own",
          rows: [reading],
        } as unknown as HydrometerAnalysis),
      ).join(" ");
    expect(notes("ASTM D422")).toContain("our own. ASTM D422 was withdrawn in 2016");
    expect(notes("modern")).toContain("as stated: our own.");
    expect(notes("modern")).not.toContain("withdrawn");
  });

  it("a hydrometer's depths say where they come from", () => {
    const noteOf = (calibration: object, hydrometer = "151H") =>
      notesOf(
        sedimentationTable("Pit 1", {
          rows: [reading],
          ...WATER,
          hydrometer,
          calibration,
        } as unknown as HydrometerAnalysis),
      ).find((note) => note.startsWith("Effective depth"));
    const depths = [
      { reading: 1, depthCm: 20.004 },
      { reading: 1.03, depthCm: 8.5 },
    ];
    expect(noteOf({ depths })).toBe(
      "Effective depth by the instrument's own calibration: 1 at 20.00 cm; 1.03 at 8.50 cm.",
    );
    expect(noteOf({ depths }, "BS")).toContain("calibration: 0 at 20.00 cm; 30 at 8.50 cm.");
    // Five digits of a scale of specific gravity, four of its thousandths, hundredths of a centimetre.
    const fine = { depths: [{ reading: 1.030126, depthCm: 8.504 }] };
    expect(noteOf(fine)).toContain("calibration: 1.0301 at 8.50 cm.");
    expect(noteOf(fine, "BS")).toContain("calibration: 30.13 at 8.50 cm.");
    const marks = [
      { reading: 0, toNeckCm: 10.5 },
      { reading: 60, toNeckCm: 2.25 },
    ];
    const own = { bulbLengthCm: 14, bulbVolumeCm3: 67.04, cylinderAreaCm2: 27.85, marks };
    expect(noteOf(own)).toBe(
      "Effective depth by the instrument's own dimensions: bulb 14.00 cm and 67.0 cm³, cylinder 27.9 cm²; to the neck 10.50 cm at 0; 2.25 cm at 60.",
    );
    // Without a length of the bulb the distances are to its middle.
    expect(noteOf({ ...own, bulbLengthCm: 0 })).toBe(
      "Effective depth by the instrument's own dimensions: bulb 67.0 cm³, cylinder 27.9 cm²; to the middle of the bulb 10.50 cm at 0; 2.25 cm at 60.",
    );
  });

  it("a pipette with its grams", () => {
    const table = pipetteTable("Pit 1", {
      ...WATER,
      rows: [
        {
          timeMin: 4.7,
          temperatureC: 20.16,
          depthMm: 100,
          sizeMm: 0.01987,
          finerG: 10.126,
          finerOfDispersedPct: 50.64,
          passingPct: 20.26,
        },
      ],
      pretreatment: { text: "washed", lossPct: 1.26 },
    } as unknown as PipetteAnalysis);
    expect(headsOf(table)).toEqual([
      "Time [min]",
      "Temperature [°C]",
      "Depth of the tip [mm]",
      "Size [mm]",
      "Finer, in the cylinder [g]",
      "Finer, of the dispersed mass [%]",
      "Passing, of the whole [%]",
    ]);
    expect(rowsOf(table)).toEqual([["4.7", "20.2", "100", "0.0199", "10.13", "50.6", "20.3"]]);
    expect(notesOf(table)[0]).toContain("washed; 1.3 % of the dry mass was lost");
  });

  it("a jar with its interval, lowest first", () => {
    const table = jarTable("Pit 1", {
      shares: [
        {
          name: "silt",
          heightMm: 41,
          heightSharePct: 30.6,
          lowPct: 24.4,
          highPct: 36.6,
          finestMm: 0.0021,
        },
        { name: "clay", heightMm: 20, heightSharePct: 15, lowPct: 4, highPct: 9, finestMm: 0.0011 },
      ],
      laboratory: [
        { name: "silt", laboratoryPct: 33.33, agrees: true },
        { name: "clay", laboratoryPct: 11.1, agrees: false },
      ],
    } as never);
    expect(headsOf(table)).toEqual([
      "Layer",
      "Height [mm]",
      "Share of the height [%]",
      "Share of mass consistent with it [%]",
      "Laboratory, of the mass in the jar [%]",
      "Agrees",
      "Finest size settled [mm]",
    ]);
    expect(rowsOf(table)).toEqual([
      ["silt", "41", "31", "24 to 37", "33.3", "yes", "0.00210"],
      ["clay", "20", "15", "4 to 9", "11.1", "no", "0.00110"],
    ]);
  });
});

describe("tables of what the reading errors leave open", () => {
  const found = {
    quantities: [
      { quantity: "d30", unit: "mm", low: 0.0111, median: 0.0222, high: 0.0333 },
      { quantity: "clayPct", unit: "%", low: 10.1, median: 12.2, high: 14.3 },
    ],
    errors: {
      balanceG: 0.1,
      sievingPct: 0.2,
      hydrometerUnits: 0.3,
      temperatureC: 0.4,
      timeS: 5,
      particleDensityKgM3: 20,
    },
    resamples: 250,
    seed: 7,
    classes: [
      {
        system: "uscs",
        likelihoods: [
          { label: "clayey sand", share: 0.936 },
          { label: "silty sand", share: 0.034 },
          { label: "lean clay", share: 0.004 },
        ],
      },
      { system: "usda", likelihoods: [{ label: "sandy loam", share: 1 }] },
    ],
  } as unknown as CurveUncertainty;

  it("low, median, high", () => {
    const table = intervalsTable("Pit 1", found);
    expect(headsOf(table)).toEqual(["Quantity", "Low", "Median", "High", "Unit"]);
    expect(rowsOf(table)).toEqual([
      ["D30", "0.0111", "0.0222", "0.0333", "mm"],
      ["clay", "10.1", "12.2", "14.3", "%"],
    ]);
    expect(notesOf(table)[0]).toBe(
      "95 % of 250 resampled readings (seed 7); standard deviations: balance 0.1 g, sieving 0.2 % of each mass retained, hydrometer 0.3 units, temperature 0.4 °C, time 5 s, particle density 20 kg/m³.",
    );
  });

  it("a class with its probability in whole percent, the system named once", () => {
    const table = classesTable("Pit 1", found);
    expect(headsOf(table)).toEqual(["System", "Class", "Probability [%]"]);
    expect(rowsOf(table).map((row) => row.slice(1))).toEqual([
      ["clayey sand", "94"],
      ["silty sand", "3"],
      ["lean clay", "below 1"],
      ["sandy loam", "100"],
    ]);
    expect(rowsOf(table).map(([system]) => system !== "")).toEqual([true, false, false, true]);
  });
});

describe("tables of a soil", () => {
  it("liquid limit, plastic limit and index are not mixed up", () => {
    const items = itemsOf(
      limitsTable("Pit 1", {
        nonPlastic: false,
        liquidLimitPct: 41.26,
        liquidLimitInterval95: [40.14, 42.38],
        flowLine: { method: "cup" },
        plasticLimitPct: 19.84,
        plasticityIndexPct: 21.42,
        aLinePct: 15.52,
        aboveALine: true,
        linearShrinkagePct: 6.66,
      } as never),
    );
    expect(items).toEqual({
      "Liquid limit": "41.3 % (cup); 95 % interval 40.1 to 42.4 %",
      "Plastic limit": "19.8 %",
      "Plasticity index": "21.4 %",
      "A-line at this liquid limit": "15.5 %; the soil plots on or above it",
      "Linear shrinkage (bar)": "6.7 %",
    });
  });

  it("what was not measured says so; a non-plastic soil has no limits", () => {
    const items = itemsOf(
      limitsTable("Pit 1", { nonPlastic: false, aLinePct: 3, aboveALine: false } as never),
    );
    expect(items["Plastic limit"]).toBe("not measured");
    expect(items["A-line at this liquid limit"]).toBe("3.0 %; the soil plots below it");
    expect(Object.keys(itemsOf(limitsTable("Pit 1", { nonPlastic: true } as never)))).toEqual([
      "Plasticity",
    ]);
  });

  it("the long box in millimetres of its length and of 600 mm", () => {
    const items = itemsOf(
      limitsTable("Pit 1", {
        nonPlastic: true,
        longBox: {
          shrinkageMm: 24,
          shrinkagePct: 4.76,
          per600Mm: 28.6,
          advice: [{ source: "A table", basis: "memory", soilToCement: 16 }],
          caution: "Mind.",
        },
      } as never),
    );
    expect(items["Long box (field test)"]).toBe("4.8 %: 24 mm, or 28.6 mm of a box of 600 mm");
    expect(items["Long box, cement for pressed blocks by loose volume"]).toBe(
      "1 part to 16 parts of soil (A table)",
    );
  });

  it("models with value ± standard error, residual and AICc", () => {
    const fit = {
      title: "power",
      parameters: [
        { name: "n", value: 0.3123, standardError: 0.0212 },
        { name: "D", value: 19.44, standardError: 1.26, unit: "mm" },
      ],
      residualSdPct: 2.346,
      warnings: ["n at its bound"],
    };
    const table = modelTable("Pit 1", {
      ranking: [{ fit, deltaAicc: 3.46 }],
      leftOut: [{ model: "weibull", reason: "too few points" }],
    } as never);
    expect(headsOf(table).slice(2)).toEqual(["Residual [points]", "AICc above the best"]);
    expect(rowsOf(table)).toEqual([
      ["power", "n = 0.312 ± 0.021; D = 19.4 ± 1.3 mm", "2.35", "3.5"],
    ]);
    expect(notesOf(table).slice(1)).toEqual([
      "power: n at its bound",
      "Left out, weibull: too few points",
    ]);
  });

  const compaction = {
    points: [
      { waterContentPct: 8.04, bulkDensityKgM3: 2001, dryDensityKgM3: 1852, airVoidsPct: 12.34 },
      { waterContentPct: 10.06, bulkDensityKgM3: 2103, dryDensityKgM3: 1911 },
    ],
    peak: {
      method: "quadratic",
      optimumWaterPct: 10.54,
      optimumInterval95: [9.96, 11.14],
      maximumDryDensityKgM3: 1918,
      maximumInterval95: [1901, 1935],
    },
    alternatives: [{ method: "cubic", optimumWaterPct: 11.26, maximumDryDensityKgM3: 1922 }],
    curve: [],
    zeroAirVoids: [],
    findings: [],
  } as unknown as CompactionAnalysis;

  it("moist before dry density, in kg/m³ or lb/ft³", () => {
    const table = compactionTable(compaction, "SI");
    expect(headsOf(table)).toEqual([
      "Water content [%]",
      "Moist density [kg/m³]",
      "Dry density [kg/m³]",
      "Air voids [%]",
    ]);
    expect(rowsOf(table)).toEqual([
      ["8.0", "2001", "1852", "12.3"],
      ["10.1", "2103", "1911", "–"],
    ]);
    expect(notesOf(table)[0]).toBe(
      "Optimum 10.5 % water (95 % interval 10.0 to 11.1), maximum dry density 1918 kg/m³ (95 % interval 1901 to 1935); method: quadratic.",
    );
    expect(notesOf(table)[1]).toBe("By cubic: 11.3 %, 1922 kg/m³.");
    // 1852 kg/m³ × 0.3048³ m³/ft³ / 0.45359237 kg/lb
    const us = rowsOf(compactionTable(compaction, "US"))[0];
    expect(us.slice(1, 3)).toEqual(["124.9", "115.6"]);
  });

  it("the moisture range from dry to wet", () => {
    const [low, high] = [9, 12];
    const test = {
      ...compaction,
      curve: Array.from({ length: 41 }, (_, step) => {
        const waterContentPct = low + ((high - low) * step) / 40;
        // 98 % of 1918 is reached at 10.5 ± 1.
        return { waterContentPct, dryDensityKgM3: 1918 - 38.36 * (waterContentPct - 10.5) ** 2 };
      }),
    } as CompactionAnalysis;
    const items = itemsOf(moistureWindowTable(test, "SI"));
    expect(items["Minimum moisture"]).toBe("9.5 %");
    expect(items["Maximum moisture"]).toBe("11.5 %");
    const narrow = test.curve.filter(({ waterContentPct: w }) => w >= 9.8 && w <= 11.3);
    const open = itemsOf(moistureWindowTable({ ...test, curve: narrow }, "SI"));
    expect(open["Minimum moisture"]).toMatch(
      /^9\.[89] %, where the tests end: drier was not tested$/,
    );
    expect(open["Maximum moisture"]).toMatch(
      /^11\.[23] %, where the tests end: wetter was not tested$/,
    );
    expect(items["Density at the ends of this range"]).toContain("98 % of the maximum");
    expect(items["Density at the ends of this range"]).toContain("at least 1880 kg/m³");
  });
});
