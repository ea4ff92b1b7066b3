import { describe, expect, it } from "vitest";
import { readCompaction } from "../../src/lab/compaction.js";
import { readEnvelope } from "../../src/lab/envelope.js";
import { readHydrometer } from "../../src/lab/hydrometer.js";
import { readJar } from "../../src/lab/jar.js";
import { LIMITS_LAYOUT, readLimits } from "../../src/lab/limits.js";
import { readPipette } from "../../src/lab/pipette.js";
import type { SheetGrid } from "../../src/lab/sheet/grid.js";
import { mapSheet } from "../../src/lab/sheet/mapping.js";
import type { SheetReading } from "../../src/lab/sheet/readSheet.js";
import { readSieve } from "../../src/lab/sieve.js";
import { readSpecimens } from "../../src/lab/specimens.js";
import { readTrials } from "../../src/lab/trials.js";
import { renderAll } from "../../src/words/render.js";

type Reader = (grid: SheetGrid) => SheetReading<unknown>;

/** What a sheet is told, each as `severity code row`. */
function told(read: Reader, lines: readonly string[]): string[] {
  const { findings } = read({ file: "s.csv", rows: lines.map((line) => line.split(",")) });
  return findings.map(({ severity, code, row }) => `${severity} ${code} ${row ?? ""}`.trim());
}

const sieve = (size: string | number) => [
  "dry mass (g),1000",
  "sieve (mm),retained (g)",
  `${size},600`,
  "pan,400",
];
const washed = (left: number) => [
  "dry mass (g),1000",
  `dry mass after washing (g),${left}`,
  "sieve (mm),retained (g)",
  `2,${left / 2}`,
  `pan,${left / 2}`,
];
const block = (...cells: (string | number)[]) => [
  "block,cement (%),age (d),load (kN),length (mm),width (mm),height (mm),mass (g),moisture at test (%),dry density (kg/m3),strength (MPa)",
  ["b1", 8, 28, ...cells].join(","),
];
const sides = (mm: number) => block(mm * mm * 0.003, mm, mm, "", "", "", "");
const mould = (cm3: number) => [
  `mould volume (cm3),${cm3}`,
  "water content (%),moist soil (g)",
  `8,${cm3 * 1.9}`,
];
const moist = (g: number) => [
  "mould volume (cm3),1000",
  "water content (%),moist soil (g)",
  `0,${g}`,
];
const bulk = (density: number) => ["water content (%),wet density (kg/m3)", `25,${density}`];
const pipette = (dry: number, minutes: number) => [
  `dry mass (g),${dry}`,
  "separating sieve (mm),0.063",
  "cylinder volume (ml),500",
  "pipette volume (ml),10",
  "dispersant mass (g),0",
  "time (min),depth (mm),temperature (C),solids (g)",
  `${minutes},100,20,0.1`,
];
const hydrometer = (type: string, reading: number, control: number) => [
  `hydrometer,${type}`,
  "dry mass (g),50",
  "separating sieve (mm),2",
  "meniscus correction,0",
  "calibration 1 reading,0",
  "calibration 1 depth (mm),180",
  "calibration 2 reading,40",
  "calibration 2 depth (mm),80",
  "time (min),reading,control,temperature (C)",
  `1,${reading},${control},20`,
];
const index = (pi: number) => ["LL,34", "PL,20", `PI,${pi}`];

