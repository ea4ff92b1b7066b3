import { isAbsolute, relative, sep } from "node:path";

/** Whether a path lies below a folder. */
export function isBelow(root: string, path: string): boolean {
  const way = relative(root, path);
  return way !== "" && way !== ".." && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}
