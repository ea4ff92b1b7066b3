import { type Finding, finding } from "../findings/finding.js";
import { type JarLayerName, type JarRecord, readJar } from "../lab/jar.js";
import type { SheetGrid } from "../lab/sheet/grid.js";
import { parseHeaderCell } from "../lab/sheet/layout.js";
import { readSieve, type SieveRecord } from "../lab/sieve.js";
import { acceptedUnits, parseNumber } from "../quantities/parseQuantity.js";
import { convertToBase } from "../quantities/units.js";
import { present } from "../tables/tableOf.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { type Language, render } from "../words/render.js";

/** What one group read off its jar and its balance. */
export interface ClassGroup {
  /** As the head of its column names it. */
  readonly name: string;
  /** Absent where the column has no jar, or one that cannot be. */
  readonly jar?: JarRecord;
  /** Absent where the column has no sieving, or one that cannot be. */
  readonly sieve?: SieveRecord;
  readonly findings: readonly Finding[];
}

export interface ClassSheet {
  readonly groups: readonly ClassGroup[];
  /** About the sheet as a whole. */
  readonly findings: readonly Finding[];
}

/** The rows of the sheet that have a name of their own, and what they measure; all others are sieves. */
const ROWS = {
  waterDepth: { label: say`jar: depth of water`, dimension: "length" },
  passedSieve: { label: say`jar: sieve that the soil passed`, dimension: "length" },
  sand: { label: say`jar: top of sand`, dimension: "length" },
  silt: { label: say`jar: top of silt`, dimension: "length" },
  clay: { label: say`jar: top of clay`, dimension: "length" },
  sandMin: { label: say`jar: sand read after`, dimension: "duration" },
  siltMin: { label: say`jar: silt read after`, dimension: "duration" },
  clayMin: { label: say`jar: clay read after`, dimension: "duration" },
  dryMass: { label: say`dry mass before washing`, dimension: "mass" },
  washedMass: { label: say`dry mass after washing`, dimension: "mass" },
  pan: { label: say`pan`, dimension: "mass" },
} as const;

type RowName = keyof typeof ROWS;

/** The unit of a row in the sheet that we print, and in the records. */
const UNIT = { length: "mm", mass: "g", duration: "min" } as const;

/** What the printed jar sheet says: one minute, three quarters of an hour, a day. */
export const JAR_TIMES_MIN = { sand: 1, silt: 45, clay: 1440 } as const;

/** The label of a row as the sheet has it, with its unit. */
export function classRowLabel(name: RowName): Text {
  const { label, dimension } = ROWS[name];
  return say`${label} (${UNIT[dimension]})`;
}

/** The label of the row of one sieve. */
export function sieveRowLabel(sieve: string): Text {
  return say`on ${sieve} (g)`;
}

/** A row of the sheet, understood. */
interface Line {
  readonly name: RowName | "sieve";
  /** Row of the file, from 1. */
  readonly row: number;
  /** Its unit in ours. */
  readonly factor: number;
  /** As written, without its unit. */
  readonly sieve: string;
  /** Texts of the groups, numbers with a decimal point. */
  readonly cells: readonly string[];
}

/**
 * Reads the sheet of a class: one row a reading, one column a group. Labels may be English or Spanish, each
 * with its unit in brackets; a row `on 4 mm`, `on No. 10` or `on 3/8 in` is a sieve, coarse to fine, whatever
 * the set. Decimal commas are read. An empty `dry mass after washing` says that the sample was not washed; an
 * empty sieve, that this group did not use it; an empty jar, that there was none.
 *
 * What each group wrote passes through the same checks as the sheets of a laboratory.
 *
 * @example
 * const rows = [["reading", "red", "blue"], ["dry mass before washing (g)", "1000", "900,5"], ["dry mass after washing (g)", "700", ""], ["on 2 mm (g)", "300", "250"], ["on 0.063 mm (g)", "390", "600"], ["pan (g)", "10", "50,5"]];
 * const { groups } = readClassSheet({ file: "class.csv", rows });
 * groups.map(({ name, sieve }) => [name, sieve.dryMassG, sieve.washedDryMassG, sieve.panG]) // => [["red", 1000, 700, 10], ["blue", 900.5, undefined, 50.5]]
 */
