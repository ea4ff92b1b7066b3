import { relative, sep } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import type { KernelClient } from "./kernel/client.js";
import { type CellOutput, joinText } from "./notebookFile.js";
import type { CellFailure, CellPlace } from "./notebookRun.js";

async function failedLine(
  kernel: KernelClient,
  source: string,
  stderr: string,
): Promise<number | undefined> {
  const place = stderrPlace(stderr);
  if (place === undefined) return undefined;
  // the compiler sees one line more than the cell has
  if (place.kind === "compile") return Math.min(place.line, source.split("\n").length);
  const emitted = await emittedCode(kernel);
  return emitted === undefined
    ? undefined
    : emittedPlace(source, emitted, place.line, place.column);
}

/**
 * Finds out about a cell that has just failed, while its kernel still lives.
 *
 * @returns the failure, and the cell's outputs with the kernel's words freed of this machine's paths
 */
export async function cellFailure(
  kernel: KernelClient,
  place: CellPlace,
  outputs: readonly CellOutput[],
  cwd: string,
): Promise<{ readonly failure: CellFailure; readonly outputs: readonly CellOutput[] }> {
  const { source } = place;
  const stderr = outputs
    .map((output) =>
      output.output_type === "stream" && output.name === "stderr" ? joinText(output.text) : "",
    )
    .join("");
  const line = await failedLine(kernel, source, stderr);
  const kernelMessage = kernelText(stderr, cwd);
  const where = line === undefined ? {} : { line, codeLine: source.split("\n")[line - 1] };
  const cleaned = outputs.map((output) =>
    output.output_type === "stream" && output.name === "stderr"
      ? { ...output, text: `${kernelText(joinText(output.text), cwd)}\n` }
      : output,
  );
  return { failure: { ...place, ...where, kernelMessage }, outputs: cleaned };
}

/** Where the kernel says that a cell failed. */
type StderrPlace =
  /** Found by the compiler: a line of the cell itself. */
  | { readonly kind: "compile"; readonly line: number }
  /** Thrown while running: a place in the JavaScript that was made of the cell. */
  | { readonly kind: "run"; readonly line: number; readonly column: number };

const COMPILE = /^(\d+):\d+ - /m;
const FRAME = /^\s+at (?:async )?(?:.*\()?(evalmachine\.<anonymous>:(\d+):(\d+)|.*)\)?$/;
const CELL_FILE = "evalmachine.<anonymous>";

/**
 * Reads where a cell failed from what tslab wrote to stderr: a diagnostic `line:column - message`, or
 * a stack. In a stack the frame counts that the executor called, because functions of earlier cells
 * bear the same file name; where the stack does not reach down to the executor nothing is returned.
 *
 * Source: seen in tslab 1.0.22 on Node.js 20.
 */
export function stderrPlace(stderr: string): StderrPlace | undefined {
  const frames = stderr.split("\n").filter((line) => /^\s+at /.test(line));
  if (frames.length === 0) {
    const [, line] = COMPILE.exec(stderr) ?? [];
    return line === undefined ? undefined : { kind: "compile", line: Number(line) };
  }
  const bottom = frames.findIndex((frame) =>
    /node:vm:|tslab[\\/]dist[\\/]executor\.js/.test(frame),
  );
  if (bottom < 0) return undefined;
  const own = frames.slice(0, bottom).filter((frame) => frame.includes(CELL_FILE));
  // `at evalmachine.<anonymous>:9:3` is the call of the function that tslab puts around a cell
  if (/node:vm:/.test(frames[bottom] as string)) own.pop();
  const [, , line, column] = FRAME.exec(own.at(-1) ?? "") ?? [];
  if (line === undefined) return undefined;
  return { kind: "run", line: Number(line), column: Number(column) };
}

/** tslab answers `abort` to everything for 200 ms after an error. */
const AFTER_ERROR_MS = 300;
const PATIENCE_MS = 5000;

/**
 * Run in the kernel after a failure: asks Node's inspector for the script before its own. It declares
 * nothing, so that it cannot collide with the notebook's names.
 */
const QUESTION = `(() => {
  const session = new (require("inspector").Session)();
  session.connect();
  const ids = [];
  session.on("Debugger.scriptParsed", ({ params }) => {
    if (params.url === "evalmachine.<anonymous>") ids.push(params.scriptId);
  });
  session.post("Debugger.enable");
  let text = "";
  session.post("Debugger.getScriptSource", { scriptId: ids.at(-2) ?? "" }, (error, answer) => {
    text = error ? "" : answer.scriptSource;
  });
  session.disconnect();
  process.stdout.write(JSON.stringify(text));
})();`;

