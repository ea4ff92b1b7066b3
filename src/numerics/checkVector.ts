/**
 * Refuses an array of the wrong length, or one with an entry that is not finite or lies below
 * `least`; the message names the entry and quotes its value.
 */
export function checkVector(
  name: string,
  values: readonly number[],
  length: number,
  least = -Infinity,
): void {
  if (values.length !== length) {
    throw new TypeError(`invalid \`${name}\`: ${values.length} values; expected ${length}`);
  }
  for (let i = 0; i < length; i++) {
    const value = values[i];
    if (!Number.isFinite(value) || value < least) {
      const expected =
        least === -Infinity ? "a finite number" : `a finite number, at least ${least}`;
      throw new RangeError(`invalid \`${name}[${i}]\`: ${value}; expected ${expected}`);
    }
  }
}
