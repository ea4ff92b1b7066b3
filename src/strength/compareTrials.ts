import { differenceCiede2000 } from "culori";
import type { WorkshopTrial } from "../lab/workshopTrial.js";

export interface TrialDifference {
  readonly one: string;
  readonly other: string;
  /** CIEDE2000. */
  readonly deltaE: number;
  readonly words: "hardly seen" | "seen side by side" | "seen at a glance";
}

/**
 * Colour differences between all pairs of trials that have a CIELAB value, largest first.
 *
 * CIEDE2000 with all weights 1. Below about 1 hardly seen, to about 5 seen side by side, beyond that at
 * a glance: common practice, no source. A photograph's colours hold only among pictures of one light,
 * one camera setting and one grey card.
 *
 * @throws RangeError for a colour that is not finite. Source: Sharma, Wu & Dalal 2005, by the package
 * culori; their test pairs (from memory) are in `tests/strength`.
 *
 * @example
 * const trial = (id, l, a, b) => ({ id, mix: id, row: 2, lab: { l, a, b } });
 * const [pair] = compareTrials([trial("A", 50, 2.6772, -79.7751), trial("B", 50, 0, -82.7485)]);
 * pair.deltaE // => 2.0425
 */
export function compareTrials(trials: readonly WorkshopTrial[]): TrialDifference[] {
  const difference = differenceCiede2000();
  const coloured = trials.flatMap(({ id, lab }) => {
    if (!lab) return [];
    for (const [name, value] of Object.entries(lab)) {
      if (!Number.isFinite(value)) {
        throw new RangeError(`invalid \`lab.${name}\` of ${id}: ${value}; expected a number`);
      }
    }
    // Named lab65 so that the numbers go into the formula as they are, not adapted to another white.
    return [{ id, colour: { mode: "lab65", ...lab } as const }];
  });
  const pairs = coloured.flatMap(({ id, colour }, index) =>
    coloured.slice(index + 1).map((other): TrialDifference => {
      const deltaE = difference(colour, other.colour);
      const words =
        deltaE < 1 ? "hardly seen" : deltaE < 5 ? "seen side by side" : "seen at a glance";
      return { one: id, other: other.id, deltaE, words };
    }),
  );
  return pairs.sort((a, b) => b.deltaE - a.deltaE);
}
