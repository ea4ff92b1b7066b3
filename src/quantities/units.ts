/** What a number measures. Each dimension has one base unit, used everywhere inside. */
export type Dimension =
  | "length"
  | "mass"
  | "area"
  | "distance"
  | "volume"
  | "density"
  | "stress"
  | "force"
  | "temperature"
  | "ratio"
  | "duration"
  | "age"
  | "concentration"
  | "number";

export interface UnitScale {
  /** Base units in one of this unit. */
  readonly factor: number;
  /** Added before scaling; only temperatures have one. */
  readonly offset?: number;
}

export interface DimensionUnits {
  /** The unit that stands in names: `sizeMm`, `massG`, `strengthMpa`. */
  readonly base: string;
  readonly scales: Readonly<Record<string, UnitScale>>;
}

// The international pound and inch are exact by definition, and so is all that follows from them
// (NIST Special Publication 811, Appendix B, from memory).
const INCH_MM = 25.4;
const POUND_G = 453.59237;
const POUND_FORCE_N = 4.4482216152605;
// Standard gravity is exact by definition (3rd CGPM, 1901, from memory).
const KILOGRAM_FORCE_N = 9.80665;
const FOOT_MM = 12 * INCH_MM;
const FOOT3_CM3 = (FOOT_MM / 10) ** 3;

/** Accepted units, by their plain spelling (see `normaliseUnit` for the others). */
export const UNITS: Readonly<Record<Dimension, DimensionUnits>> = {
  length: {
    base: "mm",
    scales: {
      mm: { factor: 1 },
      um: { factor: 0.001 },
      cm: { factor: 10 },
      m: { factor: 1000 },
      in: { factor: INCH_MM },
      ft: { factor: FOOT_MM },
    },
  },
  mass: {
    base: "g",
    scales: {
      g: { factor: 1 },
      kg: { factor: 1000 },
      t: { factor: 1e6 },
      lb: { factor: POUND_G },
      oz: { factor: POUND_G / 16 },
      "short ton": { factor: 2000 * POUND_G },
    },
  },
  // The international mile is 5280 feet by definition.
  distance: { base: "km", scales: { km: { factor: 1 }, mi: { factor: (5280 * FOOT_MM) / 1e6 } } },
  area: { base: "m2", scales: { m2: { factor: 1 }, ft2: { factor: (FOOT_MM / 1000) ** 2 } } },
  volume: {
    base: "cm3",
    scales: {
      cm3: { factor: 1 },
      ml: { factor: 1 },
      l: { factor: 1000 },
      m3: { factor: 1e6 },
      in3: { factor: (INCH_MM / 10) ** 3 },
      ft3: { factor: FOOT3_CM3 },
      yd3: { factor: 27 * FOOT3_CM3 },
      // The US gallon is 231 cubic inches by definition.
      gal: { factor: 231 * (INCH_MM / 10) ** 3 },
    },
  },
  density: {
    base: "kg/m3",
    scales: {
      "kg/m3": { factor: 1 },
      "g/cm3": { factor: 1000 },
      "Mg/m3": { factor: 1000 },
      "t/m3": { factor: 1000 },
      "lb/ft3": { factor: (POUND_G * 1000) / FOOT3_CM3 },
      // A unit weight, as reports of soil mechanics give it.
      "kN/m3": { factor: 1000 / KILOGRAM_FORCE_N },
    },
  },
  stress: {
    base: "MPa",
    scales: {
      MPa: { factor: 1 },
      kPa: { factor: 0.001 },
      "N/mm2": { factor: 1 },
      "kN/m2": { factor: 0.001 },
      "kgf/cm2": { factor: KILOGRAM_FORCE_N / 100 },
      psi: { factor: POUND_FORCE_N / INCH_MM ** 2 },
    },
  },
  force: {
    base: "kN",
    scales: {
      kN: { factor: 1 },
      N: { factor: 0.001 },
      kgf: { factor: KILOGRAM_FORCE_N / 1000 },
      lbf: { factor: POUND_FORCE_N / 1000 },
      kip: { factor: POUND_FORCE_N },
    },
  },
  temperature: {
    base: "C",
    scales: { C: { factor: 1 }, F: { factor: 5 / 9, offset: -32 } },
  },
  ratio: { base: "%", scales: { "%": { factor: 1 } } },
  duration: {
    base: "min",
    scales: { min: { factor: 1 }, s: { factor: 1 / 60 }, h: { factor: 60 } },
  },
  age: { base: "d", scales: { d: { factor: 1 }, day: { factor: 1 }, week: { factor: 7 } } },
  concentration: { base: "g/l", scales: { "g/l": { factor: 1 } } },
  number: { base: "-", scales: { "-": { factor: 1 } } },
};

