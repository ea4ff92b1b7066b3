import { type Document, isCollection, isMap, isSeq, parseDocument } from "yaml";
import type { FixedOrRange } from "../blend/target.js";
import { isMarkedInvented } from "../entries/inventedData.js";
import { STUDY_FORMAT } from "../entries/study.js";
import { type Finding, hasErrors, STUDY_FILE } from "../findings/finding.js";
import type { SheetKindName } from "../lab/recogniseSheet.js";
import { readGrid } from "../lab/sheet/grid.js";
import { SHEET_KINDS } from "../lab/sheetKinds.js";
import type { UnitSystem } from "../quantities/format.js";
import {
  type FoundMaterial,
  type FoundSheet,
  KIND_WORDS,
  sheetsAsStudy,
} from "../study/sheetsAsStudy.js";
import { say, type Text } from "../words/message.js";
import type { Locale } from "../words/render.js";
import { slug } from "../words/slug.js";
import type { BenchMix } from "./bench.js";

/** `study.yaml` with the sheets that it names, by their paths inside the study. */
export type StudyFiles = ReadonlyMap<string, Uint8Array>;

const utf8 = new TextEncoder();

/** The entries of a study as a document whose comments stay; a new study where there is none. */
function entriesOf(files: StudyFiles): Document {
  const bytes = files.get(STUDY_FILE);
  if (bytes) return parseDocument(new TextDecoder().decode(bytes));
  return parseDocument(`format: ${STUDY_FORMAT}\nmaterials: []\n`);
}

export function withEntriesText(files: StudyFiles, text: string): StudyFiles {
  return new Map([...files, [STUDY_FILE, utf8.encode(text)]]);
}

function withEntries(files: StudyFiles, entries: Document): StudyFiles {
  return withEntriesText(files, entries.toString({ lineWidth: 0 }));
}

function changed(files: StudyFiles, change: (entries: Document) => void): StudyFiles {
  const entries = entriesOf(files);
  change(entries);
  return withEntries(files, entries);
}

/** Writes an entry; what stands on the way to it and holds none, such as a key without a value, is replaced. */
function put(entries: Document, path: readonly (string | number)[], value: unknown): void {
  for (let depth = 1; depth < path.length; depth += 1) {
    const way = path.slice(0, depth);
    if (entries.hasIn(way) && !isCollection(entries.getIn(way, true))) entries.deleteIn(way);
  }
  entries.setIn(path, value);
}

function drop(entries: Document, path: readonly (string | number)[]): void {
  if (entries.hasIn(path)) entries.deleteIn(path);
}

function putOrDrop(
  entries: Document,
  path: readonly (string | number)[],
  value: string | undefined,
): void {
  if (value === undefined) drop(entries, path);
  else put(entries, path, value);
}

export type Role = "soil" | "sand" | "gravel";

/**
 * The materials that a study names, whether it can be computed or not, with their further entries that are
 * written as one text or number.
 */
export function listedMaterials(files: StudyFiles) {
  const list: unknown = entriesOf(files).toJS()?.materials;
  if (!Array.isArray(list)) return [];
  return list.flatMap((each: unknown) => {
    const { id, name = id, role, ...rest } = (each ?? {}) as Record<string, unknown>;
    if (typeof id !== "string") return [];
    const written = Object.entries(rest).flatMap(([key, value]) =>
      typeof value === "string" || typeof value === "number" ? [[key, String(value)]] : [],
    );
    const known = ROLES.find((one) => one === role) ?? "soil";
    const texts: Readonly<Record<string, string>> = Object.fromEntries(written);
    return [{ id, name: String(name), role: known, written: texts }];
  });
}

export const ROLES: readonly Role[] = ["soil", "sand", "gravel"];

/** Files of a study with a sheet put in its place, or what is wrong with the sheet. */
export interface PlacedSheet {
  /** Absent where the sheet cannot be read. */
  readonly files?: StudyFiles;
  /** What the sheet was taken for, and whose. */
  readonly message?: Text;
  readonly findings: readonly Finding[];
}

/**
 * Takes a sheet into a study: it is known by its columns, as `sheetsAsStudy` knows sheets alone, and written
 * into `study.yaml`. A sheet of a material goes to that of the same name, else, if it is no sieve sheet, to
 * the only soil; else it is a new material.
 *
 * @param name of the file, as the person has it.
 *
 * @example
 * const bytes = new TextEncoder().encode("sample,Pit\ndry mass (g),100\n\nsieve (mm),retained (g)\n2,0\n0.063,60\npan,40\n");
 * const { files, findings } = await placeSheet(new Map(), "pit.csv", bytes);
 * [...files.keys()] // => ["sheets/pit.csv", "study.yaml"]
 * findings.length // => 0
 */
