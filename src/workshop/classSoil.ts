import type { Finding } from "../findings/finding.js";
import { type CharacteristicSizes, characteristicSizes } from "../grading/characteristics.js";
import { combineGrading } from "../grading/combinedGrading.js";
import type { GradingCurve, GradingPoint } from "../grading/curve.js";
import { type BoundarySystem, type Fractions, fractions } from "../grading/fractions.js";
import {
  analyseJar,
  type JarAnalysis,
  type JarComparison,
  jarComparison,
} from "../grading/sedimentation/jar.js";
import { analyseSieve, type SieveAnalysis } from "../grading/sieveAnalysis.js";
import type { JarRecord } from "../lab/jar.js";
import type { SieveRecord } from "../lab/sieve.js";

export interface ClassReadings {
  readonly sieve: SieveRecord;
  readonly jar?: JarRecord;
  /** What a laboratory found below the finest sieve, of the same soil; default nothing. */
  readonly laboratory?: readonly GradingPoint[];
  /** Boundaries of the fractions; default `iso14688`. */
  readonly boundaries?: BoundarySystem;
}

/** The soil of a group, worked out as any soil of a study is. */
export interface ClassSoil {
  readonly sieveRecord: SieveRecord;
  readonly sieve: SieveAnalysis;
  /** Whether the fines were washed out before sieving. */
  readonly washed: boolean;
  readonly jarRecord?: JarRecord;
  readonly jar?: JarAnalysis & { readonly laboratory: JarComparison["rows"] };
  readonly curve: GradingCurve;
  readonly sizes: CharacteristicSizes;
  readonly fractions: Fractions;
  readonly findings: readonly Finding[];
}

/**
 * Works out what a group read: sieving, jar and, where a laboratory measured them, the finer grains. A
 * sieving that lost too much is worked out all the same, as a class is to see it: its findings say so.
 *
 * To a sample that was not washed the laboratory's fines are not joined: most of its own fines still cling
 * to the sand, so the two would speak of two soils.
 *
 * @example
 * const row = (sizeMm, retainedG, row) => ({ sizeMm, retainedG, label: String(sizeMm), row });
 * const sieve = { file: "class.csv", dryMassG: 1000, washedDryMassG: 710, splits: [], rows: [row(4, 0, 5), row(2, 300, 6), row(0.063, 400, 7)], panG: 10 };
 * classSoil({ sieve }).curve.points.map(({ passingPct }) => passingPct) // => [30, 70, 100]
 */
export function classSoil({
  sieve: record,
  jar: jarRecord,
  laboratory = [],
  boundaries = "iso14688",
}: ClassReadings): ClassSoil {
  const sieve = analyseSieve(record);
  const washed = record.washedDryMassG !== undefined;
  const finestMm = record.rows[record.rows.length - 1].sizeMm;
  const { curve, ...combined } = combineGrading({
    sieve: sieve.points,
    sedimentation: washed ? laboratory.filter(({ sizeMm }) => sizeMm < finestMm) : [],
    file: record.file,
  });
  const settled = jarRecord && analyseJar(jarRecord);
  const against = jarRecord && settled ? jarComparison(jarRecord, settled, curve) : undefined;
  return {
    sieveRecord: record,
    sieve,
    washed,
    ...(jarRecord ? { jarRecord } : {}),
    ...(settled && against ? { jar: { ...settled, laboratory: against.rows } } : {}),
    curve,
    sizes: characteristicSizes(curve),
    fractions: fractions(curve, boundaries),
    findings: [
      ...sieve.findings,
      ...combined.findings,
      ...(settled?.findings ?? []),
      ...(against?.findings ?? []),
    ],
  };
}
