import type { HydrometerCorrections, HydrometerRecord } from "../../lab/hydrometer.js";
import type { PipetteRecord } from "../../lab/pipette.js";
import type { SieveRecord } from "../../lab/sieve.js";
import { createRandom, type Random } from "../../numerics/random.js";
import { checkThat } from "../../quantities/checkNumber.js";
import { combinedCurve } from "../combinedGrading.js";
import { type GradingCurve, type GradingPoint, passingAtSize } from "../curve.js";
import { hydrometerPoints } from "../sedimentation/hydrometer.js";
import { UNITS_152H_PER_GRAVITY } from "../sedimentation/hydrometerDepth.js";
import { pipettePoints } from "../sedimentation/pipette.js";
import { sievePoints } from "../sieveAnalysis.js";

/** How far a lab's readings may be off: standard deviations, each of its own reading. */
export interface ReadingErrors {
  /** Each weighing on the balance, g. */
  readonly balanceG: number;
  /** Each weighing of a dried pipette sample, g. */
  readonly pipetteBalanceG: number;
  /** Volume of the pipette, percent, one error for all its samples. */
  readonly pipetteVolumePct: number;
  /** Mass that wanders between neighbouring sieves or is lost, percent of what a sieve retains. */
  readonly sievingPct: number;
  /** Hydrometer reading and control, in units of the 152H scale (g/L). */
  readonly hydrometerUnits: number;
  readonly temperatureC: number;
  /** Time of a reading, in seconds. */
  readonly timeS: number;
  /** Density of the particles, kg/m³. */
  readonly particleDensityKgM3: number;
}

/**
 * Reading errors taken where a study states none: common practice, no source. Balance 0.1 g, 1 % of
 * what a sieve retains, half a division of the hydrometer (its meniscus half of that), half a degree, two
 * seconds, 20 kg/m³; dried pipette samples to 1 mg and the pipette's volume to 0.5 %.
 * They say nothing about how well the sample stands for the heap, which is mostly worse.
 *
 * @example
 * DEFAULT_READING_ERRORS.hydrometerUnits // => 0.5
 */
export const DEFAULT_READING_ERRORS: ReadingErrors = {
  balanceG: 0.1,
  pipetteBalanceG: 0.001,
  pipetteVolumePct: 0.5,
  sievingPct: 1,
  hydrometerUnits: 0.5,
  temperatureC: 0.5,
  timeS: 2,
  particleDensityKgM3: 20,
};

export interface ReadingSheets {
  readonly sieve: SieveRecord;
  readonly hydrometer?: HydrometerRecord;
  /** In place of a hydrometer. */
  readonly pipette?: PipetteRecord;
  /** Needed with a hydrometer or a pipette. */
  readonly particleDensityKgM3?: number;
}

export interface ReadingResampleOptions {
  /** Whole number; the same seed gives the same curves. */
  readonly seed: number;
  /** Default 500. */
  readonly resamples?: number;
  /** Default `DEFAULT_READING_ERRORS`; what is left out is taken from there. */
  readonly errors?: Partial<ReadingErrors>;
}

/**
 * Curves as the same sample could have been measured: every reading is moved by its stated error and
 * the whole analysis is run again, sieve, hydrometer and joint.
 *
 * Hence errors of neighbouring points hang together as they do in the laboratory: a heavy sieve moves
 * all points below it. It holds reading and sieving errors alone: not how well the sample stands for
 * the heap, not a wrong method.
 *
 * @throws RangeError for a hydrometer without a particle density, fewer than 2 resamples, a negative
 * error, or sheets that cannot be analysed.
 *
 * @example
 * const sieve = { file: "s.csv", dryMassG: 1000, splits: [], panG: 100, rows: [{ sizeMm: 2, retainedG: 400, label: "2", row: 4 }, { sizeMm: 0.063, retainedG: 500, label: "0.063", row: 5 }] };
 * const exact = { balanceG: 0, sievingPct: 0 };
 * resampleReadings({ sieve }, { seed: 1, resamples: 2, errors: exact })[1].points.map(({ passingPct }) => passingPct) // => [10, 60]
 */
