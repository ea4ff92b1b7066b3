import { type Finding, finding, findingIf } from "../findings/finding.js";
import type { SieveRecord } from "../lab/sieve.js";
import { checkThat } from "../quantities/checkNumber.js";
import { formatFixed, formatPlain } from "../quantities/format.js";
import { say, type Text } from "../words/message.js";
import type { GradingPoint } from "./curve.js";

/** One line of the sieve table of a report. */
export interface SieveAnalysisRow {
  readonly sizeMm: number;
  readonly label: string;
  /** Row of the sheet. */
  readonly row: number;
  readonly retainedG: number;
  /** Percent of the whole sample's dry mass. */
  readonly retainedPct: number;
  readonly passingPct: number;
  /** 0: sieved on the whole sample; 1: on the first split's subsample, and so on. */
  readonly portion: number;
}

/** The mass balance of one set of sieves. */
export interface SieveSet {
  readonly portion: number;
  readonly dryMassG: number;
  /** Fines lost to the wash water: dry mass before less dry mass after washing. */
  readonly washedOutG: number;
  /** Sum retained in this set, without the pan. */
  readonly retainedG: number;
  /**
   * Mass missing after sieving, percent of the dry mass before washing; negative where mass was gained.
   * Undefined where the material that passed the set was split and not weighed as a whole.
   */
  readonly lossPct?: number;
}

export interface SieveAnalysis {
  /** The sheet gave percentages and no mass: what reads as grams here is percent of the whole. */
  readonly massesUnknown?: true;
  /** Increasing size. */
  readonly points: readonly GradingPoint[];
  /** As sieved, coarse to fine. */
  readonly rows: readonly SieveAnalysisRow[];
  readonly sets: readonly SieveSet[];
  readonly findings: readonly Finding[];
}

/**
 * Works out a sieve analysis, single or composite, washed or not.
 *
 * Formula: passing = 100 (1 − Σ retained / M) with M the dry mass before washing, so that fines washed
 * out count as passing the finest sieve. Below a split: passing = W + (P − W)(1 − Σ retained / m), with
 * P the passing at the split sieve, m the subsample's dry mass before washing, and W the part of the
 * whole that had been washed out before the split was taken (0 unless the whole sample was washed).
 * Source: composite form and the 2 % loss limit, University of Waterloo CIVE 153 hand-out, 2013 (read);
 * washing, WSDOT FOP for AASHTO T 27/T 11, opening pages (read). Where the sheet names its form of
 * test, the limit is that of the form, from memory: 1 % (EN 933-1, BS 1377-2), 0.3 % (AASHTO T 27).
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
export function analyseSieve(record: SieveRecord): SieveAnalysis {
  const { rows, sets } = sieveSets(record);
  return {
    ...(record.massesUnknown ? { massesUnknown: true } : {}),
    points: pointsOf(rows),
    rows,
    sets,
    findings: checkSieveSets(record, rows, sets),
  };
}

/** The points alone, for the hundreds of sheets as they could have been read: nobody reads their findings. */
export function sievePoints(record: SieveRecord): GradingPoint[] {
  return pointsOf(sieveSets(record).rows);
}

function pointsOf(rows: readonly SieveAnalysisRow[]): GradingPoint[] {
  return rows
    .map(({ sizeMm, passingPct }): GradingPoint => {
      // A gain within the loss limit may push the finest passing a hair below 0.
      return { sizeMm, passingPct: Math.min(100, Math.max(0, passingPct)), origin: "sieve" };
    })
    .reverse();
}

function sieveSets(record: SieveRecord): Pick<SieveAnalysis, "rows" | "sets"> {
  const rows: SieveAnalysisRow[] = [];
  const sets: SieveSet[] = [];
  let [arrivingPct, washedPct] = [100, 0];
  for (let portion = 0; portion <= record.splits.length; portion++) {
    const sieved = sieveSet(record, portion, arrivingPct, washedPct);
    rows.push(...sieved.rows);
    sets.push(sieved.set);
    washedPct += sieved.set.washedOutG * sieved.pctPerGram;
    arrivingPct = rows.at(-1)?.passingPct ?? arrivingPct;
  }
  return { rows, sets };
}

