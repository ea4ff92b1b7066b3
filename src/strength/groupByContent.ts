/** Groups things that have a cement content, in order of first appearance. */
export function groupByContent<T extends { readonly cementPct: number }>(
  items: readonly T[],
): Map<number, T[]> {
  const groups = new Map<number, T[]>();
  for (const item of items) {
    const group = groups.get(item.cementPct);
    if (group) group.push(item);
    else groups.set(item.cementPct, [item]);
  }
  return groups;
}
