import fc from "fast-check";
import { csvOf, type Files, type FuzzStudy, filesOf, type Grid, workbookOf } from "./studies.js";

/** What clumsy hands and broken programs leave in a cell. */
const CELLS = [
  ..."|0|-1|1e9|1e-9|1e308|-0|0.0000001|NaN|Infinity|1,5|1.234,5|12,500|1 250|12 g|5 %|#N/A|#DIV/0!".split(
    "|",
  ),
  ..."#1|# |#|pan|<0.063|No. 40|3/4 in|2026-05-18|18 May|n/a|-|yes|no|NP|true|null|=SUM(A1:A9)".split(
    "|",
  ),
  ..."°|µ|½|١٢٣|１２|\u0000|\u200b|\u202e12|\ud83e\uddf1|'|\"|$x$|{0}|{x, plural, other {#}}|<script>|../|152H|151H|BS".split(
    "|",
  ),
  "a".repeat(5000),
  " ".repeat(3000),
  "9".repeat(400),
];

/** What may stand behind a key by mistake. */
const ENTRIES: readonly unknown[] = [
  0,
  -1,
  1,
  1e9,
  1e-9,
  1e308,
  "",
  " ",
  null,
  true,
  false,
  [],
  {},
  [[]],
  [null],
  { x: 1 },
  ..."0 %|100 %|-5 %|1e9 %|0 kg|100 g|0.001 kg|5 t|0 mm|0.4 mm|400 m|12 in|0 MPa|1000 MPa|1 psi|0 d|28 d|1e6 d".split(
    "|",
  ),
  ..."0 kg/m3|1 kg/m3|1900 kg/m3|30 g/cm3|118 lb/ft3|1,5 %|20 to 10|0.1 to 0.9|0 to 0|1 to 2 kg CO2e/kg|0.2 per kg".split(
    "|",
  ),
  ..."2026-02-30|site-soil|class-soil|gravel|../../etc/passwd|/etc/passwd|sheets|sheets/none.csv|tested|mean".split(
    "|",
  ),
  ..."tolerance|prediction|linear|quadratic|logarithmic|en|es|es-MX|de|US|SI|wall|pier|ring|bench|soaked|dry".split(
    "|",
  ),
  ..."$x$|{0}|{x, plural, other {#}}|<b>|constructor|__proto__|NaN|Infinity".split("|"),
  "x".repeat(20_000),
];

/** Units that people take for each other. */
const UNITS = ["g", "kg", "lb", "t", "mm", "cm", "in", "m", "ft", "um", "%", "min", "h", "s", "d"];
const OTHER_UNITS = [
  "kN",
  "N",
  "lbf",
  "MPa",
  "kPa",
  "psi",
  "kg/m3",
  "g/cm3",
  "lb/ft3",
  "cm3",
  "m3",
  "C",
  "F",
  "furlong",
  "",
];

const index = fc.nat({ max: 400 });
const factor = fc.constantFrom(-1, 0, 0.1, 0.01, 0.001, 0.5, 2, 10, 100, 1000, 25.4, 60, 1.02);
const unit = fc.constantFrom(...UNITS, ...OTHER_UNITS);
const cell = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...CELLS) },
  { weight: 1, arbitrary: fc.string({ unit: "binary", maxLength: 12 }) },
  { weight: 1, arbitrary: fc.double().map(String) },
);