/** Works out the sieves of one portion: the whole sample (0), or the subsample of a split. */
function sieveSet(
  record: SieveRecord,
  portion: number,
  arrivingPct: number,
  washedPct: number,
): { readonly rows: SieveAnalysisRow[]; readonly set: SieveSet; readonly pctPerGram: number } {
  const { splits } = record;
  const { dryMassG, washedDryMassG } = portion === 0 ? record : splits[portion - 1];
  checkThat(dryMassG > 0, { dryMassG }, "above 0");
  const last = portion === splits.length;
  const coarse = splits[portion - 1]?.sizeMm ?? Infinity;
  const fine = splits[portion]?.sizeMm ?? -Infinity;
  const own = record.rows.filter(({ sizeMm }) => sizeMm < coarse && sizeMm >= fine);
  const isSieve = last || own.at(-1)?.sizeMm === fine;
  const splitName = `splits[${portion}].sizeMm`;
  checkThat(isSieve, { [splitName]: fine }, "one of the sieves of the set above it");
  // What one gram of this set stands for, in percent of the whole sample.
  const pctPerGram = (arrivingPct - washedPct) / dryMassG;
  let retainedG = 0;
  const rows = own.map(({ sizeMm, label, row, retainedG: onSieve }): SieveAnalysisRow => {
    retainedG += onSieve;
    return {
      sizeMm,
      label,
      row,
      retainedG: onSieve,
      retainedPct: onSieve * pctPerGram,
      passingPct: arrivingPct - retainedG * pctPerGram,
      portion,
    };
  });
  const washedOutG = dryMassG - (washedDryMassG ?? dryMassG);
  const lossPct = (100 * (dryMassG - washedOutG - retainedG - record.panG)) / dryMassG;
  const set = { portion, dryMassG, washedOutG, retainedG, ...(last ? { lossPct } : {}) };
  return { rows, set, pctPerGram };
}

/** Largest loss or gain of a set, percent of its dry mass, by the form of test that the sheet names. */
const LOSS_LIMITS: readonly {
  readonly method: RegExp;
  readonly limitPct: number;
  readonly source: Text;
}[] = [
  {
    method: /\bEN\s*933|17892|\b1377\b/i,
    limitPct: 1,
    source: say`EN 933-1 and BS 1377-2, from memory`,
  },
  {
    method: /\bT\s*-?27\b|\bC\s*-?136\b/i,
    limitPct: 0.3,
    source: say`AASHTO T 27 and ASTM C136, from memory`,
  },
  {
    method: /(?:)/,
    limitPct: 2,
    source: say`University of Waterloo CIVE 153, 2013, read`,
  },
];

function lossLimit({ method = "" }: SieveRecord) {
  return LOSS_LIMITS.find((limit) => limit.method.test(method))!;
}

/** What is wrong or doubtful about a sieve analysis: mass balance, sample size, top size. */
function checkSieveSets(
  record: SieveRecord,
  rows: readonly SieveAnalysisRow[],
  sets: readonly SieveSet[],
): Finding[] {
  return [
    ...sets.flatMap((set) => massBalance(record, rows, set)),
    ...sampleSize(record, rows),
    ...topSize(record, rows),
  ];
}

