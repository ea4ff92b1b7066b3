import { type Finding, finding } from "../findings/finding.js";
import { say } from "../words/message.js";
import { densityFindings, EARTH_DENSITY, MOULD_VOLUME } from "./plausible.js";
import type { SheetGrid } from "./sheet/grid.js";
import {
  allNumbers,
  cellPlace,
  emptyCell,
  METHOD_FACT,
  missingColumn,
  numberRule,
  numbersAmong,
  type SheetLayout,
  type SheetRow,
  type SheetValues,
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
    METHOD_FACT,
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
 */
export function readCompaction(grid: SheetGrid): SheetReading<CompactionRecord> {
  return readRecord(grid, COMPACTION_LAYOUT, (sheet) => {
    const { file, facts, rows } = sheet;
    const reported = numbersAmong(facts, ...TOP);
    const read = rows.map((entry) => pointOf(sheet, entry));
    const record: CompactionRecord = {
      file,
      method: facts.method as string | undefined,
      ...numbersAmong(facts, "mouldVolumeCm3"),
      points: read.flatMap(({ point }) => point ?? []),
      ...(Object.keys(reported).length > 0 ? { reported } : {}),
    };
    const findings = [
      ...topFindings(sheet),
      ...(rows.length > 0 ? readingFindings(sheet, grid) : []),
      ...read.flatMap((each) => each.findings),
    ];
    return { record, findings };
  });
}

/** The reported top: the answer of a sheet without a table, beside points only held against them. */
const TOP = ["optimumWaterPct", "maximumDryDensityKgM3"] as const;

function topFindings({ file, facts, factRows, rows }: SheetValues): Finding[] {
  const keys = TOP.filter((key) => key in factRows);
  if (rows.length > 0) {
    return keys.map((key) =>
      finding({ file, row: factRows[key] }, "note", "unused-fact", {
        message: say`This reported value is not used: the table has the points that it was read from.`,
        expected: say`the line only in a sheet without a table`,
        remedy: say`Nothing to do: the peak is read off the points.`,
      }),
    );
  }
  if (allNumbers(facts, ...TOP)) return [];
  return [
    finding({ file, row: factRows[keys[0]] }, "error", "missing-fact", {
      message: say`A compaction sheet without a table needs both the optimum water content and the maximum dry density.`,
      expected: say`“optimum water content (%)” and “maximum dry density (kg/m3)”, or a table of points`,
      remedy: say`Add the line.`,
    }),
  ];
}

/** A point of the table, as far as its cells can be read. */
function pointOf(
  sheet: SheetValues,
  entry: SheetRow,
): { readonly point?: CompactionPoint; readonly findings: readonly Finding[] } {
  const { row, values } = entry;
  const { waterContentPct, dryDensityKgM3, bulkDensityKgM3 } = values;
  const { mouldVolumeCm3, mouldMassG } = sheet.facts;
  const moistMassG = moistMass(sheet.facts, entry);
  if (moistMassG !== undefined && moistMassG <= 0) {
    const found = finding(cellPlace(sheet, entry, "mouldAndSoilG"), "error", "lighter-than-mould", {
      message: say`The filled mould is not heavier than the empty one.`,
      expected: say`more than the mould mass, ${mouldMassG as number} g`,
      remedy: say`Check the mould mass above the table and this reading.`,
    });
    return { findings: [found] };
  }
  if (typeof waterContentPct !== "number") return { findings: [] };
  const dried = (density: number) => density / (1 + waterContentPct / 100);
  const possible = (key: string, density: number) =>
    densityFindings(cellPlace(sheet, entry, key), density);
  if (moistMassG !== undefined) {
    const point = { waterContentPct, moistMassG, row };
    if (typeof mouldVolumeCm3 !== "number") return { point, findings: [] };
    const key = sheet.headers.mouldAndSoilG ? "mouldAndSoilG" : "moistSoilG";
    return { point, findings: possible(key, dried((1000 * moistMassG) / mouldVolumeCm3)) };
  }
  if (typeof dryDensityKgM3 === "number") {
    return { point: { waterContentPct, dryDensityKgM3, row }, findings: [] };
  }
  if (typeof bulkDensityKgM3 !== "number") return { findings: [] };
  const dry = dried(bulkDensityKgM3);
  return {
    point: { waterContentPct, dryDensityKgM3: dry, row },
    findings: possible("bulkDensityKgM3", dry),
  };
}

/** Of the soil alone: weighed so, or with the mould. */
function moistMass(
  { mouldMassG }: SheetValues["facts"],
  { values: { mouldAndSoilG, moistSoilG } }: SheetRow,
): number | undefined {
  if (typeof moistSoilG === "number") return moistSoilG;
  if (typeof mouldAndSoilG !== "number" || typeof mouldMassG !== "number") return undefined;
  return mouldAndSoilG - mouldMassG;
}

/** Columns that say how dense a point is; the first that is there is read. */
const READINGS = ["mouldAndSoilG", "moistSoilG", "dryDensityKgM3", "bulkDensityKgM3"];

/** Lines that columns of masses need. */
const NEEDED = [
  {
    fact: "mouldVolumeCm3",
    name: "“mould volume (cm3)”",
    columns: ["mouldAndSoilG", "moistSoilG"],
    expected: say`the volume of the mould, or the column “dry density (kg/m3)” in place of masses`,
  },
  {
    fact: "mouldMassG",
    name: "“mould mass (g)”",
    columns: ["mouldAndSoilG"],
    expected: say`the mass of the empty mould, or the column “moist soil (g)” for the soil alone`,
  },
];

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
    const place = { file, value: Object.values(headers).join(", ") };
    const expected = say`“mould + moist soil (g)”, “moist soil (g)” for the soil alone, or “dry density (kg/m3)”`;
    return [missingColumn(place, "mould + moist soil", expected)];
  }
  const needed = NEEDED.filter(({ columns }) => columns.includes(key));
  const missing = needed.filter(({ fact }) => !(fact in factRows));
  // A line that is there and cannot be read was told at its cell; a line of the study has no row here.
  const unfilled = needed.flatMap(({ fact }) => {
    const cells = grid.rows[factRows[fact] - 1];
    return cells && !cells[1] ? [emptyFact(file, factRows[fact], cells[0])] : [];
  });
  const empty = rows.filter(({ written }) => written[key] === "");
  return [
    ...missing.map(({ name, expected }) =>
      finding({ file }, "error", "missing-fact", {
        message: say`The line ${name} above the table is missing.`,
        expected,
        remedy: say`Add the line.`,
      }),
    ),
    ...unfilled,
    ...empty.map((entry) => emptyCell(cellPlace(sheet, entry, key))),
  ];
}