describe("a limit holds on its edge, and not beyond", () => {
  it.each<[string, Reader, readonly string[], readonly string[], string]>([
    ["finest sieve", readSieve, sieve(0.02), sieve(0.019), "error out-of-range 3"],
    ["coarsest sieve", readSieve, sieve(200), sieve(201), "error out-of-range 3"],
    ["most left by washing", readSieve, washed(1000), washed(1001), "error washed-heavier 2"],
    ["a tenth left by washing", readSieve, washed(100), washed(99), "warning washed-away 2"],
    ["load of a side of 20 mm", readSpecimens, sides(20), sides(19), "error out-of-range 2"],
    ["load of a side of 1500 mm", readSpecimens, sides(1500), sides(1501), "error out-of-range 2"],
    ["smallest mould", readCompaction, mould(50), mould(49), "error out-of-range 1"],
    ["largest mould", readCompaction, mould(20_000), mould(20_001), "error out-of-range 1"],
    ["loose soil", readCompaction, moist(1200), moist(1199), "error density-impossible 3"],
    [
      "soil of grains alone",
      readCompaction,
      moist(2600),
      moist(2601),
      "error density-impossible 3",
    ],
    ["loose moist soil", readCompaction, bulk(1500), bulk(1499), "error density-impossible 2"],
    ["dense moist soil", readCompaction, bulk(3250), bulk(3251), "error density-impossible 2"],
    ["least in a cylinder", readPipette, pipette(5, 1), pipette(4.9, 1), "error out-of-range 1"],
    ["most in a cylinder", readPipette, pipette(250, 1), pipette(251, 1), "error out-of-range 1"],
    ["first reading", readPipette, pipette(20, 0.1), pipette(20, 0.09), "error out-of-range 7"],
    ["last reading", readPipette, pipette(20, 20_160), pipette(20, 20_161), "error out-of-range 7"],
    [
      "top of a BS scale",
      readHydrometer,
      hydrometer("BS", 50, 0),
      hydrometer("BS", 50.1, 0),
      "error off-scale 10",
    ],
    [
      "bottom of a 152H scale",
      readHydrometer,
      hydrometer("152H", 5, -10),
      hydrometer("152H", 5, -10.1),
      "error off-scale 10",
    ],
    ["index below the difference", readLimits, index(12.5), index(12.4), "error limits-disagree 3"],
    ["index above the difference", readLimits, index(15.5), index(15.6), "error limits-disagree 3"],
    [
      "index of all water",
      readLimits,
      ["LL,34", "PI,34"],
      ["LL,34", "PI,34.1"],
      "error limits-disagree 2",
    ],
    ["limit of a part of one", readLimits, ["LL,1"], ["LL,0.99"], "error fraction-for-percent 1"],
    // 1000 kN over a square metre is 1 MPa; within 3 % of 1.03.
    [
      "strength beside its load",
      readSpecimens,
      block(1000, 1000, 1000, "", "", "", "", 1.029),
      block(1000, 1000, 1000, "", "", "", "", 1.031),
      "error strength-and-load-differ 2",
    ],
    // 10 kN over a square metre is 0.01 MPa, 100,000 kN 100 MPa.
    [
      "least strength by load",
      readSpecimens,
      block(10, 1000, 1000, "", "", "", ""),
      block(9.9, 1000, 1000, "", "", "", ""),
      "error strength-impossible 2",
    ],
    [
      "greatest strength by load",
      readSpecimens,
      block(250, 50, 50, "", "", "", ""),
      block(250.1, 50, 50, "", "", "", ""),
      "error strength-impossible 2",
    ],
    // 1000 cm³ of 1900 g.
    [
      "mass far below the dry density",
      readSpecimens,
      block(20, 100, 100, 100, 1900, "", 2000),
      block(20, 100, 100, 100, 1899, "", 2000),
      "error mass-and-density-differ 2",
    ],
    [
      "mass far above the dry density",
      readSpecimens,
      block(20, 100, 100, 100, 1950, "", 1500),
      block(20, 100, 100, 100, 1951, "", 1500),
      "error mass-and-density-differ 2",
    ],
  ])("%s", (_, read, inside, outside, finding) => {
    const about = (lines: readonly string[]) => told(read, lines).filter((one) => one === finding);
    expect(about(inside)).toEqual([]);
    expect(new Set(told(read, outside))).toContain(finding);
  });

  it("what washing leaves is an error below a two-hundredth", () => {
    expect(told(readSieve, washed(5))).toContain("warning washed-away 2");
    expect(told(readSieve, washed(4.9))).toContain("error washed-away 2");
  });
});

const LIMITS = "test,blows,penetration (mm),water content (%)";
const MASSES = "test,blows,tin (g),tin + wet soil (g),tin + dry soil (g)";
const JAR = ["water depth (mm),200", "layer,time (min),top (mm)", "sand and gravel,1,60"];
const SPLIT = ["dry mass (g),1000", "split sieve (mm),2", "split dry mass (g),300"];
const SIEVES = ["sieve (mm),retained (g)", "4,100", "2,100", "1,100", "pan,200"];
const MARKS = (...marks: readonly string[]) => [
  "hydrometer,152H",
  "dry mass (g),50",
  "separating sieve (mm),2",
  "meniscus correction,0",
  ...marks,
  "time (min),reading,control,temperature (C)",
  "1,20,2,20",
];
const BULB = ["bulb length (mm),140", "bulb volume (cm3),60", "cylinder inner diameter (mm),60"];
const NECK = ["calibration 1 reading,0", "calibration 1 to neck (mm),110"];
const NECK2 = ["calibration 2 reading,40", "calibration 2 to neck (mm),40"];

