import type { BlendDesign } from "./blendResult.js";
import type { BlendLimit } from "./blendTarget.js";
import { type BlendInput, designBlend } from "./designBlend.js";

export interface FrontierPoint {
  /** Cost per tonne, or percent of site soil. */
  readonly value: number;
  readonly rmsDifferencePct: number;
  readonly sharesPct: readonly number[];
}

/**
 * What a better fit costs: the best fit at each of several costs, from the cheapest blend that keeps the
 * limits to the best-fitting one; or at each of several shares of site soil, from the best-fitting to the
 * most that the limits allow.
 *
 * @param against `cost` or `site-soil`. @param steps points on the frontier, from 2; default 12.
 * @returns in the order of the value; empty where no blend keeps the limits.
 * @throws RangeError for fewer steps, and as `designBlend`. Source: own arithmetic (one limit at a time).
 *
 * @example
 * const soil = { points: [{ sizeMm: 0.063, passingPct: 40, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const sand = { points: [{ sizeMm: 0.063, passingPct: 0, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const materials = [{ id: "soil", curve: soil, minSharePct: 0, maxSharePct: 100, costPerT: 0 }, { id: "sand", curve: sand, minSharePct: 0, maxSharePct: 100, costPerT: 20 }];
 * const frontier = blendFrontier({ materials, target: { kind: "curve", points: [{ sizeMm: 0.063, passingPct: 20 }] } }, "cost", 3);
 * frontier.map(({ value, rmsDifferencePct }) => [value, rmsDifferencePct]) // => [[0.00, 20.00], [5.00, 10.00], [10.00, 0.00]]
 */
export function blendFrontier(
  input: BlendInput,
  against: "cost" | "site-soil",
  steps = 12,
): FrontierPoint[] {
  if (!(Number.isInteger(steps) && steps >= 2)) {
    throw new RangeError(`invalid \`steps\`: ${steps}; expected a whole number from 2`);
  }
  const isCost = against === "cost";
  const traded = ({ costPerT, siteSoilPct }: BlendDesign) => (isCost ? costPerT! : siteSoilPct);
  const best = designBlend(input);
  // A band that everything keeps, so that only the second aim decides.
  const points = [{ sizeMm: commonSize(input), lowPct: 0, highPct: 100 }];
  const aim = isCost ? "least-cost" : "most-site-soil";
  const extreme = designBlend({ ...input, target: { kind: "band", points, aim } });
  if (best.status !== "ok" || extreme.status !== "ok") return [];
  const [from, to] = [traded(extreme), traded(best)];
  const size = Math.max(1, Math.abs(to));
  // Where the best fit is also the cheapest there is nothing to trade.
  const count = Math.abs(to - from) > 1e-6 * size ? steps : 1;
  const frontier = Array.from({ length: count }, (_, i): FrontierPoint => {
    const way = count === 1 ? 1 : i / (count - 1);
    const at = from + way * (to - from);
    // A hair of room, so that rounding at the extreme does not exclude it.
    const room = 1e-7 * size;
    const limit: BlendLimit = isCost
      ? { kind: "cost", maxPerT: at + room }
      : { kind: "site-soil", minPct: at - room };
    const found =
      way === 1 ? best : designBlend({ ...input, limits: [...(input.limits ?? []), limit] });
    return {
      value: traded(found),
      rmsDifferencePct: found.rmsDifferencePct,
      sharesPct: found.shares.map(({ sharePct }) => sharePct),
    };
  });
  return frontier.sort((a, b) => a.value - b.value);
}

/** A size at which every curve can be read. */
function commonSize({ materials }: BlendInput): number {
  return Math.min(...materials.map(({ curve }) => curve.points[curve.points.length - 1].sizeMm));
}
