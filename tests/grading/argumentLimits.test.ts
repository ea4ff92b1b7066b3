import { describe, expect, it } from "vitest";
import { combineGrading } from "../../src/grading/combinedGrading.js";
import { passingAtSize, sizeAtPassing } from "../../src/grading/curve.js";
import { fitGrading } from "../../src/grading/models/fit.js";
import {
  analyseHydrometer,
  separateCorrections,
  temperatureDensityControl,
} from "../../src/grading/sedimentation/hydrometer.js";
import { hydrometerDepth } from "../../src/grading/sedimentation/hydrometerDepth.js";
import { analyseJar } from "../../src/grading/sedimentation/jar.js";
import { analysePipette } from "../../src/grading/sedimentation/pipette.js";
import { stokesDiameter, waterProperties } from "../../src/grading/sedimentation/settling.js";
import { analyseSieve } from "../../src/grading/sieveAnalysis.js";
import { resampleGrading } from "../../src/grading/uncertainty/fitBand.js";
import { quantityIntervals, readingSpread } from "../../src/grading/uncertainty/intervals.js";
import { resampleReadings } from "../../src/grading/uncertainty/readingErrors.js";
import { holdArguments } from "../support/argumentLimits.js";
import { curveOf, hydrometerRecord, sieveRecord } from "./gradingCases.js";

const CURVE = curveOf([0.063, 10], [0.5, 40], [2, 80], [8, 100]);
const SIEVE = sieveRecord([8, 2, 0.063], [0, 400, 500], 100);
const SOIL = { particleDensityKgM3: 2650, passingSeparatingPct: 60 };
const HYDROMETER = hydrometerRecord([[2, 30, 5, 20]]);
const settling = {
  depthCm: 10,
  timeMin: 60,
  viscosityMPaS: 1,
  waterDensityKgM3: 1000,
  particleDensityKgM3: 2650,
};
const marks = [
  { reading: 0, toNeckCm: 10 },
  { reading: 50, toNeckCm: 2 },
] as const;
const bulb = { marks, bulbLengthCm: 14, bulbVolumeCm3: 67, cylinderAreaCm2: 27.8 };
const pipette = {
  file: "p.csv",
  dryMassG: 20,
  separatingSizeMm: 0.063,
  cylinderVolumeCm3: 500,
  pipetteVolumeCm3: 10,
  dispersantG: 1,
  samples: [{ timeMin: 4, depthMm: 100, temperatureC: 20, solidsG: 0.2, row: 7 }],
};
const depth = (change: object) => hydrometerDepth({ ...bulb, ...change }, 25);
const point = (sizeMm: number, passingPct: number) =>
  ({ sizeMm, passingPct, origin: "sieve" }) as const;
const FIT = fitGrading(CURVE, "power");
const band = (options: object) =>
  resampleGrading(FIT, { sizesMm: [1], seed: 1, resamples: 2, ...options });

