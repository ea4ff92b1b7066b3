import { existsSync, lstatSync, readdirSync, rmSync, statSync } from "node:fs";
import { link, rm, writeFile } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { onSignal } from "../notebook/onSignal.js";
import { CommandError, EXIT } from "./call.js";

/**
 * The folder to write to. Nothing of the user's is written over without being asked: a named folder
 * must be new or empty unless `replace` is set, and a default one gets a number where it is taken.
 *
 * @throws CommandError where the named folder holds something, or is a file.
 */
export function freshFolder(choice: {
  readonly wanted: string | undefined;
  readonly byDefault: string;
  readonly replace: boolean;
}): string {
  const { wanted, byDefault, replace } = choice;
  const first = wanted === undefined ? byDefault : resolve(wanted);
  if (!existsSync(first) && isLink(first)) {
    throw new CommandError(EXIT.output, `${first} is a link that leads nowhere.`);
  }
  if (existsSync(first) && !statSync(first).isDirectory()) {
    throw new CommandError(EXIT.output, `${first} is a file, not a folder.`);
  }
  if (replace || isFree(first)) return first;
  if (wanted !== undefined) {
    throw new CommandError(
      EXIT.output,
      `${first} is not empty. Give another folder, or --replace to write over what an earlier run made.`,
    );
  }
  let number = 2;
  while (!isFree(`${byDefault}-${number}`)) number += 1;
  return `${byDefault}-${number}`;
}

function isLink(path: string): boolean {
  try {
    return lstatSync(path).isSymbolicLink();
  } catch {
    // Nothing is there: whether it can be made shows when it is written.
    return false;
  }
}

function isFree(folder: string): boolean {
  return (
    !existsSync(folder) || (statSync(folder).isDirectory() && readdirSync(folder).length === 0)
  );
}

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
  const done = onSignal(() => rmSync(draft, { force: true }));
  try {
    if (typeof content === "string") await writeFile(draft, content, { flag: "wx" });
    else await content(draft);
    // A link, unlike a rename, fails where the name is taken.
    await link(draft, path);
  } catch (problem) {
    throw outputProblem(path, problem);
  } finally {
    await rm(draft, { force: true });
    done();
  }
}

/** Prints a text, or writes it into a new file where one is named. */
export async function printOrWrite(out: string | undefined, text: string): Promise<void> {
  if (out === undefined) {
    process.stdout.write(text);
    return;
  }
  await writeNewFile(out, text);
  process.stdout.write(`Written: ${out}\n`);
}

/** What the file system says where a place cannot be written to: the user's to mend, no fault of ours. */
const CODES = new Set([
  "EACCES",
  "EEXIST",
  "EISDIR",
  "ENOENT",
  "ENOSPC",
  "ENOTDIR",
  "ENOTEMPTY",
  "EPERM",
  "EROFS",
]);

/** Turns a failed write into a message about its place; anything else comes back as it was. */
export function outputProblem(place: string, problem: unknown): unknown {
  const { code, message } = problem as NodeJS.ErrnoException;
  if (!(problem instanceof Error) || code === undefined || !CODES.has(code)) return problem;
  return new CommandError(
    EXIT.output,
    code === "EEXIST" || code === "ENOTEMPTY"
      ? `${place} exists already. Give another name, or remove it first.`
      : `${place} cannot be written: ${message}`,
  );
}

interface ProgressLine {
  show(text: string): void;
  clear(): void;
}

/** One line on the terminal that says what is going on; nothing where the output is a pipe or a file. */
export function progressLine(): ProgressLine {
  const { stderr } = process;
  if (!stderr.isTTY) return { show: () => {}, clear: () => {} };
  return {
    show: (text) => stderr.write(`\r\u001b[2K${text} …`),
    clear: () => stderr.write("\r\u001b[2K"),
  };
}
