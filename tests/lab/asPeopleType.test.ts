import { describe, expect, it } from "vitest";
import { readCompaction } from "../../src/lab/compaction.js";
import { readHydrometer } from "../../src/lab/hydrometer.js";
import { readLimits } from "../../src/lab/limits.js";
import { readPipette } from "../../src/lab/pipette.js";
import { readGrid, type SheetGrid } from "../../src/lab/sheet/grid.js";
import { parseHeaderCell } from "../../src/lab/sheet/layout.js";
import type { SheetReading } from "../../src/lab/sheet/readSheet.js";
import { readSieve } from "../../src/lab/sieve.js";
import { readSpecimens } from "../../src/lab/specimens.js";
import { render } from "../../src/words/render.js";

async function read<T>(
  reader: (grid: SheetGrid) => SheetReading<T>,
  lines: readonly string[],
  lineEnd = "\n",
) {
  const bytes = new TextEncoder().encode(lines.join(lineEnd));
  const { grid, findings: noticed } = await readGrid("sheets/s.csv", bytes);
  const { record, findings } = grid ? reader(grid) : { findings: noticed };
  const codes = findings.map(({ severity, code, row }) => `${severity} ${code} ${row}`);
  return { record: record as T, findings, codes };
}

const SIEVE = [
  "dry mass (g),1000",
  "sieve (mm),retained (g)",
  "2,400",
  "0.063,500",
  "pan,100",
] as const;
const BLOCKS = ["block,cement (%),age (d),strength (MPa)", "B1,6,28,3.1", "B2,8,28,4.2"] as const;
const HEADER = "block,cement (%),age (d),strength (MPa),remark";

