import { describe, expect, it } from "vitest";
import {
  formatFixed,
  formatNumber,
  formatPlain,
  formatQuantity,
  inUnits,
  measured,
} from "../../src/quantities/format.js";
import { parseNumber, parseQuantity } from "../../src/quantities/parseQuantity.js";
import { parseSieve, SIEVE_DESIGNATIONS, sieveNumbers } from "../../src/quantities/sieves.js";
import {
  convertFromBase,
  convertToBase,
  type Dimension,
  normaliseUnit,
  UNITS,
} from "../../src/quantities/units.js";
import { say } from "../../src/words/message.js";
import { render, renderAll } from "../../src/words/render.js";

/**
 * Every unit in its base unit, from the definitions: inch 25.4 mm, pound 453.59237 g, pound-force
 * 4.4482216152605 N, kilogram-force 9.80665 N, US gallon 231 in³, mile 5280 ft.
 */
const IN_BASE: Readonly<Record<Dimension, Readonly<Record<string, number>>>> = {
  length: { mm: 1, um: 1e-3, cm: 10, m: 1e3, in: 25.4, ft: 304.8 },
  mass: { g: 1, kg: 1e3, t: 1e6, lb: 453.59237, oz: 28.349523125, "short ton": 907184.74 },
  distance: { km: 1, mi: 1.609344 },
  area: { m2: 1, ft2: 0.09290304 },
  volume: {
    cm3: 1,
    ml: 1,
    l: 1e3,
    m3: 1e6,
    in3: 16.387064,
    ft3: 28316.846592,
    yd3: 764554.857984,
    gal: 3785.411784,
  },
  density: {
    "kg/m3": 1,
    "g/cm3": 1e3,
    "Mg/m3": 1e3,
    "t/m3": 1e3,
    "lb/ft3": 16.01846337396,
    "kN/m3": 101.9716212978,
  },
  stress: {
    MPa: 1,
    kPa: 1e-3,
    "N/mm2": 1,
    "kN/m2": 1e-3,
    "kgf/cm2": 0.0980665,
    psi: 0.006894757293168,
  },
  force: { kN: 1, N: 1e-3, kgf: 0.00980665, lbf: 0.0044482216152605, kip: 4.4482216152605 },
  temperature: { C: 1, F: -17.22222222222 },
  ratio: { "%": 1 },
  duration: { min: 1, s: 0.0166666666667, h: 60 },
  age: { d: 1, day: 1, week: 7 },
  concentration: { "g/l": 1 },
  number: { "-": 1 },
};

describe("units", () => {
  // NIST Special Publication 811 (2008), Appendix B.8, from memory: psi 6.894 757 kPa,
  // lb/ft3 16.018 46 kg/m3, ft3 0.028 316 85 m3, yd3 0.764 554 9 m3, lbf 4.448 222 N.
  it.each([
    [1, "psi", "stress", 0.006894757, 1e-9],
    [1, "lb/ft3", "density", 16.01846, 1e-5],
    [1, "ft3", "volume", 28316.85, 5e-3],
    [1, "yd3", "volume", 764554.9, 5e-2],
    [1000, "lbf", "force", 4.448222, 1e-6],
    [94, "lb", "mass", 42637.68, 5e-3],
    [100, "kgf/cm²", "stress", 9.80665, 1e-12],
    [2500, "kN/m²", "stress", 2.5, 1e-12],
  ] as const)("%d %s of %s", (value, unit, dimension, expected, within) => {
    expect(Math.abs((convertToBase(value, unit, dimension) as number) - expected)).toBeLessThan(
      within,
    );
  });

  it("are what their definitions say, all of them", () => {
    const units = Object.entries(UNITS) as [Dimension, (typeof UNITS)[Dimension]][];
    for (const [dimension, { scales }] of units) {
      expect(Object.keys(scales)).toEqual(Object.keys(IN_BASE[dimension]));
      for (const [unit, value] of Object.entries(IN_BASE[dimension])) {
        expect(convertToBase(1, unit, dimension)! / value, unit).toBeCloseTo(1, 11);
        expect(convertFromBase(value, unit, dimension), unit).toBeCloseTo(1, 10);
      }
    }
    expect([212, 32, -40].map((degrees) => convertToBase(degrees, "F", "temperature"))).toEqual([
      expect.closeTo(100, 9),
      0,
      expect.closeTo(-40, 9),
    ]);
  });

  it("come back from the base unit", () => {
    for (const [dimension, { scales }] of Object.entries(UNITS)) {
      for (const unit of Object.keys(scales)) {
        const base = convertToBase(12.75, unit, dimension as Dimension) as number;
        expect(convertFromBase(base, unit, dimension as Dimension)).toBeCloseTo(12.75, 12);
      }
    }
  });

  it("belong to their dimension only, inherited names to none", () => {
    expect(convertToBase(1, "kg", "stress")).toBeUndefined();
    expect(convertToBase(1, "constructor", "stress")).toBeUndefined();
    expect(() => convertFromBase(1, "kg", "stress")).toThrow(/invalid `unit`: kg/);
  });
});