export function readClassSheet({ file, rows }: SheetGrid): ClassSheet {
  const filled = rows.flatMap((cells, index) =>
    cells.every((cell) => cell.trim() === "") || /^#(\s|$)/.test(cells[0].trim())
      ? []
      : [{ cells, row: index + 1 }],
  );
  const [head, ...body] = filled;
  const names = (head?.cells ?? []).slice(1).map((name) => name.trim());
  while (names.at(-1) === "") names.pop();
  if (names.length === 0) {
    const found = finding({ file, row: head?.row }, "error", "no-groups", {
      message: say`The sheet of the class names no group.`,
      expected: say`a first row with a column for each group: reading, group 1, group 2 …`,
      remedy: say`Begin with the sheet that came with the notebooks.`,
    });
    return { groups: [], findings: [found] };
  }
  const comma = body.some(({ cells }) => cells.slice(1).some((cell) => SURE_COMMA.test(cell)));
  const read = body.map(({ cells, row }) => readLine(file, cells, row, names.length, comma));
  const lines = read.flatMap(({ line }) => line ?? []);
  return {
    groups: names.map((name, at) => readGroup(file, name || say`column ${at + 2}`, at, lines)),
    findings: read.flatMap(({ findings }) => findings),
  };
}

/** A comma that can be nothing but a decimal sign; `1,250` may be either. */
const SURE_COMMA = /^\s*\d+,(\d{1,2}|\d{4,})\s*$/;

function readLine(
  file: string,
  cells: readonly string[],
  row: number,
  groups: number,
  comma: boolean,
): { readonly line?: Line; readonly findings: readonly Finding[] } {
  const label = cells[0];
  const { name: written, unit } = parseHeaderCell(label);
  const name = rowNamed(written);
  const place = { file, row, column: label };
  if (name === undefined) {
    const found = finding(place, "error", "unknown-class-row", {
      message: say`This row of the class sheet is not known.`,
      expected: say`one of ${joinTexts([...Object.values(ROWS).map(({ label }) => label), say`on ${"2 mm"}`])}`,
      remedy: say`Write the first cell as in the sheet that came with the notebooks.`,
    });
    return { findings: [found] };
  }
  const dimension = name === "sieve" ? "mass" : ROWS[name].dimension;
  const factor = unit === undefined ? 1 : convertToBase(1, unit, dimension);
  const base = convertToBase(1, UNIT[dimension], dimension);
  const findings: Finding[] = [];
  if (factor === undefined || base === undefined) {
    const found = finding({ ...place, value: unit }, "error", "unknown-unit", {
      message: say`The unit “${unit ?? ""}” is not known here.`,
      expected: say`one of ${acceptedUnits(dimension)} in parentheses after the name`,
      remedy: say`Write for example ${classRowLabel(name === "sieve" ? "pan" : name)}.`,
    });
    findings.push(found);
  }
  const line: Line = {
    name,
    row,
    factor: unit === undefined ? 1 : (factor ?? 1) / (base ?? 1),
    sieve: written.replace(SIEVE, ""),
    cells: Array.from({ length: groups }, (_, at) => {
      const cell = (cells[at + 1] ?? "").trim();
      return comma && /^\d+,\d+$/.test(cell) ? cell.replace(",", ".") : cell;
    }),
  };
  return { line, findings };
}

const LANGUAGES: readonly Language[] = ["en", "es"];
/** “on 2 mm” in the languages of the sheet. */
const SIEVE = /^(on|sobre|en) (?:the |el )?/;

function rowNamed(written: string): RowName | "sieve" | undefined {
  const named = (Object.keys(ROWS) as RowName[]).find((name) =>
    LANGUAGES.some((language) => render(ROWS[name].label, language).toLowerCase() === written),
  );
  return named ?? (SIEVE.test(written) ? "sieve" : undefined);
}

/** A row as the laboratory's sheets have it, and the row of the class sheet that it comes from. */
interface DerivedRow {
  readonly cells: readonly string[];
  readonly from?: number;
}

