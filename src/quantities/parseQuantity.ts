import { convertToBase, type Dimension, normaliseUnit, UNITS } from "./units.js";

export type ParsedQuantity =
  | { readonly value: number; readonly unit: string }
  | {
      readonly problem:
        | "empty"
        | "comma-decimal"
        | "not-a-number"
        | "missing-unit"
        | "unknown-unit";
      readonly unit?: string;
    };

/**
 * Reads a number with its unit, such as `1650 kg/m3` or `300 psi`, into the base unit of its dimension;
 * also in parts and fractions, as inches and pounds are written: `6 ft 8 in`, `7 1/2 in`.
 *
 * @example
 * parseQuantity("300 psi", "stress") // => { value: 2.068427, unit: "psi" }
 * parseQuantity("6.5 %", "ratio") // => { value: 6.5, unit: "%" }
 * parseQuantity("6 ft 8 in", "length") // => { value: 2032, unit: "ft in" }
 * parseQuantity("1650", "density") // => { problem: "missing-unit" }
 * parseQuantity("1650 stone", "density") // => { problem: "unknown-unit", unit: "stone" }
 */
export function parseQuantity(text: string, dimension: Dimension): ParsedQuantity {
  const plain = text.trim();
  const pieces = inPieces(plain, dimension);
  if (pieces) return pieces;
  const [numeral] = NUMERAL.exec(plain) ?? [""];
  const unit = plain.slice(numeral.length).trim();
  const number = parseNumber(numeral);
  if ("problem" in number) {
    return { problem: unit && number.problem === "empty" ? "not-a-number" : number.problem };
  }
  if (dimension === "number") {
    return unit ? { problem: "unknown-unit", unit } : { value: number.value, unit: "-" };
  }
  if (!unit) return { problem: "missing-unit" };
  const value = convertToBase(number.value, unit, dimension);
  return value === undefined ? { problem: "unknown-unit", unit } : { value, unit };
}

/** No piece of a quantity is longer, and no pattern need search a longer text. */
const MAX_PIECES = 40;

/** A number, with a fraction behind it or alone, and its unit. */
const PIECE =
  /(?:(\d+(?:\.\d+)?)(?:[ -]+(?=\d+\/))?)?(?:(\d+)\/([1-9]\d*))?\s*([a-z]+\.?|["'′″])[\s,]*/iuy;

/** `6 ft 8 in`, `5 lb 4 oz`, `7 1/2 in`: none where the text is one plain number with its unit, or no quantity. */
function inPieces(text: string, dimension: Dimension): ParsedQuantity | undefined {
  if (text.length > MAX_PIECES) return undefined;
  const units: string[] = [];
  let total = 0;
  let before = Infinity;
  let fraction = false;
  PIECE.lastIndex = 0;
  while (PIECE.lastIndex < text.length) {
    const [whole, number, top, bottom, unit] = PIECE.exec(text) ?? [];
    if (whole === undefined || (number === undefined && top === undefined)) return undefined;
    const size = convertToBase(1, unit, dimension);
    // Each piece is of a smaller unit than the one before it, and smaller than one of those.
    const value = Number(number ?? 0) + (top === undefined ? 0 : Number(top) / Number(bottom));
    if (size === undefined || dimension === "temperature" || value * size >= before) {
      return undefined;
    }
    total += value * size;
    before = size;
    fraction ||= top !== undefined;
    units.push(normaliseUnit(unit));
  }
  return units.length > 1 || fraction ? { value: total, unit: units.join(" ") } : undefined;
}

/** The number that a text begins with, its thousands set apart or not. */
const NUMERAL = /^[+−-]?[\d.,]*(?:[\s'’]\d{3}(?!\d)[\d.,]*)*(?:[eE][+-]?\d+)?/u;

/**
 * Lists the units accepted for a dimension, for a message to the user.
 *
 * @example
 * acceptedUnits("stress") // => "MPa, kPa, N/mm2, kN/m2, kgf/cm2, psi"
 */
export function acceptedUnits(dimension: Dimension): string {
  return Object.keys(UNITS[dimension].scales).join(", ");
}

export type ParsedNumber =
  | { readonly value: number }
  | { readonly problem: "empty" | "comma-decimal" | "not-a-number" };

const PLAIN_NUMBER = /^[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?$/;
const COMMA_NUMBER = /^[+-]?(\d{1,3}([. ]\d{3})+|\d*),\d+$/;
/** Thousands set apart by a space or an apostrophe, or by commas where a second one or a point leaves no doubt. */
const THOUSANDS = /^[+-]?\d{1,3}(( \d{3})+(\.\d*)?|('\d{3})+(\.\d*)?|(,\d{3})+\.\d*|(,\d{3}){2,})$/;

/** A number that somebody wrote is shorter; a long text is none, and no pattern need search it. */
const MAX_LENGTH = 60;

/**
 * Reads a number written with a decimal point and no unit; thousands may be set apart (`1 250`, `1,250.5`).
 * A decimal comma is told apart from other text, so that the message can say what to do; `1,250` alone
 * could be either and counts as one.
 *
 * @example
 * parseNumber(" 12.50 ") // => { value: 12.5 }
 * parseNumber("1 250.5") // => { value: 1250.5 }
 * parseNumber("12,5") // => { problem: "comma-decimal" }
 * parseNumber("12 g") // => { problem: "not-a-number" }
 * parseNumber("") // => { problem: "empty" }
 */
export function parseNumber(text: string): ParsedNumber {
  const plain = text
    .trim()
    .replace(/^−/, "-")
    .replace(/[\u00a0\u2009\u202f]/g, " ")
    .replace(/’/g, "'");
  if (plain === "") return { problem: "empty" };
  if (plain.length > MAX_LENGTH) return { problem: "not-a-number" };
  const apart = THOUSANDS.test(plain);
  if (apart || PLAIN_NUMBER.test(plain)) {
    const value = Number(apart ? plain.replace(/[ ',]/g, "") : plain);
    // 1e999 matches the pattern but is no number anyone measured.
    return Number.isFinite(value) ? { value } : { problem: "not-a-number" };
  }
  return { problem: COMMA_NUMBER.test(plain) ? "comma-decimal" : "not-a-number" };
}
