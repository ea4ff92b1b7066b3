/**
 * Refuses an array of the wrong length, or one with an entry that is not finite or lies below
 * `min`; the message names the entry and quotes its value.
 */
export function checkVector(
  name: string,
  values: readonly number[],
  length: number,
  min = -Infinity,
): void {
  if (values.length !== length) {
    throw new TypeError(`invalid \`${name}\`: ${values.length} values; expected ${length}`);
  }
  for (let i = 0; i < length; i++) {
    const value = values[i];
    if (!Number.isFinite(value) || value < min) {
      const expected = min === -Infinity ? "a finite number" : `a finite number, at least ${min}`;
      throw new RangeError(`invalid \`${name}[${i}]\`: ${value}; expected ${expected}`);
    }
  }
}
