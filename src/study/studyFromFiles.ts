import { inventedFindings } from "../entries/inventedData.js";
import { parseStudyYaml } from "../entries/parseStudyYaml.js";
import { type NamedSheet, sheetsOf, sheetsOfStudy } from "../entries/sheets.js";
import type { StudyConfig } from "../entries/studyConfig.js";
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
import { inUnits } from "../quantities/format.js";
import { groupBy } from "../strength/groupBy.js";
import { say } from "../words/message.js";
import { nearestName } from "../words/nearestName.js";
import type { Language, Locale } from "../words/render.js";
import { sha256 } from "./sha256.js";
import { sheetsAsStudy } from "./sheetsAsStudy.js";
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
 * Reads a study from files by name: `study.yaml` with every sheet that it names, or sheets alone, each then
 * recognised by its columns (see `sheetsAsStudy`). No file is opened, so that it runs in a browser too. All
 * problems of all files come back together; a study comes back only where none of them is an error.
 *
 * @param files their bytes by their paths inside the study, such as `sheets/sand.csv`.
 *
 * @example
 * const sieve = new TextEncoder().encode("dry mass (g),100\nsieve (mm),retained (g)\n4,0\n2,20\n0.063,50\npan,30\n");
 * const { study } = await studyFromFiles(new Map([["soil-sieve.csv", sieve]]));
 * computeStudy(study).result.materials[0].fractions.finesPct // => 30
 */
export async function studyFromFiles(
  files: ReadonlyMap<string, Uint8Array>,
  options: { readonly language?: Language } = {},
): Promise<StudyReading> {
  const text = files.get(STUDY_FILE);
  const open = async (file: string, key: string): Promise<OpenedFile> => {
    const bytes = files.get(file);
    return bytes ? { bytes } : { finding: missingSheet(file, key, [...files.keys()]) };
  };
  if (text) return readEntries(text, open, options);
  const { text: made, findings } = await sheetsAsStudy(files);
  if (made === undefined) return { findings, locale: options.language ?? "en" };
  const reading = await readEntries(new TextEncoder().encode(made), open, options);
  const all = [...findings, ...reading.findings];
  if (!reading.study) return { ...reading, findings: all };
  // What was made here is no file of the user's.
  const inputs = reading.study.inputs.filter(({ file }) => file !== STUDY_FILE);
  return { ...reading, study: { ...reading.study, inputs }, findings: all };
}

function missingSheet(file: string, key: string, files: readonly string[]): Finding {
  const near = nearestName(file, files);
  return finding({ file: STUDY_FILE, column: key, value: file }, "error", "missing-sheet", {
    message: say`This file is not there.`,
    expected: say`a file of the study`,
    remedy:
      near === undefined
        ? say`Add the sheet.`
        : say`Write ${near} if that sheet is meant; otherwise add the sheet. Capital letters count.`,
  });
}

/** The bytes of a sheet, or why there are none. */
type OpenedFile = { readonly bytes: Uint8Array } | { readonly finding: Finding };

/**
 * Reads a study from the bytes of its `study.yaml`.
 *
 * @param open gives the bytes of a sheet. @param open.key where `study.yaml` names it.
 */
export async function readEntries(
  bytes: Uint8Array,
  open: (file: string, key: string) => Promise<OpenedFile>,
  options: { readonly language?: Language },
): Promise<StudyReading> {
  const text = new TextDecoder().decode(bytes);
  const { config, findings, locale, rowOf } = parseStudyYaml(text, options.language);
  if (!config) return { findings, locale };

  // One after the other, so that findings and checksums stand in the order of the study.
  const readings: SheetOpening[] = [];
  for (const named of sheetsOfStudy(config)) readings.push(await openSheet(open, named));
  const sheets = annexSheets(readings);
  const all = [
    ...readings.flatMap((reading) => reading.findings),
    ...inventedFindings(text, config, sheets, rowOf),
  ];
  const recordAt = <K extends keyof typeof SHEET_KINDS>(key: string, kind: K) =>
    readings.find((reading) => reading.key === key && reading.kind === kind)?.record as
      | RecordOf<K>
      | undefined;
  if (hasErrors(all)) return { findings: inUnits(all, config.units), locale };
  const inputs = [fingerprint(STUDY_FILE, bytes), ...readings.flatMap(({ input }) => input ?? [])];
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
    const hydrometer = withMethod(recordAt(`${key}.hydrometer`, "hydrometer"), config, HYDROMETER);
    const pipette = withMethod(recordAt(`${key}.pipette`, "pipette"), config, PIPETTE);
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
      // Each file once.
      inputs: [...groupBy(inputs, ({ file }) => file).values()].map(([input]) => input),
      sheets,
    },
    findings: all,
    locale,
  };
}

const HYDROMETER = /hydrometer|hidr[oó]metro|dens[ií]metro/i;
const PIPETTE = /pipette|pipeta/i;

/** A record whose sheet names no form of the test has that of the study's `methods`, where one names a standard. */
function withMethod<T extends { readonly method?: string }>(
  record: T | undefined,
  { methods }: StudyConfig,
  test: RegExp,
): T | undefined {
  if (!record || record.method !== undefined) return record;
  const stated = methods.find((one) => test.test(one.test) && /\d{3}/.test(one.standard));
  return stated ? { ...record, method: stated.standard } : record;
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
async function openSheet(
  open: (file: string, key: string) => Promise<OpenedFile>,
  named: NamedSheet,
): Promise<SheetOpening> {
  const { key, kind, source } = named;
  const mapping = typeof source === "string" ? undefined : source;
  const [file] = sheetsOf(source);
  const opened = await open(file, key);
  if ("finding" in opened) return { ...named, findings: [opened.finding] };
  const input = fingerprint(file, opened.bytes);
  const { grid, findings } = await readGrid(file, opened.bytes, mapping);
  if (!grid) return { ...named, input, findings };
  const { read, layouts }: SheetKind<unknown> = SHEET_KINDS[kind];
  const place = { file: STUDY_FILE, key };
  const mapped = mapping ? mapSheet(grid, mapping, layouts(), place) : { grid, findings: [] };
  const reading = mapped.grid ? read(mapped.grid) : { findings: [] };
  const found = limitFindings([...mapped.findings, ...reading.findings]);
  const told = mapping ? found.map((one) => inUsersWords(one, mapping, place, grid)) : found;
  // A reader knows of its own findings only, not of those of the mapping.
  const record = hasErrors(found) ? undefined : reading.record;
  return { ...named, input, grid, findings: [...findings, ...told], record };
}

/** Each sheet once, with every way in which it was read. */
function annexSheets(readings: readonly SheetOpening[]): SheetGrid[] {
  const opened = readings.flatMap(({ grid, source }) => (grid ? [{ grid, source }] : []));
  return [...groupBy(opened, ({ grid }) => grid.file).values()].map((ofFile) => {
    const readAs = ofFile.flatMap(({ source }) => (typeof source === "string" ? [] : [source]));
    const [{ grid }] = ofFile;
    return readAs.length > 0 ? { ...grid, readAs } : grid;
  });
}

function fingerprint(file: string, bytes: Uint8Array): InputFile {
  return { file, sha256: sha256(bytes) };
}
