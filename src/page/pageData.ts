import type { UnitSystem } from "../quantities/format.js";
import type { Locale } from "../words/render.js";
import type { ClassGroup } from "./classGroups.js";
import type { StudyFiles } from "./studyFiles.js";

/** Files as text: each path with its bytes in base 64. */
type PackedFiles = readonly (readonly [string, string])[];

/** What the command line puts into a page. */
export interface PageData {
  readonly files: PackedFiles;
}

/** What a page stores in the browser, where it is asked to. */
export interface StoredPage {
  readonly files: PackedFiles;
  /** The mix as in a link. */
  readonly link?: string;
  readonly groups: readonly {
    readonly name: string;
    readonly sheets: readonly { readonly file: string; readonly bytes: string }[];
  }[];
  readonly locale: Locale;
  readonly units: UnitSystem;
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

/** The files of a study as the page carries them. */
export function packFiles(files: StudyFiles): PackedFiles {
  return [...files].map(([path, bytes]) => [path, pack(bytes)] as const);
}

/** The files that a page carries. */
export function unpackFiles(files: PackedFiles): StudyFiles {
  return new Map(files.map(([path, text]) => [path, unpack(text)] as const));
}

/** The groups of a class as the browser stores them. */
export function packGroups(groups: readonly ClassGroup[]): StoredPage["groups"] {
  return groups.map(({ name, sheets }) => ({
    name,
    sheets: sheets.map(({ file, bytes }) => ({ file, bytes: pack(bytes) })),
  }));
}

/** The groups of a class that the browser stored. */
export function unpackGroups(groups: StoredPage["groups"]): ClassGroup[] {
  return groups.map(({ name, sheets }) => ({
    name,
    sheets: sheets.map(({ file, bytes }) => ({ file, bytes: unpack(bytes) })),
  }));
}
