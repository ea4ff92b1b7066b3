/** Longest text, in characters, of a column that needs no share of the free width. */
const SHORT = 22;
const LONGEST_COUNTED = 70;
const LEAST_COUNTED = 6;
/** A header up to this long stands on one line. */
const BROKEN_HEAD = 14;
/** Characters that a line of a table holds, about, and what two columns keep between them. */
const LINE = 96;
const GAP = 2;
/** In a table too wide for its line: what a long text gets at most. */
const CROWDED = 26;

/**
 * Width of each column: 0 for as wide as its content, otherwise its share of the free width.
 * Long columns share by the length of their text; when all are short they share evenly, so that
 * a table always fills the measure. A column of which only the header is filled counts as `toWriteIn`
 * characters: 0 in a report, more on a sheet where somebody writes by hand.
 *
 * A header longer than its cells may break between words: in a report such a column gets the share of what it
 * needs broken, because as wide as its content would mean as wide as the unbroken header. Where columns as
 * wide as their content would fill the line, all share it by their longest words.
 */
export function columnWidths(
  columns: readonly (readonly string[])[],
  toWriteIn = 0,
  heads = 1,
): number[] {
  const needs = columns.map((cells) => {
    const blank = cells.length > heads && cells.slice(heads).every((cell) => cell === "");
    const head = Math.max(0, ...cells.slice(0, heads).map((cell) => cell.length));
    const inCells = Math.max(
      blank ? toWriteIn : 0,
      ...cells.slice(heads).map((cell) => cell.length),
    );
    if (toWriteIn > 0 || head <= Math.max(inCells, BROKEN_HEAD)) {
      return { length: Math.max(inCells, head), breaks: false };
    }
    const words = cells.slice(0, heads).flatMap((cell) => cell.split(" "));
    const longestWord = Math.max(...words.map((word) => word.length));
    return { length: Math.max(inCells, longestWord, Math.ceil(head / 2)), breaks: true };
  });
  if (needs.every(({ length }) => length <= SHORT)) {
    return needs.some(({ breaks }) => breaks) ? needs.map(share) : needs.map(() => 1);
  }
  const free = ({ length, breaks }: (typeof needs)[number]) => length > SHORT || breaks;
  const taken = needs.reduce(
    (sum, need) => sum + GAP + (free(need) ? LEAST_COUNTED : need.length),
    0,
  );
  if (taken > LINE) return columns.map(crowdedShare);
  return needs.map((need) => (free(need) ? share(need) : 0));
}

/** As wide as its content would leave nothing for the others: every column breaks, but between words only. */
function crowdedShare(cells: readonly string[]): number {
  const word = Math.max(...cells.flatMap((cell) => cell.split(" ")).map(({ length }) => length));
  const whole = Math.max(...cells.map(({ length }) => length));
  return Math.max(LEAST_COUNTED, Math.min(word + 1, CROWDED), Math.min(whole / 3, CROWDED));
}

function share({ length }: { readonly length: number }): number {
  return Math.min(Math.max(length, LEAST_COUNTED), LONGEST_COUNTED);
}
