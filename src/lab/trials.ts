import { type Finding, findingIf } from "../findings/finding.js";
import { say } from "../words/message.js";
import type { SheetGrid } from "./sheet/grid.js";
import {
  allNumbers,
  cellPlace,
  numberRule,
  numbersAmong,
  type SheetLayout,
  type SheetRow,
  type SheetValues,
  textRule,
} from "./sheet/layout.js";
import { readRecord, type SheetReading } from "./sheet/readSheet.js";

/** A sample or block of a mix as somebody saw it, in their words. */
export interface WorkshopTrial {
  readonly id: string;
  /** What went in, in the user's words; of a trial of a study the study says it. */
  readonly mix?: string;
  /** In the user's words: smooth, open, sandy, bony… */
  readonly texture?: string;
  /** Sharp, crumbling, broken… */
  readonly edges?: string;
  /** None, hairlines, open at a lift… */
  readonly cracks?: string;
  readonly thicknessMm?: number;
  /** Since it was made; colour means something only when it has dried fully. */
  readonly dryingHours?: number;
  /** The mass stood still between two weighings. */
  readonly dryToConstantMass?: boolean;
  /** When dry, in the user's words. */
  readonly colour?: string;
  /** Munsell notation by eye, such as `7.5YR 6/4`. Kept as written: it is not turned into a number. */
  readonly munsell?: string;
  /** CIE L*a*b*, D50, from a photograph with a grey card or from an instrument. */
  readonly lab?: { readonly l: number; readonly a: number; readonly b: number };
  readonly remark?: string;
  /** A file in the study's folder. */
  readonly photograph?: string;
  /** Who looked, and when, as written. */
  readonly seenBy?: string;
  readonly seenOn?: string;
  readonly row: number;
}

/** What a trial sheet may hold. */
export const TRIAL_LAYOUT: SheetLayout = {
  title: say`trial sheet`,
  facts: [],
  columns: [
    textRule("id", ["trial", "block"], { required: true }),
    textRule("mix", "mix"),
    textRule("texture", "texture"),
    textRule("edges", "edges"),
    textRule("cracks", "cracks"),
    numberRule("thicknessMm", "thickness", "length", { positive: true }),
    numberRule("dryingHours", "drying hours", "number", { min: 0 }),
    textRule("dry", "dry"),
    textRule("colour", ["colour", "color", "colour when dry", "color when dry"]),
    textRule("munsell", "munsell"),
    numberRule("l", "l*", "number"),
    numberRule("a", "a*", "number"),
    numberRule("b", "b*", "number"),
    textRule("photograph", ["photograph", "photo"]),
    textRule("seenBy", ["who", "seen by"]),
    textRule("seenOn", ["date", "seen on"]),
    textRule("remark", ["remark", "remarks"]),
  ],
};

/**
 * Reads a sheet of what was seen on trial blocks or samples: `trial` or `block`, and where they were taken
 * `mix`, `texture`, `edges`, `cracks`, `thickness (mm)`, `drying hours`, `dry` (yes once the mass stands
 * still), `colour` when dry, `munsell`, `L*`, `a*`, `b*`, `photograph` (a file), `who`, `date`, `remark`.
 *
 * @returns the trials, where nothing is wrong, and everything found. Source: own layout.
 */
export function readTrials(grid: SheetGrid): SheetReading<WorkshopTrial[]> {
  return readRecord(grid, TRIAL_LAYOUT, (sheet) => ({
    record: sheet.rows.map(trial),
    findings: sheet.rows.flatMap((entry) => trialFindings(sheet, entry)),
  }));
}

/** What is kept as it was written. */
const WORDS = TRIAL_LAYOUT.columns
  .filter(({ key, kind }) => kind === "text" && key !== "id" && key !== "dry")
  .map(({ key }) => key);

function trial({ row, values, written }: SheetRow): WorkshopTrial {
  const lab = allNumbers(values, "l", "a", "b");
  const words = Object.fromEntries(
    WORDS.flatMap((key) => (written[key] ? [[key, written[key]]] : [])),
  );
  return {
    id: written.id,
    row,
    ...words,
    ...numbersAmong(values, "thicknessMm", "dryingHours"),
    ...(written.dry ? { dryToConstantMass: written.dry.toLowerCase() === "yes" } : {}),
    ...(lab ? { lab } : {}),
  };
}

function trialFindings(sheet: SheetValues, entry: SheetRow): Finding[] {
  const { written } = entry;
  const given = ["l", "a", "b"].filter((key) => written[key]);
  const value = given.map((key) => written[key]).join(", ");
  const isPart = given.length === 1 || given.length === 2;
  const isUnclear = !/^(yes|no)?$/i.test(written.dry ?? "");
  return [
    ...findingIf(
      isPart,
      { ...cellPlace(sheet, entry, given[0]), value },
      "error",
      "missing-value",
      {
        message: say`A colour needs all three of L*, a* and b*.`,
        expected: say`three numbers, or none`,
        remedy: say`Fill in the missing ones, or leave all three empty.`,
      },
    ),
    ...findingIf(isUnclear, cellPlace(sheet, entry, "dry"), "error", "not-yes-or-no", {
      message: say`This cell says whether the mass stood still.`,
      expected: say`yes, no, or empty`,
      remedy: say`Write yes or no; put the rest in the remark.`,
    }),
  ];
}
