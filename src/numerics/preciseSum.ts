/** 2^27 + 1: splits a double into two halves whose products are exact (Veltkamp). */
const SPLITTER = 134217729;

/**
 * A running sum of products carried in twice the working precision.
 *
 * Each product and each addition keeps its own rounding error, and the errors are summed
 * beside the main sum (algorithm Dot2 of Ogita, Rump and Oishi, *Accurate sum and dot product*,
 * SIAM J. Sci. Comput. 26 (2005), from memory). Factors beyond about 1e300 overflow the split.
 */
export class PreciseSum {
  private main = 0;
  private error = 0;

  /** Starts again from `value`. */
  reset(value = 0): this {
    this.main = value;
    this.error = 0;
    return this;
  }

  /** Adds `value`. */
  add(value: number): this {
    const sum = this.main + value;
    const part = sum - this.main;
    this.error += this.main - (sum - part) + (value - part);
    this.main = sum;
    return this;
  }

  /** Adds `a * b` without losing the low half of the product. */
  addProduct(a: number, b: number): this {
    const product = a * b;
    const splitA = SPLITTER * a;
    const highA = splitA - (splitA - a);
    const lowA = a - highA;
    const splitB = SPLITTER * b;
    const highB = splitB - (splitB - b);
    const lowB = b - highB;
    this.error += lowA * lowB - (product - highA * highB - lowA * highB - highA * lowB);
    return this.add(product);
  }

  /** The sum, rounded once. */
  value(): number {
    return this.main + this.error;
  }
}
