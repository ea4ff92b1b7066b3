/**
 * Writes a number for a person: a fixed count of significant digits, never in exponent form,
 * integers kept whole where the digits asked for are fewer than the integer part has.
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
  return value.toFixed(decimals).replace("-", "−");
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
  return Number(text) === 0 ? text.replace("-", "") : text.replace("-", "−");
}
