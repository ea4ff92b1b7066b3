import type { GradingCurve } from "../grading/curve.js";
import { createRandom, type Random } from "../numerics/random.js";
import { checkThat } from "../quantities/checkNumber.js";
import { say, type Text } from "../words/message.js";
import { designBlend, MIN_SHARE_PCT } from "./design.js";
import { blendProgramme, keepsConditions } from "./limits.js";
import { type BlendMaterial, blendPassing, checkOneEach } from "./material.js";
import type { BandTargetPoint, BlendLimit } from "./target.js";

/** How a material may differ from the sample that was tested. */
export interface MaterialVariation {
  readonly id: string;
  /** Points of fines from load to load: 19 of 20 loads lie within plus or minus this of the sample. */
  readonly finesPlusMinusPct?: number;
  /** Other curves of the same material (further samples, or resampled ones): one is drawn each time. */
  readonly curves?: readonly GradingCurve[];
  /** Error of its share when batching, percent of the share: 19 of 20 batches within plus or minus this. */
  readonly batchingPlusMinusPct?: number;
}

export interface RobustnessInput {
  readonly materials: readonly BlendMaterial[];
  readonly sharesPct: readonly number[];
  readonly band: readonly BandTargetPoint[];
  readonly variation: readonly MaterialVariation[];
  /** Default 10 000. */
  readonly draws?: number;
  /** Whole number; the same seed gives the same answer; default 1. */
  readonly seed?: number;
}

export interface RobustPoint {
  readonly sizeMm: number;
  readonly lowPct: number;
  readonly highPct: number;
  /** The 5th, 50th and 95th of a hundred blends. */
  readonly p05Pct: number;
  readonly medianPct: number;
  readonly p95Pct: number;
  /** Part of the draws inside the band at this size, 0 to 1. */
  readonly insideProbability: number;
}

export interface Robustness {
  readonly draws: number;
  readonly seed: number;
  /** Part of the draws inside the band at every size, 0 to 1. */
  readonly insideProbability: number;
  /** Standard error of that, from the number of draws alone. */
  readonly standardError: number;
  readonly points: readonly RobustPoint[];
  /** The size at which the blend leaves the band most often. */
  readonly worst: RobustPoint;
}

/**
 * How often a blend stays inside a band when its materials vary as stated.
 *
 * Each draw gives every material fines that differ by a normal error (standard deviation: plus-minus /
 * 1.96; held between 0 and 100 %), with all that is finer than 0.063 mm in proportion and all that is
 * coarser in proportion; or another of its curves; and its share an error of batching. Sizes are judged
 * on the same draw, so that the probability for the whole band takes account of their standing together.
 *
 * What varies and how much is the user's statement: the probability is no better than that.
 * @throws RangeError where draws, shares or variation are out of range, or an id is unknown.
 * Source: Monte Carlo, own arithmetic; the normal error is our choice.
 *
 * @example
 * const material = (id, finesPct) => ({ id, curve: { points: [{ sizeMm: 0.063, passingPct: finesPct, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] }, minSharePct: 0, maxSharePct: 100 });
 * const materials = [material("soil", 40), material("sand", 0)];
 * const found = robustness({ materials, sharesPct: [50, 50], band: [{ sizeMm: 0.063, lowPct: 17.5, highPct: 22.5 }], variation: [{ id: "soil", finesPlusMinusPct: 5 }] });
 * [found.insideProbability] // => [0.95]
 */
export function robustness(input: RobustnessInput): Robustness {
  const { materials, sharesPct, band, variation, draws = 10_000, seed = 1 } = input;
  checkOneEach("sharesPct", sharesPct, materials);
  checkThat(band.length > 0, { band: "[]" }, "at least one size");
  const blend = drawnBlends({ materials, band, variation, draws, seed })(sharesPct);
  const sizes = band.length;
  const inside = band.map(() => 0);
  let all = 0;
  for (let k = 0; k < draws; k += 1) {
    let whole = true;
    for (let i = 0; i < sizes; i += 1) {
      const value = blend[k * sizes + i];
      if (value >= band[i].lowPct - 1e-9 && value <= band[i].highPct + 1e-9) inside[i] += 1;
      else whole = false;
    }
    if (whole) all += 1;
  }
  const points = band.map(({ sizeMm, lowPct, highPct }, i): RobustPoint => {
    const sorted = Float64Array.from({ length: draws }, (_, k) => blend[k * sizes + i]).sort();
    const at = (part: number) => sorted[Math.round(part * (draws - 1))];
    return {
      sizeMm,
      lowPct,
      highPct,
      p05Pct: at(0.05),
      medianPct: at(0.5),
      p95Pct: at(0.95),
      insideProbability: inside[i] / draws,
    };
  });
  const insideProbability = all / draws;
  return {
    draws,
    seed,
    insideProbability,
    standardError: Math.sqrt((insideProbability * (1 - insideProbability)) / draws),
    points,
    worst: points.reduce((worst, point) =>
      point.insideProbability < worst.insideProbability ? point : worst,
    ),
  };
}

