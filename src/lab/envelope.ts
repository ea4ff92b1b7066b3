import type { Finding } from "../findings/finding.js";
import { say } from "../words/message.js";
import type { SheetGrid } from "./sheet/grid.js";
import type { SheetLayout } from "./sheet/layout.js";
import { readSheet } from "./sheet/readSheet.js";

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
  readonly row: number;
}

const share = { kind: "number", dimension: "ratio", required: true, min: 0, max: 100 } as const;

/** What an envelope sheet may hold. */
export const ENVELOPE_LAYOUT: SheetLayout = {
  title: say`envelope sheet`,
  facts: [
    { key: "title", names: ["title"], kind: "text", required: true },
    { key: "source", names: ["source"], kind: "text", required: true },
  ],
  columns: [
    { key: "sieve", names: ["sieve"], kind: "sieve", required: true },
    { key: "lowPct", names: ["low"], ...share },
    { key: "highPct", names: ["high"], ...share },
  ],
};

/**
 * Reads an envelope sheet: `title` and `source` above a table of `sieve (mm)`, `low (%)` and `high (%)`
 * passing, in either order of size.
 *
 * @returns the record, or `undefined` where the sheet holds too little to make one.
 */
export function readEnvelope(grid: SheetGrid, findings: Finding[]): EnvelopeRecord | undefined {
  const before = findings.length;
  const sheet = readSheet(grid, ENVELOPE_LAYOUT, findings);
  if (!sheet) return undefined;
  const { file, facts, headers } = sheet;
  const refuse = (finding: Omit<Finding, "severity" | "file">) =>
    findings.push({ severity: "error", file, ...finding });
  const points: EnvelopePoint[] = [];
  for (const { row, values, written } of sheet.rows) {
    const { sieve, lowPct, highPct } = values;
    if (sieve === "pan") {
      refuse({
        code: "unknown-sieve",
        row,
        column: headers.sieve,
        value: written.sieve,
        message: say`A pan has no opening.`,
        expected: say`an opening`,
        remedy: say`Take the row out.`,
      });
    }
    if (typeof sieve !== "number" || typeof lowPct !== "number" || typeof highPct !== "number") {
      continue;
    }
    if (lowPct > highPct) {
      refuse({
        code: "envelope-crossed",
        row,
        value: `${written.lowPct}, ${written.highPct}`,
        message: say`The lower limit is above the upper one.`,
        expected: say`low up to high`,
        remedy: say`Check whether the two columns were exchanged.`,
      });
    }
    if (points.some(({ sizeMm }) => sizeMm === sieve)) {
      refuse({
        code: "repeated-sieve",
        row,
        column: headers.sieve,
        value: written.sieve,
        message: say`This sieve stands twice in the sheet.`,
        expected: say`each sieve once`,
        remedy: say`Take one of the rows out.`,
      });
    }
    points.push({ sizeMm: sieve, lowPct, highPct, row });
  }
  points.sort((a, b) => a.sizeMm - b.sizeMm);
  points.slice(1).forEach(({ lowPct, highPct, row }, index) => {
    const finer = points[index];
    if (lowPct >= finer.lowPct && highPct >= finer.highPct) return;
    refuse({
      code: "envelope-falls",
      row,
      value: `${lowPct}, ${highPct}`,
      message: say`A limit falls below that of the finer sieve ${finer.sizeMm} mm.`,
      expected: say`limits of the passing that never fall as size grows`,
      remedy: say`Check whether the limits are percent passing, not retained.`,
    });
  });
  if (findings.slice(before).some(({ severity }) => severity === "error")) return undefined;
  return { file, title: String(facts.title), source: String(facts.source), points };
}
