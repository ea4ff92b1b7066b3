import { type Finding, findingIf } from "../findings/finding.js";
import { formatPlain } from "../quantities/format.js";
import { say } from "../words/message.js";
import type { SheetGrid } from "./sheet/grid.js";
import {
  allNumbers,
  cellPlace,
  numberRule,
  numbersAmong,
  type SheetLayout,
  SIEVE_NAMES,
  sieveRule,
  textRule,
} from "./sheet/layout.js";
import { readRecord, type SheetReading } from "./sheet/readSheet.js";

/** A grading envelope that a study brings with it. */
export interface EnvelopeRecord {
  readonly file: string;
  readonly title: string;
  /** Where the user has it from, in their words. */
  readonly source: string;
  /** Increasing sizes. */
  readonly points: readonly EnvelopePoint[];
}

export interface EnvelopePoint {
  readonly sizeMm: number;
  readonly lowPct: number;
  readonly highPct: number;
  /** How much this size counts where a blend aims at the envelope; left out, 1. */
  readonly weight?: number;
  readonly row: number;
}

const required = { required: true };
const share = { required: true, min: 0, max: 100 };

/** What an envelope sheet may hold. */
export const ENVELOPE_LAYOUT: SheetLayout = {
  title: say`envelope sheet`,
  facts: [textRule("title", "title", required), textRule("source", "source", required)],
  columns: [
    sieveRule("sieve", SIEVE_NAMES, required),
    numberRule("lowPct", ["low", "lower", "lower limit"], "ratio", share),
    numberRule("highPct", ["high", "upper", "upper limit"], "ratio", share),
    numberRule("weight", "weight", "number", { min: 0.01, max: 100 }),
  ],
};

/**
 * Reads an envelope sheet: `title` and `source` above a table of `sieve (mm)`, `low (%)` and `high (%)`
 * passing, in either order of size, with a column `weight` if sizes are to count unequally in a blend.
 */
export function readEnvelope(grid: SheetGrid): SheetReading<EnvelopeRecord> {
  return readRecord(grid, ENVELOPE_LAYOUT, (sheet) => {
    const { file, facts } = sheet;
    const findings: Finding[] = [];
    const points: EnvelopePoint[] = [];
    for (const entry of sheet.rows) {
      const { row, values, written } = entry;
      const read = allNumbers(values, "sieve", "lowPct", "highPct");
      if (!read) continue;
      const { sieve, lowPct, highPct } = read;
      const value = `${written.lowPct}, ${written.highPct}`;
      const isTwice = points.some(({ sizeMm }) => sizeMm === sieve);
      findings.push(
        ...findingIf(lowPct > highPct, { file, row, value }, "error", "envelope-crossed", {
          message: say`The lower limit is above the upper one.`,
          expected: say`low up to high`,
          remedy: say`Check whether the two columns were exchanged.`,
        }),
        ...findingIf(isTwice, cellPlace(sheet, entry, "sieve"), "error", "repeated-sieve", {
          message: say`This sieve stands twice in the sheet.`,
          expected: say`each sieve once`,
          remedy: say`Take one of the rows out.`,
        }),
      );
      points.push({ sizeMm: sieve, lowPct, highPct, ...numbersAmong(values, "weight"), row });
    }
    points.sort((a, b) => a.sizeMm - b.sizeMm);
    findings.push(...fallingLimits(file, points));
    const record = { file, title: String(facts.title), source: String(facts.source), points };
    return { record, findings };
  });
}

/** Passing never falls as size grows, and so do its limits. */
function fallingLimits(file: string, points: readonly EnvelopePoint[]): Finding[] {
  return points.slice(1).flatMap(({ lowPct, highPct, row }, index) => {
    const finer = points[index];
    const falls = lowPct < finer.lowPct || highPct < finer.highPct;
    const value = say`${formatPlain(lowPct)}, ${formatPlain(highPct)}`;
    return findingIf(falls, { file, row, value }, "error", "envelope-falls", {
      message: say`A limit falls below that of the finer sieve ${finer.sizeMm} mm.`,
      expected: say`limits of the passing that never fall as size grows`,
      remedy: say`Check whether the limits are percent passing, not retained.`,
    });
  });
}
