import { readdir } from "node:fs/promises";
import { basename, join } from "node:path";
import { nearestName } from "./nearestName.js";

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
