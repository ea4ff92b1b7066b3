import type { UnitSystem } from "../quantities/format.js";
import type { Locale } from "../words/render.js";
import type { GroupSheets } from "./classGroups.js";
import { type BenchTrace, isTrace } from "./link.js";
import type { StudyFiles } from "./studyFiles.js";

/** Files as text: each path with its bytes in base 64. */
type PackedFiles = readonly (readonly [string, string])[];

/** What the command line puts into a page. */
export interface PageData {
  readonly files: PackedFiles;
}

export const VIEW_NAMES = ["mix", "sheets", "class", "keep"] as const;
export type ViewName = (typeof VIEW_NAMES)[number];

const LIGHTS = ["auto", "light", "dark"] as const;
export type Light = (typeof LIGHTS)[number];

/** How a reader has set the page, with the steps of the bench: all that a reload keeps beside the address. */
export interface PageSession {
  readonly locale: Locale;
  readonly units: UnitSystem;
  readonly light: Light;
  readonly view: ViewName;
  /** Absent while there is nothing to blend. */
  readonly trace?: BenchTrace;
}

/** What a page stores in the browser, where it is asked to. */
export interface StoredPage extends PageSession {
  readonly files: PackedFiles;
  /** The mix as in a link. */
  readonly link?: string;
  readonly groups: readonly {
    readonly name: string;
    readonly sheets: readonly { readonly file: string; readonly bytes: string }[];
  }[];
}

function pack(bytes: Uint8Array): string {
  let text = "";
  // A long list of arguments would overflow the stack.
  for (let at = 0; at < bytes.length; at += 4096) {
    text += String.fromCharCode(...bytes.subarray(at, at + 4096));
  }
  return btoa(text);
}

function unpack(text: string): Uint8Array {
  return Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
}

export function packFiles(files: StudyFiles): PackedFiles {
  return [...files].map(([path, bytes]) => [path, pack(bytes)] as const);
}

export function unpackFiles(files: PackedFiles): StudyFiles {
  return new Map(files.map(([path, text]) => [path, unpack(text)] as const));
}

export function packGroups(groups: readonly GroupSheets[]): StoredPage["groups"] {
  return groups.map(({ name, sheets }) => ({
    name,
    sheets: sheets.map(({ file, bytes }) => ({ file, bytes: pack(bytes) })),
  }));
}

export function unpackGroups(groups: StoredPage["groups"]): GroupSheets[] {
  return groups.map(({ name, sheets }) => ({
    name,
    sheets: sheets.map(({ file, bytes }) => ({ file, bytes: unpack(bytes) })),
  }));
}

/** What was stored, where it is a page of ours; undefined where somebody or something changed it. */
export function storedPage(value: unknown): StoredPage | undefined {
  const { files, link, groups } = (value ?? {}) as Record<string, unknown>;
  const sound =
    pageSession(value) &&
    Array.isArray(files) &&
    files.every(isPackedFile) &&
    (link === undefined || typeof link === "string") &&
    Array.isArray(groups) &&
    groups.every(isGroup);
  return sound ? (value as StoredPage) : undefined;
}

/** How the page was set, where it is a page of ours; undefined where somebody or something changed it. */
export function pageSession(value: unknown): PageSession | undefined {
  const { locale, units, light, view, trace } = (value ?? {}) as Record<string, unknown>;
  const sound =
    /^(en|es)(-[A-Z]{2})?$/.test(String(locale)) &&
    (units === "SI" || units === "US") &&
    LIGHTS.some((each) => each === light) &&
    VIEW_NAMES.some((each) => each === view) &&
    (trace === undefined || isTrace(trace));
  return sound ? (value as PageSession) : undefined;
}

/** Base 64, as `btoa` writes it. */
function isPackedText(value: unknown): value is string {
  return typeof value === "string" && /^[A-Za-z0-9+/]*={0,2}$/.test(value);
}

/** A name with packed bytes, and nothing else. */
function isPackedFile(value: unknown): boolean {
  if (!Array.isArray(value) || value.length !== 2) return false;
  return typeof value[0] === "string" && isPackedText(value[1]);
}

function isGroup(value: unknown): boolean {
  const { name, sheets } = (value ?? {}) as Record<string, unknown>;
  if (typeof name !== "string" || !Array.isArray(sheets)) return false;
  return sheets.every((sheet) => {
    const { file, bytes } = (sheet ?? {}) as Record<string, unknown>;
    return isPackedFile([file, bytes]);
  });
}
