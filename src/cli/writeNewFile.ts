import { link, rm, writeFile } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { outputProblem } from "./outputProblem.js";

/**
 * Makes a file whole or not at all, and never over an existing one.
 *
 * @param content the text, or a function that fills the draft whose path it is given.
 */
export async function writeNewFile(
  path: string,
  content: string | ((draft: string) => Promise<void>),
): Promise<void> {
  const draft = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  try {
    if (typeof content === "string") await writeFile(draft, content, { flag: "wx" });
    else await content(draft);
    // A link, unlike a rename, fails where the name is taken.
    await link(draft, path);
  } catch (problem) {
    throw outputProblem(path, problem);
  } finally {
    await rm(draft, { force: true });
  }
}
