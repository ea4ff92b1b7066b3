import { describe, expect, it } from "vitest";
import { analyseSieve } from "../../src/grading/sieveAnalysis.js";
import { readCompaction } from "../../src/lab/compaction.js";
import { readLimits } from "../../src/lab/limits.js";
import { readGrid, type SheetGrid } from "../../src/lab/sheet/grid.js";
import type { SheetReading } from "../../src/lab/sheet/readSheet.js";
import { readSieve } from "../../src/lab/sieve.js";
import { readSpecimens } from "../../src/lab/specimens.js";
import { analyseCompaction } from "../../src/soil/compaction/compactionTest.js";
import { moistureWindow } from "../../src/soil/compaction/moistureWindow.js";
import { consistencyLimits } from "../../src/soil/consistency/limits.js";
import { sievingTable } from "../../src/tables/grading.js";
import { renderAll } from "../../src/words/render.js";

async function read<T>(reader: (grid: SheetGrid) => SheetReading<T>, lines: readonly string[]) {
  const bytes = new TextEncoder().encode(lines.join("\n"));
  const { grid, findings: noticed } = await readGrid("sheets/s.csv", bytes);
  const { record, findings } = grid ? reader(grid) : { findings: noticed };
  const codes = findings.map(({ severity, code, row }) => `${severity} ${code} ${row}`);
  return { record: record as T, findings, codes };
}

/** Sizes and passings to six digits, coarse to fine. */
async function curveOf(lines: readonly string[]) {
  const { record } = await read(readSieve, lines);
  return analyseSieve(record)
    .points.map(({ sizeMm, passingPct }) => [sizeMm, Number(passingPct.toPrecision(6))])
    .toReversed();
}

const CURVE = [
  [4, 100],
  [2, 60],
  [0.063, 10],
];
const NOTE = "note passing-input undefined";

describe("a sieve sheet of reported percentages", () => {
  it.each<[string, string[]]>([
    ["passing", ["sieve (mm),passing (%)", "4,100", "2,60", "0.063,10"]],
    ["passing in words", ["Sieve size (mm),Percent passing", "4,100", "2,60", "0.063,10"]],
    ["passing, fine to coarse", ["sieve (mm),passing (%)", "0.063,10", "2,60", "4,100"]],
    ["retained", ["sieve (mm),% retained", "4,0", "2,40", "0.063,50", "pan,10"]],
    ["retained without a pan", ["sieve (mm),retained (%)", "4,0", "2,40", "0.063,50"]],
    ["cumulative", ["sieve (mm),cumulative retained (%)", "4,0", "2,40", "0.063,90"]],
    ["characteristic sizes", ["D,size (mm)", "D10,0.063", "D60,2", "D100,4"]],
    ["sizes at passings", ["size (mm),passing (%)", "0.063,10", "2,60", "4,100"]],
  ])("gives the curve: %s", async (_, lines) => {
    expect(await curveOf(lines)).toEqual(CURVE);
    expect((await read(readSieve, lines)).codes).toEqual([NOTE]);
  });

  it("takes grams where grams and percent stand side by side", async () => {
    const lines = [
      "dry mass (g),200",
      "sieve (mm),retained (g),retained (%),cumulative retained (%),passing (%)",
      "4,0,0,0,100",
      "2,80,40,40,60",
      "0.063,100,50,90,10",
      "pan,20,10,,",
    ];
    const { record, codes } = await read(readSieve, lines);
    expect(record.rows.map(({ retainedG }) => retainedG)).toEqual([0, 80, 100]);
    expect(codes).toEqual(Array(3).fill("note unused-column 2"));
  });

  it("starts below 100 where material stayed on the coarsest sieve, with one warning", async () => {
    const { record } = await read(readSieve, ["D,size (mm)", "D10,0.1", "D30,0.4", "D60,2"]);
    const { points, findings } = analyseSieve(record);
    expect(points.at(-1)?.passingPct).toBeCloseTo(60, 9);
    expect(findings.map(({ severity, code }) => [severity, code])).toEqual([
      ["warning", "top-size-unknown"],
    ]);
  });

  it("has a table of percentages, and no grams that nobody weighed", async () => {
    const { record } = await read(readSieve, ["sieve (mm),passing (%)", "4,100", "2,60"]);
    const { columns, rows, notes } = renderAll(sievingTable("Sand", analyseSieve(record)));
    expect(columns.map(({ header }) => header)).toEqual([
      "Sieve",
      "Opening",
      "Retained, of the whole",
      "Passing",
    ]);
    expect(rows).toEqual([
      ["4", "4", "0.0", "100.0"],
      ["2", "2", "40.0", "60.0"],
    ]);
    expect(notes).toEqual([
      "Reported in percent: the masses are not known, and no balance can be made.",
    ]);
  });

  it("is asked about where it gives parts of one", async () => {
    const lines = ["sieve (mm),passing (%)", "4,1", "2,0.6", "0.063,0.1"];
    expect((await read(readSieve, lines)).codes).toEqual(["error fraction-for-percent 2"]);
  });
});

