import type { HydrometerRecord } from "../lab/hydrometerRecord.js";
import { bsHydrometer } from "./bsHydrometer.js";
import { checkHydrometer } from "./checkHydrometer.js";
import { effectiveDepth } from "./effectiveDepth.js";
import type {
  HydrometerAnalysis,
  HydrometerAnalysisRow,
  HydrometerInput,
} from "./hydrometerAnalysis.js";
import { hydrometerDepth } from "./hydrometerDepth.js";
import { sedimentationPoints } from "./sedimentationPoints.js";
import { separateCorrections } from "./separateCorrections.js";
import { stokesDiameter } from "./stokesDiameter.js";
import { waterProperties } from "./waterProperties.js";

/**
 * Works out a hydrometer analysis (sedimentation in a 1 L cylinder) with a 152H, 151H or BS hydrometer.
 *
 * Formula: corrected reading Rc = reading − control, which takes off dispersant, temperature and
 * meniscus in one (ASTM D422 clause 7, read); where the record has separate corrections, the control
 * is what {@link separateCorrections} makes of them. Percent of the dispersed mass W finer than the size:
 * 152H: 100 Rc a / W (read, atechcenter.com hyd11) with a = 1.65 G / (2.65 (G − 1)), from memory;
 * 151H and BS, in specific gravity: (100 000 / W) G / (G − 1) Rc (ASTM D422, from memory; the same as
 * the form of BS 1377-2, read, with thousandths).
 * Size: Stokes' law with {@link waterProperties} and the depth of {@link hydrometerDepth} where there is
 * a calibration, else of {@link effectiveDepth}; no remembered K table.
 * Percent of the whole sample: times the passing of the separating sieve / 100 (read, hyd12).
 * G = particle density / 1000 kg/m³.
 *
 * A BS hydrometer also gets the size of the form of BS 1377-2 ({@link bsHydrometer}) for comparison.
 * A reading outside the water table (10 to 30 °C) gives a finding and no point.
 *
 * @throws RangeError where a time, mass or density is not positive, a percentage not 0 to 100, a
 * reading without control or corrections, or a BS hydrometer without a calibration.
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
  const calibration = input.calibration ?? record.calibration;
  if (record.hydrometer === "BS" && !calibration) {
    throw new RangeError("invalid `calibration`: undefined; expected one for a BS hydrometer");
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
    const effectiveDepthCm = calibration
      ? hydrometerDepth(calibration, trueReading)
      : effectiveDepth(record.hydrometer, trueReading);
    if (!water || !(effectiveDepthCm > 0)) return;
    const computedControl =
      control === undefined && record.corrections
        ? separateCorrections({ ...record, ...record.corrections, temperatureC })
        : undefined;
    const taken = control ?? computedControl;
    if (taken === undefined) {
      throw new RangeError(
        `invalid \`readings[${index}].control\`: ${control}; expected a reading, or corrections`,
      );
    }
    const correctedReading = reading - taken;
    const finerOfDispersedPct = correctedReading * pctPerUnit;
    rows.push({
      row,
      timeMin,
      temperatureC,
      ...(computedControl === undefined ? {} : { computedControl }),
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
      ...(record.hydrometer === "BS"
        ? {
            bsSizeMm: bsHydrometer({
              ...{ reading: 1000 * (reading - 1), control: 1000 * (taken - 1) },
              meniscusCorrection: 1000 * record.meniscusCorrection,
              ...{ depthMm: 10 * effectiveDepthCm, timeMin, viscosityMPaS: water.viscosityMPaS },
              ...{ particleDensityKgM3, dryMassG: record.dryMassG },
            }).sizeMm,
          }
        : {}),
      finerOfDispersedPct,
      passingPct: (finerOfDispersedPct * passingSeparatingPct) / 100,
    });
  });

  const points = sedimentationPoints(rows, passingSeparatingPct);
  const { corrections, pretreatment } = record;
  return {
    ...{ points, rows, densityFactor },
    ...(corrections ? { corrections } : {}),
    ...(calibration ? { calibration } : {}),
    ...(pretreatment ? { pretreatment } : {}),
    findings: checkHydrometer(record, rows, calibration),
  };
}
