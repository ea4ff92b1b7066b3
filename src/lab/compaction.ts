import { type Finding, finding } from "../findings/finding.js";
import { say } from "../words/message.js";
import { densityFindings, EARTH_DENSITY, MOULD_VOLUME } from "./plausible.js";
import type { SheetGrid } from "./sheet/grid.js";
import {
  type CellValue,
  cellPlace,
  emptyCell,
  numberRule,
  type SheetLayout,
  type SheetRow,
  type SheetValues,
  textRule,
} from "./sheet/layout.js";
import { emptyFact, readRecord, type SheetReading } from "./sheet/readSheet.js";

/** A compaction test: one point a row. */
export interface CompactionRecord {
  readonly file: string;
  /** The test as the lab names it, in its own words (effort, standard, edition). */
  readonly method?: string;
  /** Absent where the sheet gives densities. */
  readonly mouldVolumeCm3?: number;
  /** Empty where the laboratory reports the top alone. */
  readonly points: readonly CompactionPoint[];
  /** The top as the laboratory reports it: whole where there are no points, else to be held against them. */
  readonly reported?: {
    readonly optimumWaterPct?: number;
    readonly maximumDryDensityKgM3?: number;
  };
}

/** A point has the mass in the mould, or the dry density that the laboratory made of it. */
export interface CompactionPoint {
  readonly waterContentPct: number;
  /** Mass of the moist soil in the mould. */
  readonly moistMassG?: number;
  readonly dryDensityKgM3?: number;
  readonly row: number;
}

const OPTIMUM = [
  "optimum water content",
  "optimum moisture content",
  "optimum moisture",
  "optimum water",
  "omc",
];

/** What a compaction sheet may hold. */
export const COMPACTION_LAYOUT: SheetLayout = {
  title: say`compaction sheet`,
  facts: [
    textRule("method", "method"),
    numberRule("mouldVolumeCm3", ["mould volume", "mold volume"], "volume", MOULD_VOLUME),
    numberRule("mouldMassG", ["mould mass", "mold mass"], "mass", {
      positive: true,
      balance: "mould",
    }),
    // Water contents are in percent of the dry mass, also where nobody says so.
    numberRule("optimumWaterPct", OPTIMUM, "ratio", { min: 1, max: 60, unitless: OPTIMUM }),
    numberRule(
      "maximumDryDensityKgM3",
      ["maximum dry density", "max dry density", "mdd", "maximum dry unit weight"],
      "density",
      EARTH_DENSITY,
    ),
  ],
  columns: [
    numberRule("waterContentPct", ["water content", "moisture content"], "ratio", {
      required: true,
      min: 0,
      max: 60,
    }),
    numberRule(
      "mouldAndSoilG",
      ["mould + moist soil", "mold + moist soil", "mould + wet soil", "mold + wet soil"],
      "mass",
      { positive: true, balance: "mould" },
    ),
    numberRule("moistSoilG", ["moist soil", "wet soil", "moist mass", "wet mass"], "mass", {
      positive: true,
    }),
    numberRule("dryDensityKgM3", ["dry density", "dry unit weight"], "density", EARTH_DENSITY),
    numberRule("bulkDensityKgM3", ["wet density", "moist density", "bulk density"], "density", {
      min: EARTH_DENSITY.min,
      max: 1.3 * EARTH_DENSITY.max,
    }),
  ],
  tableOptional: true,
};

/**
 * Reads a compaction sheet: `method`, `mould volume (cm3)` and `mould mass (g)` above a table of
 * `water content (%)` and `mould + moist soil (g)`. In place of the last, and without the mould's mass,
 * the table may have `moist soil (g)`, the mass of the soil alone, or without any mould `dry density (kg/m3)`
 * or `wet density (kg/m3)`. Where the laboratory reports the top alone, the lines
 * `optimum water content (%)` and `maximum dry density (kg/m3)` stand without a table.
 *
 * @returns the record, where nothing is wrong, and everything found.
 */
export function readCompaction(grid: SheetGrid): SheetReading<CompactionRecord> {
  return readRecord(grid, COMPACTION_LAYOUT, (sheet) => {
    const { file, facts, rows } = sheet;
    const { mouldVolumeCm3 } = facts;
    const top = reportedTop(sheet);
    const findings = [...top.findings, ...(rows.length > 0 ? readingFindings(sheet, grid) : [])];
    const points: CompactionPoint[] = [];
    for (const entry of rows) {
      const read = pointOf(sheet, entry);
      findings.push(...read.findings);
      if (read.point) points.push(read.point);
    }
    const record: CompactionRecord = {
      file,
      method: facts.method as string | undefined,
      ...(typeof mouldVolumeCm3 === "number" ? { mouldVolumeCm3 } : {}),
      points,
      ...(top.reported ? { reported: top.reported } : {}),
    };
    return { record, findings };
  });
}

