import type { CellPlace, NotebookRun } from "./notebookRun.js";

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

function said(kernelMessage: string): string[] {
  return kernelMessage === "" ? [] : ["", "The kernel says:", kernelMessage];
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
export function formatFailure(run: Exclude<NotebookRun, { status: "done" }>): string {
  if (run.status === "cell-failed") {
    const { failure } = run;
    const where = placeWords(failure);
    if (failure.line === undefined) {
      return [`The notebook stopped in ${where}.`, ...said(failure.kernelMessage)].join("\n");
    }
    return [
      `The notebook stopped in ${where}, line ${failure.line}.`,
      "",
      excerpt(failure.source, failure.line),
      ...said(failure.kernelMessage),
    ].join("\n");
  }
  const where = run.cell === undefined ? "" : ` in ${placeWords(run.cell)}`;
  if (run.status === "kernel-died") {
    const how =
      run.signal !== null
        ? ` (signal ${run.signal})`
        : run.exitCode !== null
          ? ` (exit code ${run.exitCode})`
          : "";
    const head =
      run.cell === undefined
        ? `The notebook kernel did not start${how}.`
        : `The notebook kernel ended${where}${how}.`;
    return [head, ...said(run.kernelMessage)].join("\n");
  }
  const head = {
    start: `The notebook kernel did not answer within ${run.seconds} s of its start.`,
    cell: `The notebook was stopped${where}: it ran longer than the ${run.seconds} s allowed for a cell.`,
    total: `The notebook was stopped${where}: it ran longer than the ${run.seconds} s allowed for the whole.`,
  }[run.which];
  return [head, ...said(run.kernelMessage)].join("\n");
}
