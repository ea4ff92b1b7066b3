import type { JarLayerName, JarRecord } from "../lab/jarRecord.js";
import { checkJar } from "./checkJar.js";
import type { JarAnalysis, JarShare } from "./jarAnalysis.js";
import { stokesDiameter } from "./stokesDiameter.js";
import { waterProperties } from "./waterProperties.js";

/** Share of a fresh layer's volume that is solid: common practice, no source; wide on purpose. */
const SOLID: Readonly<Record<JarLayerName, readonly [number, number]>> = {
  "sand and gravel": [0.55, 0.65],
  silt: [0.4, 0.55],
  clay: [0.1, 0.3],
};
/** Error of a height read on the glass, mm; common practice, no source. */
const READING_MM = 1;
const PARTICLE_KG_M3 = 2650;
const ROOM_C = 20;

/**
 * Works out a jar sedimentation test: shares of sand with gravel, silt and clay by layer height, each
 * with the interval that heights allow for shares by mass.
 *
 * Heights are not masses: a layer of clay is mostly water. Share by height = layer / whole. For the
 * interval each layer is given the least and the most solids that such layers have (sand 0.55 to 0.65,
 * silt 0.40 to 0.55, clay 0.10 to 0.30 of the volume; common practice, no source), and each height may
 * be off by 1 mm; low and high are the extremes of all of them together. Which sizes a layer holds
 * follows from Stokes' law with the depth of the water and the times that were read.
 *
 * It is a first guide: it cannot replace sieving and a hydrometer, and the finding says so each time.
 *
 * @throws RangeError where the record has not the three layers, or the depth is not positive.
 *
 * @example
 * const layers = [["sand and gravel", 1, 60], ["silt", 60, 80], ["clay", 1440, 100]].map(([name, timeMin, topMm], index) => ({ name, timeMin, topMm, row: index + 4 }));
 * const { shares } = analyseJar({ file: "j.csv", waterDepthMm: 200, layers });
 * shares.map(({ heightSharePct }) => heightSharePct) // => [60, 20, 20]
 * [shares[2].lowPct, shares[2].highPct] // => [3.578, 13.592]
 */
export function analyseJar(record: JarRecord): JarAnalysis {
  const { layers, waterDepthMm, temperatureC = ROOM_C } = record;
  if (layers.length !== 3) {
    throw new RangeError(
      `invalid \`layers\`: ${layers.length}; expected sand and gravel, silt, clay`,
    );
  }
  if (!(waterDepthMm > 0)) {
    throw new RangeError(`invalid \`waterDepthMm\`: ${waterDepthMm}; expected above 0`);
  }
  const heights = layers.map(({ topMm }, index) => topMm - (layers[index - 1]?.topMm ?? 0));
  const whole = layers[2].topMm;
  const water = waterProperties(temperatureC);
  const settledMm = layers.map(({ timeMin }) =>
    water
      ? stokesDiameter({
          depthCm: waterDepthMm / 10,
          timeMin,
          viscosityMPaS: water.viscosityMPaS,
          waterDensityKgM3: water.densityKgM3,
          particleDensityKgM3: PARTICLE_KG_M3,
        })
      : undefined,
  );
  const solids = layers.map(({ name }, index) =>
    ([0, 1] as const).map((end) => {
      const height = Math.max(0, heights[index] + (end === 0 ? -READING_MM : READING_MM));
      return height * SOLID[name][end];
    }),
  );
  const shares = layers.map(({ name }, index): JarShare => {
    const others = (end: 0 | 1) =>
      solids.reduce((sum, ends, other) => sum + (other === index ? 0 : ends[end]), 0);
    const share = (own: number, rest: number) => (own > 0 ? (100 * own) / (own + rest) : 0);
    return {
      name,
      heightMm: heights[index],
      heightSharePct: (100 * heights[index]) / whole,
      lowPct: share(solids[index][0], others(1)),
      highPct: share(solids[index][1], others(0)),
      ...(settledMm[index] === undefined ? {} : { finestMm: settledMm[index] }),
    };
  });
  return { shares, findings: checkJar(record, settledMm) };
}