export interface RobustBlendInput extends Omit<RobustnessInput, "sharesPct"> {
  readonly limits?: readonly BlendLimit[];
}

export interface RobustBlend {
  readonly status: "ok" | "infeasible";
  readonly message: Text;
  readonly sharesPct: readonly number[];
  /** Judged on new draws, not on those that chose the shares. */
  readonly robustness: Robustness | null;
  /** The blend nearest to the band's middle, on the same new draws: what the search gained. */
  readonly nearestMiddle: Robustness | null;
}

const SEARCH_DRAWS = 1000;
const FIRST_STEP_PCT = 16;
const LAST_STEP_PCT = 0.125;

/**
 * The shares that stay inside a band most often when the materials vary as stated.
 *
 * Search: from the blend nearest to the band's middle, shares are moved between pairs of materials by
 * 16 points, then half as much and so on to 0.125, on 1000 fixed draws, while more draws lie inside or,
 * where as many do, while those outside leave the band by less. The probability reported is from new draws.
 * @returns `infeasible` where no blend keeps the limits. The search finds a local best; `nearestMiddle`
 * shows what it gained.
 * @throws as `designBlend` and `robustness`. Source: own method.
 *
 * @example
 * const material = (id, finesPct) => ({ id, curve: { points: [{ sizeMm: 0.063, passingPct: finesPct, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] }, minSharePct: 0, maxSharePct: 100 });
 * const materials = [material("soil", 40), material("sand", 0)];
 * const found = robustBlend({ materials, band: [{ sizeMm: 0.063, lowPct: 15, highPct: 25 }], variation: [{ id: "soil", finesPlusMinusPct: 5 }] });
 * found.robustness.insideProbability // => 1.0
 */
export function robustBlend(input: RobustBlendInput): RobustBlend {
  const { materials, band, variation, limits = [], seed = 1 } = input;
  const start = designBlend({ materials, limits, target: { kind: "band-middle", points: band } });
  if (start.status !== "ok") {
    const { message } = start;
    return { status: "infeasible", message, sharesPct: [], robustness: null, nearestMiddle: null };
  }
  const { rows } = blendProgramme(materials, limits);
  const drawn = drawnBlends({ materials, band, variation, draws: SEARCH_DRAWS, seed });
  const judge = (sharesPct: readonly number[]) => {
    const blend = drawn(sharesPct);
    let [inside, outside] = [0, 0];
    for (let k = 0; k < blend.length; k += band.length) {
      let off = 0;
      for (let i = 0; i < band.length; i += 1) {
        const value = blend[k + i];
        off += Math.max(band[i].lowPct - value, value - band[i].highPct, 0);
      }
      if (off <= 1e-9) inside += 1;
      else outside += off;
    }
    return { inside, outside };
  };
  const first = start.shares.map(({ sharePct }) => sharePct);
  let best = { sharesPct: first, ...judge(first) };
  for (let step = FIRST_STEP_PCT; step >= LAST_STEP_PCT; ) {
    let next = best;
    for (const sharesPct of moves(materials, best.sharesPct, step)) {
      const parts = sharesPct.map((share) => share / 100);
      if (!keepsConditions(materials, rows, parts)) continue;
      const found = { sharesPct, ...judge(sharesPct) };
      const better =
        found.inside > next.inside ||
        (found.inside === next.inside && found.outside < next.outside - 1e-9);
      if (better) next = found;
    }
    if (next === best) step /= 2;
    best = next;
  }
  const fresh = { ...input, seed: (seed + 0x9e3779b9) % 2 ** 32 };
  return {
    status: "ok",
    message: say`no exchange between two materials stays within the band more often`,
    sharesPct: best.sharesPct,
    robustness: robustness({ ...fresh, sharesPct: best.sharesPct }),
    nearestMiddle: robustness({ ...fresh, sharesPct: first }),
  };
}

/** All shares that come of moving so many points from one material to another. */
function moves(
  materials: readonly BlendMaterial[],
  sharesPct: readonly number[],
  stepPct: number,
): number[][] {
  const indices = materials.map((_, index) => index);
  return indices.flatMap((from) => {
    // What would be left below the smallest share goes with the rest, unless it is asked for.
    const [share, kept] = [sharesPct[from], materials[from].minSharePct > 0];
    const move = share - stepPct < MIN_SHARE_PCT && !kept ? share : Math.min(stepPct, share);
    if (!(move > 0)) return [];
    return indices
      .filter((to) => to !== from)
      .map((to) => {
        const moved = [...sharesPct];
        moved[from] -= move;
        moved[to] += move;
        return moved;
      });
  });
}

