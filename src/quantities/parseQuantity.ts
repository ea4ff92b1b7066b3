import { convertToBase } from "./convertUnit.js";
import { parseNumber } from "./parseNumber.js";
import { type Dimension, UNITS } from "./units.js";

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
 * Reads a number with its unit, such as `1650 kg/m3` or `300 psi`, into the base unit of its dimension.
 *
 * @example
 * parseQuantity("300 psi", "stress") // => { value: 2.068427, unit: "psi" }
 * parseQuantity("6.5 %", "ratio") // => { value: 6.5, unit: "%" }
 * parseQuantity("1650", "density") // => { problem: "missing-unit" }
 * parseQuantity("1650 stone", "density") // => { problem: "unknown-unit", unit: "stone" }
 */
export function parseQuantity(text: string, dimension: Dimension): ParsedQuantity {
  const [, numeral, unit] = /^\s*([+−-]?[\d.,]*(?:[eE][+-]?\d+)?)\s*(.*?)\s*$/u.exec(text) ?? [];
  const number = parseNumber(numeral ?? text);
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

/**
 * Lists the units accepted for a dimension, for a message to the user.
 *
 * @example
 * acceptedUnits("stress") // => "MPa, kPa, N/mm2, psi"
 */
export function acceptedUnits(dimension: Dimension): string {
  return Object.keys(UNITS[dimension].scales).join(", ");
}