function readGroup(file: string, name: Text, at: number, lines: readonly Line[]): ClassGroup {
  const said = render(name);
  const jar = jarRows(at, lines);
  const sieve = sieveRows(at, lines);
  const jarRead = jar && readJar({ file, rows: jar.map(({ cells }) => cells) });
  const sieveRead = sieve && readSieve({ file, rows: sieve.map(({ cells }) => cells) });
  const placed = (derived: readonly DerivedRow[] = [], findings: readonly Finding[] = []) =>
    findings.map(({ row, ...found }): Finding => {
      const from = row === undefined ? undefined : derived[row - 1]?.from;
      return { ...found, column: said, ...(from === undefined ? {} : { row: from }) };
    });
  return {
    name: said,
    ...(jarRead?.record === undefined ? {} : { jar: jarRead.record }),
    ...(sieveRead?.record === undefined ? {} : { sieve: sieveRead.record }),
    findings: [
      ...placed(jar, jarRead?.findings),
      ...placed(sieve, sieveRead?.findings),
      ...(sieve ? skippedSieves(file, said, at, lines) : []),
    ],
  };
}

/** The text of a group in a row, in our unit where it is a number. */
function cellOf(line: Line, at: number): string {
  const text = line.cells[at];
  if (line.factor === 1) return text;
  const { value } = parseNumber(text) as { readonly value?: number };
  return value === undefined ? text : String(value * line.factor);
}

/** What a group wrote in a row with a name, and which row that is. */
function readingOf(name: RowName, at: number, lines: readonly Line[]) {
  const line = lines.find((one) => one.name === name);
  return { text: line ? cellOf(line, at) : "", from: line?.row };
}

function jarRows(at: number, lines: readonly Line[]): DerivedRow[] | undefined {
  const reading = (name: RowName) => readingOf(name, at, lines);
  const tops = ["sand", "silt", "clay"] as const;
  if (tops.every((top) => reading(top).text === "")) return undefined;
  const [water, passed] = [reading("waterDepth"), reading("passedSieve")];
  return present([
    { cells: ["water depth (mm)", water.text], from: water.from },
    passed.text !== "" && { cells: ["passed sieve (mm)", passed.text], from: passed.from },
    { cells: [] },
    { cells: ["layer", "time (min)", "top (mm)"] },
    ...tops.map((top): DerivedRow => {
      const layer: JarLayerName = top === "sand" ? "sand and gravel" : top;
      const minutes = reading(`${top}Min`).text || String(JAR_TIMES_MIN[top]);
      const { text, from } = reading(top);
      return { cells: [layer, minutes, text], from };
    }),
  ]);
}

function sieveRows(at: number, lines: readonly Line[]): DerivedRow[] | undefined {
  const used = lines.filter((one) => one.name === "sieve" && one.cells[at] !== "");
  const [dry, washed, pan] = (["dryMass", "washedMass", "pan"] as const).map((name) =>
    readingOf(name, at, lines),
  );
  if (used.length === 0 && dry.text === "") return undefined;
  return present([
    { cells: ["dry mass (g)", dry.text], from: dry.from },
    washed.text !== "" && { cells: ["dry mass after washing (g)", washed.text], from: washed.from },
    { cells: [] },
    { cells: ["sieve (mm)", "retained (g)"] },
    ...used.map((line): DerivedRow => ({ cells: [line.sieve, cellOf(line, at)], from: line.row })),
    { cells: ["pan", pan.text], from: pan.from },
  ]);
}

/** A sieve that this group left empty and another one did not. */
function skippedSieves(
  file: string,
  group: string,
  at: number,
  lines: readonly Line[],
): readonly Finding[] {
  return lines
    .filter((line) => line.name === "sieve" && line.cells[at] === "")
    .filter(({ cells }) => cells.some((cell) => cell !== ""))
    .map(({ row, sieve }) =>
      finding({ file, row, column: group }, "note", "sieve-not-used", {
        message: say`Nothing is written for the sieve ${sieve}: it is taken as one that this group did not use.`,
        expected: say`0 where nothing stayed on it`,
        remedy: say`Write the mass, or leave it so.`,
      }),
    );
}
