import { type Finding, finding, findingIf } from "../findings/finding.js";
import { formatFixed } from "../quantities/format.js";
import { parseSieve, sieveNumbers } from "../quantities/sieves.js";
import { convertToBase, type Dimension, normaliseUnit } from "../quantities/units.js";
import { say } from "../words/message.js";
import { SIEVE_SIZE } from "./plausible.js";
import type { SheetGrid } from "./sheet/grid.js";
import {
  type CellRule,
  cellPlace,
  METHOD_FACT,
  numberRule,
  parseHeaderCell,
  type SheetLayout,
  type SheetRow,
  type SheetValues,
  SIEVE_NAMES,
  sieveRule,
} from "./sheet/layout.js";
import { findHeaderRow, readRecord, readSheet, type SheetReading } from "./sheet/readSheet.js";

/**
 * A sieve analysis as read from its sheet: masses in g, sizes in mm, coarse to fine.
 *
 * A composite analysis has splits: rows finer than `splits[i].sizeMm` were measured on that
 * split's subsample, not on the whole sample.
 */
export interface SieveRecord {
  readonly file: string;
  /** Form of the test as the laboratory names it: it decides the loss that is allowed. */
  readonly method?: string;
  /** Dry mass of the whole sample before washing. */
  readonly dryMassG: number;
  /** Dry mass after washing, where the (undivided) sample was washed. */
  readonly washedDryMassG?: number;
  /** From the coarsest split to the finest; empty for a single set. */
  readonly splits: readonly SieveSplit[];
  /** Strictly decreasing sizes. */
  readonly rows: readonly SieveRow[];
  /** Mass in the pan under the last sieve of the (finest) set. */
  readonly panG: number;
  /** The sheet gave percentages and no mass: grams here are percent, and no mass can be checked. */
  readonly massesUnknown?: true;
}

export interface SieveSplit {
  readonly sizeMm: number;
  /** Dry mass of the subsample before washing. */
  readonly dryMassG: number;
  readonly washedDryMassG?: number;
}

export interface SieveRow {
  readonly sizeMm: number;
  readonly retainedG: number;
  /** The sieve as written in the sheet. */
  readonly label: string;
  /** Row of the sheet, from 1. */
  readonly row: number;
}

const RETAINED = ["retained", "mass retained", "weight retained", "retained mass"];
const CUMULATIVE = ["cumulative retained", "cumulative mass retained", "cumulative mass"];
const PASSING = ["passing", "finer", "finer by mass", "cumulative passing", "d"];
const percent = { required: true, min: 0, max: 100 };

/** How a sieve sheet writes its readings; the first of these that its header speaks of is read. */
const READINGS = {
  retained: numberRule("reading", RETAINED, "mass", { required: true, min: 0 }),
  cumulative: numberRule("reading", CUMULATIVE, "mass", { required: true, min: 0 }),
  // Characteristic sizes are passings as well: D60 is the size that 60 % pass.
  // Below them laboratories write the coefficients that are made of them.
  passing: numberRule("reading", PASSING, "ratio", {
    ...percent,
    unitless: ["d"],
    lead: /^d\s*/i,
    words: /^c[uc]$/i,
  }),
  "retained percent": numberRule("reading", RETAINED, "ratio", percent),
  "cumulative percent": numberRule("reading", CUMULATIVE, "ratio", percent),
};
type SieveForm = keyof typeof READINGS;
export const SIEVE_FORMS = Object.keys(READINGS) as SieveForm[];

/** Forms that give parts of the whole, and hide its masses. */
const isPercent = (form: SieveForm) => READINGS[form].dimension === "ratio";

/** Forms whose readings are each of one sieve alone. */
const isOfEach = (form: SieveForm) => form === "retained" || form === "retained percent";

/** Divisions of one sample, with the keys of their lines: more than three nobody makes. */
const SPLITS = ["split", "split 2", "split 3"].map((name, index) => ({
  name,
  size: `split${index}SizeMm`,
  dry: `split${index}DryMassG`,
  washed: `split${index}WashedDryMassG`,
}));

