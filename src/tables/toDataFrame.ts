/** A column of a frame, as far as it is used to choose rows. */
export interface SeriesLike {
  readonly values: readonly unknown[];
  eq(other: unknown): SeriesLike;
  ne(other: unknown): SeriesLike;
  gt(other: number): SeriesLike;
  ge(other: number): SeriesLike;
  lt(other: number): SeriesLike;
  le(other: number): SeriesLike;
  and(other: SeriesLike): SeriesLike;
  or(other: SeriesLike): SeriesLike;
}

/** Rows of a frame by groups; every function makes a frame with one row a group. */
export interface GroupsLike {
  col(columns: readonly string[]): GroupsLike;
  count(): DataFrameLike;
  mean(): DataFrameLike;
  std(): DataFrameLike;
  min(): DataFrameLike;
  max(): DataFrameLike;
}

/**
 * A danfo.js frame, as much of it as our notebooks use; the library's own types stay out of our public face.
 * What the frame can do besides is in danfo.js's manual.
 */
export interface DataFrameLike {
  readonly columns: readonly string[];
  readonly index: readonly (string | number)[];
  readonly values: readonly (readonly unknown[])[];
  column(name: string): SeriesLike;
  /** The rows for which a condition holds: `frame.query(frame.column("ageDays").eq(28))`. */
  query(condition: SeriesLike): DataFrameLike;
  groupby(columns: readonly string[]): GroupsLike;
  /** Number, mean, spread and quartiles of every numeric column. */
  describe(): DataFrameLike;
}

/** A row of a table as an object. */
export type FrameRow = Readonly<Record<string, string | number | boolean | null>>;

type MakeFrame = new (values: unknown[][], options: { columns: string[] }) => unknown;

/** Loads danfo.js, which is large and not needed for any computation. */
export async function loadDanfo(
  load: () => Promise<object> = () => import("danfojs"),
): Promise<MakeFrame> {
  const danfo = (await load().catch((cause: NodeJS.ErrnoException) => {
    if (cause.code !== "ERR_MODULE_NOT_FOUND") throw cause;
    throw new Error(
      "danfo.js is not installed beside loambook; `npm install danfojs` there adds it. No computation needs it.",
      { cause },
    );
  })) as { DataFrame?: MakeFrame; default?: { DataFrame: MakeFrame } };
  return danfo.DataFrame ?? (danfo.default as { DataFrame: MakeFrame }).DataFrame;
}

/**
 * Makes a danfo.js frame of flat rows, for a notebook that goes on to filter, group or plot them.
 * Loads danfo.js only here (about a second); nothing in the analysis depends on it.
 *
 * danfo.js takes a missing value for nought in the mean of a group: leave such rows out first.
 *
 * @param rows one object a row; every row has the keys of the first. Missing values are `null`,
 * because danfo.js drops `undefined`.
 * @throws RangeError where there is no row, or a row has other keys; Error where danfo.js is not installed.
 *
 * @example
 * const frame = await toDataFrame([{ sizeMm: 2, passingPct: 78 }, { sizeMm: 0.063, passingPct: 41 }]);
 * frame.columns // => ["sizeMm", "passingPct"]
 */
export async function toDataFrame(rows: readonly FrameRow[]): Promise<DataFrameLike> {
  const [first] = rows;
  if (first === undefined) throw new RangeError("invalid `rows`: []; expected at least one row");
  const keys = Object.keys(first);
  rows.forEach((row, index) => {
    const own = Object.keys(row);
    if (own.length !== keys.length || keys.some((key) => !Object.hasOwn(row, key))) {
      throw new RangeError(
        `invalid \`rows[${index}]\` keys: ${own.join(", ")}; expected ${keys.join(", ")}`,
      );
    }
  });
  const DataFrame = await loadDanfo();
  const values = rows.map((row) => keys.map((key) => row[key]));
  return new DataFrame(values, { columns: keys }) as DataFrameLike;
}

/**
 * The way back: the rows of a frame as objects, to be given to a function of this package. Numbers that are
 * none become `null`.
 *
 * @example
 * const frame = await toDataFrame([{ sizeMm: 2, passingPct: 78 }, { sizeMm: 0.063, passingPct: 41 }]);
 * rowsOf(frame.query(frame.column("sizeMm").gt(1))) // => [{ sizeMm: 2, passingPct: 78 }]
 */
export function rowsOf({ columns, values }: DataFrameLike): FrameRow[] {
  return values.map((row) =>
    Object.fromEntries(
      columns.map((name, index) => {
        const value = row[index];
        return [name, Number.isNaN(value) || value === undefined ? null : (value as string)];
      }),
    ),
  );
}