describe("what does not go together is told at its place", () => {
  it.each<[string, Reader, readonly string[], readonly string[]]>([
    [
      "cup and cone in one sheet",
      readLimits,
      [LIMITS, "liquid limit,25,,40", "liquid limit,,20,41"],
      ["error mixed-methods"],
    ],
    [
      "a liquid limit without its reading",
      readLimits,
      [LIMITS, "liquid limit,,,40", "liquid limit,20,,41"],
      ["error missing-value 2"],
    ],
    [
      "a liquid limit without its water",
      readLimits,
      [LIMITS, "liquid limit,25,,", "liquid limit,20,,41"],
      ["error missing-value 2"],
    ],
    [
      "a soil dry as its tin",
      readLimits,
      [MASSES, "liquid limit,25,20,34,20"],
      ["error masses-disagree 2"],
    ],
    [
      "a soil that gained",
      readLimits,
      [MASSES, "liquid limit,25,20,29,30"],
      ["error masses-disagree 2"],
    ],
    ["a soil without water", readLimits, [MASSES, "liquid limit,25,20,30,30"], []],
    ["a test of another name", readLimits, [LIMITS, "colour,25,,40"], ["error unknown-test 2"]],
    [
      "a bar with one length",
      readLimits,
      ["shrinkage bar wet length (mm),140", LIMITS, "liquid limit,25,,40"],
      ["error incomplete-shrinkage"],
    ],
    [
      "a box with a length alone",
      readLimits,
      ["long box length (mm),600", LIMITS, "liquid limit,25,,40"],
      ["error incomplete-shrinkage 1"],
    ],
    [
      "a box that shrank away",
      readLimits,
      ["long box shrinkage (mm),600", LIMITS, "liquid limit,25,,40"],
      ["error box-shrank-away 1"],
    ],
    [
      "a box that nearly did",
      readLimits,
      ["long box shrinkage (mm),599", LIMITS, "liquid limit,25,,40"],
      [],
    ],
    ["a word between yes and no", readLimits, ["non-plastic,perhaps"], ["error not-yes-or-no 1"]],
    ["a line twice", readLimits, ["LL,34", "LL,35"], ["error repeated-fact 2"]],
    [
      "a mass twice",
      readSieve,
      ["dry mass (g),1000", "Dry mass (kg),0.9", ...SIEVES],
      ["error repeated-fact 2"],
    ],
    [
      "a limit twice",
      readLimits,
      ["LL,34", "test,value (%)", "liquid limit,35", "plastic limit,20"],
      ["error limit-twice 3"],
    ],
    [
      "a limit beside its readings",
      readLimits,
      ["LL,34", LIMITS, "liquid limit,25,,40"],
      ["error limit-twice"],
    ],
    [
      "a shrinkage beside its bar",
      readLimits,
      ["LS,5", "shrinkage bar wet length (mm),140", "shrinkage bar dry length (mm),133", "PL,20"],
      ["error limit-twice"],
    ],
    [
      "a mould as heavy as its filling",
      readCompaction,
      [
        "mould volume (cm3),1000",
        "mould mass (g),4000",
        "water content (%),mould + moist soil (g)",
        "8,4000",
      ],
      ["error lighter-than-mould 4"],
    ],
    [
      "masses without a mould",
      readCompaction,
      ["water content (%),mould + moist soil (g)", "8,5900"],
      ["error missing-fact", "error missing-fact"],
    ],
    [
      "masses without a volume",
      readCompaction,
      ["water content (%),moist soil (g)", "8,1900"],
      ["error missing-fact"],
    ],
    [
      "the soil with its mould and without",
      readCompaction,
      ["water content (%),mould + moist soil (g),moist soil (g)", "8,5900,1900"],
      ["error mass-twice"],
    ],
    [
      "no density at all",
      readCompaction,
      ["water content (%),remark", "8,x"],
      ["error wrong-header"],
    ],
    ["an optimum alone", readCompaction, ["OMC,9"], ["error missing-fact 1"]],
    [
      "a top beside its points",
      readCompaction,
      ["OMC,9", "MDD (kg/m3),1900", "water content (%),dry density (kg/m3)", "8,1880"],
      ["note unused-fact 1", "note unused-fact 2"],
    ],
    [
      "a split off the set",
      readSieve,
      ["dry mass (g),1000", "split sieve (mm),3", "split dry mass (g),300", ...SIEVES],
      ["error split-not-in-set 2"],
    ],
    [
      "two splits at one sieve",
      readSieve,
      [...SPLIT, "split 2 sieve (mm),2", "split 2 dry mass (g),100", ...SIEVES],
      ["error split-order 4"],
    ],
    [
      "half a split",
      readSieve,
      ["dry mass (g),1000", "split 3 dry mass (g),100", ...SIEVES],
      ["error incomplete-split 2"],
    ],
    [
      "a split that gained by washing",
      readSieve,
      [...SPLIT, "split dry mass after washing (g),301", ...SIEVES],
      ["error washed-heavier 4"],
    ],
    [
      "a set without a pan",
      readSieve,
      ["dry mass (g),1000", ...SIEVES.slice(0, 4)],
      ["error missing-pan"],
    ],
    [
      "a pan alone",
      readSieve,
      ["dry mass (g),1000", "sieve (mm),retained (g)", "pan,1000"],
      ["error no-sieves 3"],
    ],
    [
      "coefficients without a size",
      readSieve,
      ["D,size (mm)", "Cu,5"],
      ["error no-sieves", "note passing-input"],
    ],
    ["a jar with one layer", readJar, JAR, ["error missing-layer 3"]],
    [
      "a jar full of soil",
      readJar,
      [...JAR, "silt,30,80", "clay,2880,200"],
      ["error jar-full-of-soil 5"],
    ],
    [
      "layers that sink, at one time",
      readJar,
      [...JAR, "silt,1,59", "clay,2880,100"],
      ["error time-order 4", "error layer-sinks 4"],
    ],
    ["layers of no height", readJar, [...JAR, "silt,2,60", "clay,2880,60"], []],
    [
      "a pipette as large as its cylinder",
      readPipette,
      pipette(20, 1).with(3, "pipette volume (ml),500"),
      ["error pipette-volume 4"],
    ],
    [
      "two samples at one time",
      readPipette,
      [...pipette(20, 1), "1,100,20,0.05"],
      ["error time-order 8"],
    ],
    [
      "limits the wrong way round, at one sieve",
      readEnvelope,
      ["title,t", "source,s", "sieve (mm),low (%),high (%)", "2,50,49", "2,50,60"],
      ["error envelope-crossed 4", "error repeated-sieve 5"],
    ],
    [
      "a band that falls",
      readEnvelope,
      ["title,t", "source,s", "sieve (mm),low (%),high (%)", "20,49,90", "2,50,60"],
      ["error envelope-falls 4"],
    ],
    [
      "two of three parts of a colour, dry perhaps",
      readTrials,
      ["trial,L*,a*,b*,dry", "t1,60,8,,perhaps", "t2,,,,", "t3,60,8,20,no"],
      ["error missing-value 2", "error not-yes-or-no 2"],
    ],
    [
      "one mark of a scale",
      readHydrometer,
      MARKS(...NECK, ...BULB),
      ["error incomplete-calibration 5"],
    ],
    [
      "marks without the bulb",
      readHydrometer,
      MARKS(...NECK, ...NECK2, ...BULB.slice(1)),
      ["error incomplete-calibration 5"],
    ],
    ["marks with the bulb", readHydrometer, MARKS(...NECK, ...NECK2, ...BULB), []],
    [
      "marks to the middle, without the bulb's length",
      readHydrometer,
      MARKS(
        ...[...NECK, ...NECK2].map((line) => line.replace("neck", "bulb centre")),
        ...BULB.slice(1),
      ),
      [],
    ],
    [
      "a mark to the neck and one to the middle",
      readHydrometer,
      MARKS(...NECK, ...NECK2.map((line) => line.replace("neck", "bulb centre")), ...BULB),
      ["error two-calibrations 5"],
    ],
    [
      "depths beside a bulb",
      readHydrometer,
      MARKS(...[...NECK, ...NECK2].map((line) => line.replace("to neck", "depth")), BULB[0]),
      ["error two-calibrations 9"],
    ],
    ["a bulb alone", readHydrometer, MARKS(...BULB), ["error incomplete-calibration 5"]],
    [
      "a depth that does not fall",
      readHydrometer,
      MARKS(...NECK, NECK2[0], "calibration 2 to neck (mm),110", ...BULB),
      ["error calibration-order 7"],
    ],
    [
      "a block without any reading",
      readSpecimens,
      block("", "", "", "", "", "", ""),
      ["error missing-value 2"],
    ],
  ])("%s", (_, read, lines, expected) => {
    expect(told(read, lines)).toEqual(expected);
  });

  it("a water content is the water of the dry soil", () => {
    const { record } = readLimits({
      file: "s.csv",
      rows: [MASSES.split(","), "liquid limit,25,20,34,30".split(",")],
    });
    // 4 g of water in 10 g of soil.
    expect(record!.liquidLimitPoints).toEqual([{ measure: 25, waterContentPct: 40, row: 2 }]);
  });

  it("a mould that stands in the study is a mould of the sheet", () => {
    const rows = ["water content (%),mould + moist soil (g)", "8,5944"].map((line) =>
      line.split(","),
    );
    const facts = [
      { name: "mould volume (cm3)", value: "1000" },
      { name: "mould mass (g)", value: "4000" },
    ];
    const { record, findings } = readCompaction({ file: "s.csv", rows, facts });
    expect(findings).toEqual([]);
    expect(record!.points).toEqual([{ waterContentPct: 8, moistMassG: 1944, row: 2 }]);
    expect(record!.mouldVolumeCm3).toBe(1000);
  });
});