describe("sieve numbers", () => {
  const table = (header: string, sieves: readonly string[]) => [
    "dry mass (g),1000",
    `${header},retained (g)`,
    ...sieves.map((sieve, index) => `${sieve},${index === 0 ? 0 : 200}`),
    "pan,200",
  ];
  const sizes = async (lines: readonly string[]) =>
    (await read(readSieve, lines)).record.rows.map(({ sizeMm }) => sizeMm);

  it("are read where the header names their series", async () => {
    const us = ["4", "10", "40", "100", "200"];
    expect(await sizes(table("sieve (US No.)", us))).toEqual([4.75, 2, 0.425, 0.15, 0.075]);
    expect(await sizes(table("Sieve no. (ASTM E11)", us))).toEqual([4.75, 2, 0.425, 0.15, 0.075]);
    for (const header of ["US sieve", "Sieve (US)", "ASTM sieve", "U.S. Standard Sieve No."]) {
      expect(await sizes(table(header, us)), header).toEqual([4.75, 2, 0.425, 0.15, 0.075]);
    }
    expect(await sizes(table("US sieve (mm)", ["4.75", "2", "0.075"]))).toEqual([4.75, 2, 0.075]);
    const bs = ["7", "14", "36", "72", "200"];
    expect(await sizes(table("BS sieve", bs))).toEqual([2.36, 1.18, 0.425, 0.212, 0.075]);
    expect(await sizes(table("sieve (BS mesh)", bs))).toEqual([2.36, 1.18, 0.425, 0.212, 0.075]);
    const iso = ["4", "2", "0.5", "0.25", "0.063"];
    expect(await sizes(table("sieve (ISO 565)", iso))).toEqual([4, 2, 0.5, 0.25, 0.063]);
  });

  it("are one question where they make sense only as numbers", async () => {
    const lines = table("sieve (mm)", ["4", "10", "40", "100", "200"]);
    expect((await read(readSieve, lines)).codes).toEqual(["error sieve-numbers-or-mm 2"]);
    // Openings in mm fine to coarse are none of the series' numbers throughout.
    const turned = ["dry mass (g),1000", "sieve (mm),retained (g)", "1,100", "2,100", "4,200"];
    const { codes } = await read(readSieve, [...turned, "pan,600"]);
    expect(codes).toEqual([]);
  });

  it("need their series under “sieve no.”", async () => {
    const { codes } = await read(readSieve, table("sieve no.", ["7", "14", "36", "72", "200"]));
    expect(codes).toEqual(["error missing-unit 2"]);
  });

  it("that are none of the series are told", async () => {
    const { codes } = await read(
      readSieve,
      table("sieve (BS mesh)", ["7", "14", "40", "72", "200"]),
    );
    expect(codes).toEqual(["error unknown-sieve 5"]);
  });
});

describe("headers as laboratories write them", () => {
  it("with units in brackets of any kind, or behind a comma", async () => {
    const lines = [
      '"Dry mass, g",1000',
      "Sieve size [mm],Mass retained [g]",
      "4,0",
      "2,400",
      "0.063,500",
      "pan,100",
    ];
    const { record, codes } = await read(readSieve, lines);
    expect(codes).toEqual([]);
    expect(record.dryMassG).toBe(1000);
  });
});

