import { describe, expect, it } from "vitest";
import { GUIDANCE_ENTRIES } from "../../src/guidance/published/recommendations.js";
import type { StudyResult } from "../../src/study/studyResult.js";
import { computationTable } from "../../src/tables/computation.js";
import {
  cautionsBlock,
  guidanceComparisonTable,
  guidanceTables,
  notTestedTable,
} from "../../src/tables/guidance.js";
import { inputsTable, sheetTable } from "../../src/tables/inputs.js";
import { referencesBlock, rememberedNote } from "../../src/tables/references.js";
import { attributionTable, studyComparisonTable } from "../../src/tables/studyComparison.js";
import {
  checklistBlock,
  decisionsTable,
  elementText,
  materialsTable,
  methodsTable,
  projectTable,
  samplingTable,
} from "../../src/tables/studyEntries.js";
import { render, renderAll } from "../../src/words/render.js";
import { headsOf, itemsOf, notesOf, rowsOf } from "../support/blockText.js";
import { exampleResult } from "../support/exampleResult.js";

describe("tables of what was entered", () => {
  const config = {
    units: "US",
    currency: "USD",
    place: "Here",
    date: "2026-03-04",
    invented: false,
    elements: [
      {
        kind: "wall",
        name: "Back wall",
        lengthM: 3.048,
        heightM: 2.1336,
        thicknessM: 0.4572,
      },
    ],
    strength: {
      requirement: {
        strengthMpa: 2.068427,
        ageDays: 28,
        statistic: "mean",
        confidence: 0.95,
        basis: "Code 1",
      },
    },
    target: { kind: "power", exponent: { min: 0.2, max: 0.3 }, topSizeMm: 19 },
    cement: { name: "Cement A" },
    materials: [
      {
        id: "soil",
        name: "Soil",
        role: "soil",
        particleDensityKgM3: 2650,
        looseBulkDensityKgM3: 1250,
        moisturePct: 6.04,
        minSharePct: 20,
        maxSharePct: 80,
        price: { written: "5 per ton" },
      },
    ],
    methods: [
      { test: "Sieving", standard: "ASTM D6913", edition: "2017" },
      { test: "Limits", standard: "ASTM D4318" },
    ],
    sampling: [{ material: "soil", where: "Pit", how: "by hand", pits: 3, date: "2026-01-02" }],
    decisions: [{ date: "2026-02-01", what: "5 %", why: "tests", insteadOf: "6 %" }],
    checklist: [
      { clause: "3.2", requirement: "State the mix.", answeredBy: "mix", remark: "see" },
      { clause: "3.3", requirement: "Open." },
    ],
  } as never;

  it("the study in the units of the reader", () => {
    expect(itemsOf(projectTable(config))).toEqual({
      Place: "Here",
      Element: "Back wall: 10.0 ft long, 7.00 ft high, 18.0 in thick, without openings",
      "Required strength":
        "300 psi at 28 days, to be met by the lower bound of the mean strength, with 95 % confidence",
      "Basis of the requirement (as entered)": "Code 1",
      "Target grading (as entered)":
        "power curve, exponent the best from 0.2 to 0.3, top size 19 mm",
      Cement: "Cement A",
      "Date of the study": "2026-03-04",
      Data: "As given by the user.",
    });
    const band = { ...(config as object), target: { kind: "band", objective: "most-site-soil" } };
    expect(itemsOf(projectTable(band as never))["Target grading (as entered)"]).toBe(
      "inside the band of the guidance; among such blends, the most site soil",
    );
  });

  it("elements by their measures", () => {
    const openings = [{ count: 2, widthM: 0.9, heightM: 1.2 }];
    const text = (element: object) => render(elementText(element as never, "SI"));
    expect(text({ kind: "wall", lengthM: 4, heightM: 3, thicknessM: 0.35, openings })).toBe(
      "4.00 m long, 3.00 m high, 350 mm thick, 2 openings of 0.900 m by 1.20 m",
    );
    const window = [{ widthM: 0.9, heightM: 1.2 }];
    expect(text({ kind: "wall", lengthM: 4, heightM: 3, thicknessM: 0.35, openings: window })).toBe(
      "4.00 m long, 3.00 m high, 350 mm thick, 1 opening of 0.900 m by 1.20 m",
    );
    const section = { shape: "rectangle", widthM: 0.4, depthM: 0.5 };
    expect(text({ kind: "pier", count: 3, section, heightM: 2 })).toBe(
      "3 piers of 400 mm by 500 mm, 2.00 m high",
    );
    expect(text({ kind: "pier", section: { shape: "round", diameterM: 0.6 }, heightM: 2 })).toBe(
      "1 round piers, diameter 600 mm, 2.00 m high",
    );
    const plan = { shape: "rectangle", lengthM: 5, widthM: 4 };
    expect(text({ kind: "ring", plan, heightM: 2.5, thicknessM: 0.3 })).toBe(
      "closed ring, outside 5.00 m by 4.00 m, 2.50 m high, 300 mm thick, without openings",
    );
    expect(text({ kind: "bench", lengthM: 2, heightM: 0.45, thicknessM: 0.5 })).toBe(
      "bench 2.00 m long, 0.450 m high, 500 mm deep, without openings",
    );
  });

  it("materials: particle before loose density", () => {
    const table = materialsTable(config);
    expect(headsOf(table)).toEqual([
      "Material",
      "Role",
      "Particle density [lb/ft³]",
      "Loose bulk density, dry [lb/ft³]",
      "Moisture [%]",
      "Share allowed [%]",
      "Price [USD]",
    ]);
    // × 0.3048³ / 0.45359237
    expect(rowsOf(table)).toEqual([
      ["Soil", "soil", "165.4", "78.03", "6.0", "20 to 80", "5 per ton"],
    ]);
  });

  it("methods, sampling, decisions and clauses as they stand", () => {
    expect(rowsOf(methodsTable(config))).toEqual([
      ["Sieving", "ASTM D6913", "2017"],
      ["Limits", "ASTM D4318", "not stated"],
    ]);
    expect(headsOf(samplingTable(config))).toEqual([
      "Material",
      "Where",
      "How",
      "Pits or heaps",
      "Date",
    ]);
    expect(rowsOf(samplingTable(config))).toEqual([["Soil", "Pit", "by hand", "3", "2026-01-02"]]);
    expect(headsOf(decisionsTable(config))).toEqual(["Date", "Decided", "Because", "Instead of"]);
    expect(rowsOf(decisionsTable(config))).toEqual([["2026-02-01", "5 %", "tests", "6 %"]]);
    const { items } = renderAll(checklistBlock(config)) as { items: readonly object[] };
    expect(items).toEqual([
      expect.objectContaining({
        clause: "3.2",
        requirement: "State the mix.",
        remark: "see",
        sectionKey: "mix",
      }),
      { clause: "3.3", requirement: "Open.", remark: "" },
    ]);
  });

  it("files with their checksums, and how a sheet of another layout was read", () => {
    expect(rowsOf(inputsTable([{ file: "a.csv", sha256: "abc" }] as never))).toEqual([
      ["a.csv", "abc"],
    ]);
    const readAs = [
      {
        columns: { Masse: "retained" },
        lines: {},
        cells: {},
        facts: { dry: "500 g" },
        headerValues: { dry: "500 g" },
        skipRows: 2,
        decimalComma: true,
      },
    ];
    expect(notesOf(sheetTable({ file: "a.csv", rows: [["1"]], readAs } as never))).toEqual([
      "Read as: “Masse” as “retained”.",
      "Given in study.yaml: dry 500 g.",
      "Rows 1 to 2 were not read.",
      "Its numbers have decimal commas.",
    ]);
    const plain = [{ ...readAs[0], facts: {}, skipRows: 0, decimalComma: false }];
    expect(notesOf(sheetTable({ file: "a.csv", rows: [["1"]], readAs: plain } as never))).toEqual([
      "Read as: “Masse” as “retained”.",
    ]);
    const first = [{ ...plain[0], columns: {}, skipRows: 1 }];
    expect(notesOf(sheetTable({ file: "a.csv", rows: [["1"]], readAs: first } as never))).toEqual([
      "Rows 1 to 1 were not read.",
    ]);
  });
});

