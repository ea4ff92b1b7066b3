import { dirname, resolve } from "node:path";
import { checkThat } from "../quantities/checkNumber.js";
import { kernelText } from "./kernel/cellTrace.js";
import { type Answer, type KernelClient, startKernel } from "./kernel/client.js";
import {
  type CellOutput,
  executedNotebook,
  type NotebookFile,
  openNotebook,
  tagsOf,
} from "./notebookFile.js";
import {
  type CellPlace,
  cellFailure,
  cellPlaces,
  type NotebookProgress,
  type NotebookRun,
} from "./notebookRun.js";
import { injectParameters, type ParameterValue } from "./parameters.js";

/** Tag of a cell that is meant to fail, as Jupyter's own runner knows it. */
export const ALLOWED_TAG = "raises-exception";

/** Limits of a run, in seconds. */
export interface Timeouts {
  /** For the kernel to start; default 60. */
  readonly startSeconds?: number;
  /** For each cell; default 120. */
  readonly cellSeconds?: number;
  /** For the whole run, the start included; default 600. */
  readonly totalSeconds?: number;
}

const DEFAULTS = { startSeconds: 60, cellSeconds: 120, totalSeconds: 600 };
/** Timers of Node.js count milliseconds in 31 bits. */
const LONGEST_SECONDS = 2_147_483;

/** Fills in the defaults; a limit given as `undefined` is not given. */
export function checkTimeouts(given: Timeouts = {}): Required<Timeouts> {
  const limit = (name: keyof Timeouts): number => {
    const value = given[name] ?? DEFAULTS[name];
    checkThat(
      value > 0 && value <= LONGEST_SECONDS,
      { [`timeouts.${name}`]: value },
      `more than 0, at most ${LONGEST_SECONDS}`,
    );
    return value;
  };
  return {
    startSeconds: limit("startSeconds"),
    cellSeconds: limit("cellSeconds"),
    totalSeconds: limit("totalSeconds"),
  };
}

/** The limit that a run met: that of its part, or of the whole where less was left than the part may take. */
export function limitMet(limits: Required<Timeouts>, part: "start" | "cell", limitMs: number) {
  const ofPart = limits[`${part}Seconds`];
  return limitMs < ofPart * 1000
    ? ({ status: "timed-out", which: "total", seconds: limits.totalSeconds } as const)
    : ({ status: "timed-out", which: part, seconds: ofPart } as const);
}

/** What `runNotebook` needs to know. */
export interface RunNotebookOptions {
  readonly notebookPath: string;
  /** New values for names that the cell tagged `parameters` declares. */
  readonly parameters?: Readonly<Record<string, ParameterValue>>;
  readonly timeouts?: Timeouts;
  readonly onProgress?: (progress: NotebookProgress) => void;
  /** Ends the kernel; the promise is then rejected with the signal's reason. */
  readonly signal?: AbortSignal;
}

type Stopped = Exclude<NotebookRun, { status: "done" } | { status: "cell-failed" }>;

/**
 * Runs a notebook from top to bottom without a window, in a kernel of its own that works in the
 * notebook's folder. Stops at the first cell that fails and has not the tag `raises-exception`. The file is read and never written; the
 * same notebook with the same parameters gives the same executed notebook.
 *
 * Timeouts in seconds: 60 for the kernel to start, 120 for a cell, 600 for the whole.
 *
 * @throws ParameterError for parameters that the notebook does not have; TypeError when the file is
 * no notebook; RangeError for a timeout that is no positive number
 */
export async function runNotebook(options: RunNotebookOptions): Promise<NotebookRun> {
  const { onProgress = () => {}, signal } = options;
  const limits = checkTimeouts(options.timeouts);
  const started = performance.now();
  const left = () => Math.max(0, limits.totalSeconds * 1000 - (performance.now() - started));
  const path = resolve(options.notebookPath);
  const cwd = dirname(path);
  const given = await openNotebook(path);
  const notebook = injectParameters(given, options.parameters ?? {});
  const places = cellPlaces(notebook, given);
  const cells = places.length;
  const allowed = notebook.cells
    .filter(({ cell_type }) => cell_type === "code")
    .map((cell) => tagsOf(cell).includes(ALLOWED_TAG));
  const outputs: (readonly CellOutput[])[] = [];
  const executed = (): NotebookFile => executedNotebook(notebook, outputs);
  signal?.throwIfAborted();

  onProgress({ cell: 0, cells, phase: "starting" });
  const kernel = await startKernel(cwd);
  const listening = new AbortController();
  const aborted = new Promise<never>((_, reject) => {
    const stop = () => reject(signal?.reason);
    signal?.addEventListener("abort", stop, { once: true, signal: listening.signal });
    if (signal?.aborted) stop();
  });
  const stopped = (
    answer: Exclude<Answer, { outcome: "replied" }>,
    which: "start" | "cell",
    limited: number,
    cell?: CellPlace,
  ): Stopped => {
    const end = { notebook: executed(), cell, kernelMessage: kernelText(kernel.ownText(), cwd) };
    if (answer.outcome === "died") return { status: "kernel-died", ...answer.end, ...end };
    return { ...limitMet(limits, which, limited), ...end };
  };
  const runCells = async (client: KernelClient): Promise<NotebookRun> => {
    const startLimit = Math.min(limits.startSeconds * 1000, left());
    const start = await client.ready(startLimit);
    if (start.outcome !== "replied") return stopped(start, "start", startLimit);
    for (const [index, place] of places.entries()) {
      onProgress({ cell: index + 1, cells, phase: "running" });
      const limit = Math.min(limits.cellSeconds * 1000, left());
      const mayFail = allowed[index] === true;
      const execution = await client.execute(place.source, limit, !mayFail);
      const answer = await execution.answer;
      outputs.push(execution.outputs());
      if (answer.outcome !== "replied") return stopped(answer, "cell", limit, place);
      if (answer.status === "ok" || mayFail) continue;
      const failure = cellFailure(place, execution);
      return { status: "cell-failed", notebook: executed(), failure };
    }
    onProgress({ cell: cells, cells, phase: "finished" });
    return { status: "done", notebook: executed() };
  };
  try {
    return await Promise.race([runCells(kernel), aborted]);
  } finally {
    listening.abort();
    await kernel.close();
  }
}