describe("what a person reads", () => {
  // 1 m is 3.2808 ft, 1 m³ 1.308 yd³, 1000 kg/m³ 62.43 lb/ft³, 1 MPa 145 psi, 1 kN 224.8 lbf.
  it.each([
    ["size", 2, "2.00 mm", "2.00 mm"],
    ["length", 1000, "1.00 m", "3.28 ft"],
    ["depth", 127, "127 mm", "5.00 in"],
    ["mass", 1000, "1.00 kg", "2.20 lb"],
    ["volume", 1e6, "1.00 m³", "1.31 yd³"],
    ["density", 1000, "1000 kg/m³", "62.4 lb/ft³"],
    ["stress", 1, "1.00 MPa", "145 psi"],
    ["force", 1, "1.00 kN", "225 lbf"],
    ["temperature", 20, "20.0 °C", "68.0 °F"],
    ["ratio", 8, "8.00 %", "8.00 %"],
  ] as const)("of a %s", (kind, value, si, us) => {
    expect(render(formatQuantity(value, kind, "SI"))).toBe(si);
    expect(render(formatQuantity(value, kind, "US"))).toBe(us);
  });

  it("has no zeros behind what was entered, and no more than four digits", () => {
    expect([40, 2.5, 1.23456, 1200, 0.1].map((value) => formatPlain(value).number)).toEqual([
      "40",
      "2.5",
      "1.235",
      "1200",
      "0.1",
    ]);
    expect(formatPlain(2.71449, 3)).toEqual({ number: "2.71" });
  });
});

describe("the spellings of a unit", () => {
  it.each([
    ["um", ["µm", "μm", "micron"]],
    ["in", ["inch", "inches", '"', "″", "in."]],
    ["ft", ["foot", "feet", "'", "′"]],
    ["g", ["gram", "grams"]],
    ["lb", ["lbs", "pound", "pounds"]],
    ["oz", ["ounce", "ounces"]],
    ["short ton", ["ton"]],
    ["t", ["tonne"]],
    ["cm3", ["cc", "cm³", "cm^3"]],
    ["ml", ["mL"]],
    ["l", ["L", "litre"]],
    ["ft3", ["cu ft", "ft³"]],
    ["yd3", ["cu yd", "cu  yd"]],
    ["lb/ft3", ["pcf", "lb/ft³"]],
    ["g/cm3", ["g/cc", "g/cm^3"]],
    ["kgf/cm2", ["kg/cm2", "kg/cm²"]],
    ["MPa", ["MN/m2", "MN/m²", "mpa"]],
    ["psi", ["lbf/in2", "lb/in2"]],
    ["kPa", ["kpa"]],
    ["kN", ["kn"]],
    ["kip", ["kips"]],
    ["N", ["n"]],
    ["C", ["degC", "c", "°C", "° c"]],
    ["F", ["degF", "f", "°F"]],
    ["%", ["percent"]],
    ["min", ["minute", "minutes"]],
    ["s", ["sec"]],
    ["h", ["hour", "hours"]],
    ["d", ["days"]],
    ["week", ["weeks"]],
    ["g/l", ["g/L"]],
  ])("%s", (unit, spellings) => {
    expect(spellings.map(normaliseUnit)).toEqual(spellings.map(() => unit));
  });

  it("that nobody knows stays as it is", () => {
    expect(["stone", " hand ", "toString"].map(normaliseUnit)).toEqual([
      "stone",
      "hand",
      "toString",
    ]);
  });
});

