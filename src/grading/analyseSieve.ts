import type { SieveRecord } from "../lab/sieveRecord.js";
import { checkSieveSets } from "./checkSieveSets.js";
import type { GradingPoint } from "./gradingCurve.js";
import type { SieveAnalysis, SieveAnalysisRow, SieveOptions, SieveSet } from "./sieveAnalysis.js";

/**
 * Works out a sieve analysis, single or composite, washed or not.
 *
 * Formula: passing = 100 (1 − Σ retained / M) with M the dry mass before washing, so that fines washed
 * out count as passing the finest sieve. Below a split: passing = W + (P − W)(1 − Σ retained / m), with
 * P the passing at the split sieve, m the subsample's dry mass before washing, and W the part of the
 * whole that had been washed out before the split was taken (0 unless the whole sample was washed).
 * Source: composite form and the 2 % loss limit, University of Waterloo CIVE 153 hand-out, 2013 (read);
 * washing, WSDOT FOP for AASHTO T 27/T 11, opening pages (read). Other limits in use, from memory:
 * 0.3 % (AASHTO T 27), 1 % (BS 1377-2).
 *
 * A lost mass is not spread over the sieves: it counts as passing the finest one, and is told.
 *
 * @throws RangeError where a mass is not positive or a split sieve is not among the sieves.
 *
 * @example
 * const record = { file: "s.csv", dryMassG: 1000, splits: [], panG: 100, rows: [{ sizeMm: 2, retainedG: 400, label: "2", row: 4 }, { sizeMm: 0.063, retainedG: 500, label: "0.063", row: 5 }] };
 * analyseSieve(record).points.map(({ passingPct }) => passingPct) // => [10, 60]
 * analyseSieve(record).sets[0].lossPct // => 0
 */
export function analyseSieve(record: SieveRecord, options: SieveOptions = {}): SieveAnalysis {
  const rows: SieveAnalysisRow[] = [];
  const sets: SieveSet[] = [];
  const edges = record.splits.map(({ sizeMm }) => sizeMm);
  let arrivingPct = 100;
  let washedPct = 0;

  for (let portion = 0; portion <= record.splits.length; portion++) {
    const { dryMassG, washedDryMassG } = portion === 0 ? record : record.splits[portion - 1];
    if (!(dryMassG > 0)) {
      throw new RangeError(`invalid \`dryMassG\`: ${dryMassG}; expected above 0`);
    }
    const [coarse, fine] = [edges[portion - 1] ?? Infinity, edges[portion] ?? -Infinity];
    const own = record.rows.filter(({ sizeMm }) => sizeMm < coarse && sizeMm >= fine);
    // What one gram of this set stands for, in percent of the whole sample.
    const pctPerGram = (arrivingPct - washedPct) / dryMassG;
    let retainedG = 0;
    for (const { sizeMm, label, row, retainedG: onSieve } of own) {
      retainedG += onSieve;
      rows.push({
        sizeMm,
        label,
        row,
        retainedG: onSieve,
        retainedPct: onSieve * pctPerGram,
        passingPct: arrivingPct - retainedG * pctPerGram,
        portion,
      });
    }
    const washedOutG = dryMassG - (washedDryMassG ?? dryMassG);
    const last = portion === record.splits.length;
    const lossPct = (100 * (dryMassG - washedOutG - retainedG - record.panG)) / dryMassG;
    sets.push({ portion, dryMassG, washedOutG, retainedG, ...(last ? { lossPct } : {}) });
    if (last) break;
    if (own.at(-1)?.sizeMm !== edges[portion]) {
      throw new RangeError(
        `invalid \`splits[${portion}].sizeMm\`: ${edges[portion]}; expected one of the sieves of the set above it`,
      );
    }
    washedPct += washedOutG * pctPerGram;
    arrivingPct = rows[rows.length - 1].passingPct;
  }

  const points = rows
    .map(({ sizeMm, passingPct }): GradingPoint => {
      // A gain within the loss limit may push the finest passing a hair below 0.
      return { sizeMm, passingPct: Math.min(100, Math.max(0, passingPct)), origin: "sieve" };
    })
    .reverse();
  return { points, rows, sets, findings: checkSieveSets(record, rows, sets, options) };
}
