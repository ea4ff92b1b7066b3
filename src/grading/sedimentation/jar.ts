import { type Finding, finding, findingIf } from "../../findings/finding.js";
import type { JarLayerName, JarRecord } from "../../lab/jar.js";
import { checkThat } from "../../quantities/checkNumber.js";
import { formatFixed, formatNumber } from "../../quantities/format.js";
import type { Interval } from "../../quantities/interval.js";
import { say, wordFor } from "../../words/message.js";
import { type GradingCurve, passingAtSize } from "../curve.js";
import { SIZE_BOUNDARIES } from "../fractions.js";
import { stokesDiameter, waterProperties } from "./settling.js";

export interface JarShare {
  readonly name: JarLayerName;
  readonly heightMm: number;
  /** Percent of the settled height: not of the mass. */
  readonly heightSharePct: number;
  /** What the share by dry mass may be, percent. */
  readonly lowPct: number;
  readonly highPct: number;
  /** Smallest grain that had settled from the surface when the layer's top was read; absent outside 10 to 30 °C. */
  readonly finestMm?: number;
}

export interface JarAnalysis {
  /** Sand with gravel, silt, clay. */
  readonly shares: readonly JarShare[];
  readonly findings: readonly Finding[];
}

/** Share of a fresh layer's volume that is solid: common practice, no source; wide on purpose. */
const SOLID: Readonly<Record<JarLayerName, readonly [number, number]>> = {
  "sand and gravel": [0.55, 0.65],
  silt: [0.4, 0.55],
  clay: [0.1, 0.3],
};
/** Error of a height read on the glass, mm; common practice, no source. */
const READING_MM = 1;
/** Taken for the settling times, since a jar's sheet asks for no density; common practice, no source. */
const PARTICLE_KG_M3 = 2650;
/** Taken where the sheet gives no temperature, and told. */
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
  checkThat(layers.length === 3, { layers: layers.length }, "sand and gravel, silt, clay");
  checkThat(waterDepthMm > 0, { waterDepthMm }, "above 0");
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

/** A layer of the jar beside the laboratory's share of the same grains. */
export interface JarAgainstLaboratory {
  readonly name: JarLayerName;
  /** Percent by dry mass of what went into the jar; absent where the curve does not reach. */
  readonly laboratoryPct?: number;
  /** Whether it lies within what the height allows; absent with it. */
  readonly agrees?: boolean;
}

export interface JarComparison {
  readonly rows: readonly JarAgainstLaboratory[];
  readonly findings: readonly Finding[];
}

/**
 * Holds a jar test against the laboratory's curve of the same soil: a first guide beside a measurement.
 *
 * Formula: sand and gravel 100 (Pm − P0.063) / Pm, silt 100 (P0.063 − P0.002) / Pm, clay 100 P0.002 / Pm,
 * with Pm the passing at the sieve through which the soil was put before it went into the jar (100 where
 * it was not), boundaries of ISO 14688-1. A note tells each layer whose interval misses the laboratory's
 * share; the jar changes nothing in the curve.
 *
 * @example
 * const layers = [["sand and gravel", 1, 60], ["silt", 930, 80], ["clay", 2880, 100]].map(([name, timeMin, topMm], index) => ({ name, timeMin, topMm, row: index + 4 }));
 * const record = { file: "j.csv", waterDepthMm: 200, layers };
 * const curve = { points: [{ sizeMm: 0.002, passingPct: 18, origin: "sedimentation" }, { sizeMm: 0.063, passingPct: 40, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * jarComparison(record, analyseJar(record), curve).rows.map(({ laboratoryPct, agrees }) => [laboratoryPct, agrees]) // => [[60, false], [22, true], [18, false]]
 */
export function jarComparison(
  { file, layers, passedSizeMm }: JarRecord,
  { shares }: Pick<JarAnalysis, "shares">,
  curve: GradingCurve,
): JarComparison {
  const { clayMm, siltMm } = SIZE_BOUNDARIES.iso14688;
  const [clay, fines] = [clayMm, siltMm].map((sizeMm) => passingAtSize(curve, sizeMm));
  const put = passedSizeMm === undefined ? 100 : passingAtSize(curve, passedSizeMm);
  const share = (coarse: number | undefined, fine: number | undefined) =>
    put === undefined || !(put > 0) || coarse === undefined || fine === undefined
      ? undefined
      : (100 * (coarse - fine)) / put;
  const laboratory: Readonly<Record<JarLayerName, number | undefined>> = {
    "sand and gravel": share(put, fines),
    silt: share(fines, clay),
    clay: share(clay, 0),
  };
  const rows = shares.map(({ name, lowPct, highPct }): JarAgainstLaboratory => {
    const laboratoryPct = laboratory[name];
    if (laboratoryPct === undefined) return { name };
    return { name, laboratoryPct, agrees: laboratoryPct >= lowPct && laboratoryPct <= highPct };
  });
  const findings = rows.flatMap(({ name, laboratoryPct, agrees }, index): Finding[] => {
    if (laboratoryPct === undefined) return [];
    const { lowPct, highPct } = shares[index];
    const place = { file, row: layers[index].row, column: "layer", value: name };
    return findingIf(!agrees, place, "note", "jar-against-laboratory", {
      message: say`The jar allows ${formatFixed(lowPct, 0)} to ${formatFixed(highPct, 0)} % of ${wordFor(name)} by mass, the laboratory measured ${formatFixed(laboratoryPct, 1)} % of what went into the jar.`,
      expected: say`the laboratory's share within what the height of the layer allows`,
      remedy: say`The laboratory's curve is used. Check that both had the same soil, put through the same sieve, and that the jar was read at the right times.`,
    });
  });
  return { rows, findings };
}