/** Asks a kernel for the JavaScript that it made of the cell that has just failed. */
async function emittedCode(kernel: KernelClient): Promise<string | undefined> {
  await wait(AFTER_ERROR_MS);
  const { answer, outputs } = await kernel.execute(QUESTION, PATIENCE_MS);
  const end = await answer;
  if (end.outcome !== "replied" || end.status !== "ok") return undefined;
  const [output] = outputs();
  if (output?.output_type !== "stream" || output.name !== "stdout") return undefined;
  const text: unknown = JSON.parse(joinText(output.text));
  return typeof text === "string" && text !== "" ? text : undefined;
}

/** Text without what the compiler changes, and for each character its place in the original. */
interface Squeezed {
  readonly text: string;
  readonly at: readonly number[];
}

/**
 * What differs between a cell and the JavaScript made of it: white space, semicolons, trailing
 * commas, the names of the module objects, and the store of the last expression.
 */
const CHANGED =
  /\(0, [\w$]+\.([\w$]+)\)|\bexports\.tsLastExpr\d* = |\bexports\.|\b[\w$]+_\d+\.(?:default\b)?|,(?=\s*[)\]}])|[\s;]/g;

function squeeze(code: string): Squeezed {
  const at: number[] = [];
  let text = "";
  let from = 0;
  const keep = (start: number, end: number) => {
    for (let index = start; index < end; index++) {
      text += code[index];
      at.push(index);
    }
  };
  for (const found of code.matchAll(CHANGED)) {
    keep(from, found.index);
    from = found.index + found[0].length;
    // `(0, module_1.name)` stands for `name`
    if (found[1] !== undefined) keep(from - 1 - found[1].length, from - 1);
  }
  keep(from, code.length);
  return { text, at };
}

function occurrences(text: string, part: string): number[] {
  const found: number[] = [];
  for (let at = text.indexOf(part); at >= 0; at = text.indexOf(part, at + 1)) found.push(at);
  return found;
}

const SHORTEST = 4;

/**
 * Finds the line of a cell for a place in the JavaScript that was made of it.
 *
 * tslab makes no source map. The emitted text from that place to the end of its line is looked for in
 * the cell; it counts only where it stands as often in the one as in the other, in the same order.
 * Returns nothing rather than a guess.
 *
 * @param source the cell
 * @param emitted what was made of it
 * @param line of `emitted`, from 1
 * @param column of that line, from 1
 */
export function emittedPlace(
  source: string,
  emitted: string,
  line: number,
  column: number,
): number | undefined {
  const lines = emitted.split("\n");
  const own = lines[line - 1];
  if (own === undefined) return undefined;
  const lineStart = lines.slice(0, line - 1).reduce((sum, { length }) => sum + length + 1, 0);
  const [cell, made] = [squeeze(source), squeeze(emitted)];
  const end = made.at.filter((offset) => offset < lineStart + own.length).length;
  for (const start of [lineStart + column - 1, lineStart]) {
    const first = made.at.findIndex((offset) => offset >= start);
    const part = first < 0 ? "" : made.text.slice(first, end);
    if (part.length < SHORTEST) continue;
    const [there, here] = [occurrences(made.text, part), occurrences(cell.text, part)];
    if (here.length === 0 || here.length !== there.length) continue;
    const offset = cell.at[here[there.indexOf(first)] as number] as number;
    return source.slice(0, offset).split("\n").length;
  }
  return undefined;
}

const PACKAGE_ROOT = fileURLToPath(new URL("../..", import.meta.url));

function shortPath(frame: string, cwd: string): string {
  return frame.replace(/(?<=[ (])(?:file:\/\/)?((?:[A-Za-z]:)?[\\/][^():]*)/, (_, path: string) => {
    const inside = path.lastIndexOf(`node_modules${sep}`);
    if (path.startsWith(PACKAGE_ROOT) && inside < PACKAGE_ROOT.length) {
      return `loambook/${relative(PACKAGE_ROOT, path).split(sep).join("/")}`;
    }
    if (inside >= 0) return path.slice(inside).split(sep).join("/");
    return relative(cwd, path).split(sep).join("/");
  });
}

/**
 * What the kernel wrote about a failure, without what says nothing about the cell: the excerpt and
 * the places of the JavaScript made of it, the frames of Node.js and of the kernel, and the folders
 * of this machine. The message itself stays as it is.
 */
export function kernelText(stderr: string, cwd: string): string {
  return stderr
    .replace(/^evalmachine\.<anonymous>:\d+\n.*\n *\^+\n\n?/gm, "")
    .split("\n")
    .filter(
      (line) =>
        !/^\s+at .*(?:evalmachine\.<anonymous>|\(?node:|tslab[\\/]dist[\\/])/.test(line) &&
        !/^\s+at (?:async )?(?:new )?Promise .*<anonymous>/.test(line),
    )
    .map((line) => (/^\s+at /.test(line) ? shortPath(line, cwd) : line))
    .join("\n")
    .trim();
}