describe("numbers with decimal commas", () => {
  it("are read and told where none of the sheet has a point", async () => {
    const lines = [
      "dry mass (g);1.000,5",
      "sieve (mm);retained (g)",
      "4;0",
      "2;400,5",
      "0,063;500,125",
      "pan;99,9",
    ];
    const { record, codes } = await read(readSieve, lines);
    expect(codes).toEqual(["note decimal-comma 4"]);
    expect(record).toMatchObject({ dryMassG: 1000.5, panG: 99.9 });
    expect(record.rows.map(({ sizeMm, retainedG }) => [sizeMm, retainedG])).toEqual([
      [4, 0],
      [2, 400.5],
      [0.063, 500.125],
    ]);
  });

  it("are read in lines that stand alone", async () => {
    const { record, codes } = await read(readLimits, ["LL (%);34,5", "PI (%);15,5"]);
    expect(codes).toEqual(["note decimal-comma 1"]);
    expect(record.reported).toEqual({ liquidLimitPct: 34.5, plasticityIndexPct: 15.5 });
  });

  it("are not told by a remark: a load of over a thousand stays a question", async () => {
    const lines = [
      "block;cement (%);age (d);load (kN);length (mm);width (mm);remark",
      "B1;6;28;1,250;290;140;3,5",
    ];
    const { codes } = await read(readSpecimens, lines);
    expect(codes).toEqual(["error ambiguous-comma 2"]);
  });

  it("are asked about beside decimal points", async () => {
    const lines = ["dry mass (g);1000", "sieve (mm);retained (g)", "4;0", "2;400,5", "0.063;500"];
    expect((await read(readSieve, [...lines, "pan;99"])).codes).toEqual(["error comma-decimal 4"]);
  });

  it("are asked about where each could be a thousand", async () => {
    const lines = ["dry mass (g);2,000", "sieve (mm);retained (g)", "4;0", "2;1,400", "pan;600"];
    expect((await read(readSieve, lines)).codes).toEqual([
      "error ambiguous-comma 1",
      "error ambiguous-comma 4",
    ]);
  });
});

describe("an unquoted comma in a remark", () => {
  it("is not taken for a decimal comma, whatever stands behind it", async () => {
    const header = "block,cement (%),age (d),strength (MPa),remark";
    for (const remark of ["broke, at the corner", "cracked at 3,5", "seen at row 3, 4"]) {
      const { findings } = await read(readSpecimens, [header, `B1,6,28,3.1,${remark}`]);
      expect(findings.map(({ code }) => code)).toEqual(["row-too-long"]);
      expect(JSON.stringify(findings[0].remedy)).toContain("double quotes");
    }
  });
});

describe("limits as a laboratory reports them", () => {
  const limitsOf = async (lines: readonly string[]) =>
    consistencyLimits((await read(readLimits, lines)).record);

  it.each<[string, string[]]>([
    ["lines", ["liquid limit (%),34", "plastic limit (%),19", "linear shrinkage (%),6.5"]],
    ["short lines", ["LL (%),34", "PL (%),19", "LS (%),6.5"]],
    ["lines without a unit, which can only be percent", ["LL,34", "PL,19", "linear shrinkage,6.5"]],
    ["the index in place of a limit", ["LL (%),34", "PI (%),15", "LS (%),6.5"]],
    ["rows", ["test,result (%)", "liquid limit,34", "plastic limit,19", "linear shrinkage,6.5"]],
    ["short rows", ["test,value (%)", "LL,34", "PI,15", "LS,6.5"]],
  ])("in %s", async (_, lines) => {
    const { codes } = await read(readLimits, lines);
    expect(codes).toEqual([]);
    const limits = await limitsOf(lines);
    expect(limits).toMatchObject({
      liquidLimitPct: 34,
      plasticLimitPct: 19,
      plasticityIndexPct: 15,
      linearShrinkagePct: 6.5,
      nonPlastic: false,
      reported: true,
    });
    expect(limits.liquidLimitInterval95).toBeUndefined();
    expect(limits.findings.map(({ severity, code }) => [severity, code])).toEqual([
      ["note", "limits-reported"],
    ]);
  });

  it("may be one value alone", async () => {
    expect(await limitsOf(["PI (%),11"])).toMatchObject({ plasticityIndexPct: 11 });
    expect((await limitsOf(["PI (%),11"])).liquidLimitPct).toBeUndefined();
    expect((await limitsOf(["linear shrinkage (%),4"])).linearShrinkagePct).toBe(4);
  });

  it.each<[string, string[]]>([
    ["a line", ["plasticity index (%),NP"]],
    ["a line without a unit", ["PI,NP"]],
    ["a line of its own", ["NP,yes"]],
    ["rows", ["test,value (%)", "LL,NP", "PL,NP", "PI,non-plastic"]],
    ["one row", ["test,water content (%)", "plastic limit,NP"]],
  ])("may be NP in %s", async (_, lines) => {
    const { record, codes } = await read(readLimits, lines);
    expect(codes).toEqual([]);
    expect(record).toMatchObject({ nonPlastic: true, plasticLimitPoints: [] });
  });

  it.each<[string, string[], string]>([
    ["do not add up", ["LL (%),34", "PL (%),19", "PI (%),12"], "limits-disagree"],
    ["cannot be", ["LL (%),14", "PI (%),22"], "limits-disagree"],
    ["stand twice", ["test,value (%)", "LL,34", "LL,35"], "limit-twice"],
    [
      "stand beside their readings",
      ["LL (%),34", "test,blows,water content (%)", "liquid limit,25,34"],
      "limit-twice",
    ],
    ["are parts of one", ["LL,0.34", "LS,6"], "fraction-for-percent"],
    ["are in another unit", ["LL (mm),34"], "unknown-unit"],
    ["say nothing", ["LL (%),", "PI (%),"], "missing-value"],
    ["are not known", ["test,value (%)", "LL,34", "SL,12"], "unknown-test"],
    ["are words", ["LL (%),low"], "not-a-number"],
  ])("are told where they %s", async (_, lines, code) => {
    const { findings } = await read(readLimits, lines);
    const errors = findings.filter(({ severity }) => severity === "error");
    expect(errors.map((each) => each.code)).toEqual([code]);
  });

  it("may leave lines of a form empty", async () => {
    const { record, codes } = await read(readLimits, ["LL (%),34", "PL (%),", "PI (%),15"]);
    expect(codes).toEqual([]);
    expect(record.reported).toEqual({ liquidLimitPct: 34, plasticityIndexPct: 15 });
  });

  it("take the rounding of both limits for no contradiction", async () => {
    expect((await read(readLimits, ["LL (%),34", "PL (%),19", "PI (%),16"])).codes).toEqual([]);
  });
});

