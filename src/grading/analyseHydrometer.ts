import type { HydrometerRecord } from "../lab/hydrometerRecord.js";
import { checkHydrometer } from "./checkHydrometer.js";
import { effectiveDepth } from "./effectiveDepth.js";
import type {
  HydrometerAnalysis,
  HydrometerAnalysisRow,
  HydrometerInput,
} from "./hydrometerAnalysis.js";
import { hydrometerDepth } from "./hydrometerDepth.js";
import { sedimentationPoints } from "./sedimentationPoints.js";
import { stokesDiameter } from "./stokesDiameter.js";
import { waterProperties } from "./waterProperties.js";

/**
 * Works out a hydrometer analysis (sedimentation in a 1 L cylinder) with a 152H or 151H hydrometer.
 *
 * Formula: corrected reading Rc = reading − control, which takes off dispersant, temperature and
 * meniscus in one (ASTM D422 clause 7, read). Percent of the dispersed mass W finer than the size:
 * 152H: 100 Rc a / W (read, atechcenter.com hyd11) with a = 1.65 G / (2.65 (G − 1)), from memory;
 * 151H: (100 000 / W) G / (G − 1) Rc (ASTM D422, from memory).
 * Size: Stokes' law with {@link waterProperties} and {@link effectiveDepth}; no remembered K table.
 * Percent of the whole sample: times the passing of the separating sieve / 100 (read, hyd12).
 * G = particle density / 1000 kg/m³.
 *
 * A reading outside the water table (10 to 30 °C) gives a finding and no point.
 *
 * @throws RangeError where a time, mass or density is not positive or a percentage not 0 to 100.
 *
 * @example
 * const record = { file: "h.csv", hydrometer: "152H", dryMassG: 81.09, separatingSizeMm: 2, meniscusCorrection: 1, readings: [{ timeMin: 2, reading: 38, control: 7.5, temperatureC: 20, row: 6 }] };
 * const { rows } = analyseHydrometer(record, { particleDensityKgM3: 2650, passingSeparatingPct: 58 });
 * rows[0].finerOfDispersedPct // => 37.6
 * rows[0].passingPct // => 21.8
 */
export function analyseHydrometer(
  record: HydrometerRecord,
  input: HydrometerInput,
): HydrometerAnalysis {
  const { particleDensityKgM3, passingSeparatingPct } = input;
  if (!(passingSeparatingPct >= 0 && passingSeparatingPct <= 100)) {
    throw new RangeError(
      `invalid \`passingSeparatingPct\`: ${passingSeparatingPct}; expected 0 to 100`,
    );
  }
  if (!(record.dryMassG > 0)) {
    throw new RangeError(`invalid \`dryMassG\`: ${record.dryMassG}; expected above 0`);
  }
  if (!(particleDensityKgM3 > 1000 && particleDensityKgM3 < Infinity)) {
    throw new RangeError(
      `invalid \`particleDensityKgM3\`: ${particleDensityKgM3}; expected above 1000`,
    );
  }
  const gravity = particleDensityKgM3 / 1000;
  const is152H = record.hydrometer === "152H";
  const densityFactor = is152H ? (1.65 * gravity) / (2.65 * (gravity - 1)) : 1;
  const pctPerUnit = is152H
    ? (100 * densityFactor) / record.dryMassG
    : ((100_000 / record.dryMassG) * gravity) / (gravity - 1);

  const rows: HydrometerAnalysisRow[] = [];
  record.readings.forEach(({ timeMin, reading, control, temperatureC, row }, index) => {
    if (!(timeMin > 0)) {
      throw new RangeError(`invalid \`readings[${index}].timeMin\`: ${timeMin}; expected above 0`);
    }
    const water = waterProperties(temperatureC);
    const trueReading = reading + record.meniscusCorrection;
    const effectiveDepthCm = input.calibration
      ? hydrometerDepth(input.calibration, trueReading)
      : effectiveDepth(record.hydrometer, trueReading);
    if (!water || !(effectiveDepthCm > 0)) return;
    const correctedReading = reading - control;
    const finerOfDispersedPct = correctedReading * pctPerUnit;
    rows.push({
      row,
      timeMin,
      temperatureC,
      correctedReading,
      effectiveDepthCm,
      viscosityMPaS: water.viscosityMPaS,
      sizeMm: stokesDiameter({
        depthCm: effectiveDepthCm,
        timeMin,
        viscosityMPaS: water.viscosityMPaS,
        waterDensityKgM3: water.densityKgM3,
        particleDensityKgM3,
      }),
      finerOfDispersedPct,
      passingPct: (finerOfDispersedPct * passingSeparatingPct) / 100,
    });
  });

  const points = sedimentationPoints(rows, passingSeparatingPct);
  return { points, rows, densityFactor, findings: checkHydrometer(record, rows) };
}
