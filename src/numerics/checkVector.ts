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

/** Refuses a matrix with a row of the wrong length or an entry that is not finite, as `checkVector` does. */
export function checkMatrix(
  name: string,
  matrix: readonly (readonly number[])[],
  columns: number,
): void {
  matrix.forEach((row, i) => {
    // The row gets its name only where it is refused.
    let fits = row.length === columns;
    for (let j = 0; j < columns; j++) fits &&= Number.isFinite(row[j]);
    if (!fits) checkVector(`${name}[${i}]`, row, columns);
  });
}
