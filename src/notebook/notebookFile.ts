import { readFile } from "node:fs/promises";
import { KERNEL_NAME, kernelSpec, LANGUAGE_INFO } from "./kernel/spec.js";

/** Text as nbformat stores it: whole, or one string a line with its line end. */
export type NotebookText = string | readonly string[];

/** What a cell printed on one of its two streams. */
export interface StreamOutput {
  readonly output_type: "stream";
  readonly name: "stdout" | "stderr";
  readonly text: NotebookText;
}

/** One thing shown, in as many forms as its MIME types say. */
export interface DisplayOutput {
  readonly output_type: "display_data" | "execute_result";
  readonly data: Readonly<Record<string, unknown>>;
  readonly metadata: Readonly<Record<string, unknown>>;
}

export interface ErrorOutput {
  readonly output_type: "error";
  readonly ename: string;
  readonly evalue: string;
  readonly traceback: readonly string[];
}

export type CellOutput = StreamOutput | DisplayOutput | ErrorOutput;

/** One cell; `outputs` and `execution_count` stand in code cells only. */
export interface NotebookCell {
  readonly cell_type: "code" | "markdown" | "raw";
  readonly id: string;
  readonly metadata: Readonly<Record<string, unknown>>;
  readonly source: NotebookText;
  readonly execution_count?: number | null;
  readonly outputs?: readonly CellOutput[];
  readonly attachments?: Readonly<Record<string, unknown>>;
}

/** A notebook in nbformat 4.5. */
export interface NotebookFile {
  readonly nbformat: 4;
  readonly nbformat_minor: number;
  readonly metadata: Readonly<Record<string, unknown>>;
  readonly cells: readonly NotebookCell[];
}

export function joinText(text: NotebookText): string {
  return typeof text === "string" ? text : text.join("");
}

/** Splits a text after its line ends, as nbformat stores it, so that a version control system sees lines. */
export function splitText(text: string): string[] {
  return text === "" ? [] : text.split(/(?<=\n)/);
}

/** Tags of a cell; none where the metadata holds none. */
export function tagsOf(cell: NotebookCell): readonly string[] {
  const { tags } = cell.metadata;
  return Array.isArray(tags) ? tags.filter((tag) => typeof tag === "string") : [];
}

const KINDS = new Set(["code", "markdown", "raw"]);

/**
 * Takes a parsed JSON value as a notebook. Cells of a notebook older than 4.5 have no ids: they get
 * `cell-1`, `cell-2`, … so that the same notebook always gets the same ids.
 *
 * @throws TypeError that names the first place that is no nbformat 4 notebook
 * Source: the notebook format, version 4.5 (nbformat documentation), from memory.
 */
export function asNotebook(value: unknown): NotebookFile {
  if (!isRecord(value)) return wrong("notebook", value, "an object");
  if (value.nbformat !== 4) wrong("notebook.nbformat", value.nbformat, "4");
  const given: unknown = value.cells;
  if (!Array.isArray(given)) return wrong("notebook.cells", given, "a list of cells");
  const taken = new Set<unknown>(given.map((cell) => (isRecord(cell) ? cell.id : undefined)));
  const cells = given.map((cell: unknown, index): NotebookCell => {
    const checked = checkCell(cell, `notebook.cells[${index}]`);
    let id: unknown = checked.id;
    for (let number = index + 1; typeof id !== "string"; number += given.length) {
      if (!taken.has(`cell-${number}`)) id = `cell-${number}`;
    }
    return { ...checked, id } as NotebookCell;
  });
  const minor = typeof value.nbformat_minor === "number" ? value.nbformat_minor : 0;
  const metadata = record(value.metadata);
  return { nbformat: 4, nbformat_minor: Math.max(5, minor), metadata, cells };
}

function checkCell(cell: unknown, place: string): Record<string, unknown> {
  if (!isRecord(cell)) return wrong(place, cell, "an object");
  if (!KINDS.has(cell.cell_type as string)) {
    wrong(`${place}.cell_type`, cell.cell_type, '"code", "markdown" or "raw"');
  }
  if (!isText(cell.source)) wrong(`${place}.source`, cell.source, "a text or a list of lines");
  const metadata = record(cell.metadata);
  if (cell.cell_type !== "code" || cell.outputs === undefined) return { ...cell, metadata };
  if (!Array.isArray(cell.outputs)) {
    return wrong(`${place}.outputs`, cell.outputs, "a list of outputs");
  }
  const outputs = cell.outputs.map((output, at) => checkOutput(output, `${place}.outputs[${at}]`));
  return { ...cell, metadata, outputs };
}

function checkOutput(output: unknown, place: string): CellOutput {
  if (!isRecord(output)) return wrong(place, output, "an object");
  switch (output.output_type) {
    case "stream":
      if (!isText(output.text)) wrong(`${place}.text`, output.text, "a text or a list of lines");
      return output as unknown as StreamOutput;
    case "display_data":
    case "execute_result":
      if (!isRecord(output.data)) wrong(`${place}.data`, output.data, "an object");
      return { ...output, metadata: record(output.metadata) } as unknown as DisplayOutput;
    case "error":
      return errorOutput(output);
    // told by whoever wants to show it; a run replaces it
    default:
      return output as unknown as CellOutput;
  }
}

