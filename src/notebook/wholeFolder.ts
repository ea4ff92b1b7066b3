import { mkdir, mkdtemp, readdir, rename, rm, rmdir, writeFile } from "node:fs/promises";
import { basename, dirname, join } from "node:path";

async function entries(folder: string): Promise<string[]> {
  try {
    return await readdir(folder);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return [];
    throw error;
  }
}

/**
 * What stands in a folder that is to be written into; empty for a new one.
 *
 * @throws RangeError when the folder holds something and it may not be replaced
 */
export async function filesAlreadyIn(
  outFolder: string,
  replace: boolean | undefined,
): Promise<ReadonlySet<string>> {
  const present = new Set(await entries(outFolder));
  if (present.size > 0 && replace !== true) {
    throw new RangeError(
      `invalid \`outFolder\`: ${outFolder}; expected an empty or new folder, or \`replace\``,
    );
  }
  return present;
}

/** Puts each new file in the place of the old one; on failure the old ones go back. */
async function swap(
  fresh: string,
  old: string,
  folder: string,
  files: readonly string[],
  present: ReadonlySet<string>,
): Promise<void> {
  await mkdir(old);
  const done: string[] = [];
  try {
    for (const name of files) {
      if (present.has(name)) await rename(join(folder, name), join(old, name));
      done.push(name);
      await rename(join(fresh, name), join(folder, name));
    }
  } catch (error) {
    for (const name of done) {
      if (present.has(name)) await rename(join(old, name), join(folder, name));
      else await rm(join(folder, name), { force: true });
    }
    throw error;
  }
}

/**
 * Writes files into a folder whole or not at all: all are written beside it before anything there is
 * touched; files of the same name are exchanged, others are left alone.
 *
 * @param present what `filesAlreadyIn` found there
 */
export async function writeFilesWhole(
  outFolder: string,
  contents: Readonly<Record<string, string | Uint8Array>>,
  present: ReadonlySet<string>,
): Promise<void> {
  const files = Object.keys(contents);

  const parent = dirname(outFolder);
  await mkdir(parent, { recursive: true });
  const work = await mkdtemp(join(parent, `.${basename(outFolder)}-`));
  try {
    const fresh = join(work, "new");
    await mkdir(fresh);
    for (const file of files) await writeFile(join(fresh, file), contents[file]);
    if (present.size > 0) await swap(fresh, join(work, "old"), outFolder, files, present);
    else {
      // an empty folder gives way; a folder filled meanwhile makes this fail, and stays
      await mkdir(outFolder, { recursive: true });
      await rmdir(outFolder);
      await rename(fresh, outFolder);
    }
  } finally {
    await rm(work, { recursive: true, force: true });
  }
}
