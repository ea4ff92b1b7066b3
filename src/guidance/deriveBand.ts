import type { BandPoint } from "./guidanceEntry.js";

/** A fraction between its neighbour's upper size and its own; percent of the dry mass. */
export interface BandFraction {
  /** Left out for the coarsest fraction: 100 % pass its end in any case. */
  readonly upToMm?: number;
  readonly minPct: number;
  readonly maxPct: number;
}

/**
 * What fraction limits say about the percent passing at the sizes between the fractions.
 *
 * Formula: fractions sum to 100, so passing at the end of fraction k lies between
 * max(Σ minima finer, 100 − Σ maxima coarser) and min(Σ maxima finer, 100 − Σ minima coarser).
 * Our arithmetic, not a published curve: it gives one point a boundary and nothing in between.
 *
 * @param fractions from the finest to the coarsest, all of the material.
 * @throws RangeError where no soil can meet all limits, or a limit is not 0 to 100 or the wrong way round.
 *
 * @example
 * deriveBand([{ upToMm: 0.002, minPct: 5, maxPct: 20 }, { upToMm: 0.063, minPct: 10, maxPct: 30 }, { minPct: 45, maxPct: 80 }]) // => [{ sizeMm: 0.002, lowPct: 5, highPct: 20 }, { sizeMm: 0.063, lowPct: 20, highPct: 50 }]
 */
export function deriveBand(fractions: readonly BandFraction[]): BandPoint[] {
  fractions.forEach(({ minPct, maxPct }, index) => {
    if (!(minPct >= 0 && minPct <= maxPct && maxPct <= 100)) {
      throw new RangeError(
        `invalid \`fractions[${index}]\`: ${minPct} to ${maxPct}; expected 0 to 100, smallest first`,
      );
    }
  });
  const sum = (part: readonly BandFraction[], key: "minPct" | "maxPct") =>
    part.reduce((total, fraction) => total + fraction[key], 0);
  if (sum(fractions, "minPct") > 100 || sum(fractions, "maxPct") < 100) {
    throw new RangeError(
      `invalid \`fractions\`: they add up to ${sum(fractions, "minPct")} to ${sum(fractions, "maxPct")}; expected a range that holds 100`,
    );
  }
  return fractions.flatMap(({ upToMm }, index): BandPoint[] => {
    if (upToMm === undefined) return [];
    const [finer, coarser] = [fractions.slice(0, index + 1), fractions.slice(index + 1)];
    return [
      {
        sizeMm: upToMm,
        lowPct: Math.max(sum(finer, "minPct"), 100 - sum(coarser, "maxPct")),
        highPct: Math.min(sum(finer, "maxPct"), 100 - sum(coarser, "minPct")),
      },
    ];
  });
}
