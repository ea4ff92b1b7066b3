import { existsSync } from "node:fs";
import { dirname, relative, resolve } from "node:path";
import { notebookText } from "../notebook/notebookFile.js";
import { formatFailure, type NotebookRun } from "../notebook/notebookRun.js";
import { ParameterError } from "../notebook/parameters.js";
import { runNotebook, type Timeouts } from "../notebook/runNotebook.js";
import { parseNumber } from "../quantities/parseQuantity.js";
import { type Call, CommandError, EXIT, misuse, parseCall } from "./call.js";
import { newFile, progressLine, writeNewFile } from "./output.js";

export const TIMEOUT_OPTIONS = ["start-seconds", "cell-seconds", "total-seconds"] as const;

const OPTIONS = { texts: ["study", "out", ...TIMEOUT_OPTIONS], lists: ["set"] };

/**
 * Reads the time-outs of a call.
 *
 * @throws CommandError for what is no number of seconds.
 */
export function timeoutsOf(call: Call): Timeouts {
  const [startSeconds, cellSeconds, totalSeconds] = TIMEOUT_OPTIONS.map((option) => {
    const text = call.text(option);
    if (text === undefined) return undefined;
    const number = parseNumber(text);
    if ("value" in number && number.value > 0) return number.value;
    throw misuse(`--${option} takes a number of seconds, not “${text}”.`);
  });
  return { startSeconds, cellSeconds, totalSeconds };
}

/** `loambook run`: a notebook from top to bottom, without a window. */
export async function runCommand(words: readonly string[]): Promise<number> {
  const call = parseCall("run", words, OPTIONS, 1);
  const notebookPath = resolve(call.place);
  if (!existsSync(notebookPath)) {
    throw new CommandError(EXIT.badInput, `There is no notebook ${notebookPath}.`);
  }
  const out = newFile(call);
  const study = call.text("study");
  const parameters = {
    ...(study === undefined ? {} : { studyFolder: studyParameter(notebookPath, study) }),
    ...Object.fromEntries(call.list("set").map(parseSetting)),
  };
  const progress = progressLine();
  const run = await runNotebook({
    notebookPath,
    parameters,
    timeouts: timeoutsOf(call),
    onProgress: ({ cell, cells }) =>
      progress.show(cell === 0 ? "starting the kernel" : `cell ${cell} of ${cells}`),
  }).catch((problem: unknown) => {
    // Names that the notebook does not know, or a file that is no notebook: the user's to mend.
    if (problem instanceof ParameterError || problem instanceof TypeError) {
      throw new CommandError(EXIT.badInput, problem.message);
    }
    throw problem;
  });
  progress.clear();
  if (run.status !== "done") throw runError(run);
  if (out === undefined) process.stdout.write("Every cell ran.\n");
  else {
    await writeNewFile(out, notebookText(run.notebook));
    process.stdout.write(`Every cell ran. The executed notebook: ${out}\n`);
  }
  return EXIT.ok;
}

/** The study's folder as the notebook sees it: relative to its own folder, so that no path of this machine stays in it. */
export function studyParameter(notebookPath: string, study: string): string {
  return relative(dirname(notebookPath), resolve(study)).split("\\").join("/") || ".";
}

/** Turns a run that did not finish into the message and exit code of its kind. */
export function runError(run: Exclude<NotebookRun, { status: "done" }>): CommandError {
  const code = {
    "cell-failed": EXIT.failedCell,
    "kernel-died": EXIT.kernelDied,
    "timed-out": EXIT.timeOut,
  }[run.status];
  return new CommandError(code, formatFailure(run));
}

function parseSetting(text: string): [string, string | number | boolean] {
  const [, name, value] = /^([A-Za-z_$][\w$]*)=(.*)$/s.exec(text) ?? [];
  if (name === undefined) throw misuse(`--set takes <name>=<value>, not “${text}”.`);
  if (value === "true" || value === "false") return [name, value === "true"];
  // Quotes make a text of what would be read as a number.
  const quoted = /^"(.*)"$/s.exec(value);
  if (quoted) return [name, quoted[1]];
  const number = parseNumber(value);
  return [name, "value" in number ? number.value : value];
}
