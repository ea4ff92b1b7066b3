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
