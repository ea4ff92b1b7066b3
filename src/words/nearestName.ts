import { distance } from "fastest-levenshtein";

/**
 * The known name that was probably meant by a mistyped one, or none where nothing is near.
 *
 * Nearness is the count of letters to add, take out or change (Levenshtein distance); capitals, hyphens,
 * underscores and spaces count for nothing. A name is near where that is at most a third of the longer
 * name's letters.
 *
 * @example
 * nearestName("moistuer", ["moisture", "price", "share"]) // => "moisture"
 * nearestName("colour", ["moisture", "price", "share"]) // => undefined
 */
export function nearestName(written: string, known: readonly string[]): string | undefined {
  const bare = (text: string) => text.toLowerCase().replace(/[\s_-]/g, "");
  const asked = bare(written);
  let nearest: { readonly name: string; readonly changes: number } | undefined;
  for (const name of known) {
    const other = bare(name);
    const changes = distance(asked, other);
    if (changes > Math.max(asked.length, other.length) / 3) continue;
    if (!nearest || changes < nearest.changes) nearest = { name, changes };
  }
  return nearest?.name;
}
