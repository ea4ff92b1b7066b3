import { readdir, readFile, realpath, stat } from "node:fs/promises";
import { basename, join } from "node:path";
import { type Finding, finding, STUDY_FILE } from "../findings/finding.js";
import { MAX_SHEET_BYTES } from "../lab/sheet/grid.js";
import { say, type Text } from "../words/message.js";
import { nearestName } from "../words/nearestName.js";
import type { Language } from "../words/render.js";
import { fileOfFolder, isBelow } from "./folder.js";
import { readPhotographs, seenTrials } from "./photographs.js";
import { readEntries, type StudyReading, studyFromFiles } from "./studyFromFiles.js";

/**
 * Reads a study folder: `study.yaml` and every sheet that it names. All problems of all files come
 * back together; a study comes back only where none of them is an error.
 *
 * A folder without `study.yaml`, or sheets themselves, are read as `studyFromFiles` reads sheets alone.
 *
 * @param place a folder, or the paths of sheets.
 */
export async function readStudy(
  place: string | readonly string[],
  options: { readonly language?: Language } = {},
): Promise<StudyReading> {
  const places = typeof place === "string" ? [place] : place;
  const [first] = places;
  if (places.length > 1 || isSheet(first)) return readSheets(places, options);
  const opened = await openEntries(first);
  if ("bytes" in opened) {
    const open = (file: string, key: string) => readStudyFile(first, file, key);
    const reading = await readEntries(opened.bytes, open, options);
    if (!reading.study) return reading;
    const { findings } = await readPhotographs(first, seenTrials(reading.study.trials));
    return { ...reading, findings: [...reading.findings, ...findings] };
  }
  const sheets = opened.absent ? await loneSheets(first) : [];
  if (sheets.length === 0) {
    const told = opened.absent ? await nothingToRead(first) : opened.finding;
    return { findings: [told], locale: options.language ?? "en" };
  }
  return readSheets(
    sheets.map((sheet) => join(first, sheet)),
    options,
    sheets,
  );
}

const isSheet = (file: string) => /\.(csv|xlsx)$/i.test(file);
/** The first names of many. */
const someOf = (names: readonly string[]) =>
  [...names.slice(0, 8), ...(names.length > 8 ? ["…"] : [])].join(", ");

/** The sheets of a folder without entries: its own, or those of its folder `sheets`; none beside other YAML files, or of no folder. */
export async function loneSheets(folder: string): Promise<string[]> {
  const names = await readdir(folder).catch(() => []);
  if (names.some((name) => /\.ya?ml$/i.test(name))) return [];
  const sheetsOf = (all: readonly string[]) =>
    all.filter((name) => isSheet(name) && !name.startsWith(".")).sort();
  const own = sheetsOf(names);
  if (own.length > 0) return own;
  const below = await readdir(join(folder, "sheets")).catch(() => []);
  return sheetsOf(below).map((name) => `sheets/${name}`);
}

/** What a place is where neither entries nor sheets were found, and what to give in its stead. */
async function nothingToRead(place: string): Promise<Finding> {
  const told = (message: Text, expected: Text, remedy: Text) =>
    finding({ file: place }, "error", "missing-study", { message, expected, remedy });
  const study = say`a folder that holds ${STUDY_FILE}, or sheets alone (.csv, .xlsx)`;
  const entry = await stat(place).catch(() => undefined);
  if (!entry) {
    const remedy = say`Correct the path, or start a study with “loambook new <folder>”. Capital letters count.`;
    return told(say`There is nothing of this name.`, study, remedy);
  }
  if (!entry.isDirectory()) {
    return told(
      say`This kind of file is not read.`,
      study,
      say`Save the readings as CSV or as an Excel workbook (.xlsx). What a PDF or a photograph shows has to be typed in: “loambook new <folder>” writes sheets to fill in.`,
    );
  }
  const all = (await readdir(place)).filter((name) => !name.startsWith(".")).sort();
  return told(
    all.length === 0
      ? say`This folder is empty.`
      : say`This folder holds no ${STUDY_FILE} and no sheet, but: ${someOf(all)}.`,
    study,
    say`Put a sieve sheet or a jar sheet into it as CSV or Excel workbook (.xlsx), or start a study with “loambook new <folder>”.`,
  );
}

/** Reads sheets alone, named as they lie below a folder, or by their own names. */
async function readSheets(
  paths: readonly string[],
  options: { readonly language?: Language },
  names: readonly string[] = paths.map((path) => basename(path)),
): Promise<StudyReading> {
  const files = new Map<string, Uint8Array>();
  const findings: Finding[] = [];
  for (const [index, path] of paths.entries()) {
    // Two of one name in two folders stay apart.
    const name = files.has(names[index]) ? path : names[index];
    const bytes = await readSheetFile(path);
    if (bytes instanceof Uint8Array) {
      files.set(name, bytes);
      continue;
    }
    findings.push(
      finding({ file: path }, "error", "missing-sheet", {
        message: bytes,
        expected: say`a file ending in .csv or .xlsx`,
        remedy: say`Correct the path. Capital letters count.`,
      }),
    );
  }
  if (findings.length > 0) return { findings, locale: options.language ?? "en" };
  return studyFromFiles(files, options);
}

