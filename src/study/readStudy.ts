import { createHash } from "node:crypto";
import { readdir, readFile, realpath, stat } from "node:fs/promises";
import { basename, isAbsolute, join, relative, sep } from "node:path";
import { inventedFindings } from "../entries/inventedData.js";
import { parseStudyYaml } from "../entries/parseStudyYaml.js";
import { type NamedSheet, sheetsOf, sheetsOfStudy } from "../entries/sheets.js";
import { trialEntries } from "../entries/trials.js";
import {
  type Finding,
  finding,
  hasErrors,
  limitFindings,
  STUDY_FILE,
} from "../findings/finding.js";
import { readGrid, type SheetGrid } from "../lab/sheet/grid.js";
import { inUsersWords, mapSheet } from "../lab/sheet/mapping.js";
import { SHEET_KINDS, type SheetKind } from "../lab/sheetKinds.js";
import { say, type Text } from "../words/message.js";
import { nearestName } from "../words/nearestName.js";
import type { Language, Locale } from "../words/render.js";
import type {
  InputFile,
  Study,
  StudyMaterial,
  StudyTrial,
  UngradedStudyMaterial,
} from "./study.js";

export interface StudyReading {
  /** Present where no finding is an error. */
  readonly study?: Study;
  readonly findings: readonly Finding[];
  /** What the study is to be said in; `en` where it cannot be read. */
  readonly locale: Locale;
}

/**
 * Reads a study folder: `study.yaml` and every sheet that it names. All problems of all files come
 * back together; a study comes back only where none of them is an error.
 */
export async function readStudy(
  folder: string,
  options: { readonly language?: Language } = {},
): Promise<StudyReading> {
  const opened = await openEntries(folder);
  if ("finding" in opened) {
    return { findings: [opened.finding], locale: options.language ?? "en" };
  }
  const text = opened.bytes;
  const { config, findings, locale } = parseStudyYaml(text.toString("utf8"), options.language);
  if (!config) return { findings, locale };

  // One after the other, so that findings and checksums stand in the order of the study.
  const readings: SheetOpening[] = [];
  for (const named of sheetsOfStudy(config)) readings.push(await openSheet(folder, named));
  const sheets = annexSheets(readings);
  const all = [
    ...findings,
    ...readings.flatMap((reading) => reading.findings),
    ...inventedFindings(text.toString("utf8"), config, sheets),
  ];
  const recordAt = <K extends keyof typeof SHEET_KINDS>(key: string, kind: K) =>
    readings.find((reading) => reading.key === key && reading.kind === kind)?.record as
      | RecordOf<K>
      | undefined;
  if (hasErrors(all)) return { findings: all, locale };
  const materials: StudyMaterial[] = [];
  const ungraded: UngradedStudyMaterial[] = [];
  config.materials.forEach((material, index) => {
    const key = `materials.${index}`;
    const sieve = recordAt(`${key}.sieve`, "sieve");
    const jar = recordAt(`${key}.jar`, "jar");
    const limits = recordAt(`${key}.limits`, "limits");
    if (!sieve) {
      ungraded.push({ config: material, jar, limits });
      return;
    }
    const hydrometer = recordAt(`${key}.hydrometer`, "hydrometer");
    const pipette = recordAt(`${key}.pipette`, "pipette");
    materials.push({ config: material, sieve, hydrometer, pipette, jar, limits });
  });
  const trials = trialEntries(config).map(
    (entry): StudyTrial => ({
      entry,
      compaction: recordAt(entry.sheetKeys.compaction, "compaction"),
      specimens: recordAt(entry.sheetKeys.blocks, "specimens"),
      looks: recordAt(`${entry.key}.looks`, "looks"),
    }),
  );
  return {
    study: {
      config,
      materials,
      ungraded,
      trials,
      envelope: recordAt("envelope", "envelope"),
      siteBlocks: recordAt("quality.site-blocks", "specimens"),
      inputs: inputFiles([
        fingerprint(STUDY_FILE, text),
        ...readings.flatMap(({ input }) => input ?? []),
      ]),
      sheets,
    },
    findings: all,
    locale,
  };
}

/** Entries of a whole house would fill a twentieth of it. */
const MAX_ENTRIES_BYTES = 1024 * 1024;

