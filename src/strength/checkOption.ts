/** Refuses a probability that is not strictly between 0 and 1. */
export function checkFraction(name: string, value: number): void {
  if (!(value > 0 && value < 1)) {
    throw new RangeError(`invalid \`${name}\`: ${value}; expected above 0 and below 1`);
  }
}

/** Refuses a number that is not finite and above zero. */
export function checkPositive(name: string, value: number): void {
  if (!(Number.isFinite(value) && value > 0)) {
    throw new RangeError(`invalid \`${name}\`: ${value}; expected a number above 0`);
  }
}
