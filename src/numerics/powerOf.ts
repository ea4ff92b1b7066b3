/**
 * A power of a number not below zero, with the same bits on every version of Node.js.
 *
 * Formula: x^y = exp(y ln x). The engine's own `**` gives other last bits since V8 13, and fits that go on
 * from them differ in the tenth digit; its `exp` and `log` have stayed. Relative error about
 * (1 + |y ln x|) × 2e-16. Zero to a power above zero is 0; anything to the power 0 is 1. Source: own arithmetic.
 */
export function powerOf(base: number, exponent: number): number {
  return exponent === 0 ? 1 : Math.exp(exponent * Math.log(base));
}
