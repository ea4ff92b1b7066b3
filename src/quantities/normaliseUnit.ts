const SPELLINGS: Readonly<Record<string, string>> = {
  µm: "um",
  μm: "um",
  micron: "um",
  inch: "in",
  inches: "in",
  '"': "in",
  feet: "ft",
  gram: "g",
  grams: "g",
  lbs: "lb",
  pound: "lb",
  pounds: "lb",
  ton: "short ton",
  tonne: "t",
  cc: "cm3",
  mL: "ml",
  L: "l",
  litre: "l",
  "cu ft": "ft3",
  "cu yd": "yd3",
  pcf: "lb/ft3",
  "g/cc": "g/cm3",
  mpa: "MPa",
  kpa: "kPa",
  kn: "kN",
  n: "N",
  degC: "C",
  c: "C",
  degF: "F",
  f: "F",
  percent: "%",
  minute: "min",
  minutes: "min",
  sec: "s",
  hour: "h",
  hours: "h",
  days: "d",
  weeks: "week",
  "g/L": "g/l",
};

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
  return Object.hasOwn(SPELLINGS, plain) ? SPELLINGS[plain] : plain;
}
