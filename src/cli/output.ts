import { existsSync, lstatSync, readdirSync, rmSync, statSync } from "node:fs";
import { link, mkdir, rename, rm, rmdir, writeFile } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import type { Finding } from "../findings/finding.js";
import { formatFindings } from "../findings/format.js";
import { onSignal } from "../notebook/onSignal.js";
import type { Locale } from "../words/render.js";
import { type Call, CommandError, EXIT } from "./call.js";

/**
 * The folder that `--out` names, else `<kind>-<place>`; with `--replace` one that an earlier run filled.
 *
 * @throws CommandError as `freshFolder`
 */
export function outFolder(call: Call, kind: string, place = basename(resolve(call.place))): string {
  return freshFolder(call.text("out"), resolve(`${kind}-${place}`), call.flag("replace"));
}

/**
 * The folder to write to. Nothing of the user's is written over without being asked: a named folder
 * must be new or empty unless `replace` is set, and a default one gets a number where it is taken.
 *
 * @throws CommandError where the named folder holds something, or is a file.
 */
export function freshFolder(wanted: string | undefined, byDefault = "", replace = false): string {
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

/**
 * The file that `--out` names; undefined where it names none.
 *
 * @throws CommandError where it is there already.
 */
export function newFile(call: Call): string | undefined {
  const out = call.text("out");
  if (out === undefined || !existsSync(out)) return out;
  throw new CommandError(EXIT.output, `${out} exists already. Give another name.`);
}

/**
 * Makes a folder whole or not at all, and never over one that holds something.
 *
 * @param fill fills the draft whose path it is given.
 */
export async function writeNewFolder<T>(
  folder: string,
  fill: (draft: string) => Promise<T>,
): Promise<T> {
  const draft = join(dirname(folder), `.${basename(folder)}.${process.pid}.part`);
  try {
    await mkdir(draft, { recursive: true });
    const made = await fill(draft);
    // An empty folder gives way; a folder filled meanwhile makes this fail, and stays.
    await mkdir(folder, { recursive: true });
    await rmdir(folder);
    await rename(draft, folder);
    return made;
  } catch (problem) {
    throw outputProblem(folder, problem);
  } finally {
    await rm(draft, { recursive: true, force: true });
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
const CODES = new Set(
  "EACCES EEXIST EISDIR ENOENT ENOSPC ENOTDIR ENOTEMPTY EPERM EROFS".split(" "),
);

export async function writtenAt<T>(place: string, writing: Promise<T>): Promise<T> {
  return writing.catch((problem: unknown) => {
    throw outputProblem(place, problem);
  });
}

/** Findings for the screen, before what follows them; empty where there are none. */
export function findingsFirst(findings: readonly Finding[], locale?: Locale): string {
  return findings.length > 0 ? `${formatFindings(findings, locale)}\n\n` : "";
}

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

/** One line on the terminal that says what is going on; nothing where the output is a pipe or a file. */
export function progressLine() {
  const write = (text: string) => {
    if (process.stderr.isTTY) process.stderr.write(`\r\u001b[2K${text}`);
  };
  return { show: (text: string) => write(`${text} …`), clear: () => write("") };
}
