import type { PipetteRecord } from "../lab/pipetteRecord.js";
import { checkPipette } from "./checkPipette.js";
import type { PipetteAnalysis, PipetteAnalysisRow, PipetteInput } from "./pipetteAnalysis.js";
import { sedimentationPoints } from "./sedimentationPoints.js";
import { stokesDiameter } from "./stokesDiameter.js";
import { waterProperties } from "./waterProperties.js";

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
 * rows[0].sizeMm // => 0.01994
 */
export function analysePipette(record: PipetteRecord, input: PipetteInput): PipetteAnalysis {
  const { particleDensityKgM3, passingSeparatingPct } = input;
  if (!(passingSeparatingPct >= 0 && passingSeparatingPct <= 100)) {
    throw new RangeError(
      `invalid \`passingSeparatingPct\`: ${passingSeparatingPct}; expected 0 to 100`,
    );
  }
  const { dryMassG, cylinderVolumeCm3, pipetteVolumeCm3 } = record;
  for (const [name, value] of Object.entries({ dryMassG, cylinderVolumeCm3, pipetteVolumeCm3 })) {
    if (!(value > 0)) throw new RangeError(`invalid \`${name}\`: ${value}; expected above 0`);
  }
  const rows = record.samples.flatMap((sample): PipetteAnalysisRow[] => {
    const { row, timeMin, depthMm, temperatureC, solidsG } = sample;
    const water = waterProperties(temperatureC);
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
  const points = sedimentationPoints(rows, passingSeparatingPct);
  const { pretreatment } = record;
  return {
    ...{ points, rows, findings: checkPipette(record, rows) },
    ...(pretreatment ? { pretreatment } : {}),
  };
}
