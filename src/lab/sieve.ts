import type { Finding } from "../findings/finding.js";
import { say } from "../words/message.js";
import type { SheetGrid } from "./sheet/grid.js";
import {
  type CellRule,
  parseHeaderCell,
  type SheetLayout,
  type SheetValues,
} from "./sheet/layout.js";
import { readSheet } from "./sheet/readSheet.js";

/**
 * A sieve analysis as read from its sheet: masses in g, sizes in mm, coarse to fine.
 *
 * A composite analysis has splits: rows finer than `splits[i].sizeMm` were measured on that
 * split's subsample, not on the whole sample.
 */
export interface SieveRecord {
  readonly file: string;
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

/**
 * Reads a sieve sheet: `dry mass (g)` and, where they apply, `dry mass after washing (g)`,
 * `split sieve (mm)`, `split dry mass (g)` and `split dry mass after washing (g)` above a table of
 * `sieve (mm)` and `retained (g)`, coarse to fine, with a last row `pan`. Further divisions are
 * `split 2 sieve (mm)` and so on to 3.
 *
 * In place of `retained (g)` the table may have `cumulative retained (g)`, beginning anew below a split
 * and with the set's total in the pan row, or `passing (%)`, which needs neither masses nor a pan.
 *
 * @returns the record, or `undefined` where the sheet holds too little to make one.
 */
export function readSieve(grid: SheetGrid, findings: Finding[]): SieveRecord | undefined {
  const before = findings.length;
  const form = sieveForm(grid);
  const sheet = readSheet(grid, sieveLayout(form), findings);
  if (!sheet) return undefined;
  const { file, facts, factRows } = sheet;
  const note = (finding: Omit<Finding, "file">) => findings.push({ ...finding, file });

  const splits = sieveSplits(sheet, findings);
  const massesUnknown = form === "passing" && !("dryMassG" in factRows);
  const dryMassG = massesUnknown ? 100 : (facts.dryMassG as number);
  const { rows, panG } = sieveReadings(sheet, form, splits, dryMassG, findings);
  if (!sheet.rows.some(({ values }) => values.sieve !== "pan")) {
    note({
      severity: "error",
      code: "no-sieves",
      row: sheet.rows[0].row,
      column: sheet.headers.sieve,
      value: "pan",
      message: say`The sheet has a pan and no sieve.`,
      expected: say`at least one sieve above the pan`,
      remedy: say`Fill in the sieves, or take the sheet out of study.yaml.`,
    });
  }
  if (form !== "passing" && !sheet.rows.some(({ values }) => values.sieve === "pan")) {
    note({
      severity: "error",
      code: "missing-pan",
      column: sheet.headers.sieve ?? "sieve",
      message: say`The sheet has no pan row.`,
      expected: say`a last row “pan” with the mass under the finest sieve`,
      remedy: say`Weigh the pan, or write 0 where nothing reached it.`,
    });
  }
  if (form === "passing") {
    const extra = Object.keys(factRows).find((key) => key !== "dryMassG");
    if (extra) {
      note({
        severity: "error",
        code: "passing-with-masses",
        row: factRows[extra],
        message: say`Percentages passing are of the whole sample: a split or a washing has no place.`,
        expected: say`only “dry mass (g)” above a table of percentages`,
        remedy: say`Take the line out, or give the masses retained.`,
      });
    }
    note({
      severity: "note",
      code: "passing-input",
      message: say`The sheet gives percentages passing: its mass balance cannot be checked.`,
      expected: say`masses retained, where the laboratory has them`,
      remedy: say`Nothing to do, unless the masses are at hand.`,
    });
  }
  checkWashed(factRows, facts, file, findings);
  if (findings.slice(before).some(({ severity }) => severity === "error")) return undefined;
  return {
    file,
    dryMassG,
    washedDryMassG: facts.washedDryMassG as number | undefined,
    splits,
    rows,
    panG: panG as number,
    ...(massesUnknown ? { massesUnknown: true as const } : {}),
  };
}

function checkWashed(
  rows: Readonly<Record<string, number>>,
  facts: Readonly<Record<string, unknown>>,
  file: string,
  findings: Finding[],
): void {
  for (const [before, after] of [
    ["dryMassG", "washedDryMassG"],
    ...[0, 1, 2].map((index) => [`split${index}DryMassG`, `split${index}WashedDryMassG`]),
  ]) {
    const [dry, washed] = [facts[before], facts[after]];
    if (typeof dry !== "number" || typeof washed !== "number" || washed <= dry) continue;
    findings.push({
      severity: "error",
      code: "washed-heavier",
      file,
      row: rows[after],
      value: String(washed),
      message: say`The sample is heavier after washing than before.`,
      expected: say`at most ${dry} g`,
      remedy: say`Check the two masses; one of them may still hold the tin.`,
    });
  }
}

/** How a sieve sheet writes its readings. */
type SieveForm = "retained" | "cumulative" | "passing";

/** Most divisions of one sample: more than three nobody does. */
const MOST_SPLITS = 3;

const mass = (key: string, name: string, required = false): CellRule => ({
  key,
  names: [name],
  kind: "number",
  dimension: "mass",
  required,
  positive: true,
});

const COLUMNS: Readonly<Record<SieveForm, CellRule>> = {
  retained: {
    key: "reading",
    names: ["retained"],
    kind: "number",
    dimension: "mass",
    required: true,
    min: 0,
  },
  cumulative: {
    key: "reading",
    names: ["cumulative retained"],
    kind: "number",
    dimension: "mass",
    required: true,
    min: 0,
  },
  passing: {
    key: "reading",
    names: ["passing"],
    kind: "number",
    dimension: "ratio",
    required: true,
    min: 0,
    max: 100,
  },
};

/** The name of a split in a sheet: `split`, `split 2`, `split 3`. */
function splitName(index: number): string {
  return index === 0 ? "split" : `split ${index + 1}`;
}

/** The form that the sheet's header speaks of; `retained` where it speaks of none. */
function sieveForm(grid: SheetGrid): SieveForm {
  const named = (name: string) =>
    grid.rows.some(
      (cells) =>
        parseHeaderCell(cells[0] ?? "").name === "sieve" &&
        cells.some((cell) => parseHeaderCell(cell).name === name),
    );
  if (named("retained")) return "retained";
  if (named("cumulative retained")) return "cumulative";
  return named("passing") ? "passing" : "retained";
}

/** Layout of a sieve sheet of a form. */
export function sieveLayout(form: SieveForm): SheetLayout {
  const splits = Array.from({ length: MOST_SPLITS }, (_, index): CellRule[] => [
    { key: `split${index}SizeMm`, names: [`${splitName(index)} sieve`], kind: "sieve" },
    mass(`split${index}DryMassG`, `${splitName(index)} dry mass`),
    mass(`split${index}WashedDryMassG`, `${splitName(index)} dry mass after washing`),
  ]).flat();
  return {
    title: say`sieve sheet`,
    facts: [
      mass("dryMassG", "dry mass", form !== "passing"),
      mass("washedDryMassG", "dry mass after washing"),
      ...splits,
    ],
    columns: [{ key: "sieve", names: ["sieve"], kind: "sieve", required: true }, COLUMNS[form]],
  };
}

/** Reads the splits of a sieve sheet, coarsest first; a finding for each that cannot be. */
function sieveSplits(
  { file, facts, factRows, rows }: SheetValues,
  findings: Finding[],
): SieveSplit[] {
  const splits: SieveSplit[] = [];
  for (let index = 0; index < MOST_SPLITS; index++) {
    const name = splitName(index);
    const key = (part: string) => `split${index}${part}`;
    const given = ["SizeMm", "DryMassG"].filter((part) => key(part) in factRows);
    const washedRow = factRows[key("WashedDryMassG")];
    if (given.length === 0 && washedRow === undefined) continue;
    if (given.length < 2) {
      findings.push({
        severity: "error",
        code: "incomplete-split",
        file,
        row: given.length ? factRows[key(given[0])] : washedRow,
        message: say`The split is described only in part.`,
        expected: say`both “${name} sieve (mm)” and “${name} dry mass (g)”`,
        remedy: say`Add the missing line, or take the other one out.`,
      });
      continue;
    }
    const sizeMm = facts[key("SizeMm")];
    const dryMassG = facts[key("DryMassG")];
    if (typeof sizeMm !== "number" || typeof dryMassG !== "number") continue;
    const row = factRows[key("SizeMm")];
    if (!rows.some(({ values }) => values.sieve === sizeMm)) {
      findings.push({
        severity: "error",
        code: "split-not-in-set",
        file,
        row,
        value: String(sizeMm),
        message: say`The split sieve is not among the sieves of the table.`,
        expected: say`one of the table's sieves`,
        remedy: say`Give the sieve at which the sample was divided.`,
      });
    }
    const above = splits.at(-1);
    if (above && sizeMm >= above.sizeMm) {
      findings.push({
        severity: "error",
        code: "split-order",
        file,
        row,
        value: String(sizeMm),
        message: say`This split is not finer than the one before it (${above.sizeMm} mm).`,
        expected: say`splits from the coarsest to the finest`,
        remedy: say`Number the splits in the order in which the sample was divided.`,
      });
    }
    const washedDryMassG = facts[key("WashedDryMassG")] as number | undefined;
    splits.push({ sizeMm, dryMassG, washedDryMassG });
  }
  return splits;
}

interface SieveReadings {
  readonly rows: readonly SieveRow[];
  readonly panG?: number;
}

/**
 * Masses retained on each sieve from readings of any form. Cumulative masses begin anew below a split,
 * and a cumulative pan is the whole set; percentages passing become grams of `wholeG`.
 */
function sieveReadings(
  sheet: SheetValues,
  form: SieveForm,
  splits: readonly SieveSplit[],
  wholeG: number,
  findings: Finding[],
): SieveReadings {
  const rows: SieveRow[] = [];
  let panG: number | undefined;
  let before = form === "passing" ? 100 : 0;
  for (const { row, values, written } of sheet.rows) {
    const { sieve, reading } = values;
    if (typeof reading !== "number") continue;
    const change = form === "passing" ? before - reading : reading - before;
    if (form !== "retained" && change < 0) {
      findings.push({
        severity: "error",
        code: form === "passing" ? "passing-rises" : "cumulative-falls",
        file: sheet.file,
        row,
        column: sheet.headers.reading,
        value: written.reading,
        message:
          form === "passing"
            ? say`More passes this sieve than the coarser one above it.`
            : say`The cumulative mass falls.`,
        expected: form === "passing" ? say`at most ${before}` : say`at least ${before}`,
        remedy:
          form === "passing"
            ? say`Check the percentages, and whether the column holds percent retained.`
            : say`Check the masses; below a split they begin anew, and the pan holds the set's total.`,
      });
    }
    const retainedG =
      form === "retained" ? reading : form === "passing" ? (change / 100) * wholeG : change;
    if (sieve === "pan") panG ??= retainedG;
    if (typeof sieve !== "number") continue;
    const above = rows.at(-1);
    if (above && sieve >= above.sizeMm) {
      const repeated = rows.some(({ sizeMm }) => sizeMm === sieve);
      findings.push({
        severity: "error",
        code: repeated ? "repeated-sieve" : "sieve-order",
        file: sheet.file,
        row,
        column: sheet.headers.sieve,
        value: written.sieve,
        message: repeated
          ? say`This sieve stands twice in the sheet.`
          : say`This sieve is coarser than the one above it (${above.label}).`,
        expected: say`each sieve once, from the coarsest to the finest`,
        remedy: say`Check the opening, then put the rows in order.`,
      });
    }
    rows.push({ sizeMm: sieve, retainedG, label: written.sieve, row });
    const divided = splits.some(({ sizeMm }) => sizeMm === sieve);
    before = form === "cumulative" && divided ? 0 : reading;
  }
  // What passes the finest sieve went into the pan, whether or not a row says so.
  if (form === "passing") panG ??= (before / 100) * wholeG;
  return { rows, panG };
}
