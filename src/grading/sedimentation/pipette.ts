import type { Finding } from "../../findings/finding.js";
import type { PipetteRecord } from "../../lab/pipette.js";
import type { Pretreatment } from "../../lab/pretreatment.js";
import { checkThat } from "../../quantities/checkNumber.js";
import { say } from "../../words/message.js";
import type { GradingPoint } from "../curve.js";
import { stokesDiameter, type WaterBasis, waterBasis, waterProperties } from "./settling.js";
import {
  percentFindings,
  pretreatmentFindings,
  riseFindings,
  sedimentationPoints,
  temperatureFindings,
} from "./suspension.js";

/** One line of the pipette table of a report. */
export interface PipetteAnalysisRow {
  readonly row: number;
  readonly timeMin: number;
  readonly depthMm: number;
  readonly temperatureC: number;
  readonly viscosityMPaS: number;
  readonly sizeMm: number;
  /** Mass finer than the size in the whole cylinder, dispersant taken off. */
  readonly finerG: number;
  /** Percent of the dispersed dry mass. */
  readonly finerOfDispersedPct: number;
  /** Percent of the whole sample. */
  readonly passingPct: number;
}

export interface PipetteAnalysis {
  /** Increasing size, percent of the whole sample. */
  readonly points: readonly GradingPoint[];
  /** In the order of time. */
  readonly rows: readonly PipetteAnalysisRow[];
  /** Whose viscosity of water the sizes rest on. */
  readonly water: WaterBasis;
  /** As the sheet gives it. */
  readonly pretreatment?: Pretreatment;
  readonly findings: readonly Finding[];
}

export interface PipetteInput {
  readonly particleDensityKgM3: number;
  /** Percent of the whole sample that passes the sieve that separated the dispersed material. */
  readonly passingSeparatingPct: number;
}

/**
 * Works out a pipette analysis: samples of a suspension, drawn at a depth and dried.
 *
 * Formula: mass finer in the whole cylinder Wi = mi V / Vp − Wd, percent finer 100 Wi / m, with mi the
 * dried contents of the pipette, V and Vp the volumes of cylinder and pipette, Wd the dispersant in the
 * cylinder and m the dispersed dry mass (from memory; the principle read in two pages that give no
 * numbers). Size: Stokes' law at the depth of the tip. Percent of the whole sample: times the passing
 * of the separating sieve / 100.
 *
 * @throws RangeError where a volume, mass or depth is not positive or a percentage not 0 to 100.
 *
 * @example
 * const record = { file: "p.csv", dryMassG: 20, separatingSizeMm: 0.063, cylinderVolumeCm3: 500, pipetteVolumeCm3: 10, dispersantG: 1, samples: [{ timeMin: 4.7, depthMm: 100, temperatureC: 20, solidsG: 0.22, row: 7 }] };
 * const { rows } = analysePipette(record, { particleDensityKgM3: 2650, passingSeparatingPct: 40 });
 * [rows[0].finerG, rows[0].finerOfDispersedPct, rows[0].passingPct] // => [10, 50, 20]
 * rows[0].sizeMm // => 0.01987
 */
export function analysePipette(record: PipetteRecord, input: PipetteInput): PipetteAnalysis {
  const rows = workedSamples(record, input);
  const { pretreatment } = record;
  return {
    points: sedimentationPoints(rows, input.passingSeparatingPct),
    rows,
    water: waterBasis(record.method),
    ...(pretreatment ? { pretreatment } : {}),
    findings: checkPipette(record, rows),
  };
}

/** The points alone, for the hundreds of sheets as they could have been read: nobody reads their findings. */
export function pipettePoints(record: PipetteRecord, input: PipetteInput): GradingPoint[] {
  return sedimentationPoints(workedSamples(record, input), input.passingSeparatingPct);
}

function workedSamples(
  record: PipetteRecord,
  { particleDensityKgM3, passingSeparatingPct }: PipetteInput,
): PipetteAnalysisRow[] {
  checkThat(
    passingSeparatingPct >= 0 && passingSeparatingPct <= 100,
    { passingSeparatingPct },
    "0 to 100",
  );
  const { dryMassG, cylinderVolumeCm3, pipetteVolumeCm3 } = record;
  checkThat(dryMassG > 0, { dryMassG }, "above 0");
  checkThat(cylinderVolumeCm3 > 0, { cylinderVolumeCm3 }, "above 0");
  checkThat(pipetteVolumeCm3 > 0, { pipetteVolumeCm3 }, "above 0");
  const basis = waterBasis(record.method);
  return record.samples.flatMap((sample): PipetteAnalysisRow[] => {
    const { row, timeMin, depthMm, temperatureC, solidsG } = sample;
    const water = waterProperties(temperatureC, basis);
    if (!water) return [];
    const finerG = (solidsG * cylinderVolumeCm3) / pipetteVolumeCm3 - record.dispersantG;
    const finerOfDispersedPct = (100 * finerG) / dryMassG;
    return [
      {
        row,
        timeMin,
        depthMm,
        temperatureC,
        viscosityMPaS: water.viscosityMPaS,
        sizeMm: stokesDiameter({
          depthCm: depthMm / 10,
          timeMin,
          viscosityMPaS: water.viscosityMPaS,
          waterDensityKgM3: water.densityKgM3,
          particleDensityKgM3,
        }),
        finerG,
        finerOfDispersedPct,
        passingPct: (finerOfDispersedPct * passingSeparatingPct) / 100,
      },
    ];
  });
}

/** Percentage points outside 0 to 100 that weighing explains; common practice, no source. */
const SLACK_PCT = 2;

/** What is wrong or doubtful about a pipette analysis. */
function checkPipette(record: PipetteRecord, rows: readonly PipetteAnalysisRow[]): Finding[] {
  const { file, samples } = record;
  const place = (row: number) => ({ file, row, column: "solids" });
  return [
    ...pretreatmentFindings(record),
    ...samples.flatMap(({ row, temperatureC }) => temperatureFindings(file, row, temperatureC)),
    ...rows.flatMap(({ row, finerOfDispersedPct }) =>
      percentFindings(place(row), finerOfDispersedPct, {
        slackPct: SLACK_PCT,
        below: say`The sample holds less than its share of the dispersant.`,
        remedy: say`Check the dry mass, the two volumes and the mass of dispersant.`,
      }),
    ),
    ...rows.slice(1).flatMap((row, index): Finding[] => {
      const before = rows[index];
      // A later sample at a lower depth may be of coarser grains.
      if (row.sizeMm > before.sizeMm) return [];
      return riseFindings(place(row.row), row.finerOfDispersedPct, before.finerOfDispersedPct, {
        before: "sample",
        remedy: say`Check both weighings, times and depths.`,
      });
    }),
  ];
}
