import { withoutCellLines } from "./kernel/cellTrace.js";
import type { KernelExecution } from "./kernel/client.js";
import type { ProcessEnd } from "./kernel/process.js";
import { joinText, type NotebookFile, tagsOf } from "./notebookFile.js";
import { INJECTED_TAG } from "./parameters.js";

/** A cell of the notebook as it was given. */
export interface CellPlace {
  /** Counted among the code cells, from 1; the injected parameters count as the cell they follow. */
  readonly cellNumber: number;
  /** Counted among all cells, from 1. */
  readonly cellPosition: number;
  /** Whether it is the cell that sets the parameters of this run. */
  readonly injected: boolean;
  readonly source: string;
}

/** Why a cell failed, and where as far as that can be known. */
export interface CellFailure extends CellPlace {
  /** Line of the cell, from 1; absent where the kernel does not tell and it cannot be found. */
  readonly line?: number;
  readonly codeLine?: string;
  readonly kernelMessage: string;
}

/** A run that did not come to its end. */
interface Stopped {
  readonly notebook: NotebookFile;
  /** The cell that ran; absent when the kernel did not even start, or not in time. */
  readonly cell?: CellPlace;
  readonly kernelMessage: string;
}

/**
 * How a headless run ended. `notebook` is the executed notebook, with everything that was shown
 * before the end.
 */
export type NotebookRun =
  | { readonly status: "done"; readonly notebook: NotebookFile }
  | {
      readonly status: "cell-failed";
      readonly notebook: NotebookFile;
      readonly failure: CellFailure;
    }
  | (Stopped & ProcessEnd & { readonly status: "kernel-died" })
  | (Stopped & {
      readonly status: "timed-out";
      readonly which: "start" | "cell" | "total";
      readonly seconds: number;
    });

/** What a run tells while it goes on. `cell` and `cells` count the code cells that are run, from 1. */
export interface NotebookProgress {
  readonly cell: number;
  readonly cells: number;
  readonly phase: "starting" | "running" | "finished";
}

/**
 * Places of the code cells that a run goes through, counted as the person who wrote the notebook
 * counts them: an injected cell that the file does not have takes the numbers of the cell it follows.
 *
 * @param notebook what is run
 * @param given what stands in the file
 */
export function cellPlaces(notebook: NotebookFile, given: NotebookFile): CellPlace[] {
  const inserted = notebook.cells.length > given.cells.length;
  const places: CellPlace[] = [];
  let [code, position] = [0, 0];
  for (const cell of notebook.cells) {
    const injected = tagsOf(cell).includes(INJECTED_TAG);
    const counted = !(injected && inserted);
    if (counted) position += 1;
    if (cell.cell_type !== "code") continue;
    if (counted) code += 1;
    places.push({
      cellNumber: Math.max(1, code),
      cellPosition: Math.max(1, position),
      injected,
      source: joinText(cell.source),
    });
  }
  return places;
}

/** What is known of a cell that has failed: from its `error` message, or else from what it wrote to stderr. */
export function cellFailure(
  place: CellPlace,
  execution: Pick<KernelExecution, "outputs" | "errorLine">,
): CellFailure {
  const outputs = execution.outputs();
  const error = outputs.findLast((output) => output.output_type === "error");
  const stderr = outputs.flatMap((output) =>
    output.output_type === "stream" && output.name === "stderr" ? [joinText(output.text)] : [],
  );
  const kernelMessage =
    error === undefined ? stderr.join("").trim() : withoutCellLines(error.traceback);
  const line = execution.errorLine();
  if (line === undefined) return { ...place, kernelMessage };
  return { ...place, line, codeLine: place.source.split("\n")[line - 1], kernelMessage };
}

const AROUND = 2;

function placeWords({ cellNumber, cellPosition, injected }: CellPlace): string {
  return injected
    ? "the cell that sets the parameters"
    : `code cell ${cellNumber} (cell ${cellPosition} of the notebook)`;
}

/** The line with its neighbours, numbered, the line itself marked. */
function excerpt(source: string, line: number): string {
  const lines = source.split("\n");
  const first = Math.max(1, line - AROUND);
  const last = Math.min(lines.length, line + AROUND);
  const width = String(last).length;
  return lines
    .slice(first - 1, last)
    .map((text, index) => {
      const number = first + index;
      return `${number === line ? ">" : " "} ${String(number).padStart(width)} | ${text}`.trimEnd();
    })
    .join("\n");
}

function endWords({ exitCode, signal }: ProcessEnd): string {
  if (signal !== null) return ` (signal ${signal})`;
  return exitCode === null ? "" : ` (exit code ${exitCode})`;
}

/**
 * Tells in a few lines why a notebook did not run to its end: the cell, its line with its neighbours
 * where that is known, and what the kernel said.
 *
 * @example
 * const notebook = { nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [] };
 * const run = { status: "timed-out", which: "start", seconds: 60, notebook, kernelMessage: "" };
 * formatFailure(run) // => "The notebook kernel did not answer within 60 s of its start."
 */
export function formatFailure(run: Failed): string {
  const { kernelMessage } = run.status === "cell-failed" ? run.failure : run;
  const said = kernelMessage === "" ? [] : ["", "The kernel says:", kernelMessage];
  return [...whatFailed(run), ...said].join("\n");
}

type Failed = Exclude<NotebookRun, { status: "done" }>;

function whatFailed(run: Failed): string[] {
  if (run.status === "cell-failed") {
    const { line, source } = run.failure;
    const where = placeWords(run.failure);
    if (line === undefined) return [`The notebook stopped in ${where}.`];
    return [`The notebook stopped in ${where}, line ${line}.`, "", excerpt(source, line)];
  }
  const where = run.cell === undefined ? "" : ` in ${placeWords(run.cell)}`;
  if (run.status === "kernel-died") {
    const what = run.cell === undefined ? "did not start" : `ended${where}`;
    return [`The notebook kernel ${what}${endWords(run)}.`];
  }
  const { which, seconds } = run;
  if (which === "start") {
    return [`The notebook kernel did not answer within ${seconds} s of its start.`];
  }
  const part = which === "cell" ? "a cell" : "the whole";
  return [
    `The notebook was stopped${where}: it ran longer than the ${seconds} s allowed for ${part}.`,
  ];
}