/** The bytes of a sheet; a pipe or a device would be waited for, a disk image fill the memory. */
async function readSheetFile(path: string): Promise<Uint8Array | Text> {
  try {
    const entry = await stat(path);
    if (!entry.isFile()) return say`This is not a file.`;
    if (entry.size > MAX_SHEET_BYTES) return say`The file has ${entry.size} bytes.`;
    return await readFile(path);
  } catch (problem) {
    return unreadable(problem);
  }
}

/** Entries of a whole house would fill a twentieth of it. */
const MAX_ENTRIES_BYTES = 1024 * 1024;

/** The bytes of `study.yaml`: a file of a size that somebody could have written. */
async function openEntries(
  folder: string,
): Promise<{ readonly bytes: Buffer } | { readonly finding: Finding; readonly absent?: boolean }> {
  const refuse = (message: Text, expected: Text, absent = false) => ({
    absent,
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
    if (!isBelow(await realpath(folder), await realpath(path))) {
      return refuse(
        say`The study file is a link that leads out of the study folder.`,
        say`a file in the folder itself`,
      );
    }
    if (entry.size > MAX_ENTRIES_BYTES) {
      return refuse(
        say`The study file has ${entry.size} bytes.`,
        say`entries of at most ${MAX_ENTRIES_BYTES} bytes; readings stand in sheets`,
      );
    }
    return { bytes: await readFile(path) };
  } catch (problem) {
    const { code } = problem as NodeJS.ErrnoException;
    return refuse(
      say`The study file cannot be read (${code ?? say`unknown reason`}).`,
      say`a file that you may read`,
      code === "ENOENT" || code === "ENOTDIR",
    );
  }
}

/** Reads a file that `study.yaml` names. */
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
  const found = await fileOfFolder(folder, file);
  if ("problem" in found) {
    const { problem, message } = found;
    if (problem === "outside") {
      const expected = say`a path below the study folder, such as sheets/sand.csv`;
      const remedy = say`Copy the sheet into the study folder and name it there.`;
      return refuse("outside-study", message, expected, remedy);
    }
    return problem === "absent"
      ? refuse(
          "missing-sheet",
          message,
          say`a file in the study folder`,
          await otherSheet(folder, file),
        )
      : refuse("missing-sheet", message, say`a CSV or XLSX file`, say`Name the sheet itself.`);
  }
  if (!isSheet(file)) {
    return refuse(
      "unknown-sheet-type",
      say`This kind of file is not read.`,
      say`a file ending in .csv or .xlsx`,
      say`Save the sheet as CSV or as an Excel workbook (.xlsx).`,
    );
  }
  if (found.size > MAX_SHEET_BYTES) {
    return refuse(
      "sheet-too-large",
      say`The file has ${found.size} bytes.`,
      say`a lab sheet of at most ${MAX_SHEET_BYTES} bytes`,
      say`Keep one test per file, without pictures.`,
    );
  }
  try {
    return { bytes: await readFile(found.path) };
  } catch (problem) {
    return refuse(
      "missing-sheet",
      unreadable(problem),
      say`a file that you may read`,
      say`Close it in other programs, and look at its permissions.`,
    );
  }
}

function unreadable(problem: unknown): Text {
  const { code } = problem as NodeJS.ErrnoException;
  return say`This file cannot be read (${code ?? say`unknown reason`}).`;
}

/** What to do about a sheet that is not there: the file that was meant is mostly in the folder. */
async function otherSheet(root: string, file: string): Promise<Text> {
  const { nearest, all } = await similarSheets(root, file);
  if (nearest !== undefined) {
    return say`Write ${nearest} if that sheet is meant; otherwise add the sheet. Capital letters count.`;
  }
  if (all.length === 0) return say`Add the sheet; there is none in the study folder yet.`;
  return say`Add the sheet, or name one that is there: ${someOf(all)}.`;
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
  return { nearest, all };
}

async function sheetsBelow(folder: string, below: string, depth: number): Promise<string[]> {
  const entries = await readdir(join(folder, below), { withFileTypes: true });
  entries.sort((a, b) => (a.name < b.name ? -1 : 1));
  const sheets: string[] = [];
  for (const entry of entries) {
    if (entry.name.startsWith(".") || entry.name === "node_modules") continue;
    if (sheets.length >= MAX_FILES) break;
    const path = below === "" ? entry.name : `${below}/${entry.name}`;
    if (entry.isFile() && isSheet(entry.name)) sheets.push(path);
    if (entry.isDirectory() && depth < DEPTH) {
      sheets.push(...(await sheetsBelow(folder, path, depth + 1)));
    }
  }
  return sheets;
}