describe("what was computed", () => {
  const at = (blend: object, target: object, fit: object) =>
    itemsOf(
      computationTable({
        config: {
          target,
          strength: { requirement: { statistic: "prediction", confidence: 0.95 } },
        },
        materials: [
          { name: "Soil", sedimentation: {} },
          { name: "Silt", pipette: {} },
          { name: "Sand" },
        ],
        blend: { target: blend },
        strength: { fit },
      } as never),
    );
  const even = { model: "linear", basis: { variance: "even" }, batches: [], covariates: [] };

  it("names objective, model, variance and bound", () => {
    expect(at({ kind: "power", exponent: 0.3, topSizeMm: 20 }, {}, even)).toEqual({
      "Fines below the finest sieve":
        "Soil: hydrometer, Stokes' law; Silt: pipette, Stokes' law; Sand: not measured",
      Blend:
        "least sum of squared differences from the power curve of exponent 0.300 and top size 20 mm",
      Strength: "linear model, ordinary least squares, one variance at all contents",
      "Least cement":
        "where the prediction bound (one further block), with 95 % probability reaches the requirement",
    });
  });

  it("says so where it was weighted, and where a band was kept at the least cost", () => {
    const grown = {
      model: "quadratic",
      basis: { variance: "proportional" },
      batches: ["M1"],
      covariates: [{ kind: "dry density" }],
    };
    const found = at({ kind: "band" }, { kind: "band", objective: "least-cost" }, grown);
    expect(found.Blend).toBe(
      "least breach of the band; among blends that keep to it, the least cost",
    );
    expect(found.Strength).toBe(
      "quadratic model, weighted least squares, the variance growing with the square of the strength; each batch with a level of its own; with dry density in the regression",
    );
  });
});