/**
 * Converts a value from a named unit to the base unit of its dimension: base = factor (value + offset).
 *
 * @returns the value in the base unit, or `undefined` where the unit does not belong to the dimension.
 * Source: exact international definitions of inch, pound and pound-force (from memory).
 *
 * @example
 * convertToBase(1, "in", "length") // => 25.4
 * convertToBase(300, "psi", "stress") // => 2.068427
 * convertToBase(68, "°F", "temperature") // => 20
 * convertToBase(1, "kg", "length") // => undefined
 */
export function convertToBase(
  value: number,
  unit: string,
  dimension: Dimension,
): number | undefined {
  const scale = scaleOf(unit, dimension);
  return scale && (value + (scale.offset ?? 0)) * scale.factor;
}

function scaleOf(unit: string, dimension: Dimension): UnitScale | undefined {
  const { scales } = UNITS[dimension];
  const name = normaliseUnit(unit);
  return Object.hasOwn(scales, name) ? scales[name] : undefined;
}

/**
 * Converts a value from the base unit of its dimension to a named unit: the inverse of `convertToBase`.
 *
 * @throws RangeError where the unit does not belong to the dimension.
 *
 * @example
 * convertFromBase(25.4, "in", "length") // => 1
 * convertFromBase(1900, "lb/ft3", "density") // => 118.6131
 */
export function convertFromBase(value: number, unit: string, dimension: Dimension): number {
  const scale = scaleOf(unit, dimension);
  if (!scale) {
    const accepted = Object.keys(UNITS[dimension].scales).join(", ");
    throw new RangeError(`invalid \`unit\`: ${unit}; expected one of ${accepted}`);
  }
  return value / scale.factor - (scale.offset ?? 0);
}

/** Other ways in which laboratories and builders write a unit. */
const SPELLINGS: Readonly<Record<string, readonly string[]>> = {
  um: ["µm", "μm", "micron"],
  in: ["inch", "inches", '"', "″", "in."],
  ft: ["foot", "feet", "'", "′"],
  g: ["gram", "grams"],
  lb: ["lbs", "pound", "pounds"],
  oz: ["ounce", "ounces"],
  "short ton": ["ton"],
  t: ["tonne"],
  cm3: ["cc"],
  ml: ["mL"],
  l: ["L", "litre"],
  ft3: ["cu ft"],
  yd3: ["cu yd"],
  "lb/ft3": ["pcf"],
  "g/cm3": ["g/cc"],
  "kgf/cm2": ["kg/cm2"],
  MPa: ["MN/m2", "mpa"],
  psi: ["lbf/in2", "lb/in2"],
  kPa: ["kpa"],
  kN: ["kn"],
  kip: ["kips"],
  N: ["n"],
  C: ["degC", "c"],
  F: ["degF", "f"],
  "%": ["percent"],
  min: ["minute", "minutes"],
  s: ["sec"],
  h: ["hour", "hours"],
  d: ["days"],
  week: ["weeks"],
  "g/l": ["g/L"],
};

const PLAIN = new Map(
  Object.entries(SPELLINGS).flatMap(([unit, others]) => others.map((other) => [other, unit])),
);

/**
 * Brings the usual spellings of a unit to the one plain spelling that `UNITS` knows:
 * superscripts, degree and micro signs, plurals and common abbreviations.
 * Unknown text is returned trimmed and otherwise untouched, so that a message can quote it.
 *
 * @example
 * normaliseUnit("kg/m³") // => "kg/m3"
 * normaliseUnit("°F") // => "F"
 * normaliseUnit("pcf") // => "lb/ft3"
 */
export function normaliseUnit(text: string): string {
  const plain = text
    .trim()
    .replace(/\s+/g, " ")
    .replace(/³|\^3/g, "3")
    .replace(/²|\^2/g, "2")
    .replace(/^°\s*/, "");
  return PLAIN.get(plain) ?? plain;
}
