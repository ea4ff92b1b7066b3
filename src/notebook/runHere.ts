import { Console } from "node:console";
import { dirname, resolve } from "node:path";
import { Writable } from "node:stream";
import { Script } from "node:vm";
import { Worker } from "node:worker_threads";
import type { Locale } from "../words/render.js";
import { type CellError, cellFile, type RanCell, thrownError } from "./kernel/cellTrace.js";
import type { MimeBundle } from "./mimeBundle.js";
import {
  addWords,
  type CellOutput,
  executedNotebook,
  type NotebookFile,
  openNotebook,
  tagsOf,
} from "./notebookFile.js";
import { type CellPlace, cellFailure, cellPlaces, type NotebookRun } from "./notebookRun.js";
import { injectParameters } from "./parameters.js";
import { ALLOWED_TAG, checkTimeouts, limitMet, type RunNotebookOptions } from "./runNotebook.js";
import { type Send, type Show, showTo } from "./show.js";

export interface RunHereOptions extends Omit<RunNotebookOptions, "signal"> {
  /**
   * What a cell gets of a module that it imports.
   *
   * @param show makes the `show` of this run in a language
   */
  readonly lend: (name: string, showIn: (locale: Locale) => Show) => Promise<object>;
}

/**
 * Runs a notebook like `runNotebook`, in this process: no kernel is started and nothing is loaded a second
 * time, which takes a fraction of the time. The outputs are the same.
 *
 * The cells must be JavaScript but for their imports; no cell may be allowed to fail, and what the last
 * expression of a cell is worth is not shown. The working folder is this process's own.
 *
 * @returns undefined where the cells are more than that: then a kernel has to run them
 * @throws as `runNotebook`
 */
export async function runNotebookHere(options: RunHereOptions): Promise<NotebookRun | undefined> {
  const { onProgress = () => {}, lend } = options;
  const limits = checkTimeouts(options.timeouts);
  const path = resolve(options.notebookPath);
  const given = await openNotebook(path);
  const notebook = injectParameters(given, options.parameters ?? {});
  if (notebook.cells.some((cell) => tagsOf(cell).includes(ALLOWED_TAG))) return undefined;
  const places = cellPlaces(notebook, given);
  const script = scriptOf(places);
  if (script === undefined) return undefined;

  const outputs: CellOutput[][] = [];
  const watch = watchThread();
  /** What the running cell has begun to show. */
  let started: Promise<void>[] = [];
  const send: Send = ({ data, metadata }: MimeBundle) => {
    outputs.at(-1)?.push({ output_type: "display_data", data, metadata });
  };
  const showIn = (locale: Locale): Show => {
    const inner = showTo(locale, () => send);
    return (value) => {
      const shown = inner(value);
      started.push(shown);
      return shown;
    };
  };
  let late = () => {};
  const limited = new Promise<"late">((resolve) => {
    late = () => resolve("late");
  });
  let timer: NodeJS.Timeout | undefined;
  const begun = performance.now();
  let cellMs = 0;
  const beginCell = async (): Promise<void> => {
    // also what a cell forgot to wait for belongs to it, and so does its error
    await Promise.all(started);
    started = [];
    clearTimeout(timer);
    if (outputs.length === places.length) return;
    outputs.push([]);
    onProgress({ cell: outputs.length, cells: places.length, phase: "running" });
    const left = limits.totalSeconds * 1000 - (performance.now() - begun);
    cellMs = Math.max(1, Math.min(limits.cellSeconds * 1000, left));
    timer = setTimeout(late, cellMs);
    watch.begin(cellMs);
  };
  const executed = (): NotebookFile => executedNotebook(notebook, outputs);
  try {
    const running = script.run({
      $cell: beginCell,
      $lend: (name) => lend(name, showIn),
      console: consoleInto(() => outputs.at(-1) ?? []),
    });
    running.catch(() => undefined);
    const end = await Promise.race([running, limited]);
    const cell = places[outputs.length - 1] as CellPlace;
    if (end === "late") {
      const met = limitMet(limits, "cell", cellMs);
      return { ...met, notebook: executed(), cell, kernelMessage: "" };
    }
    onProgress({ cell: places.length, cells: places.length, phase: "finished" });
    return { status: "done", notebook: executed() };
  } catch (thrown) {
    const { line, ...error } = script.tell(thrown, outputs.length, dirname(path));
    const own = outputs.at(-1) ?? [];
    own.push({ output_type: "error", ...error });
    const execution = { outputs: () => own, errorLine: () => line };
    const failure = cellFailure(places[outputs.length - 1] as CellPlace, execution);
    return { status: "cell-failed", notebook: executed(), failure };
  } finally {
    clearTimeout(timer);
    watch.end();
  }
}

