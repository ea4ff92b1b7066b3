import {
  isMessage,
  say,
  type Text,
  type WrittenNumber,
  type WrittenQuantity,
} from "../words/message.js";
import { convertFromBase } from "./units.js";

/**
 * Writes a number for a person: a fixed count of significant digits, never in exponent form,
 * integers kept whole where the digits asked for are fewer than the integer part has, with a decimal
 * point until it is rendered.
 *
 * @param significantDigits default 3.
 *
 * @example
 * formatNumber(0.0123456) // => { number: "0.0123" }
 * formatNumber(1893.4) // => { number: "1893" }
 * formatNumber(2, 3) // => { number: "2.00" }
 */
export function formatNumber(value: number, significantDigits = 3): WrittenNumber {
  if (!Number.isFinite(value)) return { number: "–" };
  if (value === 0) return { number: "0" };
  const magnitude = Math.floor(Math.log10(Math.abs(value)));
  const decimals = Math.min(Math.max(significantDigits - 1 - magnitude, 0), 10);
  return { number: value.toFixed(decimals).replace("-", "−") };
}

/**
 * Writes a number for a person with a fixed count of decimals.
 *
 * @example
 * formatFixed(94.512, 1) // => { number: "94.5" }
 */
export function formatFixed(value: number, decimals: number): WrittenNumber {
  if (!Number.isFinite(value)) return { number: "–" };
  const text = value.toFixed(decimals);
  // A value that rounds to nothing has no sign.
  return { number: Number(text) === 0 ? text.replace("-", "") : text.replace("-", "−") };
}

/**
 * Writes a number as somebody entered it: up to so many significant digits, without zeros that say nothing.
 *
 * @param significantDigits default 4.
 *
 * @example
 * formatPlain(2.5) // => { number: "2.5" }
 * formatPlain(40) // => { number: "40" }
 */
export function formatPlain(value: number, significantDigits = 4): WrittenNumber {
  const { number } = formatNumber(value, significantDigits);
  return { number: number.includes(".") ? number.replace(/\.?0+$/, "") : number };
}

/** What a person reads: SI, or United States customary units. Inside, all is SI. */
export type UnitSystem = "SI" | "US";

/** The dimension of each kind of value, and the units that it is shown in. */
const DISPLAY = {
  // Sieve openings are printed in mm beside the designation in US lab sheets too.
  size: { dimension: "length", SI: "mm", US: "mm" },
  length: { dimension: "length", SI: "m", US: "ft" },
  depth: { dimension: "length", SI: "mm", US: "in" },
  mass: { dimension: "mass", SI: "kg", US: "lb" },
  volume: { dimension: "volume", SI: "m³", US: "yd³" },
  density: { dimension: "density", SI: "kg/m³", US: "lb/ft³" },
  stress: { dimension: "stress", SI: "MPa", US: "psi" },
  force: { dimension: "force", SI: "kN", US: "lbf" },
  temperature: { dimension: "temperature", SI: "°C", US: "°F" },
  ratio: { dimension: "ratio", SI: "%", US: "%" },
} as const;

/** A dimension as it is shown: `length` is that of a wall, `depth` that of a lift. */
export type DisplayKind = keyof typeof DISPLAY;

/**
 * Converts a value in base units to the number that a person reads in the study's unit system.
 *
 * @example
 * displayValue(2.068427, "stress", "US") // => 300.0
 */
export function displayValue(value: number, kind: DisplayKind, system: UnitSystem): number {
  return convertFromBase(value, DISPLAY[kind][system], DISPLAY[kind].dimension);
}

/**
 * The symbol of the unit that a person reads.
 *
 * @example
 * displayUnit("density", "US") // => "lb/ft³"
 */
export function displayUnit(kind: DisplayKind, system: UnitSystem): string {
  return DISPLAY[kind][system];
}

/**
 * Writes a value in base units with its unit, as a person reads it.
 *
 * @param significantDigits default 3.
 *
 * @example
 * render(formatQuantity(2.0684, "stress", "SI")) // => "2.07 MPa"
 * render(formatQuantity(1900, "density", "US")) // => "119 lb/ft³"
 */
export function formatQuantity(
  value: number,
  kind: DisplayKind,
  system: UnitSystem,
  significantDigits = 3,
): Text {
  return say`${formatNumber(displayValue(value, kind, system), significantDigits)} ${displayUnit(kind, system)}`;
}

/**
 * A value in base units with its unit, for a sentence of a finding: written in SI, and anew by {@link inUnits}
 * where the reader has other units.
 *
 * @param decimals default: as many as the value was entered with.
 *
 * @example
 * render(say`above ${measured(2.0684, "stress", 2)}`) // => "above 2.07 MPa"
 */
export function measured(value: number, kind: DisplayKind, decimals?: number): WrittenQuantity {
  const shown = displayValue(value, kind, "SI");
  const { number } = decimals === undefined ? formatPlain(shown) : formatFixed(shown, decimals);
  return { number, unit: displayUnit(kind, "SI"), of: { value, kind } };
}

/**
 * The same data with every value of its sentences in the units of a reader, to three digits.
 *
 * @example
 * render(inUnits(say`above ${measured(2.0684, "stress", 2)}`, "US")) // => "above 300 psi"
 */
export function inUnits<T>(data: T, system: UnitSystem): T {
  if (system === "SI" || typeof data !== "object" || data === null || ArrayBuffer.isView(data)) {
    return data;
  }
  if (isQuantity(data)) {
    const kind = data.of.kind as DisplayKind;
    const shown = formatNumber(displayValue(data.of.value, kind, system), 3);
    return { ...data, ...shown, unit: displayUnit(kind, system) };
  }
  if (Array.isArray(data)) return data.map((item) => inUnits(item, system)) as T;
  return Object.fromEntries(
    Object.entries(data).map(([key, value]) => [key, inUnits(value, system)]),
  ) as T;
}

function isQuantity(data: object): data is WrittenQuantity {
  return isMessage(data) && "number" in data && "unit" in data;
}
