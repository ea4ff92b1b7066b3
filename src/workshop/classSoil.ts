import type { Finding } from "../findings/finding.js";
import { type CharacteristicSizes, characteristicSizes } from "../grading/characteristics.js";
import { combineGrading } from "../grading/combinedGrading.js";
import type { GradingCurve } from "../grading/curve.js";
import { type Fractions, fractions } from "../grading/fractions.js";
import {
  analyseJar,
  type JarAnalysis,
  type JarComparison,
  jarComparison,
} from "../grading/sedimentation/jar.js";
import { analyseSieve, type SieveAnalysis } from "../grading/sieveAnalysis.js";
import { type JarRecord, readJar } from "../lab/jar.js";
import { readSieve, type SieveRecord } from "../lab/sieve.js";
import { StudyError } from "../study/study.js";

/** What a class reads off its jar and its balance, as typed into a notebook. */
export interface ClassReadings {
  readonly jar: {
    readonly waterDepthMm: number;
    /** Tops of the layers above the bottom of the jar. */
    readonly sandTopMm: number;
    readonly siltTopMm: number;
    readonly clayTopMm: number;
    /** When each top was read; default 1, 960 and 2880 min. */
    readonly sandMin?: number;
    readonly siltMin?: number;
    readonly clayMin?: number;
    /** Sieve through which the soil was put before. */
    readonly passedSizeMm?: number;
  };
  readonly sieve: {
    /** Before washing. */
    readonly dryMassG: number;
    readonly washedDryMassG: number;
    /** Coarse to fine. */
    readonly retained: readonly { readonly sizeMm: number; readonly massG: number }[];
    readonly panG: number;
  };
  /** What a laboratory found below the finest sieve, of the same soil; default none. */
  readonly laboratory?: readonly { readonly sizeMm: number; readonly passingPct: number }[];
}

/** The soil of a class, worked out as any soil of a study is. */
export interface ClassSoil {
  readonly jarRecord: JarRecord;
  readonly jar: JarAnalysis & { readonly laboratory: JarComparison["rows"] };
  readonly sieveRecord: SieveRecord;
  readonly sieve: SieveAnalysis;
  readonly curve: GradingCurve;
  readonly sizes: CharacteristicSizes;
  readonly fractions: Fractions;
  /** What the checks of the sheets say to the typed readings. */
  readonly findings: readonly Finding[];
}

/**
 * Works out what a class read: jar, sieving and, where a laboratory measured them, the finer grains. The
 * readings pass through the same readers and checks as the sheets of a study.
 *
 * A sieving that lost too much is worked out all the same, as a class is to see it: its findings say so.
 *
 * @throws StudyError, with all findings, where a reading cannot be: a negative mass, a layer that sinks.
 *
 * @example
 * const jar = { waterDepthMm: 240, sandTopMm: 60, siltTopMm: 80, clayTopMm: 100 };
 * const sieve = { dryMassG: 1000, washedDryMassG: 710, retained: [{ sizeMm: 4, massG: 0 }, { sizeMm: 2, massG: 300 }, { sizeMm: 0.063, massG: 400 }], panG: 10 };
 * classSoil({ jar, sieve }).curve.points.map(({ passingPct }) => passingPct) // => [30, 70, 100]
 */
export function classSoil({ jar, sieve, laboratory = [] }: ClassReadings): ClassSoil {
  const { sandMin = 1, siltMin = 960, clayMin = 2880, passedSizeMm } = jar;
  const jarReading = readJar({
    file: "jar",
    rows: textRows([
      ["water depth (mm)", jar.waterDepthMm],
      ...(passedSizeMm === undefined ? [] : [["passed sieve (mm)", passedSizeMm]]),
      [],
      ["layer", "time (min)", "top (mm)"],
      ["sand and gravel", sandMin, jar.sandTopMm],
      ["silt", siltMin, jar.siltTopMm],
      ["clay", clayMin, jar.clayTopMm],
    ]),
  });
  const sieveReading = readSieve({
    file: "sieving",
    rows: textRows([
      ["dry mass (g)", sieve.dryMassG],
      ["dry mass after washing (g)", sieve.washedDryMassG],
      [],
      ["sieve (mm)", "retained (g)"],
      ...sieve.retained.map(({ sizeMm, massG }) => [sizeMm, massG]),
      ["pan", sieve.panG],
    ]),
  });
  const { record: jarRecord } = jarReading;
  const { record: sieveRecord } = sieveReading;
  const readingFindings = [...jarReading.findings, ...sieveReading.findings];
  if (!jarRecord || !sieveRecord) throw new StudyError(readingFindings);
  const sieved = analyseSieve(sieveRecord);
  const { curve, ...combined } = combineGrading({
    sieve: sieved.points,
    sedimentation: laboratory.map((point) => ({ ...point, origin: "sedimentation" as const })),
    file: "sieving",
  });
  const settled = analyseJar(jarRecord);
  const against = jarComparison(jarRecord, settled, curve);
  return {
    jarRecord,
    jar: { ...settled, laboratory: against.rows },
    sieveRecord,
    sieve: sieved,
    curve,
    sizes: characteristicSizes(curve),
    fractions: fractions(curve),
    findings: [
      ...readingFindings,
      ...sieved.findings,
      ...combined.findings,
      ...settled.findings,
      ...against.findings,
    ],
  };
}

function textRows(rows: readonly (readonly (string | number)[])[]): string[][] {
  return rows.map((row) => row.map(String));
}