/** Mass of a set before washing and after it, of which only the difference is ever seen. */
const mass = (key: string, name: string, balance: string, required = false): CellRule =>
  numberRule(key, name, "mass", { required, positive: true, balance });

/** Layout of a sieve sheet of a form. */
export function sieveLayout(form: SieveForm): SheetLayout {
  const splits = SPLITS.flatMap(({ name, size, dry, washed }) => [
    sieveRule(size, `${name} sieve`),
    mass(dry, `${name} dry mass`, name),
    mass(washed, `${name} dry mass after washing`, name),
  ]);
  return {
    title: say`sieve sheet`,
    facts: [
      METHOD_FACT,
      mass("dryMassG", "dry mass", "whole", !isPercent(form)),
      mass("washedDryMassG", "dry mass after washing", "whole"),
      ...splits,
    ],
    columns: [
      sieveRule("sieve", SIEVE_NAMES, { required: true, pan: true, ...SIEVE_SIZE }),
      READINGS[form],
    ],
  };
}

/**
 * Reads a sieve sheet: `dry mass (g)` and, where they apply, `dry mass after washing (g)`,
 * `split sieve (mm)`, `split dry mass (g)` and `split dry mass after washing (g)` above a table of
 * `sieve (mm)` and `retained (g)`, coarse to fine, with a last row `pan`
 * (or `<` and the finest sieve). Further divisions are
 * `split 2 sieve (mm)` and so on to 3. `method` names the form of the test.
 *
 * In place of `retained (g)` the table may have `cumulative retained (g)`, beginning anew below a split
 * and with the set's total in the pan row. Reported percentages need neither masses nor a pan:
 * `passing (%)`, `retained (%)`, `cumulative retained (%)`, or characteristic sizes as `D` (D10, D30, D60)
 * with `size (mm)`. Rows may also stand fine to coarse. Bare numbers of a series are read where the header
 * names it: `sieve (US No.)`, `sieve (BS mesh)`.
 */
export function readSieve(grid: SheetGrid): SheetReading<SieveRecord> {
  const form = sieveForm(grid);
  const layout = sieveLayout(form);
  const asked = numbersOrMm(grid, layout) ?? sizesAsLines(grid, layout);
  if (asked) return { findings: [asked] };
  return readRecord(grid, layout, (given) => {
    const sizes = parseHeaderCell(given.headers.reading).name === "d";
    const rows = sizes ? byPassing(given.rows) : coarseToFine(given.rows);
    const sheet = { ...given, rows };
    const { file, facts, factRows } = sheet;
    const divided = readSplits(sheet);
    const massesUnknown = isPercent(form) && !("dryMassG" in factRows);
    const dryMassG = massesUnknown ? 100 : (facts.dryMassG as number);
    const read = massesRetained(sheet, form, divided.splits, dryMassG);
    const record: SieveRecord = {
      file,
      method: facts.method as string | undefined,
      dryMassG,
      washedDryMassG: facts.washedDryMassG as number | undefined,
      splits: divided.splits,
      rows: read.rows,
      panG: read.panG as number,
      ...(massesUnknown ? { massesUnknown: true } : {}),
    };
    const findings = [
      ...divided.findings,
      ...read.findings,
      ...endFindings(sheet, form),
      ...(isPercent(form) ? percentFindings(sheet) : []),
      ...washedFindings(sheet),
      ...(divided.splits.length === 0 ? otherFormFindings(grid, form, record) : []),
    ];
    return { record, findings };
  });
}

/** The first form that the sheet's header speaks of, in its unit or at all; `retained` where it speaks of none. */
function sieveForm(grid: SheetGrid): SieveForm {
  const measured = SIEVE_FORMS.find((form) => measuredHeader(grid, form) !== undefined);
  return (
    measured ?? SIEVE_FORMS.find((form) => readingHeaders(grid, form).length > 0) ?? "retained"
  );
}

function readingHeaders(grid: SheetGrid, form: SieveForm): readonly string[] {
  const header = grid.rows[findHeaderRow(grid, sieveLayout(form))] ?? [];
  return header.filter((cell) => READINGS[form].names.includes(parseHeaderCell(cell).name));
}

