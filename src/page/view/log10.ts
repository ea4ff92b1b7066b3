import ln from "@stdlib/math-base-special-ln";

/** Upper and lower part of log10(2), and 1 / ln 10. */
const [LOG10_2, LOG10_2_REST, PER_LN10] = [
  0.30102999566361177,
  3.694239077158931e-13,
  Math.LOG10E,
] as const;

/**
 * The decimal logarithm of a positive normal number, with the bits that the engine of Node.js 20 gives: newer
 * engines give others in the last place.
 *
 * Formula: log10 x = (n log10(2) rest + ln(f) / ln 10) + n log10(2), x = 2^n f.
 * Source: FreeBSD's msun e_log10.c (from memory), as V8 has it.
 */
export default function log10(x: number): number {
  if (!(x >= 2.2250738585072014e-308 && x < Infinity))
    return x === 0 ? -Infinity : Math.LOG10E * ln(x);
  if (x === 1) return 0;
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, x);
  const high = view.getInt32(0);
  const exponent = (high >> 20) - 1023;
  const below = exponent < 0 ? 1 : 0;
  view.setInt32(0, (high & 0xfffff) | ((0x3ff - below) << 20));
  const n = exponent + below;
  return n * LOG10_2_REST + PER_LN10 * ln(view.getFloat64(0)) + n * LOG10_2;
}
