import { readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { mkdir, mkdtemp } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { utils, write } from "@e965/xlsx";
import { parse, stringify } from "yaml";
import { readGrid } from "../../src/lab/sheet/grid.js";
import { EXAMPLES } from "../support/studyCopy.js";

/** Rows of text cells. */
export type Grid = readonly (readonly string[])[];

/** A whole study in memory, as far as it can still be told apart into entries and sheets. */
export interface FuzzStudy {
  /** What stands in `study.yaml`. */
  readonly entries: Readonly<Record<string, unknown>>;
  /** Sheets as grids, by file. */
  readonly sheets: Readonly<Record<string, Grid>>;
}

/** Files by name, ready to be written. */
export type Files = Readonly<Record<string, string | Uint8Array>>;

export const BASES = ["small", "reported", "class-day", "reading-room", "bus-shelter"] as const;
export type Base = (typeof BASES)[number];

/** The example studies, and a small one that is computed fast; workbooks as grids like the other sheets. */
export async function readBases(): Promise<Readonly<Record<Base, FuzzStudy>>> {
  const [classDay, readingRoom, busShelter] = await Promise.all(
    ["class-day", "reading-room", "bus-shelter"].map(readExample),
  );
  const small = smaller(classDay);
  return {
    small,
    reported: reported(small),
    "class-day": classDay,
    "reading-room": readingRoom,
    "bus-shelter": busShelter,
  };
}

async function readExample(name: string): Promise<FuzzStudy> {
  const folder = join(EXAMPLES, name);
  const sheets: Record<string, Grid> = {};
  for (const file of readdirSync(join(folder, "sheets"))) {
    const { grid } = await readGrid(file, readFileSync(join(folder, "sheets", file)));
    sheets[`sheets/${file.replace(/\.xlsx$/, ".csv")}`] = grid?.rows ?? [];
  }
  const text = readFileSync(join(folder, "study.yaml"), "utf8").replaceAll(".xlsx", ".csv");
  return { entries: parse(text, { schema: "core" }), sheets };
}

/** Two materials, without a sedimentation test and without the jar. */
function smaller({ entries, sheets }: FuzzStudy): FuzzStudy {
  const materials = entries.materials as readonly Readonly<Record<string, unknown>>[];
  const [{ hydrometer, jar, variability: _, ...soil }, , gravel] = materials;
  const unused = new Set([hydrometer, jar, materials[1].sieve]);
  return {
    entries: {
      ...entries,
      materials: [soil, gravel],
      tested: {
        ...(entries.tested as object),
        shares: { "class-soil": "72 %", gravel: "28 %" },
      },
    },
    sheets: Object.fromEntries(Object.entries(sheets).filter(([file]) => !unused.has(file))),
  };
}

/** The small study as a laboratory reports it that gives results in place of readings. */
function reported({ entries, sheets }: FuzzStudy): FuzzStudy {
  const [soil, ...others] = entries.materials as readonly Readonly<Record<string, unknown>>[];
  const limits = "sheets/class-soil-limits.csv";
  return {
    entries: { ...entries, materials: [{ ...soil, limits }, ...others] },
    sheets: {
      ...sheets,
      [String(soil.sieve)]: [
        ["# as reported"],
        ["size (mm)", "passing (%)"],
        ["16", "100"],
        ["8", "91.5"],
        ["4", "81.4"],
        ["2", "70.5"],
        ["0.6", "52.4"],
        ["0.2", "38.5"],
        ["0.063", "27.5"],
      ],
      [String(entries.compaction)]: [
        ["optimum water content (%)", "10.5"],
        ["maximum dry density (kg/m3)", "1985"],
      ],
      [limits]: [
        ["liquid limit (%)", "31.5"],
        ["plasticity index (%)", "12.5"],
        ["linear shrinkage (%)", "5.5"],
      ],
    },
  };
}

/** As CSV; cells that need it stand in quotes. */
export function csvOf(grid: Grid, mark = ",", end = "\n", quoted = false): string {
  const cell = (text: string) =>
    quoted || /["\n\r]/.test(text) || text.includes(mark)
      ? `"${text.replaceAll('"', '""')}"`
      : text;
  return grid.map((row) => row.map(cell).join(mark) + end).join("");
}

/** As a workbook, numbers as numbers. */
export function workbookOf(grid: Grid): Uint8Array {
  const number = /^-?\d+(\.\d+)?$/;
  const asValue = (cell: string) => (number.test(cell) ? Number(cell) : cell);
  const cells = grid.map((row) => row.map((cell) => (cell === "" ? null : asValue(cell))));
  const book = utils.book_new();
  utils.book_append_sheet(book, utils.aoa_to_sheet(cells), "readings");
  return new Uint8Array(write(book, { type: "array", bookType: "xlsx" }));
}

/** As a person would write it. */
export function filesOf({ entries, sheets }: FuzzStudy): Files {
  return {
    "study.yaml": stringify(entries),
    ...Object.fromEntries(Object.entries(sheets).map(([file, grid]) => [file, csvOf(grid)])),
  };
}

/** Writes a study into a folder of its own, and removes that afterwards. */
export async function inFolder<T>(files: Files, use: (folder: string) => Promise<T>): Promise<T> {
  const folder = await mkdtemp(join(tmpdir(), "loambook-fuzz-"));
  try {
    for (const [file, content] of Object.entries(files)) {
      const path = join(folder, file);
      await mkdir(dirname(path), { recursive: true });
      writeFileSync(path, content);
    }
    return await use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
