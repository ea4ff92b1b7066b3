import { forEachWholeRatio } from "../numerics/wholeRatios.js";

interface WholePartsSearch {
  /** Dry mass in a part of each. */
  readonly densities: readonly number[];
  /** Wanted shares of the whole dry mass, as fractions. */
  readonly shares: readonly number[];
  readonly maxTotal: number;
  /** The part whose share of the mass may not fall, if any. */
  readonly cementIndex: number | null;
  /** Turns a total of parts, or the shares that it gives, away. The shares are one array for all calls. */
  readonly accepts?: (total: number, shares: readonly number[]) => boolean;
}

interface WholeParts {
  readonly parts: readonly number[];
  /** Largest change of any share, as a fraction. */
  readonly maxChange: number;
}

/**
 * Tries every ratio of whole parts (each at least 1) up to a total, and returns the one whose mass
 * shares differ least at their worst; among equals the one with fewest parts. Null where none qualifies.
 */
export function bestWholeParts(search: WholePartsSearch): WholeParts | null {
  const { densities, shares: wanted, maxTotal, cementIndex, accepts } = search;
  const shares = densities.map(() => 0);
  let best: (WholeParts & { readonly total: number }) | null = null;
  const judge = (parts: readonly number[], total: number) => {
    const maxChange = sharesOf(parts, densities, wanted, shares);
    const gain = best === null ? Infinity : best.maxChange - maxChange;
    // Nearly all end here: what the caller asks of a ratio takes longer to find than its nearness.
    if (!(gain > 1e-12 || (gain >= -1e-12 && total < best!.total))) return;
    // Rounding error alone must not turn an exact ratio away.
    if (cementIndex !== null && shares[cementIndex] < wanted[cementIndex] - 1e-12) return;
    if (accepts && !accepts(total, shares)) return;
    best = { parts: [...parts], maxChange, total };
  };
  // Each share tells between which masses the whole lies; lists whose first parts leave none are not tried.
  const worth = (parts: readonly number[], count: number) => {
    if (best === null) return true;
    const reach = best.maxChange + 1e-9;
    let [least, most] = [0, Infinity];
    for (let i = 0; i < count; i += 1) {
      const mass = parts[i] * densities[i];
      least = Math.max(least, mass / (wanted[i] + reach));
      if (wanted[i] > reach) most = Math.min(most, mass / (wanted[i] - reach));
    }
    return least <= most;
  };
  const atLeastOne = densities.map(() => 1);
  forEachWholeRatio(atLeastOne, maxTotal, judge, worth);
  return best;
}

/** Writes the shares of the mass into `shares` and gives the largest change. It runs a million times. */
function sharesOf(
  parts: readonly number[],
  densities: readonly number[],
  wanted: readonly number[],
  shares: number[],
): number {
  let mass = 0;
  for (let i = 0; i < parts.length; i += 1) mass += parts[i] * densities[i];
  let maxChange = 0;
  for (let i = 0; i < parts.length; i += 1) {
    shares[i] = (parts[i] * densities[i]) / mass;
    maxChange = Math.max(maxChange, Math.abs(shares[i] - wanted[i]));
  }
  return maxChange;
}

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