/** A change to a sheet, by places that are taken modulo what is there. */
const sheetChange = fc.oneof(
  fc.record({ do: fc.constant("write" as const), sheet: index, row: index, column: index, cell }),
  fc.record({ do: fc.constant("scale" as const), sheet: index, row: index, column: index, factor }),
  fc.record({ do: fc.constant("scale-column" as const), sheet: index, column: index, factor }),
  fc.record({ do: fc.constant("unit" as const), sheet: index, at: index, unit }),
  fc.record({ do: fc.constant("drop-row" as const), sheet: index, row: index }),
  fc.record({ do: fc.constant("repeat-row" as const), sheet: index, row: index }),
  fc.record({ do: fc.constant("move-row" as const), sheet: index, row: index, to: index }),
  fc.record({ do: fc.constant("cut-rows" as const), sheet: index, row: index }),
  fc.record({ do: fc.constant("drop-column" as const), sheet: index, column: index }),
  fc.record({ do: fc.constant("repeat-column" as const), sheet: index, column: index }),
  fc.record({
    do: fc.constant("exchange-columns" as const),
    sheet: index,
    column: index,
    to: index,
  }),
  fc.record({
    do: fc.constant("exchange-headers" as const),
    sheet: index,
    column: index,
    to: index,
  }),
  fc.record({ do: fc.constant("exchange-sheets" as const), sheet: index, to: index }),
  fc.record({ do: fc.constant("repeat-table" as const), sheet: index }),
);

/** A change to `study.yaml`, by the place among all its values. */
const entryChange = fc.oneof(
  fc.record({ do: fc.constant("entry" as const), at: index, value: fc.constantFrom(...ENTRIES) }),
  fc.record({ do: fc.constant("entry-scale" as const), at: index, factor }),
  fc.record({ do: fc.constant("entry-unit" as const), at: index, unit }),
  fc.record({ do: fc.constant("entry-drop" as const), at: index }),
  fc.record({ do: fc.constant("entry-copy" as const), at: index, to: index }),
  fc.record({
    do: fc.constant("entry-rename" as const),
    at: index,
    key: fc.constantFrom("", "share", "sheet", "__proto__", "constructor", "min", "max"),
  }),
);

/** A change to a file's bytes. */
const byteChange = fc.oneof(
  fc.record({
    do: fc.constant("flip" as const),
    file: index,
    at: fc.nat(),
    bit: fc.nat({ max: 7 }),
  }),
  fc.record({ do: fc.constant("cut" as const), file: index, at: fc.nat() }),
  fc.record({
    do: fc.constant("insert" as const),
    file: index,
    at: fc.nat(),
    bytes: fc.uint8Array({ minLength: 1, maxLength: 8 }).map((all) => [...all]),
  }),
  fc.record({ do: fc.constant("utf-16" as const), file: index }),
  fc.record({ do: fc.constant("latin-1" as const), file: index }),
  fc.record({
    do: fc.constant("workbook" as const),
    file: index,
    at: fc.nat(),
    bits: fc.nat({ max: 3 }),
  }),
);

type SheetChange = typeof sheetChange extends fc.Arbitrary<infer T> ? T : never;
type EntryChange = typeof entryChange extends fc.Arbitrary<infer T> ? T : never;
type ByteChange = typeof byteChange extends fc.Arbitrary<infer T> ? T : never;
export type Change = SheetChange | EntryChange | ByteChange;

/** One change mostly, a few together sometimes. */
export const changes: fc.Arbitrary<readonly Change[]> = fc.oneof(
  { weight: 6, arbitrary: fc.array<Change>(fc.oneof(sheetChange), { minLength: 1, maxLength: 1 }) },
  { weight: 5, arbitrary: fc.array<Change>(fc.oneof(entryChange), { minLength: 1, maxLength: 1 }) },
  { weight: 2, arbitrary: fc.array<Change>(byteChange, { minLength: 1, maxLength: 1 }) },
  {
    weight: 3,
    arbitrary: fc.array<Change>(fc.oneof(sheetChange, entryChange), { minLength: 2, maxLength: 4 }),
  },
);

/** The changed study as files; a change that finds nothing to change leaves the study as it is. */
export function changed(base: FuzzStudy, all: readonly Change[]): Files {
  let study = base;
  for (const change of all) {
    if ("sheet" in change) study = changeSheets(study, change);
    else if (change.do.startsWith("entry")) {
      study = { ...study, entries: changeEntries(study.entries, change as EntryChange) };
    }
  }
  return all.reduce(
    (files, change) => ("file" in change ? changeBytes(files, change) : files),
    filesOf(study),
  );
}

const pick = <T>(list: readonly T[], at: number): T => list[at % list.length];

