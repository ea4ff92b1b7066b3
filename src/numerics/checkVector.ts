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
  checkLength(name, values, length);
  for (let i = 0; i < length; i++) {
    const value = values[i];
    if (!Number.isFinite(value) || value < min) {
      const expected = min === -Infinity ? "a finite number" : `a finite number, at least ${min}`;
      throw new RangeError(`invalid \`${name}[${i}]\`: ${value}; expected ${expected}`);
    }
  }
}

function checkLength(name: string, values: readonly number[], length: number): void {
  if (values.length === length) return;
  throw new TypeError(`invalid \`${name}\`: ${values.length} values; expected ${length}`);
}

/** Refuses bounds that are not as many as the unknowns, are no numbers, or cross. */
export function checkBounds(
  { lower, upper }: { readonly lower?: readonly number[]; readonly upper?: readonly number[] },
  unknowns: number,
): void {
  for (const [name, values] of Object.entries({ lower, upper })) {
    if (!values) continue;
    checkLength(name, values, unknowns);
    const open = name === "lower" ? -Infinity : Infinity;
    for (const [j, value] of values.entries()) {
      if (!Number.isNaN(value) && value !== -open) continue;
      throw new RangeError(`invalid \`${name}[${j}]\`: ${value}; expected a number or ${open}`);
    }
  }
  lower?.forEach((min, j) => {
    const max = upper?.[j] ?? Infinity;
    if (min > max) throw new RangeError(`invalid \`lower[${j}]\`: ${min}; expected at most ${max}`);
  });
}

/** Refuses a matrix with nothing in it; returns the number of its columns. */
export function columnsOf(name: string, matrix: readonly (readonly number[])[]): number {
  const columns = matrix[0]?.length ?? 0;
  if (columns > 0) return columns;
  throw new RangeError(
    `invalid \`${name}\`: ${matrix.length} rows by 0 columns; expected at least one of each`,
  );
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
