import { readdirSync, readFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";

export const SOURCE_ROOT = fileURLToPath(new URL("../../src/", import.meta.url));

export interface SourceFile {
  /** Path below `src`, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

/** Every TypeScript file below `src`. */
export function sourceFiles(): SourceFile[] {
  return readdirSync(SOURCE_ROOT, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(".ts"))
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => ({
      path: relative(SOURCE_ROOT, path).split(sep).join("/"),
      text: readFileSync(path, "utf8"),
    }))
    .sort((a, b) => (a.path < b.path ? -1 : 1));
}