function changeSheets({ entries, sheets }: FuzzStudy, change: SheetChange): FuzzStudy {
  const names = Object.keys(sheets);
  const name = pick(names, change.sheet);
  if (change.do === "exchange-sheets") {
    const other = pick(names, change.to);
    return { entries, sheets: { ...sheets, [name]: sheets[other], [other]: sheets[name] } };
  }
  const grid = sheets[name].map((row) => [...row]);
  if (grid.length === 0) return { entries, sheets };
  return { entries, sheets: { ...sheets, [name]: changeGrid(grid, change) } };
}

function changeGrid(
  grid: string[][],
  change: Exclude<SheetChange, { do: "exchange-sheets" }>,
): Grid {
  const header = Math.max(
    0,
    grid.findIndex((row) => /^(sieve|size|time|block|water content|layer|test)\b/.test(row[0])),
  );
  const width = grid[header].length;
  if (change.do === "unit") {
    const places = grid.flatMap((row, at) =>
      row.flatMap((cell, column) => (/\([^)]*\)$/.test(cell) ? [[at, column]] : [])),
    );
    if (places.length === 0) return grid;
    const [row, column] = pick(places, change.at);
    grid[row][column] = grid[row][column].replace(/\([^)]*\)$/, `(${change.unit})`);
    return grid;
  }
  if (change.do === "repeat-table") {
    const copies = grid.slice(header + 1).map(([first, ...rest]) => [`${first}b`, ...rest]);
    return [...grid, ...copies];
  }
  if ("row" in change) {
    const row = change.row % grid.length;
    if (change.do === "drop-row") return grid.toSpliced(row, 1);
    if (change.do === "repeat-row") return grid.toSpliced(row, 0, grid[row]);
    if (change.do === "cut-rows") return grid.slice(0, row);
    if (change.do === "move-row")
      return grid.toSpliced(row, 1).toSpliced(change.to % grid.length, 0, grid[row]);
    const column = change.column % Math.max(1, grid[row].length);
    grid[row][column] =
      change.do === "write" ? change.cell : scaled(grid[row][column], change.factor);
    return grid;
  }
  const column = change.column % width;
  if (change.do === "exchange-headers") {
    const to = change.to % width;
    [grid[header][column], grid[header][to]] = [grid[header][to], grid[header][column]];
    return grid;
  }
  return grid.map((row, at) => {
    if (at < header || row.length <= column) return row;
    if (change.do === "drop-column") return row.toSpliced(column, 1);
    if (change.do === "repeat-column") return row.toSpliced(column, 0, row[column]);
    if (change.do === "scale-column")
      return at === header ? row : row.with(column, scaled(row[column], change.factor));
    const to = change.to % row.length;
    return row.with(column, row[to]).with(to, row[column]);
  });
}

function scaled(cell: string, by: number): string {
  return cell.replace(/-?\d+(\.\d+)?/, (number) =>
    String(Number((Number(number) * by).toPrecision(12))),
  );
}

type Path = readonly string[];

function pathsOf(node: unknown, path: Path = []): Path[] {
  if (typeof node !== "object" || node === null) return [path];
  const below = Object.entries(node).flatMap(([key, one]) => pathsOf(one, [...path, key]));
  return path.length === 0 ? below : [path, ...below];
}

function at(node: unknown, path: Path): unknown {
  return path.reduce<unknown>((below, key) => (below as Record<string, unknown>)?.[key], node);
}

function withoutOrWith(
  node: unknown,
  [key, ...rest]: Path,
  write: (holder: Record<string, unknown>, key: string) => void,
): unknown {
  const copy = Array.isArray(node) ? [...node] : { ...(node as object) };
  const holder = copy as Record<string, unknown>;
  if (rest.length === 0) write(holder, key);
  else holder[key] = withoutOrWith(holder[key], rest, write);
  return Array.isArray(copy) ? copy.filter((one) => one !== undefined) : copy;
}