export async function placeSheet(
  files: StudyFiles,
  name: string,
  bytes: Uint8Array,
): Promise<PlacedSheet> {
  const path = freePath(files, name, bytes);
  const { sheets, materials, findings } = await sheetsAsStudy(new Map([[path, bytes]]));
  const [sheet] = sheets;
  if (!sheet) return { findings };
  const { grid } = await readGrid(path, bytes);
  const reading = grid ? SHEET_KINDS[sheet.kind].read(grid).findings : [];
  if (hasErrors(reading)) return { findings: reading };
  const entries = entriesOf(files);
  const message = enter(entries, sheet, materials[0]);
  // One invented sheet makes the study one that nothing is to be built from.
  if (grid?.rows.some(isMarkedInvented)) entries.set("invented", true);
  return { files: withEntries(new Map([...files, [path, bytes]]), entries), message, findings: [] };
}

/** Sheets alone as a study that names them, each taken in as if it were dropped; a study as it is. */
export async function studyOfSheets(files: StudyFiles): Promise<StudyFiles> {
  if (files.has(STUDY_FILE)) return files;
  let study: StudyFiles = new Map();
  for (const [path, bytes] of files) {
    const placed = await placeSheet(study, path.split("/").at(-1)!, bytes);
    study = placed.files ?? study;
  }
  return study;
}

/** A path below `sheets/` that no other file has; the same file twice keeps its path. */
function freePath(files: StudyFiles, name: string, bytes: Uint8Array): string {
  const plain = name
    .normalize("NFKD")
    .replace(/[^\w.-]+/g, "-")
    .replace(/^[-.]+/, "");
  const [, stem, ending] = /^(.*?)(\.[A-Za-z]+)?$/.exec(plain) ?? [];
  for (let count = 1; ; count += 1) {
    const path = `sheets/${stem || "sheet"}${count === 1 ? "" : `-${count}`}${ending ?? ".csv"}`;
    const other = files.get(path);
    if (!other || isSameBytes(other, bytes)) return path;
  }
}

function isSameBytes(one: Uint8Array, other: Uint8Array): boolean {
  return one.length === other.length && one.every((byte, index) => byte === other[index]);
}

/** Writes a sheet into the entries and says where. */
function enter(
  entries: Document,
  { file, kind, material }: FoundSheet,
  found: FoundMaterial | undefined,
): Text {
  const what = KIND_WORDS[kind];
  if (material !== undefined && found) {
    const index = materialFor(entries, kind, found);
    put(entries, ["materials", index, kind], file);
    return say`${file}: taken as ${what} of ${String(entries.getIn(["materials", index, "name"]))}.`;
  }
  const place = { specimens: ["strength", "sheet"], looks: ["tested", "looks"] }[kind as string];
  put(entries, place ?? [kind], file);
  return say`${file}: taken as ${what}.`;
}

/** Place of the material that a sheet belongs to; a new one is written where none fits. */
function materialFor(entries: Document, kind: SheetKindName, found: FoundMaterial): number {
  const list = entries.get("materials");
  const items = isSeq(list) ? list.items : [];
  const known = items.map((item, index) => {
    const value = (key: string) => (isMap(item) ? item.get(key) : undefined);
    return { index, id: String(value("id")), name: String(value("name")), role: value("role") };
  });
  const soils = known.filter(({ role }) => role === "soil");
  const chosen =
    known.find(({ id, name }) => id === found.id || slug(name) === slug(found.name)) ??
    (kind !== "sieve" && soils.length === 1 ? soils[0] : undefined);
  if (chosen) return chosen.index;
  const { id, name, role } = found;
  if (isSeq(list)) entries.addIn(["materials"], entries.createNode({ id, name, role }));
  else entries.set("materials", entries.createNode([{ id, name, role }]));
  return known.length;
}

/** A material with another name, role or other entry; a value that is empty takes the entry away. */
export function editMaterial(
  files: StudyFiles,
  id: string,
  change: Readonly<Record<string, string>>,
): StudyFiles {
  const index = listedMaterials(files).findIndex((material) => material.id === id);
  if (index < 0) return files;
  return changed(files, (entries) => {
    for (const [key, value] of Object.entries(change)) {
      putOrDrop(entries, ["materials", index, key], value.trim() === "" ? undefined : value);
    }
  });
}

