export type ParsedNumber =
  | { readonly value: number }
  | { readonly problem: "empty" | "comma-decimal" | "not-a-number" };

const PLAIN_NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/;
const COMMA_NUMBER = /^[+-]?(\d{1,3}(\.\d{3})+|\d*),\d+$/;

/**
 * Reads a number written with a decimal point and nothing else: no unit, no thousands separator.
 * A decimal comma is told apart from other text, so that the message can say what to do.
 *
 * @example
 * parseNumber(" 12.50 ") // => { value: 12.5 }
 * parseNumber("12,5") // => { problem: "comma-decimal" }
 * parseNumber("12 g") // => { problem: "not-a-number" }
 * parseNumber("") // => { problem: "empty" }
 */
export function parseNumber(text: string): ParsedNumber {
  const plain = text.trim().replace(/^−/, "-");
  if (plain === "") return { problem: "empty" };
  if (PLAIN_NUMBER.test(plain)) {
    const value = Number(plain);
    // 1e999 matches the pattern but is no number anyone measured.
    return Number.isFinite(value) ? { value } : { problem: "not-a-number" };
  }
  return { problem: COMMA_NUMBER.test(plain) ? "comma-decimal" : "not-a-number" };
}