/** Takes what tells of an error, in a file or from a kernel. */
export function errorOutput({ ename, evalue, traceback }: Record<string, unknown>): ErrorOutput {
  const lines = Array.isArray(traceback) ? traceback.map(String) : [];
  return { output_type: "error", ename: String(ename), evalue: String(evalue), traceback: lines };
}

export function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** Adds printed words to outputs: to those of the same stream, where they stand last. */
export function addWords(outputs: CellOutput[], name: StreamOutput["name"], words: string): void {
  const last = outputs.at(-1);
  if (last?.output_type === "stream" && last.name === name) {
    outputs[outputs.length - 1] = { ...last, text: `${last.text}${words}` };
  } else outputs.push({ output_type: "stream", name, text: words });
}

/** The entries of what may be any value. */
export function record(value: unknown): Record<string, unknown> {
  return isRecord(value) ? value : {};
}

/** Whether a value is a text as nbformat stores it. */
export function isText(value: unknown): value is NotebookText {
  if (typeof value === "string") return true;
  return Array.isArray(value) && value.every((line) => typeof line === "string");
}

function wrong(place: string, found: unknown, expected: string): never {
  throw new TypeError(`invalid \`${place}\`: ${JSON.stringify(found)}; expected ${expected}`);
}

/**
 * Reads a notebook file.
 *
 * @throws TypeError when the file is no JSON or no nbformat 4 notebook; the file system's own error
 * when it cannot be read
 */
export async function openNotebook(path: string): Promise<NotebookFile> {
  const text = await readFile(path, "utf8");
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (cause) {
    throw new TypeError(`invalid \`notebook\`: ${path} is not JSON; expected a notebook`, {
      cause,
    });
  }
  return asNotebook(value);
}

/** Texts are stored line by line; JSON stays JSON. */
function stored(mime: string, value: unknown): unknown {
  return typeof value === "string" && (mime.startsWith("text/") || mime === "image/svg+xml")
    ? splitText(value)
    : value;
}

function storedOutput(output: CellOutput): CellOutput {
  if (output.output_type === "stream") {
    return { ...output, text: splitText(joinText(output.text)) };
  }
  if (output.output_type === "error") return output;
  const data = Object.fromEntries(
    Object.entries(output.data).map(([mime, value]) => [mime, stored(mime, value)]),
  );
  return { output_type: "display_data", data, metadata: output.metadata };
}

/**
 * Makes the executed notebook: code cells numbered 1, 2, … as far as they were run, their outputs in
 * place of older ones, and metadata that is the same on every machine.
 *
 * @param outputs of the code cells in order, as many as were run
 */
export function executedNotebook(
  notebook: NotebookFile,
  outputs: readonly (readonly CellOutput[])[],
): NotebookFile {
  let run = 0;
  const cells = notebook.cells.map((cell) => {
    // the times of an earlier run say nothing of this one
    const { execution: _, ...metadata } = cell.metadata;
    if (cell.cell_type !== "code") return { ...cell, metadata };
    const made = outputs[run]?.map(storedOutput);
    run += 1;
    return { ...cell, metadata, execution_count: made ? run : null, outputs: made ?? [] };
  });
  const { display_name, language } = kernelSpec();
  return {
    cells,
    metadata: {
      ...notebook.metadata,
      kernelspec: { display_name, language, name: KERNEL_NAME },
      language_info: LANGUAGE_INFO,
    },
    nbformat: 4,
    nbformat_minor: notebook.nbformat_minor,
  };
}

/**
 * Writes a notebook as Jupyter writes it: keys in order, one space a level, a line end at the end, numbers as
 * Python spells them. A notebook that was written so and is saved again by Jupyter is the same file, byte by
 * byte, but for what was changed in it.
 *
 * @example
 * notebookText({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [] }).split("\n")[1] // => " \"cells\": [],"
 */
export function notebookText(notebook: NotebookFile): string {
  return `${jsonLines(notebook, "\n")}\n`;
}

function jsonLines(value: unknown, lineStart: string): string {
  if (typeof value === "number") return pythonNumber(value);
  if (typeof value !== "object" || value === null) return JSON.stringify(value) ?? "null";
  const inner = `${lineStart} `;
  const parts = Array.isArray(value)
    ? value.map((item) => jsonLines(item, inner))
    : Object.keys(value)
        .filter((key) => (value as Record<string, unknown>)[key] !== undefined)
        .sort()
        .map((key) => {
          const own = (value as Record<string, unknown>)[key];
          return `${JSON.stringify(key)}: ${jsonLines(own, inner)}`;
        });
  const [open, close] = Array.isArray(value) ? ["[", "]"] : ["{", "}"];
  if (parts.length === 0) return open + close;
  return `${open}${inner}${parts.join(`,${inner}`)}${lineStart}${close}`;
}

/** Python spells numbers below 0.0001 with an exponent of two digits, JavaScript those below 0.000001 with one. */
function pythonNumber(value: number): string {
  if (!Number.isFinite(value)) return "null";
  if (value === 0 || Math.abs(value) >= 1e-4) return JSON.stringify(value);
  return value.toExponential().replace(/e-(\d)$/, "e-0$1");
}
