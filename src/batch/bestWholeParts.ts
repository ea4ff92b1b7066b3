import { forEachWholeRatio } from "../numerics/forEachWholeRatio.js";

/**
 * Tries every ratio of whole parts (each at least 1) up to a total, and returns the one whose mass
 * shares differ least at their worst; among equals the one with fewest parts. `neverLess` names a part
 * whose ratio to the mass of the others may not fall. `accepts` may turn totals away. Null where no ratio
 * qualifies.
 */
export function bestWholeParts(of: {
  readonly densities: readonly number[];
  readonly shares: readonly number[];
  readonly largestTotal: number;
  readonly neverLess: number | null;
  readonly accepts?: (total: number) => boolean;
}): { readonly parts: readonly number[]; readonly largestChange: number } | null {
  const { densities, shares, largestTotal, neverLess, accepts } = of;
  const count = densities.length;
  let best: { parts: number[]; largestChange: number; total: number } | null = null;
  const judge = (parts: readonly number[], total: number) => {
    if (accepts && !accepts(total)) return;
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
  forEachWholeRatio(
    densities.map(() => 1),
    largestTotal,
    judge,
  );
  return best;
}