const FILE = "loambook-cells";
const IMPORT = /^import\s+(?!type\b)(\{[^}]*\}|\*\s+as\s+[\w$]+)\s+from\s+(["'])(.+?)\2/gm;

/** What the cells find without having declared it. */
interface Lent {
  readonly $cell: () => Promise<void>;
  readonly $lend: (name: string) => Promise<object>;
  readonly console: Console;
}

/**
 * Joins the cells into one function, each inside the block of the one before: a cell sees what was declared
 * above, and may declare it again. Undefined where they are no JavaScript.
 */
function scriptOf(places: readonly CellPlace[]) {
  const head = '"use strict"; (async ({ $cell, $lend, console }) => {';
  const cells = new Map<number, RanCell>();
  const firstLines: number[] = [];
  let text = head;
  let lines = 1;
  for (const [index, { source }] of places.entries()) {
    const emitted = source.replace(IMPORT, (_, names: string, _quote, name: string) => {
      const taken = names.startsWith("*")
        ? names.replace(/^\*\s+as\s+/, "")
        : names.replace(/\s+as\s+/g, ": ");
      return `const ${taken} = await $lend(${JSON.stringify(name)})`;
    });
    cells.set(index + 1, { source, emitted, prefix: 0 });
    firstLines.push(lines + 1);
    const code = `{ await $cell();\n${emitted}\n;`;
    text += code;
    lines += code.split("\n").length - 1;
  }
  text += `await $cell(); ${"}".repeat(places.length)} })`;
  let script: Script;
  try {
    script = new Script(text, { filename: FILE });
  } catch (problem) {
    if (problem instanceof SyntaxError) return undefined;
    throw problem;
  }
  const placed = new RegExp(`${FILE}:(\\d+):(\\d+)`, "g");
  return {
    run: (lent: Lent) => (script.runInThisContext() as (given: Lent) => Promise<unknown>)(lent),
    /** Tells what a cell threw as the kernel tells it. */
    tell(thrown: unknown, count: number, cwd: string): CellError {
      if (thrown instanceof Error) {
        thrown.stack = thrown.stack?.replace(placed, (whole, line, column) => {
          const at = firstLines.findLastIndex((first) => first <= Number(line));
          if (at < 0) return whole;
          return `${cellFile(at + 1)}:${Number(line) - (firstLines[at] as number) + 1}:${column}`;
        });
      }
      return thrownError(thrown, cells, count, cwd);
    },
  };
}

/** A console whose words are outputs of the cell that runs. */
function consoleInto(own: () => CellOutput[]): Console {
  const stream = (name: "stdout" | "stderr") =>
    new Writable({
      decodeStrings: false,
      write(words: string, _encoding, done) {
        addWords(own(), name, words);
        done();
      },
    });
  return new Console({ stdout: stream("stdout"), stderr: stream("stderr"), colorMode: false });
}

/** So long a cell that waits has to hear its own timer, before code that never waits is ended. */
const GRACE_MS = 300;

/**
 * The program of the watching thread: where a cell is not followed by another in its time, the code that
 * holds up the main thread is terminated.
 */
const WATCHING = `
const { workerData } = require("node:worker_threads");
const { Session } = require("node:inspector");
const [NOW, LIMIT] = [0, 1];
for (;;) {
  const cell = Atomics.load(workerData, NOW);
  if (cell < 0) break;
  const limit = cell === 0 ? Infinity : Atomics.load(workerData, LIMIT) + ${GRACE_MS};
  if (Atomics.wait(workerData, NOW, cell, limit) !== "timed-out") continue;
  const session = new Session();
  session.connectToMainThread();
  session.post("Runtime.terminateExecution", () => session.disconnect());
  break;
}
`;

function watchThread() {
  const state = new Int32Array(new SharedArrayBuffer(8));
  const thread = new Worker(WATCHING, { eval: true, workerData: state, execArgv: [] });
  thread.unref();
  const set = (cell: number) => {
    Atomics.store(state, 0, cell);
    Atomics.notify(state, 0);
  };
  return {
    begin(limitMs: number) {
      Atomics.store(state, 1, Math.ceil(limitMs));
      set(Atomics.load(state, 0) + 1);
    },
    end: () => set(-1),
  };
}