/** The header cell of a form that names a unit of it. */
function measuredHeader(grid: SheetGrid, form: SieveForm): string | undefined {
  return readingHeaders(grid, form).find((cell) => {
    const { unit = "" } = parseHeaderCell(cell);
    return convertToBase(1, unit, READINGS[form].dimension as Dimension) !== undefined;
  });
}

/** Points by which two columns of one sheet may differ: roundings, and a loss in one of them; common practice, no source. */
const FORMS_APART_PCT = 2;

/** Other columns of the sheet that say the same in another form, and say something else. */
function otherFormFindings(grid: SheetGrid, read: SieveForm, record: SieveRecord): Finding[] {
  let leftG = record.dryMassG;
  const passing = record.rows.map(({ row, retainedG }) => {
    leftG -= retainedG;
    return { row, pct: (100 * leftG) / record.dryMassG };
  });
  return SIEVE_FORMS.flatMap((form): Finding[] => {
    const column = measuredHeader(grid, form);
    if (form === read || column === undefined) return [];
    const { sheet } = readSheet(grid, sieveLayout(form));
    const whole = isPercent(form) ? 100 : record.dryMassG;
    let sum = 0;
    const apart = passing.flatMap(({ row, pct }) => {
      const reading = sheet?.rows.find((entry) => entry.row === row)?.values.reading;
      if (typeof reading !== "number") return [];
      sum += reading;
      const retained = isOfEach(form) ? sum : reading;
      const other = form === "passing" ? reading : 100 - (100 * retained) / whole;
      return Math.abs(other - pct) > FORMS_APART_PCT ? [{ row, pct, other }] : [];
    });
    if (apart.length === 0) return [];
    const [{ row, pct, other }] = apart;
    const percent = (value: number) => say`${formatFixed(value, 1)} %`;
    const place = { file: record.file, row, column, value: percent(other) };
    const found = finding(place, "error", "columns-differ", {
      message: say`By this column ${percent(other)} pass the sieve, by “${measuredHeader(grid, read) ?? ""}” ${percent(pct)}.`,
      expected: say`the same within ${FORMS_APART_PCT} points (common practice, no source)`,
      remedy: say`Find out which of the two columns is right, and take the other out.`,
    });
    return [found];
  });
}

/**
 * Sieve numbers of the United States in a column of openings, told by their order: they rise where the sieves
 * get finer. One question in place of an error for each row.
 */
function numbersOrMm(grid: SheetGrid, layout: SheetLayout): Finding | undefined {
  const { file, rows } = grid;
  const headerIndex = findHeaderRow(grid, layout);
  const header = rows[headerIndex] ?? [];
  const at = header.findIndex((cell) =>
    layout.columns[0].names.includes(parseHeaderCell(cell).name),
  );
  const { unit = "mm" } = parseHeaderCell(header[at] ?? "");
  if (at < 0 || normaliseUnit(unit) !== "mm") return undefined;
  const bare = rows
    .slice(headerIndex + 1)
    .map((cells) => cells[at] ?? "")
    .filter((cell) => /^\d+$/.test(cell));
  const rises = bare.slice(1).every((cell, index) => Number(cell) > Number(bare[index]));
  const numbers = sieveNumbers("US No.");
  if (bare.length < 3 || !rises || !bare.every((cell) => numbers?.(cell))) return undefined;
  const place = { file, row: headerIndex + 1, column: header[at], value: bare.join(", ") };
  return finding(place, "error", "sieve-numbers-or-mm", {
    message: say`The sizes of these sieves increase down the sheet, and all of them could be sieve numbers of the United States series.`,
    expected: say`“sieve (US No.)” for numbers; openings in mm from the coarsest to the finest`,
    remedy: say`Write in the header which of the two they are.`,
  });
}

/** `D10 (mm)` and its size as a line, in a sheet without a table. */
function sizesAsLines({ file, rows }: SheetGrid, layout: SheetLayout): Finding | undefined {
  const index = rows.findIndex(([first = ""]) => /^d ?\d/i.test(first));
  if (index < 0 || findHeaderRow({ file, rows }, layout) >= 0) return undefined;
  const place = { file, row: index + 1, value: rows[index][0] };
  return finding(place, "error", "sizes-as-lines", {
    message: say`The characteristic sizes stand as lines, and are read from a table.`,
    expected: say`a header “D”, “size (mm)” and below it a row for each, such as D10 and 0.19`,
    remedy: say`Write the header above them, and take the unit out of the first cells.`,
  });
}

