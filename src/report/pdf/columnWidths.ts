/** Longest text, in characters, of a column that needs no share of the free width. */
const SHORT = 22;
const LONGEST_COUNTED = 70;

/**
 * Width of each column: 0 for as wide as its content, otherwise its share of the free width.
 * Long columns share by the length of their text; when all are short they share evenly, so that
 * a table always fills the measure. A column of which only the header is filled counts as `toWriteIn`
 * characters: 0 in a report, more on a sheet where somebody writes by hand.
 */
export function columnWidths(
  columns: readonly (readonly string[])[],
  toWriteIn = 0,
  heads = 1,
): number[] {
  const longest = columns.map((cells) => {
    const blank = cells.length > heads && cells.slice(heads).every((cell) => cell === "");
    return Math.max(blank ? toWriteIn : 0, ...cells.map((cell) => cell.length));
  });
  if (longest.every((length) => length <= SHORT)) {
    return longest.map(() => 1);
  }
  return longest.map((length) => (length > SHORT ? Math.min(length, LONGEST_COUNTED) : 0));
}