describe("guidance", () => {
  const entry = GUIDANCE_ENTRIES.find(({ material, own }) => material === "rammed-earth" && !own)!;
  const study = {
    name: "Soil",
    check: {
      entry,
      verdict: "outside",
      criteria: [
        {
          kind: "fraction",
          what: "clay",
          lowPct: 5,
          highPct: 20,
          measuredPct: 24.44,
          verdict: "outside",
          byPct: 4.44,
        },
        {
          kind: "consistency",
          what: "plasticity index",
          highPct: 15,
          measuredPct: 9.96,
          verdict: "inside",
          byPct: 5.04,
        },
        { kind: "consistency", what: "liquid limit", lowPct: 30, verdict: "not measured" },
      ],
      others: [
        {
          quantity: "organicPct",
          what: "organic matter",
          unit: "%",
          max: 2,
          verdict: "not measured",
          text: "",
        },
      ],
      honesty: "Read.",
      caution: "No proof.",
    },
    probability: {
      draws: 250,
      criteria: [{ probability: 1 }, { probability: 0.82 }, { probability: 1 }],
      others: [{ probability: 1 }],
      text: "Sure.",
    },
  };

  it("limits, measured value, verdict; what was not tested says so; notes are shown", () => {
    const [table] = guidanceTables([study] as never);
    expect(headsOf(table)).toEqual([
      "Curve",
      "Criterion",
      "Recommended",
      "Measured",
      "Verdict",
      "Confidence (reading errors only)",
    ]);
    const rows = rowsOf(table);
    expect(rows.map((row) => row.slice(0, 5))).toEqual([
      ["Soil", "clay", "5.0 to 20.0 %", "24.4 %", "outside by 4.4 points"],
      ["Soil", "plasticity index", "at most 15.0 %", "10.0 %", "inside"],
      ["Soil", "liquid limit", "at least 30.0 %", "–", "not measured"],
      ["Soil", "organic matter", "at most 2.0 %", "–", "not tested"],
    ]);
    expect(rows[1][5]).toContain("82 %");
    expect(rows.slice(2).map((row) => row[5])).toEqual(["–", "–"]);
    expect(notesOf(table)).toContain(render(entry.notes));
    expect(notesOf(table).join(" ")).toContain("Written for rammed earth without cement");
  });

  it("names sources as a reader cites them, never by an id", () => {
    const SIDE = { id: entry.id, source: `A handbook, ${entry.source.year}` };
    const table = guidanceComparisonTable("the blend", {
      checks: [{ entry, honesty: "Read.", caution: "No proof." }],
      disagreements: [
        {
          what: "clay",
          measuredPct: 18.46,
          irreconcilable: true,
          sides: [
            { ...SIDE, lowPct: 5, highPct: 20, verdict: "inside", probability: 1 },
            { ...SIDE, highPct: 12, verdict: "outside" },
          ],
        },
      ],
    } as never);
    const rows = rowsOf(table);
    expect(rows.map((row) => [row[0], row[1], row[3], row[4]])).toEqual([
      ["clay: no soil meets all", "18.5", "5 to 20 %", "inside"],
      ["", "", "up to 12 %", "outside"],
    ]);
    expect(JSON.stringify(renderAll(table))).not.toContain(entry.id);
    expect(rows[0][2]).toContain(String(entry.source.year ?? ""));
  });

  it("what was not tested is told for each soil", () => {
    const table = notTestedTable({
      config: {
        materials: [
          { id: "soil", name: "Soil", role: "soil", chemistry: { organicPct: "not tested" } },
          { id: "fill", name: "Fill", role: "soil" },
          { id: "sand", name: "Sand", role: "sand" },
          { id: "gravel", name: "Gravel", role: "gravel" },
        ],
      },
      compaction: {},
      strength: {},
      materials: [
        { id: "soil", name: "Soil", role: "soil", limits: {}, sedimentation: {} },
        { id: "fill", name: "Fill", role: "soil" },
        { id: "sand", name: "Sand", role: "sand" },
      ],
    } as never);
    const told = rowsOf(table).map(([name, what]) => `${name}: ${what}`);
    expect(told).toEqual([
      "Soil: organic matter",
      "Soil: soluble salts",
      "Soil: sulphates",
      "Fill: organic matter",
      "Fill: soluble salts",
      "Fill: sulphates",
      "Fill: consistency limits",
      "Fill: sedimentation",
      "Gravel: sieve analysis",
      "Blend: erosion, frost, shrinkage of the wall",
    ]);
  });

  it("cites only the hydrometers that were used, each by its own calibration where it has one", () => {
    type Used = readonly [hydrometer: string, calibration?: object];
    const texts = (...analyses: Used[]) =>
      renderAll(
        referencesBlock({
          materials: analyses.map(([hydrometer, calibration]) => ({
            sedimentation: { water: "modern", hydrometer, calibration },
          })),
          guidance: [],
        } as unknown as StudyResult),
      ).items.map(({ text }) => text);
    const named = (...analyses: Used[]) =>
      ["Murthy", "152H hydrometer: ", "151H", "BS 1377-2", "in g/mL"].filter((name) =>
        texts(...analyses).some((text) => text.includes(name)),
      );
    const own = { depths: [] };
    expect(named(["152H"])).toEqual(["Murthy"]);
    expect(named(["152H", own])).toEqual(["152H hydrometer: "]);
    expect(named(["151H"])).toEqual(["151H"]);
    expect(named(["BS", own])).toEqual(["BS 1377-2"]);
    expect(named(["g/mL", own])).toEqual(["in g/mL"]);
    // The calibration of one is not that of another.
    expect(named(["152H"], ["BS", own], ["152H"])).toEqual(["Murthy", "BS 1377-2"]);
    expect(texts(["152H"], ["152H"]).filter((text) => text.includes("Murthy"))).toHaveLength(1);
    expect(named()).toEqual([]);
    expect(texts().join(" ")).not.toContain("Viscosity");
    expect(texts(["152H"]).join(" ")).toContain("Viscosity of water");
  });

  it("says which of the references stand from memory, by their numbers", () => {
    const item = (mark: string) => ({ text: "A source", mark });
    const noted = (...marks: string[]) => {
      const note = rememberedNote({ kind: "references", items: marks.map(item) });
      return note && render(note);
    };
    expect(noted("read")).toBeUndefined();
    expect(noted("read", "read", "from memory")).toMatch(/^Entry 3 is from memory/);
    expect(noted("read", "from memory", "from memory")).toMatch(/^Entries 2 and 3 are /);
    expect(noted("read", ...Array(3).fill("from memory"))).toMatch(/^Entries 2 to 4 are /);
  });

  it("holds guidance, classes and carbon unless one is left out", async () => {
    const result = await exampleResult("reading-room");
    const whole = referencesBlock(result).items;
    for (const scope of ["guidance", "classes", "carbon"] as const) {
      const rest = referencesBlock(result, { [scope]: false }).items;
      expect(rest.length, scope).toBeLessThan(whole.length);
      expect(referencesBlock(result, { [scope]: true }).items).toEqual(whole);
    }
  });

  it("cautions have a title, a text and a source, each in its place", () => {
    for (const { title, text, source } of renderAll(cautionsBlock()).items) {
      expect(title.length).toBeLessThan(text.length);
      expect(source).toMatch(/memory|source|read|practice/);
    }
  });
});

