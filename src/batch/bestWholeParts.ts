/** More ratios than this would make a person wait. */
const MOST_RATIOS = 2_000_000;

/** Ratios of `count` whole parts, each at least 1, with at most `total` in all: total over count. */
function ratioCount(total: number, count: number): number {
  let ways = 1;
  for (let i = 1; i <= count; i += 1) ways = (ways * (total - count + i)) / i;
  return ways;
}

/**
 * Tries every ratio of whole parts (each at least 1) up to a total, and returns the one whose mass
 * shares differ least at their worst; among equals the one with fewest parts. `neverLess` names a part
 * whose ratio to the mass of the others may not fall. Null where no ratio qualifies.
 */
export function bestWholeParts(of: {
  readonly densities: readonly number[];
  readonly shares: readonly number[];
  readonly largestTotal: number;
  readonly neverLess: number | null;
}): { readonly parts: readonly number[]; readonly largestChange: number } | null {
  const { densities, shares, largestTotal, neverLess } = of;
  const count = densities.length;
  const ways = ratioCount(largestTotal, count);
  if (ways > MOST_RATIOS) {
    throw new RangeError(
      `invalid \`largestTotal\`: ${largestTotal} with ${count} materials makes ${ways} ratios; expected at most ${MOST_RATIOS}`,
    );
  }
  const parts = new Array<number>(count).fill(1);
  let best: { parts: number[]; largestChange: number; total: number } | null = null;
  const judge = (total: number) => {
    let mass = 0;
    for (let i = 0; i < count; i += 1) mass += parts[i] * densities[i];
    let largestChange = 0;
    for (let i = 0; i < count; i += 1) {
      const change = (parts[i] * densities[i]) / mass - shares[i];
      // Rounding error alone must not turn an exact ratio away.
      if (i === neverLess && change < -1e-12) return;
      largestChange = Math.max(largestChange, Math.abs(change));
    }
    const gain = best === null ? Infinity : best.largestChange - largestChange;
    if (gain > 1e-12 || (gain >= -1e-12 && total < best!.total)) {
      best = { parts: [...parts], largestChange, total };
    }
  };
  const fill = (index: number, used: number) => {
    const room = largestTotal - used - (count - 1 - index);
    for (let here = 1; here <= room; here += 1) {
      parts[index] = here;
      if (index === count - 1) judge(used + here);
      else fill(index + 1, used + here);
    }
  };
  fill(0, 0);
  return best;
}
