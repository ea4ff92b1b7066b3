import { realpath, stat } from "node:fs/promises";
import { isAbsolute, join, relative, sep } from "node:path";
import { say, type Text } from "../words/message.js";

/** Whether a path lies below a folder. */
export function isBelow(root: string, path: string): boolean {
  const way = relative(root, path);
  return way !== "" && way !== ".." && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}

const PROBLEMS = {
  outside: say`This file lies outside the study folder.`,
  absent: say`This file is not there.`,
  "no file": say`This is not a file.`,
} as const;

/** A file of a study folder with its size in bytes, or why there is none. */
type FolderFile =
  | { readonly path: string; readonly size: number }
  | { readonly problem: keyof typeof PROBLEMS; readonly message: Text };

/** Looks for a file that a study names: only inside its folder, also where a link points elsewhere. */
export async function fileOfFolder(folder: string, file: string): Promise<FolderFile> {
  const refuse = (problem: keyof typeof PROBLEMS) => ({ problem, message: PROBLEMS[problem] });
  const root = await realpath(folder);
  if (isAbsolute(file) || !isBelow(root, join(root, file))) return refuse("outside");
  const path = await realpath(join(root, file)).catch(() => undefined);
  if (path === undefined) return refuse("absent");
  if (!isBelow(root, path)) return refuse("outside");
  const entry = await stat(path);
  return entry.isFile() ? { path, size: entry.size } : refuse("no file");
}
