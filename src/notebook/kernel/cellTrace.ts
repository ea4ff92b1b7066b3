import { relative, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { inspect, types } from "node:util";

/** A cell that ran: what was written, and the JavaScript that was made of it. */
export interface RanCell {
  readonly source: string;
  readonly emitted: string;
  /** Characters that stand before the JavaScript in its first line. */
  readonly prefix: number;
}

/** What the compiler says about a cell; line and column from 1. */
export interface Diagnostic {
  readonly line: number;
  readonly column: number;
  readonly text: string;
}

/** A failure as the messaging protocol tells it, and the line of the cell, from 1, where it is known. */
export interface CellError {
  readonly ename: string;
  readonly evalue: string;
  readonly traceback: readonly string[];
  readonly line?: number;
}

/** Under this name Node.js knows the code of a cell, by its count. */
export function cellFile(count: number): string {
  return `cell[${count}]`;
}

const CELL_FRAME = /^\s+at (?:async )?(?:(.*) \()?cell\[(\d+)\]:(\d+):(\d+)\)?$/;
/** A line of a trace that stands in a cell, as `thrownError` writes it. */
const CELL_LINE = /^ {4}at (?:.* )?(?:line \d+ of cell \[\d+\]|line \d+: )/;

/**
 * Tells of what a cell threw: its name and text, then the lines of cells that it came through and the
 * frames of packages above them, without those of Node.js and of the kernel and without this machine's
 * folders. The line of the cell is the one that the kernel was running.
 *
 * @param cells by their counts
 * @param count of the cell that failed
 * @param cwd folder of the notebook
 */
export function thrownError(
  thrown: unknown,
  cells: ReadonlyMap<number, RanCell>,
  count: number,
  cwd: string,
): CellError {
  if (!types.isNativeError(thrown)) {
    const evalue = typeof thrown === "string" ? thrown : inspect(thrown, { depth: 2 });
    return { ename: "Thrown", evalue, traceback: [evalue] };
  }
  if (isInterrupt(thrown)) return INTERRUPTED;
  const { name, message, stack = "" } = thrown;
  const frames = stack.split("\n").filter((line) => /^\s+at /.test(line));
  const outermost = frames.findLastIndex((frame) => CELL_FRAME.test(frame));
  const above = outermost < 0 ? frames : frames.slice(0, outermost + 1);
  let line: number | undefined;
  const trace = above.flatMap((frame) => {
    const [, caller, cell, row, column] = CELL_FRAME.exec(frame) ?? [];
    if (cell === undefined) return KERNEL_FRAME.test(frame) ? [] : [shortPath(frame, cwd)];
    const ran = cells.get(Number(cell));
    const own = ran && lineOf(ran, Number(row), Number(column));
    if (ran === undefined || own === undefined) return [];
    // names of cells are kept in a proxy, which nobody wrote
    const named = caller === undefined ? "" : `${caller.replace(/^Proxy\./, "")}, `;
    if (Number(cell) !== count) return [`    at ${named}line ${own} of cell [${cell}]`];
    line = own;
    return [`    at ${named}line ${own}: ${ran.source.split("\n")[own - 1]?.trim()}`];
  });
  return { ename: name, evalue: message, traceback: [`${name}: ${message}`, ...trace], line };
}

const INTERRUPTED: CellError = {
  ename: "Interrupted",
  evalue: "the cell was stopped before its end",
  traceback: ["Interrupted: the cell was stopped before its end"],
};

function isInterrupt({ message, code }: NodeJS.ErrnoException): boolean {
  return code === "ERR_SCRIPT_EXECUTION_INTERRUPTED" || message === "Interrupted asynchronously";
}

/** Tells what the compiler says about a cell that it does not take, without this machine's folders. */
export function compileError(
  diagnostics: readonly Diagnostic[],
  source: string,
  cwd: string,
): CellError {
  const short = (text: string) =>
    text.replace(/(?<=\bimport\(")[^"]+/g, (path) => withoutFolders(path, cwd));
  const traceback = diagnostics.map(
    ({ line, column, text }) => `${line}:${column} - ${short(text)}`,
  );
  const [first] = diagnostics;
  return {
    ename: "CompileError",
    evalue: short(first?.text ?? ""),
    traceback,
    // the compiler sees one line more than the cell has
    line: first && Math.min(first.line, source.split("\n").length),
  };
}

/** A failure's text without the lines of cells, for where the cell itself is shown beside it. */
export function withoutCellLines(traceback: readonly string[]): string {
  return traceback.filter((line) => !CELL_LINE.test(line)).join("\n");
}

function lineOf({ source, emitted, prefix }: RanCell, row: number, column: number) {
  return emittedPlace(source, emitted, row, row === 1 ? column - prefix : column);
}

/**
 * What differs between a cell and the JavaScript made of it: white space, semicolons, trailing
 * commas, the names of the module objects, the store of the last expression, and `{ name }` spelled out.
 */
const CHANGED =
  /\(0, [\w$]+\.([\w$]+)\)|\b([\w$]+): (?=exports\.\2\b)|\bexports\.tsLastExpr\d* = |\bexports\.|\b[\w$]+_\d+\.(?:default\b)?|,(?=\s*[)\]}])|[\s;]/g;

/** Text without what the compiler changes, and for each character its place in the original. */
function squeeze(code: string) {
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

/** Frames of Node.js, of the kernel and of promises: they say nothing about the cell. */
const KERNEL_FRAME =
  /^\s+at (?:.*(?:\(?node:|tslab[\\/]dist[\\/]|[\\/]dist[\\/]notebook[\\/]kernel[\\/])|(?:async )?(?:new )?Promise .*<anonymous>)/;
const PACKAGE_ROOT = fileURLToPath(new URL("../../..", import.meta.url));

/** A path without the folders of this machine: of this package, of another, or of the notebook's folder. */
function withoutFolders(path: string, cwd: string): string {
  const inside = path.lastIndexOf("node_modules");
  const kept = path.startsWith(PACKAGE_ROOT) && inside < PACKAGE_ROOT.length;
  const short = inside >= 0 ? path.slice(inside) : relative(cwd, path);
  return (kept ? `loambook/${relative(PACKAGE_ROOT, path)}` : short).split(sep).join("/");
}

/** The same for a line of a trace. */
function shortPath(frame: string, cwd: string): string {
  return frame.replace(/(?<=[ (])(?:file:\/\/)?((?:[A-Za-z]:)?[\\/][^():]*)/, (_, path: string) =>
    withoutFolders(path, cwd),
  );
}

/** What the kernel process wrote outside of cells, without frames and folders that say nothing of use. */
export function kernelText(text: string, cwd: string): string {
  return text
    .split("\n")
    .filter((line) => !KERNEL_FRAME.test(line))
    .map((line) => (/^\s+at /.test(line) ? shortPath(line, cwd) : line))
    .join("\n")
    .trim();
}