function changeEntries(entries: FuzzStudy["entries"], change: EntryChange): FuzzStudy["entries"] {
  const paths = pathsOf(entries);
  const path = pick(paths, change.at);
  const before = at(entries, path);
  const edited = withoutOrWith(entries, path, (holder, key) => {
    if (change.do === "entry-drop") delete holder[key];
    else if (change.do === "entry") holder[key] = change.value;
    else if (change.do === "entry-copy") holder[key] = at(entries, pick(paths, change.to));
    else if (change.do === "entry-rename") {
      delete holder[key];
      Object.defineProperty(holder, change.key, {
        value: before,
        enumerable: true,
        configurable: true,
        writable: true,
      });
    } else if (change.do === "entry-scale") {
      if (typeof before === "number") holder[key] = before * change.factor;
      if (typeof before === "string") holder[key] = scaled(before, change.factor);
    } else if (typeof before === "string") {
      holder[key] = before.replace(/(\d)\s*[^\d\s][^\s]*$/, `$1 ${change.unit}`);
    }
  });
  return edited as FuzzStudy["entries"];
}

function changeBytes(files: Files, change: ByteChange): Files {
  const names = Object.keys(files);
  const name = pick(names, change.file);
  const content = files[name];
  const bytes = typeof content === "string" ? new TextEncoder().encode(content) : content;
  const write = (next: Uint8Array): Files => ({ ...files, [name]: next });
  if (change.do === "utf-16") return write(Buffer.from(`\ufeff${Buffer.from(bytes)}`, "utf16le"));
  if (change.do === "latin-1")
    return write(Buffer.from(Buffer.from(bytes).toString("utf8"), "latin1"));
  if (change.do === "workbook") return damagedWorkbook(files, name, change);
  const place = bytes.length === 0 ? 0 : change.at % bytes.length;
  if (change.do === "cut") return write(bytes.slice(0, place));
  if (change.do === "insert")
    return write(
      Uint8Array.from([...bytes.slice(0, place), ...change.bytes, ...bytes.slice(place)]),
    );
  const next = Uint8Array.from(bytes);
  next[place] ^= 1 << change.bit;
  return write(next);
}

/** The sheet as a workbook with some bits the other way round; its entry names that. */
function damagedWorkbook(
  files: Files,
  name: string,
  { at: start, bits }: { readonly at: number; readonly bits: number },
): Files {
  const text = files[name];
  if (name === "study.yaml" || typeof text !== "string") return files;
  const bytes = workbookOf(text.split("\n").map((line) => line.split(",")));
  for (let bit = 0; bit < bits; bit++)
    bytes[(start * (bit + 1)) % bytes.length] ^= 1 << ((start + bit) % 8);
  const { [name]: _, "study.yaml": study, ...others } = files;
  const book = name.replace(/\.csv$/, ".xlsx");
  return { ...others, "study.yaml": String(study).replaceAll(name, book), [book]: bytes };
}

/** A unit and what one of another is in it, for changes of form. */
const SAME: Readonly<Record<string, readonly (readonly [unit: string, factor: number])[]>> = {
  g: [
    ["kg", 1e-3],
    ["oz", 1 / 28.349523125],
    ["lb", 1 / 453.59237],
  ],
  lb: [
    ["kg", 0.45359237],
    ["g", 453.59237],
  ],
  mm: [
    ["cm", 0.1],
    ["m", 1e-3],
    ["um", 1e3],
  ],
  kN: [["N", 1e3]],
  MPa: [
    ["kPa", 1e3],
    ["N/mm2", 1],
  ],
  psi: [["kPa", 6.894757293168361]],
  min: [["s", 60]],
  cm3: [
    ["ml", 1],
    ["L", 1e-3],
  ],
  "kg/m3": [
    ["g/cm3", 1e-3],
    ["t/m3", 1e-3],
  ],
};

export const formChange = fc.record({
  end: fc.constantFrom("\n", "\r\n", "\r"),
  mark: fc.constantFrom(",", ";", "\t"),
  quoted: fc.boolean(),
  mark8: fc.boolean(),
  workbooks: fc.boolean(),
  remarks: fc.boolean(),
  emptyTail: fc.boolean(),
  turn: fc.nat({ max: 10 }),
  units: fc.nat({ max: 3 }),
  keys: fc.boolean(),
  flow: fc.boolean(),
  comma: fc.boolean(),
});
export type FormChange = typeof formChange extends fc.Arbitrary<infer T> ? T : never;

