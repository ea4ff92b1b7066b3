import type { NotebookFile } from "./nbformat.js";

/** A cell of the notebook as it was given. */
export interface CellPlace {
  /** Counted among the code cells, from 1; the injected parameters count as the cell they follow. */
  readonly cellNumber: number;
  /** Counted among all cells, from 1. */
  readonly cellPosition: number;
  /** Whether it is the cell that sets the parameters of this run. */
  readonly injected: boolean;
  /** The cell's code. */
  readonly source: string;
}

/** Why a cell failed, and where as far as that can be known. */
export interface CellFailure extends CellPlace {
  /** Line of the cell, from 1; absent where the kernel does not tell and it cannot be found. */
  readonly line?: number;
  /** That line's text. */
  readonly codeLine?: string;
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
  | {
      readonly status: "kernel-died";
      readonly notebook: NotebookFile;
      /** The cell that ran; absent when the kernel did not even start. */
      readonly cell?: CellPlace;
      readonly exitCode: number | null;
      readonly signal: string | null;
      readonly kernelMessage: string;
    }
  | {
      readonly status: "timed-out";
      readonly which: "start" | "cell" | "total";
      readonly seconds: number;
      readonly notebook: NotebookFile;
      /** The cell that ran; absent when the kernel did not start in time. */
      readonly cell?: CellPlace;
      readonly kernelMessage: string;
    };

/** What a run tells while it goes on. `cell` and `cells` count the code cells that are run, from 1. */
export interface NotebookProgress {
  readonly cell: number;
  readonly cells: number;
  readonly phase: "starting" | "running" | "finished";
}