function massBalance(
  record: SieveRecord,
  rows: readonly SieveAnalysisRow[],
  set: SieveSet,
): Finding[] {
  const { file, panG, massesUnknown } = record;
  const { limitPct, source } = lossLimit(record);
  const { dryMassG, washedOutG, retainedG, lossPct } = set;
  const name = set.portion === 0 ? say`sample` : say`split subsample`;
  const sievedG = dryMassG - washedOutG;
  if (retainedG > sievedG * (1 + limitPct / 100)) {
    const row = rows.findLast(({ portion }) => portion === set.portion)?.row;
    const retained = formatFixed(retainedG, 1);
    const value = massesUnknown ? say`${retained} %` : say`${retained} g`;
    const words = massesUnknown
      ? {
          message: say`The percentages retained add up to more than the whole sample.`,
          expected: say`100 % on all sieves and in the pan together`,
          remedy: say`Check the percentages; where each row counts all coarser sieves with it, name the column “cumulative retained (%)”.`,
        }
      : {
          message: say`The sieves retain more than the ${name} that was put on them.`,
          expected: say`at most ${formatFixed(sievedG, 1)} g on all sieves of this set together`,
          remedy: say`Check the dry masses and whether the masses are per sieve, not cumulative; check that rows below a split were weighed on the subsample.`,
        };
    return [finding({ file, row, value }, "error", "retained-over-sample", words)];
  }
  if (lossPct === undefined) return [];
  const size = Math.abs(lossPct);
  const gained = lossPct < 0;
  const place = { file, value: say`${formatFixed(size, 2)} %` };
  return findingIf(size > limitPct, place, "error", gained ? "sieve-gain" : "sieve-loss", {
    message: say`${gained ? say`More` : say`Less`} mass was found after sieving than was put in: ${formatFixed(retainedG + panG + washedOutG, 1)} g of ${formatFixed(dryMassG, 1)} g of the ${name}, washed-out fines counted.`,
    expected: say`a difference within ${limitPct} % of the dry mass (${source})`,
    remedy: say`Check the masses for writing errors; if there are none, sieve a fresh sample.`,
  });
}

function sampleSize(record: SieveRecord, rows: readonly SieveAnalysisRow[]): Finding[] {
  if (record.massesUnknown) return [];
  // Nominal maximum: the sieve above the first that retains more than 10 % (AASHTO usage, from memory).
  const first = rows.findIndex(({ passingPct }) => passingPct < 90);
  const nominal = rows[first < 0 ? rows.length - 1 : Math.max(0, first - 1)];
  // The table speaks of aggregates; sands and soils without gravel need less than its first line.
  if (!nominal || nominal.sizeMm < 4.75) return [];
  const minKg = minimumSieveMass(nominal.sizeMm);
  if (minKg === undefined) return [];
  const { file, dryMassG } = record;
  const place = { file, row: nominal.row, value: say`${formatFixed(dryMassG, 0)} g` };
  return findingIf(dryMassG < 1000 * minKg, place, "warning", "small-sample", {
    message: say`The sample is small for grains of ${nominal.label}: a few grains more or less would shift the coarse end.`,
    expected: say`at least ${minKg} kg (AASHTO T 27 as adopted by WSDOT, by nominal maximum size)`,
    remedy: say`Sieve a larger sample of the coarse part, or treat the coarse points with caution.`,
  });
}

function topSize(
  { file, massesUnknown }: SieveRecord,
  rows: readonly SieveAnalysisRow[],
): Finding[] {
  return rows.slice(0, 1).flatMap(({ row, label, retainedG }) => {
    const retained = formatPlain(retainedG);
    const value = massesUnknown ? say`${retained} %` : say`${retained} g`;
    return findingIf(retainedG !== 0, { file, row, value }, "warning", "top-size-unknown", {
      message: say`Material was retained on the coarsest sieve (${label}), so the maximum grain size is not known.`,
      expected: say`nothing retained on the coarsest sieve`,
      remedy: say`Add the next coarser sieve through which everything passes, with 0 retained.`,
    });
  });
}

/** Nominal maximum size in mm and the least mass in kg. */
const MIN_KG: readonly (readonly [number, number])[] = [
  [4.75, 0.5],
  [6.3, 1],
  [9.5, 1],
  [12.5, 2],
  [16, 2],
  [19, 3],
  [25, 6],
  [31.5, 7.5],
  [37.5, 9],
  [50, 10],
  [63, 12],
  [75, 15],
  [90, 20],
];

/**
 * Least dry mass that represents a material of a nominal maximum grain size; a size between two lines
 * of the table takes the larger mass.
 *
 * Source: AASHTO T 27 as adopted by WSDOT (T 27/T 11, read).
 *
 * @returns kg, or `undefined` above 90 mm, where the table ends.
 *
 * @example
 * minimumSieveMass(19) // => 3
 * minimumSieveMass(20) // => 6
 * minimumSieveMass(120) // => undefined
 */
export function minimumSieveMass(nominalSizeMm: number): number | undefined {
  return MIN_KG.find(([sizeMm]) => sizeMm >= nominalSizeMm)?.[1];
}
