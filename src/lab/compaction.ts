import { type Finding, finding } from "../findings/finding.js";
import { say } from "../words/message.js";
import { densityFindings, MOULD_VOLUME } from "./plausible.js";
import type { SheetGrid } from "./sheet/grid.js";
import {
  cellPlace,
  emptyCell,
  numberRule,
  type SheetLayout,
  type SheetRow,
  type SheetValues,
  textRule,
} from "./sheet/layout.js";
import { readRecord, type SheetReading } from "./sheet/readSheet.js";

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
    textRule("method", "method"),
    numberRule("mouldVolumeCm3", ["mould volume", "mold volume"], "volume", {
      required: true,
      ...MOULD_VOLUME,
    }),
    numberRule("mouldMassG", ["mould mass", "mold mass"], "mass", { positive: true }),
  ],
  columns: [
    numberRule("waterContentPct", "water content", "ratio", { required: true, min: 0, max: 60 }),
    numberRule("mouldAndSoilG", ["mould + moist soil", "mold + moist soil"], "mass", {
      positive: true,
    }),
    numberRule("moistSoilG", "moist soil", "mass", { positive: true }),
  ],
};

/**
 * Reads a compaction sheet: `method`, `mould volume (cm3)` and `mould mass (g)` above a table of
 * `water content (%)` and `mould + moist soil (g)`. In place of the last, and without the mould's mass,
 * the table may have `moist soil (g)`, the mass of the soil alone.
 *
 * @returns the record, where nothing is wrong, and everything found.
 */
export function readCompaction(grid: SheetGrid): SheetReading<CompactionRecord> {
  return readRecord(grid, COMPACTION_LAYOUT, (sheet) => {
    const { file, facts, rows } = sheet;
    const findings = mouldFindings(sheet);
    const points: CompactionPoint[] = [];
    for (const entry of rows) {
      const moistMassG = moistMass(facts, entry);
      const { waterContentPct } = entry.values;
      findings.push(...pointFindings(sheet, entry, moistMassG));
      if (typeof waterContentPct !== "number" || moistMassG === undefined) continue;
      points.push({ waterContentPct, moistMassG, row: entry.row });
    }
    const record = {
      file,
      method: facts.method as string | undefined,
      mouldVolumeCm3: facts.mouldVolumeCm3 as number,
      points,
    };
    return { record, findings };
  });
}

/** A filled mould that is not heavier than the empty one, or a density that no soil has. */
function pointFindings(sheet: SheetValues, entry: SheetRow, moistMassG: number | undefined) {
  const { mouldVolumeCm3, mouldMassG } = sheet.facts;
  if (moistMassG === undefined) return [];
  if (moistMassG <= 0) {
    return [
      finding(cellPlace(sheet, entry, "mouldAndSoilG"), "error", "lighter-than-mould", {
        message: say`The filled mould is not heavier than the empty one.`,
        expected: say`more than the mould mass, ${mouldMassG as number} g`,
        remedy: say`Check the mould mass above the table and this reading.`,
      }),
    ];
  }
  const { waterContentPct } = entry.values;
  if (typeof mouldVolumeCm3 !== "number" || typeof waterContentPct !== "number") return [];
  const key = sheet.headers.mouldAndSoilG ? "mouldAndSoilG" : "moistSoilG";
  const dryDensityKgM3 = (1000 * moistMassG) / mouldVolumeCm3 / (1 + waterContentPct / 100);
  return densityFindings(cellPlace(sheet, entry, key), dryDensityKgM3);
}

/** Of the soil alone: weighed so, or with the mould. */
function moistMass(facts: SheetValues["facts"], { values }: SheetRow): number | undefined {
  const { mouldAndSoilG, moistSoilG } = values;
  if (typeof moistSoilG === "number") return moistSoilG;
  if (typeof mouldAndSoilG !== "number" || typeof facts.mouldMassG !== "number") return undefined;
  return mouldAndSoilG - facts.mouldMassG;
}

/** Whether the moist soil can be had from what the sheet gives: alone, or with a mould of known mass. */
function mouldFindings(sheet: SheetValues): Finding[] {
  const { file, headers, factRows, rows } = sheet;
  const { mouldAndSoilG: withMould, moistSoilG: alone } = headers;
  if (withMould && alone) {
    const found = finding({ file, column: alone }, "error", "mass-twice", {
      message: say`The table has the moist soil with the mould and without it.`,
      expected: say`one of the two, so that they cannot contradict each other`,
      remedy: say`Take one of the columns out.`,
    });
    return [found];
  }
  if (!withMould && !alone) {
    const found = finding(
      { file, value: Object.values(headers).join(", ") },
      "error",
      "wrong-header",
      {
        message: say`The column “${"mould + moist soil"}” is missing.`,
        expected: say`“mould + moist soil (g)”, or “moist soil (g)” for the soil alone`,
        remedy: say`Add the column, or rename the one that holds it.`,
      },
    );
    return [found];
  }
  if (withMould && !("mouldMassG" in factRows)) {
    const found = finding({ file }, "error", "missing-fact", {
      message: say`The line ${"“mould mass (g)”"} above the table is missing.`,
      expected: say`the mass of the empty mould, or the column “moist soil (g)” for the soil alone`,
      remedy: say`Add the line.`,
    });
    return [found];
  }
  const key = withMould ? "mouldAndSoilG" : "moistSoilG";
  const empty = rows.filter(({ written }) => written[key] === "");
  return empty.map((entry) => emptyCell(cellPlace(sheet, entry, key)));
}
