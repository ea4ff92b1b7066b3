import type { Finding } from "../../findings/finding.js";
import type { PipetteRecord } from "../../lab/pipette.js";
import { checkThat } from "../../quantities/checkNumber.js";
import { say } from "../../words/message.js";
import type { GradingPoint } from "../curve.js";
import { stokesDiameter, waterBasis, waterProperties } from "./settling.js";
import {
  checkDispersed,
  pretreatmentFindings,
  type SedimentationAnalysis,
  type SedimentationInput,
  type SedimentationRow,
  sedimentationPoints,
  suspensionFindings,
  temperatureFindings,
} from "./suspension.js";

/** One line of the pipette table of a report. */
export interface PipetteAnalysisRow extends SedimentationRow {
  readonly depthMm: number;
  /** Mass finer than the size in the whole cylinder, dispersant taken off. */
  readonly finerG: number;
}

export type PipetteAnalysis = SedimentationAnalysis<PipetteAnalysisRow>;

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
export function analysePipette(record: PipetteRecord, input: SedimentationInput): PipetteAnalysis {
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
export function pipettePoints(record: PipetteRecord, input: SedimentationInput): GradingPoint[] {
  return sedimentationPoints(workedSamples(record, input), input.passingSeparatingPct);
}

function workedSamples(
  record: PipetteRecord,
  { particleDensityKgM3, passingSeparatingPct }: SedimentationInput,
): PipetteAnalysisRow[] {
  const { dryMassG, cylinderVolumeCm3, pipetteVolumeCm3 } = record;
  checkDispersed(passingSeparatingPct, dryMassG);
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
  const { file, pretreatment, samples } = record;
  return [
    ...pretreatmentFindings(file, pretreatment),
    ...samples.flatMap(({ row, temperatureC }) => temperatureFindings(file, row, temperatureC)),
    ...suspensionFindings(rows, {
      file,
      column: "solids",
      slackPct: SLACK_PCT,
      below: say`The sample holds less than its share of the dispersant.`,
      remedy: say`Check the dry mass, the two volumes and the mass of dispersant.`,
      before: "sample",
      riseRemedy: say`Check both weighings, times and depths.`,
    }),
  ];
}
