import { readFile } from "node:fs/promises";
import type { NotebookCell, NotebookFile } from "./nbformat.js";

const KINDS = new Set(["code", "markdown", "raw"]);

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function isText(value: unknown): boolean {
  return (
    typeof value === "string" ||
    (Array.isArray(value) && value.every((line) => typeof line === "string"))
  );
}

/**
 * Takes a parsed JSON value as a notebook. Cells of a notebook older than 4.5 have no ids: they get
 * `cell-1`, `cell-2`, … so that the same notebook always gets the same ids.
 *
 * @throws TypeError that names the first place that is no nbformat 4 notebook
 * Source: the notebook format, version 4.5 (nbformat documentation), from memory.
 */
export function asNotebook(value: unknown): NotebookFile {
  const wrong = (place: string, found: unknown, expected: string): never => {
    throw new TypeError(`invalid \`${place}\`: ${JSON.stringify(found)}; expected ${expected}`);
  };
  if (!isRecord(value)) return wrong("notebook", value, "an object");
  if (value.nbformat !== 4) wrong("notebook.nbformat", value.nbformat, "4");
  const given: unknown = value.cells;
  if (!Array.isArray(given)) return wrong("notebook.cells", given, "a list of cells");
  const taken = new Set<unknown>(given.map((cell) => (isRecord(cell) ? cell.id : undefined)));
  const cells = given.map((cell: unknown, index): NotebookCell => {
    const place = `notebook.cells[${index}]`;
    if (!isRecord(cell)) return wrong(place, cell, "an object");
    if (!KINDS.has(cell.cell_type as string)) {
      wrong(`${place}.cell_type`, cell.cell_type, '"code", "markdown" or "raw"');
    }
    if (!isText(cell.source)) wrong(`${place}.source`, cell.source, "a text or a list of lines");
    let id = cell.id;
    for (let number = index + 1; typeof id !== "string"; number += given.length) {
      if (!taken.has(`cell-${number}`)) id = `cell-${number}`;
    }
    return { ...cell, id, metadata: isRecord(cell.metadata) ? cell.metadata : {} } as NotebookCell;
  });
  const metadata = isRecord(value.metadata) ? value.metadata : {};
  const minor = typeof value.nbformat_minor === "number" ? value.nbformat_minor : 0;
  return { nbformat: 4, nbformat_minor: Math.max(5, minor), metadata, cells };
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
