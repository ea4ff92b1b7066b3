/**
 * The known name that was probably meant by a mistyped one, or none where nothing is near.
 *
 * Nearness is the count of letters to add, take out, change or swap with their neighbour (optimal string
 * alignment distance); capitals, hyphens, underscores and spaces count for nothing. A name is near where
 * that is at most a third of the longer name's letters.
 *
 * Source: Damerau (1964), the restricted form, from memory.
 *
 * @example
 * nearestName("moistuer", ["moisture", "price", "share"]) // => "moisture"
 * nearestName("colour", ["moisture", "price", "share"]) // => undefined
 */
export function nearestName(written: string, known: readonly string[]): string | undefined {
  const bare = (text: string) => text.toLowerCase().replace(/[\s_-]/g, "");
  const asked = bare(written);
  let best: { name: string; changes: number } | undefined;
  for (const name of known) {
    const other = bare(name);
    const changes = distance(asked, other);
    if (changes > Math.max(asked.length, other.length) / 3) continue;
    if (!best || changes < best.changes) best = { name, changes };
  }
  return best?.name;
}

function distance(a: string, b: string): number {
  let [before, last] = [[] as number[], Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let changes = Math.min(last[j] + 1, row[j - 1] + 1, last[j - 1] + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        changes = Math.min(changes, before[j - 2] + 1);
      }
      row.push(changes);
    }
    [before, last] = [last, row];
  }
  return last[b.length];
}