describe("a sheet of lines alone, in one's own words", () => {
  const rows = [
    ["Limite liquide (%)", "34"],
    ["Limite plastique (%)", "20"],
  ];
  const mapping = {
    columns: {},
    lines: {
      "limite liquide (%)": "liquid limit (%)",
      "Limite  plastique (%)": "plastic limit (%)",
    },
    cells: {},
    facts: {},
    skipRows: 0,
    decimalComma: false,
  };
  const place = { file: "study.yaml", key: "materials.0.limits" };

  it("is read by its lines", () => {
    const { grid, findings } = mapSheet({ file: "l.csv", rows }, mapping, [LIMITS_LAYOUT], place);
    expect(findings).toEqual([]);
    const { record } = readLimits(grid!);
    expect(record!.reported).toEqual({ liquidLimitPct: 34, plasticLimitPct: 20 });
  });

  it("is told what it lacks", () => {
    const other = { ...mapping, lines: { ...mapping.lines, Retrait: "LS (%)" } };
    const { findings } = mapSheet({ file: "l.csv", rows }, other, [LIMITS_LAYOUT], place);
    expect(findings.map(({ code, column }) => [code, column])).toEqual([
      ["absent-line", "materials.0.limits.lines.Retrait"],
    ]);
  });
});

describe("the numbers of a finding", () => {
  it.each<[string, Reader, readonly string[], readonly (string | undefined)[]]>([
    [
      "washed-away",
      readSieve,
      washed(98.76),
      ["98.76 g", "Washing left 9.9 % of the sample.", "more than 10 %, but for the finest clays"],
    ],
    ["washed-heavier", readSieve, washed(1001), ["1001 g", undefined, "at most 1000 g"]],
    [
      "columns-differ",
      readSieve,
      // 400 of 1000 g stay on 2 mm, so that 60 % pass.
      ["dry mass (g),1000", "sieve (mm),retained (g),passing (%)", "2,400,62.06", "pan,600,0"],
      [
        "62.1 %",
        "By this column 62.1 % pass the sieve, by “retained (g)” 60.0 %.",
        "the same within 2 points (common practice, no source)",
      ],
    ],
    [
      "split-order",
      readSieve,
      [...SPLIT, "split 2 sieve (mm),4", "split 2 dry mass (g),100", ...SIEVES],
      [
        "4 mm",
        "This split is not finer than the one before it (2 mm).",
        "splits from the coarsest to the finest",
      ],
    ],
    [
      "incomplete-split",
      readSieve,
      ["dry mass (g),1000", "split 3 dry mass (g),100", ...SIEVES],
      [undefined, undefined, "both “split 3 sieve (mm)” and “split 3 dry mass (g)”"],
    ],
    [
      "cumulative-falls",
      readSieve,
      ["dry mass (g),1000", "sieve (mm),cumulative retained (g)", "4,300", "2,200", "pan,1000"],
      ["200", "The cumulative mass falls.", "at least 300"],
    ],
    [
      "passing-rises",
      readSieve,
      ["sieve (mm),passing (%)", "4,60", "2,70"],
      ["70", undefined, "at most 60"],
    ],
    [
      "limits-disagree",
      readLimits,
      index(12.25),
      ["12.25 %", undefined, "14 %, within 1.5 points for rounding"],
    ],
    ["limits-disagree", readLimits, ["LL,34", "PI,35"], ["35 %", undefined, "at most 34 %"]],
    [
      "masses-disagree",
      readLimits,
      [MASSES, "liquid limit,25,20,29,30"],
      ["20, 29, 30", undefined, "tin < tin + dry soil ≤ tin + wet soil"],
    ],
    [
      "box-shrank-away",
      readLimits,
      ["long box shrinkage (mm),600", LIMITS, "liquid limit,25,,40"],
      ["600 mm", undefined, "less than 600 mm"],
    ],
    [
      "time-order",
      readPipette,
      [...pipette(20, 1.5), "1.5,100,20,0.05"],
      ["1.5", "This sample is not later than the one above it.", "more than 1.5 min"],
    ],
    [
      "pipette-volume",
      readPipette,
      pipette(20, 1).with(3, "pipette volume (ml),501"),
      ["501 cm³", undefined, "less than 500 cm³"],
    ],
    ["layer-sinks", readJar, [...JAR, "silt,2,59"], ["59", undefined, "at least 60 mm"]],
    [
      "jar-full-of-soil",
      readJar,
      [...JAR, "silt,30,80", "clay,2880,201"],
      ["201", undefined, "less than the water's 200 mm; a third of it is usual"],
    ],
    [
      "off-scale",
      readHydrometer,
      hydrometer("152H", 71, 0),
      ["71", "A hydrometer 152H does not show this reading.", "-10 to 70"],
    ],
    [
      "calibration-order",
      readHydrometer,
      MARKS(...NECK, NECK2[0], "calibration 2 to neck (mm),111", ...BULB),
      ["111 mm", undefined, "less than 110 mm, at a higher reading"],
    ],
    [
      "incomplete-calibration",
      readHydrometer,
      MARKS(...NECK, ...BULB),
      ["1", "The calibration has 1 mark.", "two marks of the scale"],
    ],
    [
      "incomplete-calibration",
      readHydrometer,
      MARKS(...NECK, ...NECK2, BULB[1]),
      [undefined, undefined, "“bulb length (mm)”, “cylinder inner diameter (mm)”"],
    ],
    [
      "strength-and-load-differ",
      readSpecimens,
      // 20 kN over 100 mm by 100 mm is 2 MPa.
      block(20, 100, 100, "", "", "", "", 2.0712),
      [
        "2.0712; 20",
        "The strength entered, 2.071 MPa, is not the load over the loaded face, 2.000 MPa.",
        "the same strength within 3 %",
      ],
    ],
    [
      "strength-impossible",
      readSpecimens,
      block(0.04444, 100, 100, "", "", "", ""),
      [
        "0.04444",
        "The load over the loaded face gives a strength of 0.0044 MPa, which no block of earth has.",
        "0.01 MPa to 100 MPa (common practice, no source)",
      ],
    ],
    [
      "mass-and-density-differ",
      readSpecimens,
      block(20, 100, 100, 100, 2000.6, "", 1500),
      [
        "2000.6",
        "The mass of this block over its volume, 2001 kg/m³, does not go with its dry density, 1500 kg/m³.",
        "95 to 130 % of the dry density, depending on the moisture (common practice, no source)",
      ],
    ],
    [
      "density-impossible",
      readSpecimens,
      // 1188 g in a litre with a tenth of water leaves 1080 kg/m³.
      block(20, 100, 100, 100, 1188, 10, ""),
      [
        "1188",
        "These readings give a dry density of 1080 kg/m³. No compacted earth has such a density.",
        "1200 kg/m³ to 2600 kg/m³ (common practice, no source)",
      ],
    ],
    [
      "lighter-than-mould",
      readCompaction,
      [
        "mould volume (cm3),1000",
        "mould mass (g),4000",
        "water content (%),mould + moist soil (g)",
        "8,3999",
      ],
      ["3999", undefined, "more than the mould mass, 4000 g"],
    ],
    [
      "envelope-falls",
      readEnvelope,
      ["title,t", "source,s", "sieve (mm),low (%),high (%)", "20,49.5,90", "2,50,60"],
      [
        "49.5, 90",
        "A limit falls below that of the finer sieve 2 mm.",
        "limits of the passing that never fall as size grows",
      ],
    ],
  ])("%s %#", (code, read, lines, [value, message, expected]) => {
    const { findings } = read({ file: "s.csv", rows: lines.map((line) => line.split(",")) });
    const found = renderAll(findings).find((each) => each.code === code)!;
    expect([found.value, found.expected]).toEqual([value, expected]);
    if (message !== undefined) expect(found.message).toBe(message);
  });
});
