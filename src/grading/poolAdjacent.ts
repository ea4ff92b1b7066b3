/**
 * The non-decreasing sequence nearest to a sequence in least squares (pool adjacent violators):
 * neighbours out of order are replaced by their mean until none are left.
 *
 * Source: Ayer, Brunk, Ewing, Reid and Silverman 1955, from memory.
 *
 * @example
 * poolAdjacent([1, 3, 2, 5]) // => [1, 2.5, 2.5, 5]
 */
export function poolAdjacent(values: readonly number[]): number[] {
  const blocks: { mean: number; count: number }[] = [];
  for (const value of values) {
    let block = { mean: value, count: 1 };
    for (let last = blocks.at(-1); last && last.mean > block.mean; last = blocks.at(-1)) {
      blocks.pop();
      const count = last.count + block.count;
      block = { mean: (last.mean * last.count + block.mean * block.count) / count, count };
    }
    blocks.push(block);
  }
  return blocks.flatMap(({ mean, count }) => Array<number>(count).fill(mean));
}