/** The bytes of `study.yaml`: a file of a size that somebody could have written. */
async function openEntries(
  folder: string,
): Promise<{ readonly bytes: Buffer } | { readonly finding: Finding }> {
  const refuse = (message: Text, expected: Text) => ({
    finding: finding({ file: STUDY_FILE, value: folder }, "error", "missing-study", {
      message,
      expected,
      remedy: say`Give the study's folder, or create one with “loambook new <folder>”.`,
    }),
  });
  const path = join(folder, STUDY_FILE);
  try {
    const entry = await stat(path);
    if (!entry.isFile()) return refuse(say`The study file is no file.`, say`a file of text`);
    if (entry.size > MAX_ENTRIES_BYTES) {
      return refuse(
        say`The study file has ${entry.size} bytes.`,
        say`entries of at most ${MAX_ENTRIES_BYTES} bytes; readings stand in sheets`,
      );
    }
    return { bytes: await readFile(path) };
  } catch (problem) {
    return refuse(
      say`The study file cannot be read (${(problem as NodeJS.ErrnoException).code ?? say`unknown reason`}).`,
      say`a folder that holds ${STUDY_FILE}`,
    );
  }
}

type RecordOf<K extends keyof typeof SHEET_KINDS> = NonNullable<
  ReturnType<(typeof SHEET_KINDS)[K]["read"]>["record"]
>;

/** A sheet as far as it could be opened. */
interface SheetOpening extends NamedSheet {
  readonly findings: readonly Finding[];
  readonly input?: InputFile;
  readonly grid?: SheetGrid;
  /** Absent where the sheet has errors. */
  readonly record?: unknown;
}

/** Opens and reads a sheet; through a mapping its findings are told in the user's own words. */
async function openSheet(folder: string, named: NamedSheet): Promise<SheetOpening> {
  const { key, kind, source } = named;
  const mapping = typeof source === "string" ? undefined : source;
  const [file] = sheetsOf(source);
  const opened = await readStudyFile(folder, file, key);
  if ("finding" in opened) return { ...named, findings: [opened.finding] };
  const input = fingerprint(file, opened.bytes);
  const { grid, findings } = await readGrid(file, opened.bytes, mapping);
  if (!grid) return { ...named, input, findings };
  const { read, layouts }: SheetKind<unknown> = SHEET_KINDS[kind];
  if (!mapping) {
    const { record, findings: found } = read(grid);
    return { ...named, input, grid, findings: limitFindings([...findings, ...found]), record };
  }
  const place = { file: STUDY_FILE, key };
  const mapped = mapSheet(grid, mapping, layouts(), place);
  const reading = mapped.grid ? read(mapped.grid) : { findings: [] };
  const found = [...mapped.findings, ...reading.findings];
  return {
    ...named,
    input,
    grid,
    findings: [
      ...findings,
      ...limitFindings(found).map((one) => inUsersWords(one, mapping, place, grid)),
    ],
    // A reader knows of its own findings only, not of those of the mapping.
    record: hasErrors(found) ? undefined : reading.record,
  };
}

/** Each file once. */
function inputFiles(inputs: readonly InputFile[]): InputFile[] {
  return inputs.filter(
    ({ file }, index) => inputs.findIndex((other) => other.file === file) === index,
  );
}

/** Each sheet once, with every way in which it was read. */
function annexSheets(readings: readonly SheetOpening[]): SheetGrid[] {
  const opened = readings.filter(({ grid }) => grid !== undefined);
  const files = [...new Set(opened.flatMap(({ grid }) => grid?.file ?? []))];
  return files.map((file) => {
    const ofFile = opened.filter(({ grid }) => grid?.file === file);
    const readAs = ofFile.flatMap(({ source }) => (typeof source === "string" ? [] : [source]));
    const grid = ofFile[0].grid as SheetGrid;
    return readAs.length > 0 ? { ...grid, readAs } : grid;
  });
}

function fingerprint(file: string, bytes: Uint8Array): InputFile {
  return { file, sha256: createHash("sha256").update(bytes).digest("hex") };
}

/**
 * Reads a file that `study.yaml` names. Only files inside the study's own folder are opened,
 * also where a link points elsewhere.
 */
