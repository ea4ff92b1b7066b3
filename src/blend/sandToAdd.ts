import { checkThat } from "../quantities/checkNumber.js";
import { formatNumber } from "../quantities/format.js";
import type { Interval } from "../quantities/interval.js";
import { say, type Text } from "../words/message.js";
import { blendByHand } from "./byHand.js";

/** A value with the least and the most that it may be. */
export interface Estimate extends Interval {
  readonly middle: number;
}

/** A material as far as the first mix needs it. */
export interface RoughMaterial {
  readonly name: string;
  /** Fines of the dry mass, percent. */
  readonly finesPct: Interval;
  /** Dry mass in a loose volume, kg/m³. */
  readonly looseDensityKgM3: Estimate;
}

export interface SandToAdd {
  /** `perhaps`: within the error of the soil's fines none may be needed; `unreachable`: the sand has too many fines. */
  readonly status: "ok" | "perhaps" | "already" | "unreachable";
  readonly message: Text;
  /** Fines that the mix is to have, percent of the dry mass. */
  readonly targetPct: number;
  readonly soilFinesPct: Interval;
  readonly sandFinesPct: Interval;
  /** Parts of sand to one part of soil, by dry mass; absent where no sand helps. */
  readonly byMass?: Estimate;
  /** The same by loose volume. */
  readonly byVolume?: Estimate;
  /** The batch to try, with the middle of the range. */
  readonly batch?: TrialMix;
}

export interface TrialMix {
  readonly dryMassKg: number;
  readonly soilKg: number;
  readonly sandKg: number;
  /** Loose volumes, litres. */
  readonly soilL: Estimate;
  readonly sandL: Estimate;
  /** What its fines may be, given the errors of both materials, percent. */
  readonly finesPct: Interval;
}

/**
 * How much sand to add to a soil for a stated share of fines, where the fines are known as a range only, as
 * from a jar; with a small batch of the middle to try.
 *
 * Formula: sand to one of soil s = (F − T) / (T − S) by dry mass, F and S the fines of soil and sand, T the
 * target, percent; the ends of s from the ends of F and S, its middle from their middles. By loose volume
 * s ρsoil / ρsand, its ends from the ends of the densities too. Batch: soil M / (1 + s), sand M s / (1 + s);
 * its fines (F + s S) / (1 + s) at the ends of F and S.
 *
 * A jar is a first guide: the range says how far it can be trusted, and no more.
 *
 * @throws RangeError for shares not from 0 to 100, or densities and a mass that are not positive.
 * Source: mass balance, as `blendByHand`.
 *
 * @example
 * const density = { low: 1000, middle: 1200, high: 1400 };
 * const mix = sandToAdd({ soil: { name: "Soil", finesPct: { low: 40, high: 60 }, looseDensityKgM3: density }, sand: { name: "Sand", finesPct: { low: 0, high: 0 }, looseDensityKgM3: { low: 1400, middle: 1500, high: 1600 } }, targetPct: 30, batchDryMassKg: 10 });
 * [mix.byMass.low, mix.byMass.middle, mix.byMass.high] // => [0.3333, 0.6667, 1]
 * mix.byVolume.middle // => 0.5333
 * [mix.batch.soilKg, mix.batch.sandKg, mix.batch.finesPct.low, mix.batch.finesPct.high] // => [6, 4, 24, 36]
 */
export function sandToAdd(input: {
  readonly soil: RoughMaterial;
  readonly sand: RoughMaterial;
  readonly targetPct: number;
  readonly batchDryMassKg: number;
}): SandToAdd {
  const { soil, sand, targetPct, batchDryMassKg } = input;
  checkThat(batchDryMassKg > 0, { batchDryMassKg }, "above 0");
  for (const { looseDensityKgM3 } of [soil, sand]) {
    checkThat(looseDensityKgM3.low > 0, { low: looseDensityKgM3.low }, "above 0");
  }
  const [from, to] = [soil.finesPct, sand.finesPct];
  const partsAt = (soilPct: number, sandPct: number) =>
    blendByHand({ soilPct, sandPct, targetPct }).sandToOneOfSoil;
  const low = partsAt(from.low, to.low);
  const middle = partsAt((from.low + from.high) / 2, (to.low + to.high) / 2);
  const high = partsAt(from.high, to.high);
  const known = { targetPct, soilFinesPct: from, sandFinesPct: to };
  if (low === null || middle === null || high === null) {
    return { status: "unreachable", message: tooFine(input), ...known };
  }
  if (high === 0) return { status: "already", message: fineAlready(input), ...known };
  const byMass = { low, middle, high };
  const [ofSoil, ofSand] = [soil.looseDensityKgM3, sand.looseDensityKgM3];
  const byVolume = {
    low: (low * ofSoil.low) / ofSand.high,
    middle: (middle * ofSoil.middle) / ofSand.middle,
    high: (high * ofSoil.high) / ofSand.low,
  };
  return {
    status: low === 0 ? "perhaps" : "ok",
    message: addWords(input, byMass),
    ...known,
    byMass,
    byVolume,
    batch: trialMix(input, middle),
  };
}

type Input = Parameters<typeof sandToAdd>[0];

function trialMix({ soil, sand, batchDryMassKg }: Input, sandToOne: number): TrialMix {
  const soilKg = batchDryMassKg / (1 + sandToOne);
  const sandKg = batchDryMassKg - soilKg;
  const litres = (kilograms: number, { low, middle, high }: Estimate): Estimate => ({
    low: (1000 * kilograms) / high,
    middle: (1000 * kilograms) / middle,
    high: (1000 * kilograms) / low,
  });
  const fines = (end: "low" | "high") =>
    (soilKg * soil.finesPct[end] + sandKg * sand.finesPct[end]) / batchDryMassKg;
  return {
    dryMassKg: batchDryMassKg,
    soilKg,
    sandKg,
    soilL: litres(soilKg, soil.looseDensityKgM3),
    sandL: litres(sandKg, sand.looseDensityKgM3),
    finesPct: { low: fines("low"), high: fines("high") },
  };
}

/** A range narrower than this, in parts of its middle, needs no words; common practice, no source. */
const WELL_KNOWN = 0.1;

const two = (value: number) => formatNumber(value, 2);

function addWords({ soil, sand, targetPct }: Input, { low, middle, high }: Estimate): Text {
  if (middle === 0) {
    return say`Try ${soil.name} as it is: it may have less than ${two(targetPct)} % fines already, and at most it needs ${two(high)} parts of ${sand.name} to one part by dry mass.`;
  }
  if (low === 0) {
    return say`For ${two(targetPct)} % fines, up to ${two(high)} parts of ${sand.name} to one part of ${soil.name} by dry mass, and perhaps none: the fines content of the soil is not known more precisely. Start with ${two(middle)}.`;
  }
  if (high - low < WELL_KNOWN * middle) {
    return say`For ${two(targetPct)} % fines, ${two(middle)} parts of ${sand.name} to one part of ${soil.name} by dry mass.`;
  }
  return say`For ${two(targetPct)} % fines, ${two(low)} to ${two(high)} parts of ${sand.name} to one part of ${soil.name} by dry mass: the fines content of the soil is not known more precisely. Start with ${two(middle)}.`;
}

function fineAlready({ soil, targetPct }: Input): Text {
  return say`${soil.name} has no more than ${two(targetPct)} % fines as it is: sand would take it further away.`;
}

function tooFine({ sand, targetPct }: Input): Text {
  return say`${sand.name} may itself have ${two(targetPct)} % fines or more: it cannot be relied on to bring the soil down to that.`;
}