holdArguments([
  ["depthCm", (depthCm) => stokesDiameter({ ...settling, depthCm }), [1e-9], [0, Infinity]],
  ["timeMin", (timeMin) => stokesDiameter({ ...settling, timeMin }), [1e-9], [0, Infinity]],
  [
    "viscosityMPaS",
    (viscosityMPaS) => stokesDiameter({ ...settling, viscosityMPaS }),
    [1e-9],
    [0, Infinity],
  ],
  [
    "particleDensityKgM3",
    (particleDensityKgM3) => stokesDiameter({ ...settling, particleDensityKgM3 }),
    [1000.1],
    [1000, 999, Infinity],
  ],
  ["temperatureC", (value) => waterProperties(value), [-40, 99], [NaN]],
  ["sizeMm", (value) => passingAtSize(CURVE, value), [1e-9, Infinity], [0, -1, NaN]],
  ["passingPct", (value) => sizeAtPassing(CURVE, value), [0, 100], [-0.1, 100.1, NaN]],
  [
    "sieve[0].sizeMm",
    (size) => combineGrading({ sieve: [point(size, 5)], file: "" }),
    [1e-9],
    [0, Infinity],
  ],
  [
    "sieve[0].passingPct",
    (pct) => combineGrading({ sieve: [point(1, pct)], file: "" }),
    [0, 100],
    [-0.1, 100.1],
  ],
  ["dryMassG", (dryMassG) => analyseSieve({ ...SIEVE, dryMassG }), [1e-9], [0, NaN]],
  ["dryMassG", (dryMassG) => analyseHydrometer({ ...HYDROMETER, dryMassG }, SOIL), [1e-9], [0]],
  ["dryMassG", (dryMassG) => analysePipette({ ...pipette, dryMassG }, SOIL), [1e-9], [0]],
  [
    "passingSeparatingPct",
    (passingSeparatingPct) => analyseHydrometer(HYDROMETER, { ...SOIL, passingSeparatingPct }),
    [0, 100],
    [-0.1, 100.1],
  ],
  [
    "passingSeparatingPct",
    (passingSeparatingPct) => analysePipette(pipette, { ...SOIL, passingSeparatingPct }),
    [0, 100],
    [-0.1, 100.1],
  ],
  [
    "particleDensityKgM3",
    (particleDensityKgM3) => analyseHydrometer(HYDROMETER, { ...SOIL, particleDensityKgM3 }),
    [1000.1],
    [1000, Infinity],
  ],
  [
    "cylinderVolumeCm3",
    (cylinderVolumeCm3) => analysePipette({ ...pipette, cylinderVolumeCm3 }, SOIL),
    [1e-9],
    [0],
  ],
  [
    "pipetteVolumeCm3",
    (pipetteVolumeCm3) => analysePipette({ ...pipette, pipetteVolumeCm3 }, SOIL),
    [1e-9],
    [0],
  ],
  ["bulbLengthCm", (bulbLengthCm) => depth({ bulbLengthCm }), [0], [-0.1]],
  ["bulbVolumeCm3", (bulbVolumeCm3) => depth({ bulbVolumeCm3 }), [0.1], [0]],
  ["cylinderAreaCm2", (cylinderAreaCm2) => depth({ cylinderAreaCm2 }), [0.1], [0]],
  [
    "depths[1].reading",
    (reading) =>
      hydrometerDepth(
        {
          depths: [
            { reading: 5, depthCm: 9 },
            { reading, depthCm: 8 },
          ],
        },
        5,
      ),
    [5.1],
    [5, 4],
  ],
  ["constant", (value) => temperatureDensityControl("152H", value, 20), [7.5], [NaN, Infinity]],
  [
    "dispersant",
    (dispersant) =>
      separateCorrections({
        hydrometer: "152H",
        temperatureC: 20,
        dispersant,
        meniscusCorrection: 0,
      }),
    [-3],
    [NaN, Infinity],
  ],
  ["coverage", (coverage) => band({ coverage }), [0.01, 0.99], [0, 1]],
  ["resamples", (resamples) => band({ resamples }), [2], [1, 2.5]],
  [
    "resamples",
    (resamples) => resampleReadings({ sieve: SIEVE }, { seed: 1, resamples }),
    [2],
    [1, 2.5],
  ],
  [
    "errors.balanceG",
    (balanceG) =>
      resampleReadings({ sieve: SIEVE }, { seed: 1, resamples: 2, errors: { balanceG } }),
    [0],
    [-0.1, Infinity],
  ],
  ["coverage", (coverage) => quantityIntervals([CURVE, CURVE], { coverage }), [0.01, 0.99], [0, 1]],
  ["curves", (count) => quantityIntervals(Array(count).fill(CURVE)), [2], [1]],
  ["curves", (count) => readingSpread(Array(count).fill(CURVE), [1]), [2], [1]],
  ["floorPct", (floorPct) => readingSpread([CURVE, CURVE], [1], floorPct), [1e-9], [0]],
  ["sdPct", (sd) => fitGrading(CURVE, "power", undefined, () => sd), [1e-3], [0, Infinity, NaN]],
]);

describe("arguments that hang together", () => {
  it("are refused where a list has too few", () => {
    const layers = (["sand and gravel", "silt", "clay"] as const).map((name, index) => ({
      name,
      timeMin: [1, 60, 1440][index],
      topMm: 20 * index + 60,
      row: index,
    }));
    const jar = { file: "j.csv", waterDepthMm: 200, layers };
    expect(analyseJar(jar).shares).toHaveLength(3);
    expect(() => analyseJar({ ...jar, layers: layers.slice(1) })).toThrow("invalid `layers`: 2");
    expect(() => analyseJar({ ...jar, waterDepthMm: 0 })).toThrow("invalid `waterDepthMm`: 0");
    const one = [{ reading: 5, depthCm: 9 }];
    expect(() => hydrometerDepth({ depths: one }, 5)).toThrow("invalid `depths`: 1 pairs");
    // As many points as parameters can be fitted, one less cannot.
    expect(fitGrading(curveOf([0.1, 20], [1, 60]), "lognormal").degreesOfFreedom).toBe(0);
    expect(() => fitGrading(curveOf([1, 60]), "lognormal")).toThrow(
      "invalid `curve`: 1 points that tell; expected at least 2 for “lognormal”",
    );
  });

  it("that a hydrometer needs are asked for by name", () => {
    const without = { ...HYDROMETER.readings[0], control: undefined };
    expect(() => analyseHydrometer({ ...HYDROMETER, readings: [without] }, SOIL)).toThrow(
      "invalid `readings[0].control`: undefined; expected a reading, or corrections",
    );
    for (const hydrometer of ["BS", "g/mL"] as const) {
      expect(() => analyseHydrometer({ ...HYDROMETER, hydrometer }, SOIL)).toThrow(
        `invalid \`calibration\`: undefined; expected one for a ${hydrometer} hydrometer`,
      );
      expect(() => temperatureDensityControl(hydrometer, 1, 20)).toThrow(
        `invalid \`hydrometer\`: ${hydrometer}; expected 151H or 152H`,
      );
    }
    const coarse = { sieve: SIEVE, pipette: { ...pipette, separatingSizeMm: 0.01 } };
    expect(() => resampleReadings({ ...coarse, ...SOIL }, { seed: 1 })).toThrow(
      "invalid `separatingSizeMm`: 0.01; expected within the sieves",
    );
  });
});
