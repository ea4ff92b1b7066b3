import type { Finding } from "../lab/finding.js";
import type { SieveRecord } from "../lab/sieveRecord.js";
import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import { minimumSieveMass } from "./minimumSieveMass.js";
import type { SieveAnalysisRow, SieveOptions, SieveSet } from "./sieveAnalysis.js";

const LOSS_LIMIT_PCT = 2;

/** What is wrong or doubtful about a sieve analysis: mass balance, sample size, top size. */
export function checkSieveSets(
  record: SieveRecord,
  rows: readonly SieveAnalysisRow[],
  sets: readonly SieveSet[],
  { lossLimitPct = LOSS_LIMIT_PCT }: SieveOptions,
): Finding[] {
  return [
    ...sets.flatMap((set) => massBalance(record, rows, set, lossLimitPct)),
    ...sampleSize(record, rows),
    ...topSize(record, rows),
  ];
}

function massBalance(
  { file, panG }: SieveRecord,
  rows: readonly SieveAnalysisRow[],
  set: SieveSet,
  limitPct: number,
): Finding[] {
  const name = set.portion === 0 ? say`sample` : say`split subsample`;
  const sievedG = set.dryMassG - set.washedOutG;
  if (set.retainedG > sievedG * (1 + limitPct / 100)) {
    const last = rows.findLast(({ portion }) => portion === set.portion);
    return [
      {
        severity: "error",
        code: "retained-over-sample",
        file,
        row: last?.row,
        value: `${formatFixed(set.retainedG, 1)} g`,
        message: say`The sieves retain more than the ${name} that was put on them.`,
        expected: say`at most ${formatFixed(sievedG, 1)} g on all sieves of this set together`,
        wayOut: say`Check the dry masses and whether the masses are per sieve, not cumulative; check that rows below a split were weighed on the subsample.`,
      },
    ];
  }
  if (set.lossPct === undefined) return [];
  const size = Math.abs(set.lossPct);
  if (size <= limitPct / 2) return [];
  const beyond = size > limitPct;
  const gained = set.lossPct < 0;
  return [
    {
      severity: beyond ? "error" : "warning",
      code: gained ? "sieve-gain" : "sieve-loss",
      file,
      value: `${formatFixed(size, 2)} %`,
      message: say`${gained ? say`More` : say`Less`} mass was found after sieving than was put in: ${formatFixed(set.retainedG + panG + set.washedOutG, 1)} g of ${formatFixed(set.dryMassG, 1)} g of the ${name}, washed-out fines counted.`,
      expected: say`a difference within ${limitPct} % of the dry mass (University of Waterloo CIVE 153, 2013, for 2 %)`,
      wayOut: beyond
        ? say`Check the masses for a slip of the pen; if none is found, sieve a fresh sample.`
        : say`Check the masses; the result stands, with this remark.`,
    },
  ];
}

function sampleSize(record: SieveRecord, rows: readonly SieveAnalysisRow[]): Finding[] {
  if (record.massesUnknown) return [];
  // Nominal maximum: the sieve above the first that retains more than 10 % (AASHTO usage, from memory).
  const first = rows.findIndex(({ passingPct }) => passingPct < 90);
  const nominal = rows[first < 0 ? rows.length - 1 : Math.max(0, first - 1)];
  // The table speaks of aggregates; sands and soils without gravel need less than its first line.
  if (!nominal || nominal.sizeMm < 4.75) return [];
  const leastKg = minimumSieveMass(nominal.sizeMm);
  if (leastKg === undefined || record.dryMassG >= 1000 * leastKg) return [];
  return [
    {
      severity: "warning",
      code: "small-sample",
      file: record.file,
      row: nominal.row,
      value: `${formatFixed(record.dryMassG, 0)} g`,
      message: say`The sample is small for grains of ${nominal.label}: a few grains more or less would move the coarse end.`,
      expected: say`at least ${leastKg} kg (AASHTO T 27 as adopted by WSDOT, by nominal maximum size)`,
      wayOut: say`Sieve a larger sample of the coarse part, or take the coarse points with care.`,
    },
  ];
}

function topSize({ file }: SieveRecord, rows: readonly SieveAnalysisRow[]): Finding[] {
  const top = rows[0];
  if (!top || top.retainedG === 0) return [];
  return [
    {
      severity: "warning",
      code: "top-size-unknown",
      file,
      row: top.row,
      value: `${top.retainedG} g`,
      message: say`Material stayed on the coarsest sieve (${top.label}), so the largest grain is not known.`,
      expected: say`nothing retained on the coarsest sieve`,
      wayOut: say`Add the next coarser sieve through which everything passes, with 0 retained.`,
    },
  ];
}
