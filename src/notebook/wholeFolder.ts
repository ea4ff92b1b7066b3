import { existsSync, mkdirSync, readdirSync, realpathSync, renameSync, rmSync } from "node:fs";
import { link, mkdir, mkdtemp, readdir, rename, rm, writeFile } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { onSignal } from "./onSignal.js";

async function entries(folder: string): Promise<string[]> {
  try {
    return await readdir(folder);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return [];
    throw error;
  }
}

/**
 * What stands in a folder that is to be written into; empty for a new one. What a run that was killed had set
 * aside is put back first.
 *
 * @throws RangeError when the folder holds something and it may not be replaced
 */
export async function filesAlreadyIn(
  outFolder: string,
  replace: boolean | undefined,
): Promise<ReadonlySet<string>> {
  await putBackOfKilledRuns(placeOf(outFolder));
  const present = new Set(await entries(outFolder));
  if (present.size > 0 && replace !== true) {
    throw new RangeError(
      `invalid \`outFolder\`: ${outFolder}; expected an empty or new folder, or \`replace\``,
    );
  }
  return present;
}

/** Where a folder really lies: what is exchanged has to lie on its own disk, and a link is followed. */
function placeOf(folder: string): string {
  return existsSync(folder) ? realpathSync(folder) : resolve(folder);
}

/** Folders that a run works in beside the one it writes: named after that and after the run's process. */
function workPrefix(outFolder: string): string {
  return `.${basename(outFolder)}-`;
}

async function putBackOfKilledRuns(outFolder: string): Promise<void> {
  const prefix = workPrefix(outFolder);
  for (const name of await entries(dirname(outFolder))) {
    if (!name.startsWith(prefix)) continue;
    const [, pid] = /^(\d+)-\w{6}$/.exec(name.slice(prefix.length)) ?? [];
    if (pid !== undefined && !isRunning(Number(pid))) {
      putBack(join(dirname(outFolder), name), outFolder);
    }
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // Another user's process may not be asked, and runs.
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
}

/** Old files go back to their places, and the folder in which a run worked is removed. */
function putBack(work: string, outFolder: string): void {
  const old = join(work, "old");
  const aside = existsSync(old) ? readdirSync(old) : [];
  for (const name of aside) renameSync(join(old, name), join(outFolder, name));
  rmSync(work, { recursive: true, force: true });
}

/** Puts each new file in the place of the old one; on failure the old ones go back. */
async function swap(
  fresh: string,
  old: string,
  folder: string,
  files: readonly string[],
  present: ReadonlySet<string>,
): Promise<void> {
  mkdirSync(old);
  const added: string[] = [];
  try {
    for (const name of files) {
      if (present.has(name)) await rename(join(folder, name), join(old, name));
      if (present.has(name)) await rename(join(fresh, name), join(folder, name));
      else {
        // A link, unlike a rename, fails where another run was faster.
        await link(join(fresh, name), join(folder, name));
        added.push(name);
      }
    }
  } catch (error) {
    for (const name of added) await rm(join(folder, name), { force: true });
    throw error;
  }
  // From here on the new files stand.
  await rm(old, { recursive: true, force: true });
}

/**
 * Writes files into a folder whole or not at all: all are written beside it before anything there is
 * touched; files of the same name are exchanged, others are left alone. Where a signal ends the run, the old
 * files are put back; where it is killed, by the next run into that folder.
 *
 * @param present what `filesAlreadyIn` found there
 * @returns the paths of the files
 */
export async function writeFilesWhole(
  outFolder: string,
  contents: Readonly<Record<string, string | Uint8Array>>,
  present: ReadonlySet<string>,
): Promise<string[]> {
  const files = Object.keys(contents);
  const isNew = !existsSync(outFolder);
  const folder = placeOf(outFolder);
  await mkdir(dirname(folder), { recursive: true });
  const work = await mkdtemp(join(dirname(folder), `${workPrefix(folder)}${process.pid}-`));
  const done = onSignal(() => putBack(work, folder));
  try {
    const fresh = join(work, "new");
    await mkdir(fresh);
    for (const file of files) await writeFile(join(fresh, file), contents[file]);
    if (isNew) await rename(fresh, folder);
    else await swap(fresh, join(work, "old"), folder, files, present);
  } finally {
    putBack(work, folder);
    done();
  }
  return files.map((file) => join(resolve(outFolder), file));
}