/** Characteristic sizes from the largest D down, whatever their sizes; coefficients are left out. */
function byPassing(rows: readonly SheetRow[]): readonly SheetRow[] {
  const numbers = rows.filter(({ values: { reading } }) => typeof reading !== "string");
  const passing = ({ values: { reading } }: SheetRow) =>
    typeof reading === "number" ? reading : Number.NEGATIVE_INFINITY;
  return numbers.toSorted((a, b) => passing(b) - passing(a));
}

const isPan = ({ values }: SheetRow) => values.sieve === "pan";

/** Rows that stand fine to coarse throughout are turned; all others stay as they are. */
function coarseToFine(rows: readonly SheetRow[]): readonly SheetRow[] {
  const sizes = rows.flatMap(({ values: { sieve } }) => (typeof sieve === "number" ? [sieve] : []));
  const rises = sizes.length > 1 && sizes.slice(1).every((size, index) => size > sizes[index]);
  if (!rises || rows.slice(1, -1).some(isPan)) return rows;
  return [...rows.filter((row) => !isPan(row)).toReversed(), ...rows.filter(isPan)];
}

/** A set has a sieve and, where it gives masses, a pan. */
function endFindings({ file, headers, rows }: SheetValues, form: SieveForm): Finding[] {
  const column = headers.sieve ?? "sieve";
  const pan = { file, row: rows[0]?.row, column, value: "pan" };
  const isMissing = !isPercent(form) && !rows.some(isPan);
  return [
    ...findingIf(rows.every(isPan), pan, "error", "no-sieves", {
      message: say`The sheet has a pan and no sieve.`,
      expected: say`at least one sieve above the pan`,
      remedy: say`Fill in the sieves, or take the sheet out of study.yaml.`,
    }),
    ...findingIf(isMissing, { file, column }, "error", "missing-pan", {
      message: say`The sheet has no pan row.`,
      expected: say`a last row “pan” with the mass under the finest sieve`,
      remedy: say`Weigh the pan, or write 0 where nothing reached it.`,
    }),
  ];
}

/** Percentages are of the whole sample, and hide its masses; parts of one are no percentages. */
function percentFindings({ file, factRows, headers, rows }: SheetValues): Finding[] {
  const note = finding({ file }, "note", "passing-input", {
    message: say`The sheet gives percentages: its mass balance cannot be checked.`,
    expected: say`masses retained, where the laboratory has them`,
    remedy: say`Nothing to do, unless the masses are at hand.`,
  });
  const readings = rows.flatMap(({ values }) => values.reading ?? []) as number[];
  const max = Math.max(0, ...readings);
  if (rows.length > 1 && max > 0 && max <= 1) {
    const place = { file, row: rows[0].row, column: headers.reading, value: String(max) };
    const found = finding(place, "error", "fraction-for-percent", {
      message: say`No percentage of this sheet is above 1.`,
      expected: say`percent, 0 to 100`,
      remedy: say`Multiply parts of one by 100.`,
    });
    return [found];
  }
  const extra = Object.keys(factRows).find((key) => key !== "dryMassG" && key !== "method");
  const place = { file, row: factRows[extra ?? ""] };
  return [
    ...findingIf(extra !== undefined, place, "error", "passing-with-masses", {
      message: say`Percentages are of the whole sample: a split or washing does not apply.`,
      expected: say`only “dry mass (g)” above a table of percentages`,
      remedy: say`Take the line out, or give the masses retained.`,
    }),
    note,
  ];
}

/**
 * Part of the dry mass that washing leaves of the finest clay, and below which nothing would be left to sieve;
 * common practice, no source.
 */
const [LITTLE_LEFT, NOTHING_LEFT] = [0.1, 0.005];