/** Fines end here (ISO 14688, from memory). */
const FINES_MM = 0.063;
/** Of a normal error, 19 in 20 lie within so many standard deviations. */
const NINETEEN_IN_TWENTY = 1.959964;

/** One material, drawn: what passes, draw after draw, size after size, and what the batching makes of its share. */
interface DrawnLoads {
  readonly passing: Float64Array;
  readonly factor: Float64Array;
}

/**
 * Draws once what every material passes, so that different shares (in any one unit) can be held against the same
 * loads: the passing of the blend, draw after draw, size after size.
 */
function drawnBlends({
  materials,
  band,
  variation,
  draws,
  seed,
}: Required<Omit<RobustnessInput, "sharesPct">>): (shares: readonly number[]) => Float64Array {
  checkThat(
    Number.isInteger(draws) && draws >= 1 && draws <= 1_000_000,
    { draws },
    "a whole number from 1 to 1000000",
  );
  checkVariation(materials, variation);
  const random = createRandom(seed);
  const sizesMm = band.map(({ sizeMm }) => sizeMm);
  const sizes = band.length;
  const loads = materials.map((material) => {
    const own = variation.find(({ id }) => id === material.id);
    return drawLoads(material, own, { sizesMm, draws, random });
  });
  return (shares) => {
    const blend = new Float64Array(draws * sizes);
    for (let k = 0; k < draws; k += 1) {
      const masses = loads.map(({ factor }, j) => shares[j] * factor[k]);
      const total = masses.reduce((sum, mass) => sum + mass, 0);
      for (const [j, { passing }] of loads.entries()) {
        const part = masses[j] / total;
        if (part === 0) continue;
        for (let at = k * sizes; at < (k + 1) * sizes; at += 1) blend[at] += part * passing[at];
      }
    }
    return blend;
  };
}

function drawLoads(
  { curve }: BlendMaterial,
  own: MaterialVariation | undefined,
  how: { readonly sizesMm: readonly number[]; readonly draws: number; readonly random: Random },
): DrawnLoads {
  const { sizesMm, draws, random } = how;
  const tables = (own?.curves?.length ? own.curves : [curve]).map((each) => ({
    fines: blendPassing(each, FINES_MM).passingPct,
    passing: sizesMm.map((sizeMm) => blendPassing(each, sizeMm).passingPct),
  }));
  const finesError = (own?.finesPlusMinusPct ?? 0) / NINETEEN_IN_TWENTY;
  const batchError = (own?.batchingPlusMinusPct ?? 0) / NINETEEN_IN_TWENTY / 100;
  const passing = new Float64Array(draws * sizesMm.length);
  const factor = new Float64Array(draws);
  for (let k = 0; k < draws; k += 1) {
    const table = tables[tables.length > 1 ? random.integer(tables.length) : 0];
    const error = finesError > 0 ? finesError * random.normal() : 0;
    const fines = Math.min(100, Math.max(0, table.fines + error));
    factor[k] = batchError > 0 ? Math.max(0, 1 + batchError * random.normal()) : 1;
    for (const [i, sizeMm] of sizesMm.entries()) {
      passing[k * sizesMm.length + i] = shifted(table.passing[i], sizeMm, table.fines, fines);
    }
  }
  return { passing, factor };
}

function checkVariation(
  materials: readonly BlendMaterial[],
  variation: readonly MaterialVariation[],
): void {
  variation.forEach(({ id, finesPlusMinusPct = 0, batchingPlusMinusPct = 0 }, index) => {
    checkThat(
      materials.some((material) => material.id === id),
      { [`variation[${index}].id`]: id },
      "a material's id",
    );
    checkThat(
      finesPlusMinusPct >= 0 && finesPlusMinusPct <= 100 && batchingPlusMinusPct >= 0,
      { [`variation[${index}]`]: `${finesPlusMinusPct}, ${batchingPlusMinusPct}` },
      "0 or more",
    );
  });
}

/** Finer than the fines' end all grows with the fines; coarser, all that is retained shrinks with the rest. */
function shifted(passingPct: number, sizeMm: number, before: number, after: number): number {
  if (before === after) return passingPct;
  if (sizeMm <= FINES_MM) return before > 0 ? (passingPct * after) / before : after;
  return before < 100 ? 100 - ((100 - passingPct) * (100 - after)) / (100 - before) : passingPct;
}
