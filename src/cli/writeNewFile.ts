import { link, rm, writeFile } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { CommandError } from "./commandError.js";
import { EXIT } from "./exitCodes.js";

/** Writes a file whole or not at all, and never over an existing one. */
export async function writeNewFile(path: string, content: string): Promise<void> {
  const draft = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  try {
    await writeFile(draft, content, { flag: "wx" });
    // A link, unlike a rename, fails where the name is taken.
    await link(draft, path);
  } catch (problem) {
    const taken = (problem as NodeJS.ErrnoException).code === "EEXIST";
    throw new CommandError(
      EXIT.output,
      taken
        ? `${path} exists already. Give another name, or remove it first.`
        : `${path} cannot be written: ${(problem as Error).message}`,
    );
  } finally {
    await rm(draft, { force: true });
  }
}
