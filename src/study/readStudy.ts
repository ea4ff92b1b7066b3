import { createHash } from "node:crypto";
import { readdir, readFile, realpath, stat } from "node:fs/promises";
import { basename, isAbsolute, join, relative, sep } from "node:path";
import { inventedFindings } from "../entries/inventedData.js";
import { parseStudyYaml, STUDY_FILE } from "../entries/parseStudyYaml.js";
import { type Finding, hasErrors } from "../findings/finding.js";
import {
  readGrid,
  type SheetGrid,
  type SheetMapping,
  type SheetSource,
} from "../lab/sheet/grid.js";
import { mapSheet, ownPlaces } from "../lab/sheet/mapping.js";
import { SHEET_KINDS, type SheetKind } from "../lab/sheetKinds.js";
import { say, type Text } from "../words/message.js";
import { nearestName } from "../words/nearestName.js";
import type { Language, Locale } from "../words/render.js";
import type { InputFile, Study, StudyMaterial } from "./study.js";

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
  let text: Buffer;
  try {
    text = await readFile(join(folder, STUDY_FILE));
  } catch (problem) {
    const finding: Finding = {
      severity: "error",
      code: "missing-study",
      file: STUDY_FILE,
      value: folder,
      message: say`The study file cannot be read (${(problem as NodeJS.ErrnoException).code ?? say`unknown reason`}).`,
      expected: say`a folder that holds ${STUDY_FILE}`,
      remedy: say`Give the study's folder, or create one with “loambook new <folder>”.`,
    };
    return { findings: [finding], locale: options.language ?? "en" };
  }
  const { config, findings, locale } = parseStudyYaml(text.toString("utf8"), options.language);
  if (!config) return { findings, locale };

  const inputs: InputFile[] = [fingerprint(STUDY_FILE, text)];
  const sheets: SheetGrid[] = [];
  const problems: Finding[] = [...findings];
  const open = async <T>(
    source: SheetSource | undefined,
    key: string,
    { read, layouts }: SheetKind<T>,
  ): Promise<T | undefined> => {
    if (source === undefined) return undefined;
    const mapping = typeof source === "string" ? undefined : source;
    const file = typeof source === "string" ? source : source.sheet;
    const opened = await readStudyFile(folder, file, key);
    if ("finding" in opened) {
      problems.push(opened.finding);
      return undefined;
    }
    const { grid, finding } = await readGrid(file, opened.bytes, mapping);
    if (!inputs.some((input) => input.file === file)) inputs.push(fingerprint(file, opened.bytes));
    if (!grid) {
      problems.push(finding);
      return undefined;
    }
    keepForAnnex(sheets, grid, mapping);
    if (!mapping) return read(grid, problems);
    const place = { file: STUDY_FILE, key };
    const found: Finding[] = [];
    const mapped = mapSheet(grid, mapping, layouts(), place, found);
    const record = mapped && read(mapped, found);
    problems.push(...found.map((finding) => ownPlaces(finding, mapping, place, grid)));
    // A reader knows of its own findings only, not of those of the mapping.
    return hasErrors(found) ? undefined : record;
  };

  // One after the other, so that findings and checksums stand in the order of the study.
  const materials: StudyMaterial[] = [];
  for (const [index, material] of config.materials.entries()) {
    const key = `materials.${index}`;
    const sieve = await open(material.sieve, `${key}.sieve`, SHEET_KINDS.sieve);
    const hydrometer = await open(material.hydrometer, `${key}.hydrometer`, SHEET_KINDS.hydrometer);
    const pipette = await open(material.pipette, `${key}.pipette`, SHEET_KINDS.pipette);
    const jar = await open(material.jar, `${key}.jar`, SHEET_KINDS.jar);
    const limits = await open(material.limits, `${key}.limits`, SHEET_KINDS.limits);
    if (sieve) materials.push({ config: material, sieve, hydrometer, pipette, jar, limits });
  }
  const envelope = await open(config.envelope, "envelope", SHEET_KINDS.envelope);
  const compaction = await open(config.compaction, "compaction", SHEET_KINDS.compaction);
  const specimens = await open(config.strength.sheet, "strength.sheet", SHEET_KINDS.specimens);
  const { siteBlocks: site } = config.quality ?? {};
  const siteBlocks = await open(site, "quality.site-blocks", SHEET_KINDS.specimens);

  problems.push(...inventedFindings(text.toString("utf8"), config, sheets));
  if (!specimens || hasErrors(problems)) {
    return { findings: problems, locale };
  }
  return {
    study: { config, materials, envelope, compaction, specimens, siteBlocks, inputs, sheets },
    findings: problems,
    locale,
  };
}

/** Each file once, with every way in which it was read. */
function keepForAnnex(sheets: SheetGrid[], grid: SheetGrid, mapping?: SheetMapping): void {
  const at = sheets.findIndex(({ file }) => file === grid.file);
  const kept = at < 0 ? grid : sheets[at];
  const readAs = [...(kept.readAs ?? []), ...(mapping ? [mapping] : [])];
  sheets[at < 0 ? sheets.length : at] = readAs.length > 0 ? { ...kept, readAs } : kept;
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
    finding: {
      severity: "error" as const,
      code,
      file: STUDY_FILE,
      column: key,
      value: file,
      message,
      expected,
      remedy,
    },
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
  return { bytes: await readFile(target) };
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
const MOST = 500;

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
  const all: string[] = [];
  const look = async (below: string, depth: number): Promise<void> => {
    const entries = await readdir(join(folder, below), { withFileTypes: true });
    entries.sort((a, b) => (a.name < b.name ? -1 : 1));
    for (const entry of entries) {
      if (all.length >= MOST || entry.name.startsWith(".") || entry.name === "node_modules")
        continue;
      const path = below === "" ? entry.name : `${below}/${entry.name}`;
      if (entry.isDirectory() && depth < DEPTH) await look(path, depth + 1);
      else if (entry.isFile() && /\.(csv|xlsx)$/i.test(entry.name)) all.push(path);
    }
  };
  await look("", 0);
  const bare = (path: string) => basename(path).replace(/\.[^.]*$/, "");
  const name = nearestName(bare(missing), all.map(bare));
  const nearest = nearestName(missing, all) ?? all.find((path) => bare(path) === name);
  return { ...(nearest === undefined ? {} : { nearest }), all };
}