describe("a compaction test as a laboratory reports it", () => {
  const POINTS = ["6,1750", "8,1830", "10,1880", "12,1860", "14,1790"];

  it("in dry densities gives what the masses give", async () => {
    const dry = await read(readCompaction, ["water content (%),dry density (kg/m3)", ...POINTS]);
    expect(dry.codes).toEqual([]);
    const { peak, points } = analyseCompaction(dry.record);
    const masses = POINTS.map((line) => {
      const [water, density] = line.split(",").map(Number);
      return `${water},${density * (1 + water / 100)}`;
    });
    const net = ["mould volume (cm3),1000", "water content (%),moist soil (g)", ...masses];
    const weighed = analyseCompaction((await read(readCompaction, net)).record);
    expect(peak?.optimumWaterPct).toBeCloseTo(weighed.peak?.optimumWaterPct as number, 9);
    expect(points[2].bulkDensityKgM3).toBeCloseTo(2068, 9);
  });

  it("in wet densities, and in lb/ft3", async () => {
    const wet = ["moisture content (%),wet density (g/cm3)", "10,2.068"];
    expect((await read(readCompaction, wet)).record.points[0].dryDensityKgM3).toBeCloseTo(1880, 9);
    const us = ["water content (%),dry density (pcf)", "10,117.4"];
    expect((await read(readCompaction, us)).record.points[0].dryDensityKgM3).toBeCloseTo(
      1880.57,
      1,
    );
  });

  it("needs no mould beside densities, and lets its lines stay empty", async () => {
    const lines = [
      "mould volume (cm3),",
      "mould mass (g),",
      "water content (%),dry density (kg/m3)",
      "10,1880",
    ];
    expect((await read(readCompaction, lines)).codes).toEqual([]);
  });

  it("takes masses where densities stand beside them", async () => {
    const lines = [
      "mould volume (cm3),1000",
      "water content (%),moist soil (g),dry density (kg/m3)",
      "10,2068,1879",
    ];
    const { record, codes } = await read(readCompaction, lines);
    expect(codes).toEqual([]);
    expect(record.points).toEqual([{ waterContentPct: 10, moistMassG: 2068, row: 3 }]);
  });

  it("may have the unit behind the value in place of the name", async () => {
    const tops = async (mdd: string) => {
      const { record, codes } = await read(readCompaction, ["OMC,11.5 %", mdd]);
      return record ? record.reported : codes;
    };
    const top = { optimumWaterPct: 11.5, maximumDryDensityKgM3: 1960 };
    expect(await tops("MDD,1.96 g/cm3")).toEqual(top);
    expect(await tops("MDD,1960 kg/m³")).toEqual(top);
    // Another unit than the name's, or one of another quantity, is none.
    expect(await tops("MDD (kg/m3),1.96 g/cm3")).toContain("error not-a-number 2");
    expect(await tops("MDD,1960 kg")).toContain("error missing-unit 2");
    expect(await tops("MDD,1960")).toContain("error missing-unit 2");
    const limits = await read(readLimits, ["LL,34 %", "PL,18 %"]);
    expect(limits.record?.reported).toEqual({ liquidLimitPct: 34, plasticLimitPct: 18 });
    const length = await read(readLimits, [
      "shrinkage bar wet length,5.5 in",
      "shrinkage bar dry length,130 mm",
      "LL,34",
    ]);
    expect(length.record?.shrinkageBar).toEqual({ wetLengthMm: 139.7, dryLengthMm: 130 });
  });

  it("as a top alone has an optimum, and no range of moisture", async () => {
    const lines = ["method,AASHTO T 99", "OMC,11.5", "MDD (kg/m3),1910"];
    const { record, codes } = await read(readCompaction, lines);
    expect(codes).toEqual([]);
    const analysis = analyseCompaction(record, { particleDensityKgM3: 2650 });
    expect(analysis.peak).toEqual({
      method: "reported",
      optimumWaterPct: 11.5,
      maximumDryDensityKgM3: 1910,
    });
    expect(moistureWindow(analysis)).toBeUndefined();
    expect(analysis.findings.map(({ severity, code }) => [severity, code])).toEqual([
      ["note", "compaction-reported"],
    ]);
    const dense = analyseCompaction(record, { particleDensityKgM3: 2400 });
    expect(dense.findings.map(({ code }) => code)).toContain("optimum-above-zero-air-voids");
  });

  it.each<[string, string[], string]>([
    ["half a top", ["OMC (%),11.5"], "missing-fact"],
    ["half a top, the other left empty", ["OMC (%),11.5", "MDD (kg/m3),"], "missing-fact"],
    ["no volume", ["water content (%),moist soil (g)", "10,2068"], "missing-fact"],
    [
      "an empty volume",
      ["mould volume (cm3),", "water content (%),moist soil (g)", "10,2068"],
      "missing-value",
    ],
    [
      "an empty mass of the mould",
      [
        "mould volume (cm3),1000",
        "mould mass (g),",
        "water content (%),mould + moist soil (g)",
        "10,6068",
      ],
      "missing-value",
    ],
    [
      "a volume that is none",
      ["mould volume (cm3),large", "water content (%),moist soil (g)", "10,2068"],
      "not-a-number",
    ],
    ["a density of no earth", ["water content (%),dry density (kg/m3)", "10,188"], "out-of-range"],
    ["a gap", ["water content (%),dry density (kg/m3)", "10,1880", "12,"], "missing-value"],
  ])("is refused with %s", async (_, lines, code) => {
    const { findings } = await read(readCompaction, lines);
    const errors = findings.filter(({ severity }) => severity === "error");
    expect(errors.map((each) => each.code)).toEqual([code]);
  });

  it("tells a reported top beside points as not used", async () => {
    const lines = ["OMC (%),11.5", "water content (%),dry density (kg/m3)", "10,1880"];
    expect((await read(readCompaction, lines)).codes).toEqual(["note unused-fact 1"]);
  });
});

/**
 * ITDG Zimbabwe, Technical Advice Note 2, How to make stabilised soil blocks, p. 14 (read): a lever of 85 and
 * 1676 mm with 50 kg presses with 986 kg on a cube of 5 cm, printed as 3.944 MPa with 1 kg taken for 10 N.
 */
describe("a strength by a lever press", () => {
  it("is 3.87 MPa by standard gravity, 2 % below what is printed", async () => {
    const load = (50 * 1676) / 85;
    expect(Math.round(load)).toBe(986);
    const { record, codes } = await read(readSpecimens, [
      "block,cement (%),age (d),load (kgf),length (cm),width (cm)",
      `B1,6,28,${load},5,5`,
    ]);
    expect(codes).toEqual([]);
    const [{ strengthMpa }] = record.specimens;
    expect(strengthMpa).toBeCloseTo(3.8673, 3);
    expect(3.944 / strengthMpa).toBeCloseTo(10 / 9.80665, 3);
  });
});
