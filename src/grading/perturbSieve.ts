import type { SieveRecord } from "../lab/sieveRecord.js";
import type { Random } from "../numerics/random.js";
import type { ReadingErrors } from "./readingErrors.js";

/**
 * A sieve sheet as the same sample could have been read: each mass moved by the balance's error, some
 * of what a sieve retains moved to the next finer one (or back), and a recorded loss given back to a
 * sieve or the pan drawn by lot, since nobody knows where it was lost.
 */
export function perturbSieve(
  record: SieveRecord,
  { balanceG, sievingPct }: ReadingErrors,
  random: Random,
): SieveRecord {
  // A sieve that holds nothing is seen to hold nothing: only what lies on the balance is misread.
  const weighed = (mass: number) =>
    mass === 0 ? 0 : Math.max(0, mass + balanceG * random.normal());
  const retained = record.rows.map(({ retainedG }) => weighed(retainedG));
  const pan = record.rows.length;
  retained.push(weighed(record.panG));
  for (let index = 0; index < pan; index++) {
    // Near-size grains: they pass or stay by chance. Only within one set of sieves.
    if (record.splits.some(({ sizeMm }) => sizeMm === record.rows[index].sizeMm)) continue;
    const moved = (sievingPct / 100) * record.rows[index].retainedG * random.normal();
    const held = Math.max(-retained[index + 1], Math.min(retained[index], moved));
    retained[index] -= held;
    retained[index + 1] += held;
  }
  const lastSplitMm = record.splits.at(-1)?.sizeMm ?? Infinity;
  const own = record.rows.flatMap(({ sizeMm }, index) => (sizeMm < lastSplitMm ? [index] : []));
  const last = record.splits.at(-1) ?? record;
  const sieved = last.washedDryMassG ?? last.dryMassG;
  const loss =
    sieved - record.panG - own.reduce((sum, index) => sum + record.rows[index].retainedG, 0);
  if (loss > 0) {
    // Nor was anything lost onto a sieve that is seen to hold nothing.
    const places = [...own.filter((index) => record.rows[index].retainedG > 0), pan];
    const place = places[random.integer(places.length)];
    retained[place] += loss * random.uniform();
  }
  const dry = (mass: number) => mass + balanceG * random.normal();
  const washed = (mass: number | undefined) => (mass === undefined ? undefined : dry(mass));
  return {
    ...record,
    dryMassG: dry(record.dryMassG),
    washedDryMassG: washed(record.washedDryMassG),
    splits: record.splits.map((split) => ({
      ...split,
      dryMassG: dry(split.dryMassG),
      washedDryMassG: washed(split.washedDryMassG),
    })),
    rows: record.rows.map((row, index) => ({ ...row, retainedG: retained[index] })),
    panG: retained[pan],
  };
}
