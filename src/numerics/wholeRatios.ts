/** More ratios than this would make a person wait. */
const MOST_RATIOS = 2_000_000;

/**
 * Calls `visit` with every list of whole parts whose sum is at most `largestTotal`.
 *
 * The list handed over is the same object each time: copy it to keep it.
 *
 * @param least smallest number of each part, 0 or more.
 * @throws RangeError where the ratios to try are more than two million.
 */
export function forEachWholeRatio(
  least: readonly number[],
  largestTotal: number,
  visit: (parts: readonly number[], total: number) => void,
): void {
  const count = least.length;
  const needed = least.reduce((sum, value) => sum + value, 0);
  let ways = 1;
  for (let i = 1; i <= count; i += 1) ways = (ways * (largestTotal - needed + i)) / i;
  if (ways > MOST_RATIOS) {
    throw new RangeError(
      `invalid \`largestTotal\`: ${largestTotal} with ${count} materials makes ${ways} ratios; expected at most ${MOST_RATIOS}`,
    );
  }
  const parts = [...least];
  const fill = (index: number, used: number, neededAfter: number) => {
    const after = neededAfter - least[index];
    const room = largestTotal - used - after;
    for (let here = least[index]; here <= room; here += 1) {
      parts[index] = here;
      if (index === count - 1) visit(parts, used + here);
      else fill(index + 1, used + here, after);
    }
  };
  if (count > 0 && needed <= largestTotal) fill(0, 0, needed);
}
