import type { BlendMaterial } from "./blendMaterial.js";
import type { BandTargetPoint } from "./blendTarget.js";
import { drawnPassing } from "./drawnPassing.js";
import type { MaterialVariation } from "./materialVariation.js";

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
 * const soil = { points: [{ sizeMm: 0.063, passingPct: 40, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const sand = { points: [{ sizeMm: 0.063, passingPct: 0, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const materials = [{ id: "soil", curve: soil, minSharePct: 0, maxSharePct: 100 }, { id: "sand", curve: sand, minSharePct: 0, maxSharePct: 100 }];
 * const found = robustness({ materials, sharesPct: [50, 50], band: [{ sizeMm: 0.063, lowPct: 17.5, highPct: 22.5 }], variation: [{ id: "soil", finesPlusMinusPct: 5 }] });
 * [found.insideProbability] // => [0.95]
 */
export function robustness(input: RobustnessInput): Robustness {
  const { materials, sharesPct, band, variation, draws = 10_000, seed = 1 } = input;
  if (sharesPct.length !== materials.length || sharesPct.some((share) => !(share >= 0))) {
    throw new RangeError(
      `invalid \`sharesPct\`: [${sharesPct}]; expected ${materials.length} numbers, 0 or more`,
    );
  }
  if (band.length === 0) throw new RangeError("invalid `band`: []; expected at least one size");
  const blend = drawnPassing(
    materials,
    band.map(({ sizeMm }) => sizeMm),
    variation,
    draws,
    seed,
  ).blend(sharesPct);
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