/** What stands at an entry of `study.yaml`, as it is written; empty where nothing does. */
export function writtenAt(files: StudyFiles, path: readonly string[]): string {
  const value: unknown = entriesOf(files).getIn(path);
  return typeof value === "string" || typeof value === "number" ? String(value) : "";
}

/** Whether an entry stands in a list, or is one: a study may have several elements or recommendations. */
export function isListed(files: StudyFiles, path: readonly string[]): boolean {
  const entries = entriesOf(files);
  return path.some((_, index) => isSeq(entries.getIn(path.slice(0, index + 1), true)));
}

/** A study with entries as they were typed; an empty one takes the entry away. */
export function withWritten(
  files: StudyFiles,
  written: readonly { readonly path: readonly string[]; readonly value: string }[],
): StudyFiles {
  return changed(files, (entries) => {
    for (const { path, value } of written) putOrDrop(entries, path, value.trim() || undefined);
    // A group that nothing is left of is none.
    for (const { path } of written) {
      const group = entries.getIn(path.slice(0, -1));
      if (path.length > 1 && isMap(group) && group.items.length === 0) {
        drop(entries, path.slice(0, -1));
      }
    }
  });
}

/** A study whose compaction and block sheets are of a blend with these shares. */
export function withTestedShares(
  files: StudyFiles,
  sharesPct: Readonly<Record<string, number>>,
): StudyFiles {
  const shares = Object.entries(sharesPct).map(([id, pct]) => [id, `${pct} %`]);
  return changed(files, (entries) =>
    put(entries, ["tested", "shares"], entries.createNode(Object.fromEntries(shares))),
  );
}

export function entriesText(files: StudyFiles): string {
  return entriesOf(files).toString({ lineWidth: 0 });
}

export function dropMaterial(files: StudyFiles, id: string): StudyFiles {
  const index = listedMaterials(files).findIndex((material) => material.id === id);
  if (index < 0) return files;
  return changed(files, (entries) => drop(entries, ["materials", index]));
}

/**
 * The study with the mix of the bench in its entries, so that the command line computes what the page shows:
 * aim, limits, and under `mix` shares, cement and moisture as they were set by hand.
 */
export function withMix(
  files: StudyFiles,
  mix: BenchMix,
  materialIds: readonly string[],
  reader: { readonly locale: Locale; readonly units: UnitSystem },
): StudyFiles {
  const entries = entriesOf(files);
  entries.set("units", reader.units);
  entries.set("language", reader.locale);
  const { sharesPct, cementPct, moisturePct, target, limits } = mix;
  const pct = (value: number) => `${value} %`;
  const shares = materialIds.map((id, index) => [id, pct(sharesPct[index])]);
  entries.set(
    "mix",
    entries.createNode({
      shares: Object.fromEntries(shares),
      ...(cementPct === undefined ? {} : { cement: pct(cementPct) }),
      ...(moisturePct === undefined ? {} : { moisture: pct(moisturePct) }),
    }),
  );
  entries.delete("mix-from");
  const written = (value: number, unit: string) => (unit === "" ? value : `${value} ${unit}`);
  const range = (value: FixedOrRange, unit: string) =>
    typeof value === "number"
      ? written(value, unit)
      : `${written(value.min, unit)} to ${written(value.max, unit)}`;
  if (target.kind === "power") {
    const { exponent, topSizeMm } = target;
    const aim = { exponent: range(exponent, ""), "top-size": range(topSizeMm, "mm") };
    entries.set("target", entries.createNode(aim));
  }
  for (const kind of WRITTEN_LIMITS) {
    const limit = limits.find((each) => each.kind === kind);
    const { minPct, maxPct } = (limit ?? {}) as { minPct?: number; maxPct?: number };
    const [min, max] = [minPct, maxPct].map((end) => (end === undefined ? undefined : pct(end)));
    if (min === undefined && max === undefined) drop(entries, ["limits", kind]);
    else {
      putOrDrop(entries, ["limits", kind, "min"], min);
      putOrDrop(entries, ["limits", kind, "max"], max);
    }
  }
  return withEntries(files, entries);
}

const WRITTEN_LIMITS = [
  "fines",
  "clay",
  "silt",
  "plasticity-index",
  "linear-shrinkage",
  "site-soil",
] as const;