/** The same study in another form: no number of its result may change. */
export function reformed(base: FuzzStudy, form: FormChange): Files {
  const sheets = Object.entries(base.sheets).map(([file, rows]) => {
    const turned = reformGrid(rows, form);
    const grid = form.comma && !form.workbooks ? withCommas(turned) : turned;
    if (form.workbooks) return [file.replace(/\.csv$/, ".xlsx"), workbookOf(grid)] as const;
    const text = csvOf(grid, form.mark, form.end, form.quoted);
    return [file, form.mark8 ? `\ufeff${text}` : text] as const;
  });
  const entries = form.keys
    ? Object.fromEntries(Object.entries(base.entries).reverse())
    : base.entries;
  const flow = form.flow ? `${JSON.stringify(entries, undefined, 1)}\n` : undefined;
  const study = flow ?? String(filesOf({ entries, sheets: {} })["study.yaml"]);
  return {
    "study.yaml": form.workbooks ? study.replaceAll(".csv", ".xlsx") : study,
    ...Object.fromEntries(sheets),
  };
}

/** Numbers with decimal commas, where one of them leaves no doubt that they are. */
function withCommas(grid: Grid): Grid {
  const comma = (cell: string) => (/^-?\d+\.\d+$/.test(cell) ? cell.replace(".", ",") : cell);
  const turned = grid.map((row) => row.map(comma));
  const sure = turned.some((row) => row.some((cell) => /^(\d+,(\d\d?|\d{4,})|0,\d+)$/.test(cell)));
  return sure ? turned : grid;
}

function reformGrid(rows: Grid, { remarks, emptyTail, turn, units }: FormChange): Grid {
  const header = rows.findIndex((row) =>
    /^(sieve|size|time|block|water content|layer|test)\b/.test(row[0]),
  );
  if (header < 0) {
    return rows.map(([name, value, ...rest]) => {
      const other = otherUnit(name, units);
      return other && value !== undefined
        ? [other.name, times(value, other.factor), ...rest]
        : [name, ...(value === undefined ? [] : [value]), ...rest];
    });
  }
  const scales = rows[header].map((cell) => otherUnit(cell, units));
  const grid = rows.map((row, at) => {
    if (at < header) {
      const other = otherUnit(row[0], units);
      return other && row[1] !== undefined
        ? [other.name, times(row[1], other.factor), ...row.slice(2)]
        : [...row];
    }
    const cells = row.map((cell, column) => {
      const scale = scales[column];
      if (!scale) return cell;
      return at === header ? scale.name : times(cell, scale.factor);
    });
    if (/^#/.test(row[0]) || cells.length < 2) return cells;
    // Columns stand in any order.
    const start = turn % cells.length;
    return [...cells.slice(start), ...cells.slice(0, start)];
  });
  const tailed = emptyTail ? grid.map((row) => [...row, "", ""]) : grid;
  if (!remarks) return tailed;
  return tailed.flatMap((row, at) =>
    at > header ? [["# seen, and nothing to say"], [""], row] : [row],
  );
}

/** Sieves keep their unit: their names are read, not measured. */
function otherUnit(
  header: string,
  turn: number,
): { readonly name: string; readonly factor: number } | undefined {
  const [, name, unit] = /^(.*) \(([^)]*)\)$/.exec(header) ?? [];
  const others = SAME[unit ?? ""];
  if (turn === 0 || others === undefined || /sieve/.test(name)) return undefined;
  const [other, factor] = pick(others, turn);
  return { name: `${name} (${other})`, factor };
}

function times(cell: string, factor: number): string {
  return /^-?\d+(\.\d+)?$/.test(cell)
    ? String(Number((Number(cell) * factor).toPrecision(15)))
    : cell;
}
