import { type Finding, finding } from "../findings/finding.js";
import { say } from "../words/message.js";
import type { SheetGrid } from "./sheet/grid.js";
import {
  cellPlace,
  numberRule,
  type SheetLayout,
  type SheetRow,
  type SheetValues,
  textRule,
} from "./sheet/layout.js";
import { readRecord, type SheetReading } from "./sheet/readSheet.js";

/** A small hand-made sample of a mix, judged by hand and eye before any block is crushed. */
export interface WorkshopTrial {
  readonly id: string;
  /** What went in, in the user's words. */
  readonly mix: string;
  /** In the user's words: smooth, open, sandy, bony… */
  readonly texture?: string;
  /** Sharp, crumbling, broken… */
  readonly edges?: string;
  readonly thicknessMm?: number;
  /** Since it was made; colour means something only when it has dried fully. */
  readonly dryingHours?: number;
  /** The mass stood still between two weighings. */
  readonly dryToConstantMass?: boolean;
  /** Munsell notation by eye, such as `7.5YR 6/4`. Kept as written: it is not turned into a number. */
  readonly munsell?: string;
  /** CIE L*a*b*, D50, from a photograph with a grey card or from an instrument. */
  readonly lab?: { readonly l: number; readonly a: number; readonly b: number };
  readonly remark?: string;
  readonly row: number;
}

/** What a trial sheet may hold. */
export const TRIAL_LAYOUT: SheetLayout = {
  title: say`trial sheet`,
  facts: [],
  columns: [
    textRule("id", "trial", { required: true }),
    textRule("mix", "mix", { required: true }),
    textRule("texture", "texture"),
    textRule("edges", "edges"),
    numberRule("thicknessMm", "thickness", "length", { positive: true }),
    numberRule("dryingHours", "drying hours", "number", { min: 0 }),
    textRule("dry", "dry"),
    textRule("munsell", "munsell"),
    numberRule("l", "l*", "number"),
    numberRule("a", "a*", "number"),
    numberRule("b", "b*", "number"),
    textRule("remark", ["remark", "remarks"]),
  ],
};

/**
 * Reads a sheet of workshop trials: `trial`, `mix`, and where they were taken `texture`, `edges`,
 * `thickness (mm)`, `drying hours`, `dry` (yes once the mass stands still), `munsell`, and `L*`, `a*`, `b*`.
 *
 * @returns the trials, where nothing is wrong, and everything found. Source: own layout.
 */
export function readTrials(grid: SheetGrid): SheetReading<WorkshopTrial[]> {
  return readRecord(grid, TRIAL_LAYOUT, (sheet) => ({
    record: sheet.rows.map(trial),
    findings: sheet.rows.flatMap((entry) => trialFindings(sheet, entry)),
  }));
}

function trial({ row, values, written }: SheetRow): WorkshopTrial {
  const { l, a, b, thicknessMm, dryingHours } = values;
  const words = (key: "texture" | "edges" | "munsell" | "remark") =>
    written[key] ? { [key]: written[key] } : {};
  const measured = typeof l === "number" && typeof a === "number" && typeof b === "number";
  return {
    id: written.id,
    mix: written.mix,
    row,
    ...words("texture"),
    ...words("edges"),
    ...words("munsell"),
    ...words("remark"),
    ...(typeof thicknessMm === "number" ? { thicknessMm } : {}),
    ...(typeof dryingHours === "number" ? { dryingHours } : {}),
    ...(written.dry ? { dryToConstantMass: written.dry.toLowerCase() === "yes" } : {}),
    ...(measured ? { lab: { l, a, b } } : {}),
  };
}

function trialFindings(sheet: SheetValues, entry: SheetRow): Finding[] {
  const { written } = entry;
  const findings: Finding[] = [];
  const given = ["l", "a", "b"].filter((key) => written[key]);
  if (given.length === 1 || given.length === 2) {
    const value = given.map((key) => written[key]).join(", ");
    const place = { ...cellPlace(sheet, entry, given[0]), value };
    const found = finding(place, "error", "missing-value", {
      message: say`A colour needs all three of L*, a* and b*.`,
      expected: say`three numbers, or none`,
      remedy: say`Fill in the missing ones, or leave all three empty.`,
    });
    findings.push(found);
  }
  if (!/^(yes|no)?$/i.test(written.dry ?? "")) {
    const found = finding(cellPlace(sheet, entry, "dry"), "error", "not-yes-or-no", {
      message: say`This cell says whether the mass stood still.`,
      expected: say`yes, no, or empty`,
      remedy: say`Write yes or no; put the rest in the remark.`,
    });
    findings.push(found);
  }
  return findings;
}
