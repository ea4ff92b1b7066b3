/** Where the kernel says that a cell failed. */
export type StderrPlace =
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
