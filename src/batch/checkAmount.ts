/** Refuses a number that is not finite and above zero. */
export function checkAbove(name: string, value: number): void {
  if (!(Number.isFinite(value) && value > 0)) {
    throw new RangeError(`invalid \`${name}\`: ${value}; expected a number above 0`);
  }
}

/** Refuses a number that is not finite or is below zero. */
export function checkNotBelow(name: string, value: number): void {
  if (!(Number.isFinite(value) && value >= 0)) {
    throw new RangeError(`invalid \`${name}\`: ${value}; expected 0 or above`);
  }
}
