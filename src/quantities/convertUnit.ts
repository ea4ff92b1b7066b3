import { normaliseUnit } from "./normaliseUnit.js";
import { type Dimension, UNITS } from "./units.js";

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
  const scales = UNITS[dimension].scales;
  const name = normaliseUnit(unit);
  if (!Object.hasOwn(scales, name)) return undefined;
  const scale = scales[name];
  return (value + (scale.offset ?? 0)) * scale.factor;
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
  const scales = UNITS[dimension].scales;
  const name = normaliseUnit(unit);
  if (!Object.hasOwn(scales, name)) {
    throw new RangeError(
      `invalid \`unit\`: ${unit}; expected one of ${Object.keys(scales).join(", ")}`,
    );
  }
  const scale = scales[name];
  return value / scale.factor - (scale.offset ?? 0);
}
