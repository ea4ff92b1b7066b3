/** More ratios than this would make a person wait. */
const MAX_RATIOS = 2_000_000;

/**
 * Calls `visit` with every list of whole parts whose sum is at most `maxTotal`.
 *
 * The list handed over is the same object each time: copy it to keep it.
 *
 * @param min smallest number of each part, 0 or more.
 * @param worth whether lists that begin with the first `count` parts are looked at; default all are.
 * @throws RangeError where the ratios to try are more than two million.
 */
export function forEachWholeRatio(
  min: readonly number[],
  maxTotal: number,
  visit: (parts: readonly number[], total: number) => void,
  worth: (parts: readonly number[], count: number) => boolean = () => true,
): void {
  const count = min.length;
  const needed = min.reduce((sum, value) => sum + value, 0);
  let ways = 1;
  for (let i = 1; i <= count; i += 1) ways = (ways * (maxTotal - needed + i)) / i;
  if (ways > MAX_RATIOS) {
    throw new RangeError(
      `invalid \`maxTotal\`: ${maxTotal} with ${count} materials makes ${ways} ratios; expected at most ${MAX_RATIOS}`,
    );
  }
  const parts = [...min];
  const fill = (index: number, used: number, neededAfter: number) => {
    const after = neededAfter - min[index];
    const room = maxTotal - used - after;
    for (let here = min[index]; here <= room; here += 1) {
      parts[index] = here;
      if (index === count - 1) visit(parts, used + here);
      else if (worth(parts, index + 1)) fill(index + 1, used + here, after);
    }
  };
  if (count > 0 && needed <= maxTotal) fill(0, 0, needed);
}
