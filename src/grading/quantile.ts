/** Value below which a part of sorted numbers lies, linear between neighbours. */
export function quantile(sorted: readonly number[], part: number): number {
  const place = part * (sorted.length - 1);
  const below = Math.floor(place);
  const above = Math.min(below + 1, sorted.length - 1);
  return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
}
