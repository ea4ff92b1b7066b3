import { say } from "../words/say.js";
import { blendProgramme } from "./blendProgramme.js";
import type { BlendLimit } from "./blendTarget.js";
import { designBlend, LEAST_SHARE_PCT } from "./designBlend.js";
import { drawnPassing } from "./drawnPassing.js";
import { keepsConditions } from "./keepsConditions.js";
import { type Robustness, type RobustnessInput, robustness } from "./robustness.js";

export interface RobustBlendInput extends Omit<RobustnessInput, "sharesPct"> {
  readonly limits?: readonly BlendLimit[];
}

export interface RobustBlend {
  readonly status: "ok" | "infeasible";
  readonly message: string;
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
 * const soil = { points: [{ sizeMm: 0.063, passingPct: 40, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const sand = { points: [{ sizeMm: 0.063, passingPct: 0, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const materials = [{ id: "soil", curve: soil, minSharePct: 0, maxSharePct: 100 }, { id: "sand", curve: sand, minSharePct: 0, maxSharePct: 100 }];
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
  const sizesMm = band.map(({ sizeMm }) => sizeMm);
  const drawn = drawnPassing(materials, sizesMm, variation, SEARCH_DRAWS, seed);
  const judge = (sharesPct: readonly number[]) => {
    const blend = drawn.blend(sharesPct);
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
    for (let from = 0; from < materials.length; from += 1) {
      for (let to = 0; to < materials.length; to += 1) {
        // What would be left below the smallest share goes with the rest, unless it is asked for.
        const [share, kept] = [best.sharesPct[from], materials[from].minSharePct > 0];
        const move = share - step < LEAST_SHARE_PCT && !kept ? share : Math.min(step, share);
        if (from === to || !(move > 0)) continue;
        const sharesPct = best.sharesPct.map((share, j) =>
          j === from ? share - move : j === to ? share + move : share,
        );
        const parts = sharesPct.map((share) => share / 100);
        if (!keepsConditions(materials, rows, parts)) continue;
        const found = { sharesPct, ...judge(sharesPct) };
        const better =
          found.inside > next.inside ||
          (found.inside === next.inside && found.outside < next.outside - 1e-9);
        if (better) next = found;
      }
    }
    if (next === best) step /= 2;
    best = next;
  }
  const fresh = { ...input, seed: (seed + 0x9e3779b9) % 2 ** 32 };
  return {
    status: "ok",
    message: say`no move between two materials keeps the band more often`,
    sharesPct: best.sharesPct,
    robustness: robustness({ ...fresh, sharesPct: best.sharesPct }),
    nearestMiddle: robustness({ ...fresh, sharesPct: first }),
  };
}