/** A mass before washing that is a thousand or ten times too large shows in what is left. */
function washedFindings({ file, facts, factRows }: SheetValues): Finding[] {
  const pairs = [{ dry: "dryMassG", washed: "washedDryMassG" }, ...SPLITS];
  return pairs.flatMap((keys) => {
    const [dry, washed] = [facts[keys.dry], facts[keys.washed]];
    if (typeof dry !== "number" || typeof washed !== "number") return [];
    const place = { file, row: factRows[keys.washed], value: say`${washed} g` };
    if (washed > dry) {
      const found = finding(place, "error", "washed-heavier", {
        message: say`The sample is heavier after washing than before.`,
        expected: say`at most ${dry} g`,
        remedy: say`Check the two masses; one of them may still hold the tin.`,
      });
      return [found];
    }
    const severity = washed < NOTHING_LEFT * dry ? "error" : "warning";
    return findingIf(washed < LITTLE_LEFT * dry, place, severity, "washed-away", {
      message: say`Washing left ${formatFixed((100 * washed) / dry, 1)} % of the sample.`,
      expected: say`more than ${100 * LITTLE_LEFT} %, but for the finest clays`,
      remedy: say`Check the mass before washing and the units of both masses.`,
    });
  });
}

/**
 * Reads the splits of a sieve sheet, coarsest first: the sample is divided at a sieve of the table, and each
 * time at a finer one.
 */
function readSplits({ file, facts, factRows, rows }: SheetValues): {
  readonly splits: readonly SieveSplit[];
  readonly findings: readonly Finding[];
} {
  const splits: SieveSplit[] = [];
  const findings: Finding[] = [];
  for (const { name, size, dry, washed } of SPLITS) {
    const first = [size, dry, washed].find((key) => key in factRows);
    if (first === undefined) continue;
    if (!(size in factRows && dry in factRows)) {
      const found = finding({ file, row: factRows[first] }, "error", "incomplete-split", {
        message: say`The split is described only in part.`,
        expected: say`both “${name} sieve (mm)” and “${name} dry mass (g)”`,
        remedy: say`Add the missing line, or take the other one out.`,
      });
      findings.push(found);
      continue;
    }
    const [sizeMm, dryMassG] = [facts[size], facts[dry]];
    if (typeof sizeMm !== "number" || typeof dryMassG !== "number") continue;
    const place = { file, row: factRows[size], value: say`${sizeMm} mm` };
    const inTable = rows.some(({ values }) => values.sieve === sizeMm);
    const above = splits.at(-1)?.sizeMm ?? Infinity;
    findings.push(
      ...findingIf(!inTable, place, "error", "split-not-in-set", {
        message: say`The split sieve is not among the sieves of the table.`,
        expected: say`one of the table's sieves`,
        remedy: say`Give the sieve at which the sample was divided.`,
      }),
      ...findingIf(sizeMm >= above, place, "error", "split-order", {
        message: say`This split is not finer than the one before it (${above} mm).`,
        expected: say`splits from the coarsest to the finest`,
        remedy: say`Number the splits in the order in which the sample was divided.`,
      }),
    );
    splits.push({ sizeMm, dryMassG, washedDryMassG: facts[washed] as number | undefined });
  }
  return { splits, findings };
}

/**
 * Masses retained on each sieve from readings of any form. Cumulative masses begin anew below a split,
 * and a cumulative pan is the whole set; percentages passing become grams of `wholeG`.
 */
function massesRetained(
  sheet: SheetValues,
  form: SieveForm,
  splits: readonly SieveSplit[],
  wholeG: number,
): {
  readonly rows: readonly SieveRow[];
  readonly panG?: number;
  readonly findings: readonly Finding[];
} {
  const rows: SieveRow[] = [];
  const findings: Finding[] = [];
  let panG: number | undefined;
  const gramsPerUnit = isPercent(form) ? wholeG / 100 : 1;
  let before = form === "passing" ? 100 : 0;
  let sumG = 0;
  for (const entry of sheet.rows) {
    const { sieve, reading } = entry.values;
    if (typeof reading !== "number") continue;
    const part = retainedPart(form, reading, before);
    const retainedG = part * gramsPerUnit;
    if (part < 0) findings.push(wrongWay(sheet, entry, form, before));
    if (sieve === "pan") {
      findings.push(...panFindings(sheet, entry, rows.at(-1), panG !== undefined));
      panG ??= retainedG;
    }
    if (typeof sieve !== "number") continue;
    findings.push(...sieveOrder(sheet, entry, sieve, rows));
    rows.push({ sizeMm: sieve, retainedG, label: entry.written.sieve, row: entry.row });
    sumG += retainedG;
    const divided = splits.some(({ sizeMm }) => sizeMm === sieve);
    before = form === "cumulative" && divided ? 0 : reading;
  }
  return { rows, panG: panG ?? restPassed(form, before, sumG, wholeG), findings };
}