describe("numbers as people write them", () => {
  it.each([
    ["12", { value: 12 }],
    ["-0.5", { value: -0.5 }],
    ["−3", { value: -3 }],
    ["1e3", { value: 1000 }],
    ["1,234.5", { value: 1234.5 }],
    ["1,234,567", { value: 1234567 }],
    ["1 234.5", { value: 1234.5 }],
    ["12\u00a0345", { value: 12345 }],
    ["12\u202f345", { value: 12345 }],
    ["12’345", { value: 12345 }],
    ["12\u00a0", { value: 12 }],
    ["1,234", { problem: "comma-decimal" }],
    ["1 234,5", { problem: "comma-decimal" }],
    ["1 23", { problem: "not-a-number" }],
    ["1234 567", { problem: "not-a-number" }],
    ["1.234,5", { problem: "comma-decimal" }],
    ["12,5", { problem: "comma-decimal" }],
    ["1e999", { problem: "not-a-number" }],
    ["0x10", { problem: "not-a-number" }],
    ["NaN", { problem: "not-a-number" }],
    ["  ", { problem: "empty" }],
  ])("%s", (text, expected) => {
    expect(parseNumber(text)).toEqual(expected);
  });

  it("with units", () => {
    expect(parseQuantity("2,5 MPa", "stress")).toEqual({ problem: "comma-decimal" });
    expect(parseQuantity("strong", "stress")).toEqual({ problem: "not-a-number" });
    expect(parseQuantity("-40 °F", "temperature")).toEqual({ value: -40, unit: "°F" });
    expect(parseQuantity("0.25", "number")).toEqual({ value: 0.25, unit: "-" });
    expect(parseQuantity("1 650 kg/m3", "density")).toEqual({ value: 1650, unit: "kg/m3" });
  });

  it.each([
    ["6 ft 8 in", "length", 2032],
    ["6' 8\"", "length", 2032],
    ["6 feet, 8 1/2 inches", "length", 2044.7],
    ["7 1/2 in", "length", 190.5],
    ["3/4 in.", "length", 19.05],
    ["5-1/2 in", "length", 139.7],
    ["5 lb 4 oz", "mass", 2381.35994],
  ] as const)("in pieces: %s", (text, dimension, expected) => {
    const read = parseQuantity(text, dimension);
    expect("value" in read && read.value).toBeCloseTo(expected, 4);
  });

  it.each([
    ["8 in 6 ft", "length"],
    ["6 ft 14 in", "length"],
    ["6 ft 8", "length"],
    ["6 ft 8 lb", "length"],
    ["1/0 in", "length"],
    ["20 C 5 F", "temperature"],
  ] as const)("that make no quantity: %s", (text, dimension) => {
    expect(parseQuantity(text, dimension)).toHaveProperty("problem");
  });

  it("are found, or not, in long texts without searching long", () => {
    const began = performance.now();
    for (const filler of [" ", "1", "1 ", "1,", "1.", "(", "e"]) {
      const text = filler.repeat(100_000);
      expect(parseNumber(`${text}x`)).toEqual({ problem: "not-a-number" });
      expect(parseSieve(`${text}x`)).toBeUndefined();
      expect(parseQuantity(`1 ${text}x`, "length")).toHaveProperty("problem");
    }
    expect(performance.now() - began).toBeLessThan(1000);
  });
});

describe("values in sentences", () => {
  const finding = {
    row: 4,
    message: say`A bound of ${measured(2.0684, "stress", 2)} at ${measured(1900, "density")}.`,
    parts: [say`${measured(0, "stress", 1)}`, "a user's own 2 MPa"],
  };

  it("are written in SI, and anew for readers of other units; texts and numbers stay", () => {
    expect(renderAll(finding)).toEqual({
      row: 4,
      message: "A bound of 2.07 MPa at 1900 kg/m³.",
      parts: ["0.0 MPa", "a user's own 2 MPa"],
    });
    expect(renderAll(inUnits(finding, "US"))).toEqual({
      row: 4,
      message: "A bound of 300 psi at 119 lb/ft³.",
      parts: ["0 psi", "a user's own 2 MPa"],
    });
    expect(inUnits(finding, "SI")).toBe(finding);
  });

  it("have the decimal sign of the language", () => {
    expect(render(measured(2.0684, "stress", 2), "es")).toBe("2,07 MPa");
  });

  it("may be said in other units again", () => {
    const twice = inUnits(inUnits(finding, "US"), "US");
    expect(renderAll(twice)).toEqual(renderAll(inUnits(finding, "US")));
  });
});