async function readStudyFile(
  folder: string,
  file: string,
  key: string,
): Promise<{ bytes: Uint8Array } | { finding: Finding }> {
  const refuse = (code: string, message: Text, expected: Text, remedy: Text) => ({
    finding: finding({ file: STUDY_FILE, column: key, value: file }, "error", code, {
      message,
      expected,
      remedy,
    }),
  });
  const outside = () =>
    refuse(
      "outside-study",
      say`This file lies outside the study folder.`,
      say`a path below the study folder, such as sheets/sand.csv`,
      say`Copy the sheet into the study folder and name it there.`,
    );
  const root = await realpath(folder);
  const path = join(root, file);
  if (isAbsolute(file) || !isBelow(root, path)) return outside();
  let target: string;
  try {
    target = await realpath(path);
  } catch {
    return refuse(
      "missing-sheet",
      say`This file is not there.`,
      say`a file in the study folder`,
      await otherSheet(root, file),
    );
  }
  if (!isBelow(root, target)) return outside();
  if (!(await stat(target)).isFile()) {
    return refuse(
      "missing-sheet",
      say`This is not a file.`,
      say`a CSV or XLSX file`,
      say`Name the sheet itself.`,
    );
  }
  if (!/\.(csv|xlsx)$/i.test(file)) {
    return refuse(
      "unknown-sheet-type",
      say`This kind of file is not read.`,
      say`a file ending in .csv or .xlsx`,
      say`Save the sheet as CSV or as an Excel workbook (.xlsx).`,
    );
  }
  try {
    return { bytes: await readFile(target) };
  } catch (problem) {
    return refuse(
      "missing-sheet",
      say`This file cannot be read (${(problem as NodeJS.ErrnoException).code ?? say`unknown reason`}).`,
      say`a file that you may read`,
      say`Close it in other programs, and look at its permissions.`,
    );
  }
}

/** What to do about a sheet that is not there: the file that was meant is mostly in the folder. */
async function otherSheet(root: string, file: string): Promise<Text> {
  const { nearest, all } = await similarSheets(root, file);
  if (nearest !== undefined) {
    return say`Write ${nearest} if that sheet is meant; otherwise add the sheet. Capital letters count.`;
  }
  if (all.length === 0) return say`Add the sheet; there is none in the study folder yet.`;
  const shown = [...all.slice(0, 8), ...(all.length > 8 ? ["…"] : [])].join(", ");
  return say`Add the sheet, or name one that is there: ${shown}.`;
}

function isBelow(root: string, path: string): boolean {
  const way = relative(root, path);
  return way !== "" && way !== ".." && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}

/** Deep enough for sheets sorted by test or by date, and never a whole disk. */
const DEPTH = 3;
const MAX_FILES = 500;

/**
 * Files of a study folder that may be meant by the name of a sheet that is not there: the one of the most
 * similar name, or else all sheets there are.
 *
 * @param folder the study's; links are not followed.
 * @param missing path as the study names it.
 */
export async function similarSheets(
  folder: string,
  missing: string,
): Promise<{ readonly nearest?: string; readonly all: readonly string[] }> {
  const all = (await sheetsBelow(folder, "", 0)).slice(0, MAX_FILES);
  const bare = (path: string) => basename(path).replace(/\.[^.]*$/, "");
  const name = nearestName(bare(missing), all.map(bare));
  const nearest = nearestName(missing, all) ?? all.find((path) => bare(path) === name);
  return { ...(nearest === undefined ? {} : { nearest }), all };
}

async function sheetsBelow(folder: string, below: string, depth: number): Promise<string[]> {
  const entries = await readdir(join(folder, below), { withFileTypes: true });
  entries.sort((a, b) => (a.name < b.name ? -1 : 1));
  const sheets: string[] = [];
  for (const entry of entries) {
    if (entry.name.startsWith(".") || entry.name === "node_modules") continue;
    if (sheets.length >= MAX_FILES) break;
    const path = below === "" ? entry.name : `${below}/${entry.name}`;
    if (entry.isFile() && /\.(csv|xlsx)$/i.test(entry.name)) sheets.push(path);
    if (entry.isDirectory() && depth < DEPTH) {
      sheets.push(...(await sheetsBelow(folder, path, depth + 1)));
    }
  }
  return sheets;
}