/** The reported top: the answer of a sheet without a table, beside points only held against them. */
function reportedTop({ file, facts, factRows, rows }: SheetValues): {
  readonly reported?: CompactionRecord["reported"];
  readonly findings: readonly Finding[];
} {
  const keys = ["optimumWaterPct", "maximumDryDensityKgM3"].filter((key) => key in factRows);
  const { optimumWaterPct, maximumDryDensityKgM3 } = facts;
  const reported = {
    ...(typeof optimumWaterPct === "number" ? { optimumWaterPct } : {}),
    ...(typeof maximumDryDensityKgM3 === "number" ? { maximumDryDensityKgM3 } : {}),
  };
  if (rows.length > 0) {
    return {
      ...(keys.length > 0 ? { reported } : {}),
      findings: keys.map((key) =>
        finding({ file, row: factRows[key] }, "note", "unused-fact", {
          message: say`This reported value is not used: the table has the points that it was read from.`,
          expected: say`the line only in a sheet without a table`,
          remedy: say`Nothing to do: the peak is read off the points.`,
        }),
      ),
    };
  }
  if (Object.keys(reported).length < 2) {
    const found = finding({ file, row: factRows[keys[0]] }, "error", "missing-fact", {
      message: say`A compaction sheet without a table needs both the optimum water content and the maximum dry density.`,
      expected: say`“optimum water content (%)” and “maximum dry density (kg/m3)”, or a table of points`,
      remedy: say`Add the line.`,
    });
    return { findings: [found] };
  }
  return { reported, findings: [] };
}

/** A point of the table, as far as its cells can be read. */
function pointOf(
  sheet: SheetValues,
  entry: SheetRow,
): { readonly point?: CompactionPoint; readonly findings: readonly Finding[] } {
  const { waterContentPct, dryDensityKgM3, bulkDensityKgM3 } = entry.values;
  const moistMassG = moistMass(sheet.facts, entry);
  if (moistMassG !== undefined) {
    const findings = pointFindings(sheet, entry, moistMassG);
    if (typeof waterContentPct !== "number") return { findings };
    return { point: { waterContentPct, moistMassG, row: entry.row }, findings };
  }
  if (typeof waterContentPct !== "number") return { findings: [] };
  const dry = dryDensityKgM3 ?? drained(bulkDensityKgM3, waterContentPct);
  if (typeof dry !== "number") return { findings: [] };
  const findings =
    dryDensityKgM3 === undefined
      ? densityFindings(cellPlace(sheet, entry, "bulkDensityKgM3"), dry)
      : [];
  return { point: { waterContentPct, dryDensityKgM3: dry, row: entry.row }, findings };
}

/** Dry density from the moist one and its water content. */
function drained(bulkDensity: CellValue, waterContentPct: number): number | undefined {
  return typeof bulkDensity === "number" ? bulkDensity / (1 + waterContentPct / 100) : undefined;
}

/** A filled mould that is not heavier than the empty one, or a density that no soil has. */
function pointFindings(sheet: SheetValues, entry: SheetRow, moistMassG: number): Finding[] {
  const { mouldVolumeCm3, mouldMassG } = sheet.facts;
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

/** Columns that say how dense a point is; the first that is there is read. */
const READINGS = ["mouldAndSoilG", "moistSoilG", "dryDensityKgM3", "bulkDensityKgM3"] as const;

/** Lines that a column of masses needs. */
const NEEDED: Readonly<Record<string, readonly (readonly [key: string, name: string])[]>> = {
  mouldAndSoilG: [
    ["mouldVolumeCm3", "“mould volume (cm3)”"],
    ["mouldMassG", "“mould mass (g)”"],
  ],
  moistSoilG: [["mouldVolumeCm3", "“mould volume (cm3)”"]],
};

/** Whether each point's density can be had from what the sheet gives. */
function readingFindings(sheet: SheetValues, grid: SheetGrid): Finding[] {
  const { file, headers, factRows, rows } = sheet;
  const [key, second] = READINGS.filter((each) => headers[each]);
  if (key === "mouldAndSoilG" && second === "moistSoilG") {
    const found = finding({ file, column: headers[second] }, "error", "mass-twice", {
      message: say`The table has the moist soil with the mould and without it.`,
      expected: say`one of the two, so that they cannot contradict each other`,
      remedy: say`Take one of the columns out.`,
    });
    return [found];
  }
  if (key === undefined) {
    const value = Object.values(headers).join(", ");
    const found = finding({ file, value }, "error", "wrong-header", {
      message: say`The column “${"mould + moist soil"}” is missing.`,
      expected: say`“mould + moist soil (g)”, “moist soil (g)” for the soil alone, or “dry density (kg/m3)”`,
      remedy: say`Add the column, or rename the one that holds it.`,
    });
    return [found];
  }
  const lacking = (NEEDED[key] ?? []).filter(([fact]) => !(fact in factRows));
  const missing = lacking.map(([, name]) =>
    finding({ file }, "error", "missing-fact", {
      message: say`The line ${name} above the table is missing.`,
      expected:
        name === "“mould mass (g)”"
          ? say`the mass of the empty mould, or the column “moist soil (g)” for the soil alone`
          : say`the volume of the mould, or the column “dry density (kg/m3)” in place of masses`,
      remedy: say`Add the line.`,
    }),
  );
  // A line that is there and cannot be read was told at its cell.
  const unfilled = (NEEDED[key] ?? [])
    .map(([fact]) => factRows[fact])
    .filter((row) => row !== undefined && !grid.rows[row - 1]?.[1]);
  const empty = rows.filter(({ written }) => written[key] === "");
  return [
    ...missing,
    ...unfilled.map((row) => emptyFact(file, row, grid.rows[row - 1]?.[0])),
    ...empty.map((entry) => emptyCell(cellPlace(sheet, entry, key))),
  ];
}