describe("sieves", () => {
  it("of the United States series are read in every spelling", () => {
    for (const { name, sizeMm } of SIEVE_DESIGNATIONS) {
      expect(parseSieve(name), name).toBe(sizeMm);
      expect(parseSieve(name.replace("No. ", "#").replace(" in", '"')), name).toBe(sizeMm);
    }
    expect(parseSieve("1-1/2 in")).toBe(37.5);
    expect(parseSieve("1/2")).toBe(12.5);
  });

  it("by number, where the column names the series", () => {
    expect(parseSieve("40", "US No.")).toBe(0.425);
    expect(parseSieve("200", "ASTM E11")).toBe(0.075);
    expect(parseSieve("3/8 in", "US No.")).toBe(9.5);
    expect(parseSieve("No. 44", "BS mesh")).toBe(0.355);
    expect(parseSieve("BS No. 7")).toBe(2.36);
    // The same number is another opening in the other series, or none.
    expect(parseSieve("10", "BS 410")).toBe(1.7);
    expect(parseSieve("10", "US No.")).toBe(2);
    expect(parseSieve("36", "US No.")).toBeUndefined();
    expect(sieveNumbers("mesh")).toBeUndefined();
  });

  it("by their opening in any unit", () => {
    expect(parseSieve("75 µm")).toBeCloseTo(0.075, 12);
    expect(parseSieve("0.063")).toBe(0.063);
    expect(parseSieve("6 in")).toBeCloseTo(152.4, 9);
  });

  it.each(["No. 7000", "-2", "0", "sand", "1/0 stone", ""])("%s is none", (text) => {
    expect(parseSieve(text)).toBeUndefined();
  });

  it("stand from coarse to fine, each once", () => {
    const sizes = SIEVE_DESIGNATIONS.map(({ sizeMm }) => sizeMm);
    expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
    expect(new Set(sizes).size).toBe(sizes.length);
  });
});

describe("numbers as people read them", () => {
  it.each([
    [1234567, 3, "1234567"],
    [0.00012345, 2, "0.00012"],
    [-2.5, 2, "−2.5"],
    [0, 3, "0"],
    [Number.NaN, 3, "–"],
  ])("%d with %d digits", (value, digits, expected) => {
    expect(formatNumber(value, digits)).toEqual({ number: expected });
  });

  it("with fixed decimals", () => {
    expect(formatFixed(-0.04, 1)).toEqual({ number: "0.0" });
    expect(formatFixed(2.345, 2).number).toMatch(/2\.3[45]/);
  });
});

describe("the openings of numbered sieves", () => {
  /** A second copy by hand, as the series step: number, mm. */
  const US =
    "3 1/2 5.6, 4 4.75, 5 4, 6 3.35, 7 2.8, 8 2.36, 10 2, 12 1.7, 14 1.4, 16 1.18, 18 1, 20 0.85, 25 0.71, 30 0.6, 35 0.5, 40 0.425, 45 0.355, 50 0.3, 60 0.25, 70 0.212, 80 0.18, 100 0.15, 120 0.125, 140 0.106, 170 0.09, 200 0.075, 230 0.063, 270 0.053, 325 0.045, 400 0.038";
  const INCHES =
    "3 75, 2 1/2 63, 2 50, 1 3/4 45, 1 1/2 37.5, 1 1/4 31.5, 1 25, 3/4 19, 5/8 16, 1/2 12.5, 7/16 11.2, 3/8 9.5, 5/16 8, 1/4 6.3";
  const BRITISH =
    "5 3.35, 6 2.8, 7 2.36, 8 2, 10 1.7, 12 1.4, 14 1.18, 16 1, 18 0.85, 22 0.71, 25 0.6, 30 0.5, 36 0.425, 44 0.355, 52 0.3, 60 0.25, 72 0.212, 85 0.18, 100 0.15, 120 0.125, 150 0.106, 170 0.09, 200 0.075, 240 0.063, 300 0.053, 350 0.045, 400 0.038";
  const pairs = (text: string) =>
    text.split(", ").map((pair): [string, number] => {
      const at = pair.lastIndexOf(" ");
      return [pair.slice(0, at), Number(pair.slice(at))];
    });

  it("are those of both series, and none is missing", () => {
    const named = [
      ...pairs(US).map(([number, mm]) => [`No. ${number}`, mm]),
      ...pairs(INCHES).map(([inches, mm]) => [`${inches} in`, mm]),
    ];
    const found = SIEVE_DESIGNATIONS.map(({ name, sizeMm }) => [name, sizeMm]);
    expect(new Map(found as [string, number][])).toEqual(new Map(named as [string, number][]));
    for (const [number, mm] of pairs(BRITISH)) expect(parseSieve(`BS ${number}`), number).toBe(mm);
    for (const number of ["4", "9", "20", "500"]) {
      expect(parseSieve(`BS ${number}`), number).toBeUndefined();
    }
  });
});