/** What passes the finest sieve went into the pan, whether or not a row of percentages says so. */
function restPassed(
  form: SieveForm,
  lastReading: number,
  retainedG: number,
  wholeG: number,
): number | undefined {
  if (!isPercent(form)) return undefined;
  return form === "passing" ? (lastReading / 100) * wholeG : Math.max(0, wholeG - retainedG);
}

/** What a reading leaves on its sieve, after that of the coarser one; below 0 where it goes the wrong way. */
function retainedPart(form: SieveForm, reading: number, before: number): number {
  if (form === "passing") return before - reading;
  return isOfEach(form) ? reading : reading - before;
}

function wrongWay(sheet: SheetValues, entry: SheetRow, form: SieveForm, before: number): Finding {
  const place = cellPlace(sheet, entry, "reading");
  if (form === "passing") {
    return finding(place, "error", "passing-rises", {
      message: say`More passes this sieve than the coarser one above it.`,
      expected: say`at most ${before}`,
      remedy: say`Check the percentages, and whether the column holds percent retained.`,
    });
  }
  return finding(place, "error", "cumulative-falls", {
    message: say`The cumulative mass falls.`,
    expected: say`at least ${before}`,
    remedy: say`Check the masses; below a split they begin anew, and the pan holds the set's total.`,
  });
}

function sieveOrder(
  sheet: SheetValues,
  entry: SheetRow,
  sizeMm: number,
  rows: readonly SieveRow[],
): Finding[] {
  const above = rows.at(-1);
  if (!above || sizeMm < above.sizeMm) return [];
  const place = cellPlace(sheet, entry, "sieve");
  if (parseHeaderCell(sheet.headers.reading).name === "d") {
    return [
      finding(place, "error", "sieve-order", {
        message: say`${entry.written.reading} is not smaller than the size of the next larger D (${above.label}).`,
        expected: say`sizes that increase with D`,
        remedy: say`Check both sizes; where two are the same, leave one of them out.`,
      }),
    ];
  }
  const words = {
    expected: say`each sieve once, from the coarsest to the finest`,
    remedy: say`Check the opening, then put the rows in order.`,
  };
  if (rows.some((row) => row.sizeMm === sizeMm)) {
    const message = say`This sieve stands twice in the sheet.`;
    return [finding(place, "error", "repeated-sieve", { message, ...words })];
  }
  const message = say`This sieve is coarser than the one above it (${above.label}).`;
  return [finding(place, "error", "sieve-order", { message, ...words })];
}

/** A pan stands once, and `<0.063` only under the sieve of that size. */
function panFindings(
  sheet: SheetValues,
  entry: SheetRow,
  finest: SieveRow | undefined,
  repeated: boolean,
): Finding[] {
  const place = cellPlace(sheet, entry, "sieve");
  if (repeated) {
    const found = finding(place, "error", "repeated-sieve", {
      message: say`The pan stands twice in the sheet.`,
      expected: say`one pan, under the finest sieve`,
      remedy: say`Take one of the rows out.`,
    });
    return [found];
  }
  const { sieve } = entry.written;
  if (!sieve.startsWith("<") || !finest) return [];
  const { unit } = parseHeaderCell(sheet.headers.sieve);
  const isOther = parseSieve(sieve.slice(1), unit) !== finest.sizeMm;
  return findingIf(isOther, place, "error", "pan-size", {
    message: say`The last row is what passed the finest sieve, and this size is another one.`,
    expected: say`pan, or < and ${finest.label}`,
    remedy: say`Check whether a sieve is missing above this row.`,
  });
}
