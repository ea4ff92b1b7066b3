import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { onTestFinished } from "vitest";

export const EXAMPLES = fileURLToPath(new URL("../../data-examples/", import.meta.url));

export interface StudyCopy {
  readonly folder: string;
  /** Replaces the only occurrence of a text in a file; fails where it is missing or not alone. */
  edit(file: string, from: string | RegExp, to: string): void;
  write(file: string, content: string | Uint8Array): void;
  remove(file: string): void;
  /** Row of the line that holds a text, from 1. */
  rowOf(file: string, text: string): number;
}

type FileBytes = readonly (readonly [file: string, bytes: Uint8Array])[];

const read = new Map<string, FileBytes>();

/** The files of an example, read once for hundreds of copies. */
function filesOf(name: string): FileBytes {
  const folder = join(EXAMPLES, name);
  const files =
    read.get(name) ??
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .map((path) => [relative(folder, path), readFileSync(path)] as const);
  read.set(name, files);
  return files;
}

/** A throw-away copy of an example study, deleted when the test ends, or `atEnd`. */
export function copyStudy(
  name: "reading-room" | "bus-shelter" | "two-blends",
  atEnd: (remove: () => void) => void = onTestFinished,
): StudyCopy {
  const parent = mkdtempSync(join(tmpdir(), "loambook-test-"));
  const folder = join(parent, name);
  for (const [file, bytes] of filesOf(name)) {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    writeFileSync(join(folder, file), bytes);
  }
  atEnd(() => rmSync(parent, { recursive: true, force: true }));
  const path = (file: string) => join(folder, file);
  return {
    folder,
    edit(file, from, to) {
      const before = readFileSync(path(file), "utf8");
      const after = before.replace(from, () => to);
      if (after === before) throw new Error(`${file} does not hold ${from}`);
      writeFileSync(path(file), after);
    },
    write: (file, content) => writeFileSync(path(file), content),
    remove: (file) => rmSync(path(file)),
    rowOf(file, text) {
      const index = readFileSync(path(file), "utf8")
        .split("\n")
        .findIndex((line) => line.includes(text));
      if (index < 0) throw new Error(`${file} does not hold ${text}`);
      return index + 1;
    },
  };
}
