/** What we use of a danfo.js frame; the library's own types stay out of our public face. */
export interface DataFrameLike {
  readonly columns: readonly string[];
  readonly index: readonly (string | number)[];
  readonly values: readonly (readonly unknown[])[];
}

/**
 * Makes a danfo.js frame of flat rows, for a notebook that goes on to filter, group or plot them.
 * Loads danfo.js only here (about a second); nothing in the analysis depends on it.
 *
 * @param rows one object a row; every row has the keys of the first. Missing values are `null`,
 * because danfo.js drops `undefined`.
 * @throws RangeError where there is no row, or a row has other keys.
 *
 * @example
 * const frame = await toDataFrame([{ sizeMm: 2, passingPct: 78 }, { sizeMm: 0.063, passingPct: 41 }]);
 * frame.columns // => ["sizeMm", "passingPct"]
 */
export async function toDataFrame(
  rows: readonly Readonly<Record<string, string | number | boolean | null>>[],
): Promise<DataFrameLike> {
  if (rows.length === 0) throw new RangeError("invalid `rows`: []; expected at least one row");
  const keys = Object.keys(rows[0]);
  rows.forEach((row, index) => {
    const own = Object.keys(row);
    if (own.length !== keys.length || keys.some((key) => !Object.hasOwn(row, key))) {
      throw new RangeError(
        `invalid \`rows[${index}]\` keys: ${own.join(", ")}; expected ${keys.join(", ")}`,
      );
    }
  });
  const danfo = await import("danfojs");
  const { DataFrame } = "DataFrame" in danfo ? danfo : (danfo as { default: typeof danfo }).default;
  return new DataFrame(
    rows.map((row) => keys.map((key) => row[key])),
    { columns: keys },
  ) as unknown as DataFrameLike;
}
