import { readdir } from "node:fs/promises";

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
export async function folderToFill(
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