describe("rows that begin with #", () => {
  it("are remarks with a space behind it, or alone in their row", async () => {
    const { record, codes } = await read(readSieve, [
      "# Invented, for a test",
      "#without a space but alone",
      ...SIEVE,
      "#",
      "# 4,12",
    ]);
    expect(codes).toEqual([]);
    expect(record.rows).toHaveLength(2);
  });

  it("may be a block or a sieve: asked, never lost", async () => {
    expect((await read(readSpecimens, [...BLOCKS, "#3,9,28,5.1"])).codes).toEqual([
      "error row-or-remark 4",
    ]);
    expect(
      (await read(readSieve, [...SIEVE.slice(0, 3), "#40,12", ...SIEVE.slice(3)])).codes,
    ).toEqual(["error sieve-or-remark 4"]);
  });

  it("are sieves where three of them rise as the numbers of sieves do", async () => {
    const header = "sieve,passing (%)";
    const { record, codes } = await read(readSieve, [
      header,
      "3/8 in,100",
      "#4,97",
      "#40,42",
      "#200,2",
    ]);
    expect(codes).toEqual(["note passing-input undefined"]);
    expect(record.rows.map(({ sizeMm }) => sizeMm)).toEqual([9.5, 4.75, 0.425, 0.075]);
    // Two of them, a number that no sieve has, or one that falls, may be rows left out.
    for (const rows of [
      ["#4,97", "#200,2"],
      ["#4,97", "#41,42", "#200,2"],
      ["#200,2", "#40,42", "#4,97"],
    ]) {
      const asked = await read(readSieve, [header, "3/8 in,100", ...rows, "0.063,1"]);
      expect(new Set(asked.findings.map(({ code }) => code))).toContain("sieve-or-remark");
    }
  });

  it("may be a spreadsheet's error, in any cell that is read", async () => {
    for (const error of ["#N/A", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#¡VALOR!", "#NV"]) {
      expect((await read(readSpecimens, [...BLOCKS, `${error},9,28,5.1`])).codes).toEqual([
        "error spreadsheet-error 4",
      ]);
      const { findings } = await read(readSpecimens, [
        HEADER,
        `B1,6,28,${error},`,
        `B2,8,28,4,${error}`,
      ]);
      expect(findings.map(({ code, row, column }) => [code, row, column])).toEqual([
        ["spreadsheet-error", 2, "strength (MPa)"],
        ["spreadsheet-error", 3, "remark"],
      ]);
    }
  });

  it("above the table are told where they are no remark", async () => {
    const { codes } = await read(readSieve, ["#dry mass (g),900", ...SIEVE]);
    expect(codes).toEqual(["note unused-fact 1"]);
  });
});

describe("line ends", () => {
  it.each([
    ["LF", "\n"],
    ["CRLF", "\r\n"],
    ["CR alone", "\r"],
  ])("%s", async (_, end) => {
    const { record } = await read(readSieve, SIEVE, end);
    expect(record.rows.map(({ row }) => row)).toEqual([3, 4]);
  });

  it("mixed in one file lose no row", async () => {
    const text = "dry mass (g),1000\r\nsieve (mm),retained (g)\n2,400\r0.063,500\r\npan,100\n";
    const { record } = await read(readSieve, [text]);
    expect(record.rows).toHaveLength(2);
    expect(record.panG).toBe(100);
  });
});

describe("numbers as people type them", () => {
  it("with thousands set apart, or the unit of the column behind them", async () => {
    const { record, codes } = await read(readSieve, [
      "dry mass (g),1 000 g",
      "sieve (mm),retained (g)",
      "2 mm,400.0 g",
      '0.063,"500"',
      "pan,100\u00a0g",
    ]);
    expect(codes).toEqual([]);
    expect(record).toMatchObject({ dryMassG: 1000, panG: 100 });
    expect(record.rows.map(({ retainedG }) => retainedG)).toEqual([400, 500]);
    const blocks = await read(readSpecimens, [BLOCKS[0], "B1,6 %,28 days,3.1 mpa"]);
    expect(blocks.record.specimens[0]).toMatchObject({ cementPct: 6, ageDays: 28 });
    // Another unit than that of the header is a question for the laboratory.
    const other = await read(readSpecimens, [BLOCKS[0], "B1,6,28,3100 kPa"]);
    expect(other.codes).toEqual(["error not-a-number 2"]);
  });

  it("asks where a comma has two readings, and shows the point otherwise", async () => {
    const row = (mass: string) => [SIEVE[0], SIEVE[1], `2,"${mass}"`, ...SIEVE.slice(3)];
    const { findings } = await read(readSieve, row("1,234"));
    expect(findings[0].code).toBe("ambiguous-comma");
    expect(render(findings[0].expected)).toBe("1.234, or 1234");
    const long = await read(readSieve, row("1.234,5"));
    expect(render(long.findings[0].expected)).toBe("a decimal point: 1234.5");
  });

  it("refuses a limit or a spread in place of a number", async () => {
    for (const text of ["<0.1", "≥ 5", "12.3 ± 0.2"]) {
      const { findings } = await read(readSieve, [
        SIEVE[0],
        SIEVE[1],
        `2,${text}`,
        ...SIEVE.slice(3),
      ]);
      expect(findings.map(({ code }) => code)).toEqual(["not-one-number"]);
    }
  });

  it("takes < and the finest sieve for the pan, and no other size", async () => {
    const pan = await read(readSieve, SIEVE);
    const finer = await read(readSieve, [...SIEVE.slice(0, 4), "<0.063,100"]);
    expect(finer.record).toEqual(pan.record);
    expect((await read(readSieve, [...SIEVE.slice(0, 4), "<0.075,100"])).codes).toEqual([
      "error pan-size 5",
    ]);
    expect((await read(readSieve, [...SIEVE, "pan,5"])).codes).toEqual(["error repeated-sieve 6"]);
    expect(
      (
        await read(readSieve, [
          ...SIEVE.slice(0, 1),
          "split sieve (mm),pan",
          "split dry mass (g),5",
          ...SIEVE.slice(1),
        ])
      ).codes,
    ).toEqual(["error unknown-sieve 2"]);
  });

  it("reads strengths in the units of the trade", async () => {
    for (const [unit, strength] of [
      ["kPa", 3100],
      ["kN/m2", 3100],
      ["N/mm²", 3.1],
      ["kgf/cm2", 31.6112],
      ["kg/cm2", 31.6112],
      ["psi", 449.617],
    ] as const) {
      const lines = [BLOCKS[0].replace("MPa", unit), `B1,6,28,${strength}`];
      const { record } = await read(readSpecimens, lines);
      expect(record.specimens[0].strengthMpa).toBeCloseTo(3.1, 4);
    }
  });

  it("does not blame a decimal comma for an unquoted one in a remark", async () => {
    const remark = await read(readSpecimens, [HEADER, "B1,6,28,3.1,broke, at the corner"]);
    expect(render(remark.findings[0].remedy)).toMatch(/double quotes/);
    const comma = await read(readSpecimens, [...BLOCKS, "B3,9,28,5,1"]);
    expect(render(comma.findings[0].remedy)).toMatch(/decimal comma/);
  });

  it("tells a line that has no value", async () => {
    expect((await read(readSieve, ["dry mass (g),", ...SIEVE.slice(1)])).codes).toEqual([
      "error missing-value 1",
    ]);
  });

  it("splits a header cell of many spaces at once", () => {
    const began = performance.now();
    for (const filler of [" ", "(", ")", "( ", "a "]) {
      parseHeaderCell(`a${filler.repeat(100_000)}b`);
      parseHeaderCell(filler.repeat(100_000));
    }
    expect(performance.now() - began).toBeLessThan(500);
    expect(parseHeaderCell("mass (dry) (g)")).toEqual({ name: "mass (dry)", unit: "g" });
    expect(parseHeaderCell("a (b) c")).toEqual({ name: "a (b) c" });
    expect(parseHeaderCell("reading ()")).toEqual({ name: "reading", unit: "" });
  });
});

describe("a compaction sheet", () => {
  const FACT = "mould volume (cm3),1000";

  it("may weigh the soil alone, without its mould", async () => {
    const mould = await read(readCompaction, [
      FACT,
      "mould mass (g),4000",
      "water content (%),mould + moist soil (g)",
      "8,5900",
      "10,6050",
    ]);
    const net = await read(readCompaction, [
      FACT,
      "# no mould",
      "water content (%),moist soil (g)",
      "8,1900",
      "10,2050",
    ]);
    expect(net.codes).toEqual([]);
    expect(net.record).toEqual(mould.record);
  });

  it.each<[string, string[], string]>([
    ["no mass", ["water content (%),remark", "8,wet"], "wrong-header"],
    [
      "both",
      ["water content (%),moist soil (g),mould + moist soil (g)", "8,1900,5900"],
      "mass-twice",
    ],
    ["a mould unknown", ["water content (%),mould + moist soil (g)", "8,5900"], "missing-fact"],
    ["a gap", ["water content (%),moist soil (g)", "8,1900", "10,"], "missing-value"],
  ])("refuses %s", async (_, table, code) => {
    const { findings } = await read(readCompaction, [FACT, ...table]);
    expect(
      findings.filter(({ severity }) => severity === "error").map((each) => each.code),
    ).toEqual([code]);
  });
});

describe("a soil without plasticity", () => {
  const TABLE = ["test,water content (%)", "plastic limit,18"];

  it.each(["yes", "NP", "1", "Y", "true", "non-plastic", "sí"])(
    "is so by the word %s",
    async (word) => {
      const { record, codes } = await read(readLimits, [`non-plastic,${word}`, ...TABLE]);
      expect(codes).toEqual([]);
      expect(record.nonPlastic).toBe(true);
    },
  );

  it.each(["no", "0", "plastic"])("is not by the word %s", async (word) => {
    expect((await read(readLimits, [`non-plastic,${word}`, ...TABLE])).record.nonPlastic).toBe(
      false,
    );
  });

  it("is told where the word is not understood", async () => {
    expect((await read(readLimits, ["non-plastic,nearly", ...TABLE])).codes).toEqual([
      "error not-yes-or-no 1",
    ]);
  });

  it("may be all that a laboratory reports", async () => {
    const { record, codes } = await read(readLimits, ["# by the laboratory", "non-plastic,NP"]);
    expect(codes).toEqual([]);
    expect(record).toMatchObject({ nonPlastic: true, plasticLimitPoints: [] });
    // Another line makes it a sheet whose table was not found.
    expect((await read(readLimits, ["non-plastic,NP", "tests,water"])).codes).toEqual([
      "error wrong-header undefined",
    ]);
  });
});

describe("a pretreatment that was none", () => {
  const HYDROMETER = [
    "hydrometer,152H",
    "dry mass (g),50",
    "separating sieve (mm),2",
    "meniscus correction,0.5",
    "time (min),reading,control,temperature (C)",
    "1,40,4.5,20",
  ];
  const PIPETTE = [
    "dry mass (g),20.4",
    "separating sieve (mm),0.063",
    "cylinder volume (ml),500",
    "pipette volume (ml),10",
    "dispersant mass (g),0.9",
    "time (min),depth (mm),temperature (C),solids (g)",
    "4.7,100,20,0.221",
  ];

  it.each(["none", "No", "-", "nothing", "n/a", "not treated", "ninguno"])(
    "by the word %s",
    async (word) => {
      const { record, codes } = await read(readHydrometer, [`pretreatment,${word}`, ...HYDROMETER]);
      expect(codes).toEqual([]);
      expect(record.pretreatment).toBeUndefined();
      const pipette = await read(readPipette, [`pretreatment,${word}`, ...PIPETTE]);
      expect(pipette.record.pretreatment).toBeUndefined();
    },
  );

  it("has no loss", async () => {
    const lines = (loss: string) => ["pretreatment,none", `pretreatment loss (%),${loss}`];
    expect((await read(readHydrometer, [...lines("0"), ...HYDROMETER])).codes).toEqual([]);
    expect((await read(readHydrometer, [...lines("3.2"), ...HYDROMETER])).codes).toEqual([
      "error pretreatment-unnamed 2",
    ]);
  });
});

describe("a block sheet", () => {
  it("takes a control without cement on the day it was made", async () => {
    const { record, codes } = await read(readSpecimens, [BLOCKS[0], "C1,0,0,0.07", BLOCKS[1]]);
    expect(codes).toEqual([]);
    expect(record.specimens[0]).toMatchObject({ cementPct: 0, ageDays: 0, strengthMpa: 0.07 });
  });

  it("keeps a block in where “excluded” says no", async () => {
    const lines = [
      "block,cement (%),age (d),strength (MPa),excluded",
      "B1,6,28,3.1,no",
      "B2,6,28,1,cracked",
    ];
    const { record } = await read(readSpecimens, lines);
    expect(record.specimens.map(({ excluded }) => excluded)).toEqual([undefined, "cracked"]);
  });
});

describe("a sieve sheet with masses and percentages side by side", () => {
  const of = (header: string, rows: readonly string[]) =>
    read(readSieve, ["dry mass (g),500", `sieve (mm),retained (g),${header}`, ...rows]);

  it.each([
    ["passing (%)", ["4,50,90", "1,150,60", "0.063,250,10", "pan,50,"], []],
    ["passing (%)", ["4,50,91.9", "1,150,58.1", "0.063,250,10", "pan,50,"], []],
    ["passing (%)", ["4,50,90", "1,150,70", "0.063,250,10", "pan,50,"], [4]],
    ["cumulative retained (%)", ["4,50,10", "1,150,40", "0.063,250,90", "pan,50,100"], []],
    ["cumulative retained (%)", ["4,50,10", "1,150,43", "0.063,250,90", "pan,50,100"], [4]],
    ["retained (%)", ["4,50,10", "1,150,30", "0.063,250,50", "pan,50,10"], []],
    ["retained (%)", ["4,50,13", "1,150,30", "0.063,250,47", "pan,50,10"], [3]],
    ["cumulative retained (g)", ["4,50,50", "1,150,200", "0.063,250,450", "pan,50,500"], []],
    ["cumulative retained (g)", ["4,50,50", "1,150,200", "0.063,250,430", "pan,50,500"], [5]],
  ])("refuses a column %s that says something else: %j", async (header, rows, at) => {
    const { findings } = await of(header, rows);
    const errors = findings.filter(({ severity }) => severity === "error");
    expect(errors.map(({ code, row, column }) => [code, row, column])).toEqual(
      at.map((row) => ["columns-differ", row, header]),
    );
  });
});

describe("characteristic sizes", () => {
  const of = (...rows: readonly string[]) => read(readSieve, ["D,size (mm)", ...rows]);

  it("leave the coefficients below them out, in any order", async () => {
    const { record, codes } = await of(
      "D10,0.19",
      "D60,0.99",
      "D30,0.42",
      "D100,9.5",
      "Cu,5.2",
      "Cc,0.9",
    );
    expect(codes).toEqual(["note passing-input undefined"]);
    expect(record.rows.map(({ sizeMm }) => sizeMm)).toEqual([9.5, 0.99, 0.42, 0.19]);
  });

  it("are asked for as a table where they stand as lines", async () => {
    const { codes } = await read(readSieve, ["D10 (mm),0.19", "D30 (mm),0.42", "D60 (mm),0.99"]);
    expect(codes).toEqual(["error sizes-as-lines 1"]);
  });

  it.each([
    ["a tie", "D30,0.99", "D30 is not smaller than the size of the next larger D (0.99)."],
    ["a slip", "D30,1.42", "D30 is not smaller than the size of the next larger D (0.99)."],
  ])("tell %s once, at the D that it stands under", async (_, row, words) => {
    const { findings, codes } = await of("D10,0.19", row, "D60,0.99", "D100,9.5");
    expect(codes.filter((code) => code.startsWith("error"))).toEqual(["error sieve-order 3"]);
    expect(render(findings.find(({ code }) => code === "sieve-order")!.message)).toBe(words);
  });
});

describe("names and units of other laboratories", () => {
  it("are read in a block sheet", async () => {
    const { record, codes } = await read(readSpecimens, [
      "Specimen No.,Cement content [%],Age [d],Compressive strength [N/mm²],Dry unit weight [kN/m³]",
      "A,6,28,2.1,18.5",
    ]);
    expect(codes).toEqual([]);
    expect(record.specimens[0]).toMatchObject({ id: "A", cementPct: 6, strengthMpa: 2.1 });
    expect(record.specimens[0].dryDensityKgM3).toBeCloseTo(1886.47, 2);
    const load = await read(readSpecimens, [
      "block,cement (%),age (d),Failure load (kip),diameter (in)",
      "A,6,28,3.1,4",
    ]);
    // 3100 lbf over π/4 · 4² in² are 246.7 psi.
    expect(load.record.specimens[0].strengthMpa).toBeCloseTo(246.69 * 0.006894757, 4);
  });

  it("are asked for once where they are not known", async () => {
    const { codes } = await read(readSpecimens, [
      "block,cement (%),age (d),crushing value",
      "A,6,28,2.1",
      "B,6,28,2.3",
    ]);
    expect(codes).toEqual(["note unused-column 1", "error wrong-header 1"]);
  });

  it("are read in a compaction sheet", async () => {
    const { record, codes } = await read(readCompaction, [
      "optimum moisture (%),9.4",
      "maximum dry unit weight (kN/m3),19.8",
    ]);
    expect(codes).toEqual([]);
    expect(record.reported).toMatchObject({ optimumWaterPct: 9.4 });
    expect(record.reported!.maximumDryDensityKgM3).toBeCloseTo(2019.04, 2);
  });
});