/** Size that ends a layer (ISO 14688-1); clay settles to the end of the test. */
const ENDS_MM = [0.063, 0.002];
/** Factor between the size that had settled and the one that ends the layer; common practice, no source. */
const FAR = 2;
/** Clay hardly settles before a day; common practice, no source. */
const LAST_READING_MIN = 1440;

/** What is doubtful about a jar test; the first finding always is that it is a first guide. */
function checkJar(record: JarRecord, settledMm: readonly (number | undefined)[]): Finding[] {
  return [
    finding({ file: record.file }, "warning", "jar-first-guide", {
      message: say`Layer heights are not masses: clay settles loosely and looks like more than it is, and flocculated clay settles with the silt. The test is a first guide only.`,
      expected: say`sieving and a hydrometer or pipette before a mix is decided`,
      remedy: say`Use the shares to choose which soils go to the laboratory.`,
    }),
    ...temperature(record, settledMm),
    ...ENDS_MM.flatMap((endMm, index) => readingTime(record, index, endMm, settledMm[index])),
    ...stillCloudy(record),
  ];
}

function temperature(
  { file, temperatureC }: JarRecord,
  settledMm: readonly (number | undefined)[],
): Finding[] {
  if (temperatureC === undefined) {
    return [
      finding({ file }, "note", "jar-temperature-taken", {
        message: say`The sheet gives no temperature: 20 °C was taken for the settling times.`,
        expected: say`“temperature (C)” above the table`,
        remedy: say`No action needed unless the water was cold: at 10 °C it takes 30 % longer.`,
      }),
    ];
  }
  const place = { file, value: say`${temperatureC} °C` };
  const isOutside = settledMm.includes(undefined);
  return findingIf(isOutside, place, "warning", "temperature-outside-table", {
    message: say`The viscosity of water is not tabulated at this temperature: no sizes can be given.`,
    expected: say`10 to 30 °C`,
    remedy: say`Repeat the test at room temperature.`,
  });
}

/** Code of the finding that a boundary was read when grains of another size had settled. */
export const JAR_READING_TIME = "jar-reading-time";

function readingTime(
  { file, layers }: JarRecord,
  index: number,
  endMm: number,
  settledMm: number | undefined,
): Finding[] {
  if (settledMm === undefined) return [];
  const { timeMin, row, name } = layers[index];
  const share =
    settledMm > endMm
      ? say`${wordFor(name)} counts with the layer above it`
      : say`${wordFor(layers[index + 1].name)} counts with the ${wordFor(name)}`;
  const place = { file, row, column: "time", value: say`${formatNumber(timeMin)} min` };
  const isFar = settledMm > endMm * FAR || settledMm < endMm / FAR;
  return findingIf(isFar, place, "warning", JAR_READING_TIME, {
    message: say`After this time grains down to ${formatNumber(settledMm, 2)} mm had settled from the surface, so part of the ${share}.`,
    expected: say`a reading when grains of ${endMm} mm have settled, in this water after about ${formatNumber(timeMin * (settledMm / endMm) ** 2, 2)} min`,
    remedy: say`Read the top at that time, or take the boundary at the size given here.`,
  });
}

function stillCloudy({ file, layers }: JarRecord): Finding[] {
  const { timeMin, row } = layers[layers.length - 1];
  const place = { file, row, column: "time", value: say`${formatNumber(timeMin)} min` };
  return findingIf(timeMin < LAST_READING_MIN, place, "warning", "jar-still-cloudy", {
    message: say`The last reading was taken before a day had passed: clay still in suspension is not counted.`,
    expected: say`${LAST_READING_MIN} min or more, with clear water`,
    remedy: say`Let the jar stand and read the top again.`,
  });
}

/**
 * What the share of fines (silt and clay together, of the dry mass of what went into the jar) may be, percent:
 * 100 less the most and the least that the layer of sand and gravel may hold.
 *
 * @example
 * const layers = [["sand and gravel", 1, 60], ["silt", 60, 80], ["clay", 1440, 100]].map(([name, timeMin, topMm], index) => ({ name, timeMin, topMm, row: index + 4 }));
 * const { low, high } = jarFines(analyseJar({ file: "j.csv", waterDepthMm: 200, layers }));
 * [low, high] // => [19.33, 35.49]
 */
export function jarFines({ shares }: Pick<JarAnalysis, "shares">): Interval {
  const [{ lowPct, highPct }] = shares;
  return { low: 100 - highPct, high: 100 - lowPct };
}
