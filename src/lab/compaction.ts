import type { Finding } from "../findings/finding.js";
import { say } from "../words/message.js";
import type { SheetGrid } from "./sheet/grid.js";
import type { SheetLayout } from "./sheet/layout.js";
import { readSheet } from "./sheet/readSheet.js";

/** A compaction test: one point a row. */
export interface CompactionRecord {
  readonly file: string;
  /** The test as the lab names it, in its own words (effort, standard, edition). */
  readonly method?: string;
  readonly mouldVolumeCm3: number;
  readonly points: readonly CompactionPoint[];
}

export interface CompactionPoint {
  readonly waterContentPct: number;
  /** Mass of the moist soil in the mould. */
  readonly moistMassG: number;
  readonly row: number;
}

/** What a compaction sheet may hold. */
export const COMPACTION_LAYOUT: SheetLayout = {
  title: say`compaction sheet`,
  facts: [
    { key: "method", names: ["method"], kind: "text" },
    {
      key: "mouldVolumeCm3",
      names: ["mould volume", "mold volume"],
      kind: "number",
      dimension: "volume",
      required: true,
      positive: true,
    },
    {
      key: "mouldMassG",
      names: ["mould mass", "mold mass"],
      kind: "number",
      dimension: "mass",
      required: true,
      positive: true,
    },
  ],
  columns: [
    {
      key: "waterContentPct",
      names: ["water content"],
      kind: "number",
      dimension: "ratio",
      required: true,
      min: 0,
      max: 60,
    },
    {
      key: "mouldAndSoilG",
      names: ["mould + moist soil", "mold + moist soil"],
      kind: "number",
      dimension: "mass",
      required: true,
      positive: true,
    },
  ],
};

/**
 * Reads a compaction sheet: `method`, `mould volume (cm3)` and `mould mass (g)` above a table of
 * `water content (%)` and `mould + moist soil (g)`.
 *
 * @returns the record, or `undefined` where the sheet holds too little to make one.
 */
export function readCompaction(grid: SheetGrid, findings: Finding[]): CompactionRecord | undefined {
  const before = findings.length;
  const sheet = readSheet(grid, COMPACTION_LAYOUT, findings);
  if (!sheet) return undefined;
  const { file, facts } = sheet;
  const mouldMassG = facts.mouldMassG as number;
  const points: CompactionPoint[] = [];
  for (const { row, values, written } of sheet.rows) {
    const { waterContentPct, mouldAndSoilG } = values;
    if (typeof waterContentPct !== "number" || typeof mouldAndSoilG !== "number") continue;
    const moistMassG = mouldAndSoilG - mouldMassG;
    if (moistMassG <= 0) {
      findings.push({
        severity: "error",
        code: "lighter-than-mould",
        file,
        row,
        column: sheet.headers.mouldAndSoilG,
        value: written.mouldAndSoilG,
        message: say`The filled mould is not heavier than the empty one.`,
        expected: say`more than the mould mass, ${mouldMassG} g`,
        remedy: say`Check the mould mass above the table and this reading.`,
      });
    }
    points.push({ waterContentPct, moistMassG, row });
  }
  if (findings.slice(before).some(({ severity }) => severity === "error")) return undefined;
  return {
    file,
    method: facts.method as string | undefined,
    mouldVolumeCm3: facts.mouldVolumeCm3 as number,
    points,
  };
}
