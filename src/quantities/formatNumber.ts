import { localNumber } from "../words/language.js";

/**
 * Writes a number for a person: a fixed count of significant digits, never in exponent form,
 * integers kept whole where the digits asked for are fewer than the integer part has, with the decimal
 * sign of the language.
 *
 * @param significantDigits default 3.
 *
 * @example
 * formatNumber(0.0123456) // => "0.0123"
 * formatNumber(1893.4) // => "1893"
 * formatNumber(2, 3) // => "2.00"
 */
export function formatNumber(value: number, significantDigits = 3): string {
  if (!Number.isFinite(value)) return "–";
  if (value === 0) return "0";
  const magnitude = Math.floor(Math.log10(Math.abs(value)));
  const decimals = Math.min(Math.max(significantDigits - 1 - magnitude, 0), 10);
  return localNumber(value.toFixed(decimals).replace("-", "−"));
}

/**
 * Writes a number for a person with a fixed count of decimals.
 *
 * @example
 * formatFixed(94.512, 1) // => "94.5"
 */
export function formatFixed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return "–";
  const text = value.toFixed(decimals);
  // A value that rounds to nothing has no sign.
  return localNumber(Number(text) === 0 ? text.replace("-", "") : text.replace("-", "−"));
}

/**
 * Writes a number as somebody entered it: up to so many significant digits, without zeros that say nothing.
 *
 * @param significantDigits default 4.
 *
 * @example
 * formatPlain(2.5) // => "2.5"
 * formatPlain(40) // => "40"
 */
export function formatPlain(value: number, significantDigits = 4): string {
  const text = formatNumber(value, significantDigits);
  return /[.,]/.test(text) ? text.replace(/[.,]?0+$/, "") : text;
}
