/** Ratios that are tried while a person waits for a page: some hundredths of a second. */
const ENOUGH_RATIOS = 250_000;

/** The largest total of `count` whole parts, at most `most`, that leaves few enough ratios to try all. */
export function searchableTotal(count: number, most: number): number {
  // Lists of `count` parts, each at least 1, of at most `total` in all: total over count.
  let [total, ways] = [count, 1];
  while (total < most) {
    const next = (ways * (total + 1)) / (total + 1 - count);
    if (next > ENOUGH_RATIOS) break;
    total += 1;
    ways = next;
  }
  return Math.min(total, most);
}