export function resampleReadings(
  { sieve, hydrometer, pipette, particleDensityKgM3 }: ReadingSheets,
  { seed, resamples = 500, errors: stated = {} }: ReadingResampleOptions,
): GradingCurve[] {
  const errors = { ...DEFAULT_READING_ERRORS, ...stated };
  for (const [name, value] of Object.entries(errors)) {
    checkThat(value >= 0 && value < Infinity, { [`errors.${name}`]: value }, "0 or more");
  }
  checkThat(Number.isInteger(resamples) && resamples >= 2, { resamples }, "a whole number from 2");
  const both = hydrometer && pipette;
  checkThat(!both, { pipette: "beside a hydrometer" }, "one of the two");
  const sediment = hydrometer ?? pipette;
  const isKnown = !sediment || particleDensityKgM3 !== undefined;
  checkThat(isKnown, { particleDensityKgM3 }, "above 1000");
  const random = createRandom(seed);
  const draw = (): GradingCurve => {
    const coarse = sievePoints(perturbSieve(sieve, errors, random));
    let fine: readonly GradingPoint[] = [];
    if (sediment && particleDensityKgM3 !== undefined) {
      const density = particleDensityKgM3 + errors.particleDensityKgM3 * random.normal();
      const { separatingSizeMm } = sediment;
      const passing = passingAtSize({ points: coarse }, separatingSizeMm);
      checkThat(passing !== undefined, { separatingSizeMm }, "within the sieves");
      const input = {
        particleDensityKgM3: Math.max(1001, density),
        passingSeparatingPct: passing,
      };
      fine = distinct(
        hydrometer
          ? hydrometerPoints(perturbHydrometer(hydrometer, errors, random), input)
          : pipettePoints(perturbPipette(sediment as PipetteRecord, errors, random), input),
      );
    }
    return combinedCurve(coarse, fine);
  };
  return Array.from({ length: resamples }, draw);
}

/** A mass weighed again: a sample that lay on the balance weighs something, however coarse the balance is. */
function weighedAgain(massG: number, balanceG: number, random: Random): number {
  return Math.max(massG / 2, massG + balanceG * random.normal());
}

/** Moved times may meet: two readings at the same size are one point. */
function distinct(points: readonly GradingPoint[]): GradingPoint[] {
  return points.filter(({ sizeMm }, index) => sizeMm !== points[index + 1]?.sizeMm);
}

/**
 * A sieve sheet as the same sample could have been read: each mass moved by the balance's error, some
 * of what a sieve retains moved to the next finer one (or back), and a recorded loss given back to a
 * sieve or the pan drawn by lot, since nobody knows where it was lost.
 */
function perturbSieve(
  record: SieveRecord,
  { balanceG, sievingPct }: ReadingErrors,
  random: Random,
): SieveRecord {
  // A sieve that holds nothing is seen to hold nothing: only what lies on the balance is misread.
  const weighed = (mass: number) =>
    mass === 0 ? 0 : Math.max(0, mass + balanceG * random.normal());
  const retained = record.rows.map(({ retainedG }) => weighed(retainedG));
  const pan = record.rows.length;
  retained.push(weighed(record.panG));
  for (let index = 0; index < pan; index++) {
    // Near-size grains: they pass or stay by chance. Only within one set of sieves.
    if (record.splits.some(({ sizeMm }) => sizeMm === record.rows[index].sizeMm)) continue;
    const moved = (sievingPct / 100) * record.rows[index].retainedG * random.normal();
    const held = Math.max(-retained[index + 1], Math.min(retained[index], moved));
    retained[index] -= held;
    retained[index + 1] += held;
  }
  const lastSplitMm = record.splits.at(-1)?.sizeMm ?? Infinity;
  const own = record.rows.flatMap(({ sizeMm }, index) => (sizeMm < lastSplitMm ? [index] : []));
  const last = record.splits.at(-1) ?? record;
  const sieved = last.washedDryMassG ?? last.dryMassG;
  const loss =
    sieved - record.panG - own.reduce((sum, index) => sum + record.rows[index].retainedG, 0);
  if (loss > 0) {
    // Nor was anything lost onto a sieve that is seen to hold nothing.
    const places = [...own.filter((index) => record.rows[index].retainedG > 0), pan];
    const place = places[random.integer(places.length)];
    retained[place] += loss * random.uniform();
  }
  const dry = (mass: number) => weighedAgain(mass, balanceG, random);
  const washed = (mass: number | undefined) => (mass === undefined ? undefined : dry(mass));
  return {
    ...record,
    dryMassG: dry(record.dryMassG),
    washedDryMassG: washed(record.washedDryMassG),
    splits: record.splits.map((split) => ({
      ...split,
      dryMassG: dry(split.dryMassG),
      washedDryMassG: washed(split.washedDryMassG),
    })),
    rows: record.rows.map((row, index) => ({ ...row, retainedG: retained[index] })),
    panG: retained[pan],
  };
}

