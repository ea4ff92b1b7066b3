/** Refuses a number that is not finite and above zero. */
export function checkPositive(name: string, value: number): void {
  if (!(Number.isFinite(value) && value > 0)) {
    throw new RangeError(`invalid \`${name}\`: ${value}; expected a number above 0`);
  }
}

/** Refuses a number that is not finite or is below zero. */
export function checkNotNegative(name: string, value: number): void {
  if (!(Number.isFinite(value) && value >= 0)) {
    throw new RangeError(`invalid \`${name}\`: ${value}; expected 0 or above`);
  }
}

/**
 * Counts whole things that an amount fills: bags, loads, lifts. A remainder of a billionth is rounding, not
 * one more of them.
 */
export function wholeCount(amount: number): number {
  return Math.max(0, Math.ceil(amount - 1e-9));
}
