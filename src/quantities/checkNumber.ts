/**
 * Refuses an argument that is not as expected.
 *
 * @param named the argument under its name, as `{ massG }`.
 * @throws RangeError that quotes name and value.
 */
export function checkThat(
  isSo: boolean,
  named: Readonly<Record<string, unknown>>,
  expected: string,
): asserts isSo {
  if (isSo) return;
  const [[name, value]] = Object.entries(named);
  throw new RangeError(`invalid \`${name}\`: ${value}; expected ${expected}`);
}

/** Refuses a number that is not finite and above zero. */
export function checkPositive(name: string, value: number): void {
  checkThat(Number.isFinite(value) && value > 0, { [name]: value }, "a number above 0");
}

/** Refuses a number that is not finite or is below zero. */
export function checkNotNegative(name: string, value: number): void {
  checkThat(Number.isFinite(value) && value >= 0, { [name]: value }, "0 or above");
}

/** Refuses a probability that is not strictly between 0 and 1. */
export function checkFraction(name: string, value: number): void {
  checkThat(value > 0 && value < 1, { [name]: value }, "above 0 and below 1");
}

/**
 * Counts whole things that an amount fills: bags, loads, lifts. A remainder of a billionth is rounding, not
 * one more of them.
 */
export function wholeCount(amount: number): number {
  return Math.max(0, Math.ceil(amount - 1e-9));
}