/** Thermometer and clock of a reading, within the table of the water and after its start. */
function movedMoment(
  { temperatureC, timeMin }: { readonly temperatureC: number; readonly timeMin: number },
  degrees: number,
  timeS: number,
  random: Random,
) {
  return {
    temperatureC: Math.min(30, Math.max(10, temperatureC + degrees)),
    timeMin: Math.max(timeMin / 2, timeMin + (timeS / 60) * random.normal()),
  };
}

/**
 * A hydrometer sheet as the same suspension could have been read: readings and times move one by one;
 * control, meniscus, thermometer and dispersed mass are off for all readings together.
 */
export function perturbHydrometer(
  record: HydrometerRecord,
  { hydrometerUnits, temperatureC, timeS, balanceG }: ReadingErrors,
  random: Random,
): HydrometerRecord {
  const sd = hydrometerUnits / (record.hydrometer === "152H" ? 1 : UNITS_152H_PER_GRAVITY);
  const control = sd * random.normal();
  const degrees = temperatureC * random.normal();
  return {
    ...record,
    dryMassG: weighedAgain(record.dryMassG, balanceG, random),
    meniscusCorrection: record.meniscusCorrection + (sd / 2) * random.normal(),
    ...(record.corrections ? { corrections: movedBy(record.corrections, control) } : {}),
    readings: record.readings.map((reading) => ({
      ...reading,
      reading: reading.reading + sd * random.normal(),
      ...(reading.control === undefined ? {} : { control: reading.control + control }),
      ...movedMoment(reading, degrees, timeS, random),
    })),
  };
}

/**
 * Without a control cylinder its error is that of the dispersant's share, or of the equation's constant; the
 * temperature has its own.
 */
function movedBy(corrections: HydrometerCorrections, by: number): HydrometerCorrections {
  return "temperatureDensity" in corrections
    ? { temperatureDensity: corrections.temperatureDensity + by }
    : { ...corrections, dispersant: corrections.dispersant + by };
}

/**
 * A pipette sheet as the same suspension could have been sampled: each dried sample and each time moves
 * by itself; volume, thermometer and dispersed mass are off for all samples together.
 */
function perturbPipette(
  record: PipetteRecord,
  { pipetteBalanceG, pipetteVolumePct, balanceG, temperatureC, timeS }: ReadingErrors,
  random: Random,
): PipetteRecord {
  const degrees = temperatureC * random.normal();
  return {
    ...record,
    dryMassG: weighedAgain(record.dryMassG, balanceG, random),
    pipetteVolumeCm3: record.pipetteVolumeCm3 * (1 + (pipetteVolumePct / 100) * random.normal()),
    samples: record.samples.map((sample) => ({
      ...sample,
      solidsG: Math.max(0, sample.solidsG + pipetteBalanceG * random.normal()),
      ...movedMoment(sample, degrees, timeS, random),
    })),
  };
}