describe("two versions of a study", () => {
  it("before, after, and after less before with its sign", async () => {
    const a = await exampleResult("reading-room");
    const config = {
      ...a.config,
      date: "2030-01-01",
      batchDryMassKg: a.config.batchDryMassKg + 10,
    };
    const density = { ...a.mix!.density, valueKgM3: a.mix!.density.valueKgM3 - 20 };
    const { cementPct } = a.mix!.recipe;
    const recipe = { ...a.mix!.recipe, cementPct: cementPct + 1.5 };
    const b = { ...a, config, mix: { ...a.mix!, density, recipe } };
    const [results, entries] = studyComparisonTable(a, b as StudyResult);
    expect(headsOf(results)).toEqual(["Result", a.config.date, "2030-01-01", "Difference"]);
    const kgM3 = a.mix!.density.valueKgM3;
    expect(rowsOf(results).filter((row) => row[3] !== "same")).toEqual([
      ["Dry density, rammed, kg/m³", kgM3.toFixed(0), (kgM3 - 20).toFixed(0), "−20"],
      ["Cement, as specified, %", cementPct.toFixed(2), (cementPct + 1.5).toFixed(2), "+1.50"],
    ]);
    expect(rowsOf(entries)).toEqual(
      expect.arrayContaining([
        [
          "batch dry mass kg",
          String(a.config.batchDryMassKg),
          String(a.config.batchDryMassKg + 10),
        ],
      ]),
    );
    expect(notesOf(entries)).toEqual([
      "Entries by the path of their value, in base units; sheets by their checksum.",
    ]);
    const money = rowsOf(results).find(([name]) => name.startsWith("Cost, low"))!;
    expect(money.slice(1, 3)).toEqual(Array(2).fill(a.mix!.cost!.total.low.toFixed(0)));
    // 0.5 m³ is half a million of the base unit, a cubic centimetre.
    const steps = [
      { parts: ["materials", "tests"], changes: { "share.site-soil": -1.234, optimum: null } },
      { parts: ["element"], changes: { made: 500_000, "cost-low": 12.4 } },
      { parts: ["rest"], changes: {} },
    ] as const;
    const due = attributionTable(a, b as StudyResult, steps);
    expect(headsOf(due)).toEqual([
      "Result",
      "Soil and materials, What was tested",
      "Element and site",
    ]);
    expect(rowsOf(due)).toEqual([
      ["Site soil, two pits mixed, %", "−1.23", "–"],
      ["Optimum moisture, %", "not comparable", "–"],
      ["Rammed volume to make, m³", "–", "+0.500"],
      ["Cost, low, EUR", "–", "+12"],
    ]);
    expect(notesOf(due).slice(1)).toEqual([
      "Changed without an effect on these results: The rest.",
      "Not comparable: known on one side of the step only.",
    ]);
    expect(notesOf(attributionTable(a, a, [steps[1]]))).toHaveLength(1);
    const single = [{ parts: ["element"], changes: { made: 500_000 } }] as const;
    expect(rowsOf(attributionTable(a, a, single))).toEqual([
      ["Rammed volume to make, m³", "+0.500"],
    ]);
    const pounds = { ...a, config: { ...a.config, currency: "GBP" } };
    expect(rowsOf(attributionTable(a, pounds, [steps[1]])).map(([name]) => name)).toEqual([
      "Rammed volume to make, m³",
    ]);
    expect(attributionTable(a, a, [steps[2]]).kind).toBe("note");
    const [same, nothing] = studyComparisonTable(a, a);
    expect(notesOf(nothing)).toEqual(["No entry and no sheet changed."]);
    expect(rowsOf(nothing)).toEqual([]);
    expect(headsOf(same).slice(1, 3)).toEqual(["before", "after"]);
    expect(rowsOf(same).every((row) => row[3] === "same")).toBe(true);
  });
});
