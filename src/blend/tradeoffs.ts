import { checkThat } from "../quantities/checkNumber.js";
import { say } from "../words/message.js";
import { type BlendDesign, blendPoints, rmsOf } from "./description.js";
import { type BlendInput, blendAims, designBlend } from "./design.js";
import { keepsConditions, type LimitSide, limitRows } from "./limits.js";
import type { BlendLimit } from "./target.js";

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
 * const material = (id, finesPct) => ({ id, curve: { points: [{ sizeMm: 0.063, passingPct: finesPct, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] }, minSharePct: 0, maxSharePct: 100 });
 * const materials = [{ ...material("soil", 40), costPerT: 0 }, { ...material("sand", 0), costPerT: 20 }];
 * const frontier = blendFrontier({ materials, target: { kind: "curve", points: [{ sizeMm: 0.063, passingPct: 20 }] } }, "cost", 3);
 * frontier.map(({ value, rmsDifferencePct }) => [value, rmsDifferencePct]) // => [[0.00, 20.00], [5.00, 10.00], [10.00, 0.00]]
 */
export function blendFrontier(
  input: BlendInput,
  against: "cost" | "site-soil",
  steps = 12,
): FrontierPoint[] {
  checkThat(Number.isInteger(steps) && steps >= 2, { steps }, "a whole number from 2");
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

export interface TernaryPoint {
  readonly sharesPct: readonly [number, number, number];
  readonly rmsDifferencePct: number;
  /** All bounds and limits are kept. */
  readonly allowed: boolean;
}

export interface TernaryMap {
  readonly ids: readonly [string, string, string];
  readonly points: readonly TernaryPoint[];
  /** Null where no blend keeps the limits. */
  readonly best: TernaryPoint | null;
}

/**
 * Every blend of three materials in even steps: how far from the target, and whether it is allowed.
 *
 * @param steps from one corner to another, 2 to 100; default 20 (shares in steps of 5 %).
 * @throws RangeError for other than three materials, or steps out of range. Source: own arithmetic.
 *
 * @example
 * const curve = (finesPct) => ({ points: [{ sizeMm: 0.063, passingPct: finesPct, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] });
 * const material = (id, finesPct) => ({ id, curve: curve(finesPct), minSharePct: 0, maxSharePct: 100 });
 * const map = ternaryMap({ materials: [material("a", 40), material("b", 10), material("c", 0)], target: { kind: "curve", points: [{ sizeMm: 0.063, passingPct: 40 }] } }, 2);
 * map.points.map(({ rmsDifferencePct }) => rmsDifferencePct) // => [40, 35, 30, 20, 15, 0]
 * map.best.sharesPct // => [100, 0, 0]
 */
export function ternaryMap(input: BlendInput, steps = 20): TernaryMap {
  const { materials, limits = [] } = input;
  checkThat(materials.length === 3, { materials: materials.length }, "three");
  checkThat(
    Number.isInteger(steps) && steps >= 2 && steps <= 100,
    { steps },
    "a whole number from 2 to 100",
  );
  const design = designBlend(input);
  const aims = blendAims(input, design);
  const rows = limitRows(materials, limits);
  const maxMaterials = input.maxMaterials ?? 3;
  const points: TernaryPoint[] = [];
  for (let a = 0; a <= steps; a += 1) {
    for (let b = 0; b <= steps - a; b += 1) {
      const shares = [a / steps, b / steps, (steps - a - b) / steps] as const;
      points.push({
        sharesPct: [100 * shares[0], 100 * shares[1], 100 * shares[2]],
        rmsDifferencePct: rmsOf(blendPoints(aims, shares), aims.weights),
        allowed:
          keepsConditions(materials, rows, shares) &&
          shares.filter((x) => x > 0).length <= maxMaterials,
      });
    }
  }
  const [first, second, third] = design.shares;
  const sharesPct = [first.sharePct, second.sharePct, third.sharePct] as const;
  const { rmsDifferencePct } = design;
  return {
    ids: [first.id, second.id, third.id],
    points,
    best: design.status === "ok" ? { sharesPct, rmsDifferencePct, allowed: true } : null,
  };
}

/** What a little more room at one limit would buy. */
export interface Relaxation extends LimitSide {
  readonly relaxedTo: number;
  readonly rmsDifferencePct: number;
  /** How much nearer to the target, points; for a second aim see the costs. */
  readonly gainPct: number;
  readonly costPerT: number | null;
  readonly siteSoilPct: number;
}

/**
 * Solves again with each limit and share bound that the blend stands on moved outwards a little, one at
 * a time: not a slope, but what the user would really get.
 *
 * @param byPct how far, in percent of the limit, but at least one point for a percentage; default 5.
 * Limits that nothing can relax (a share at 0 or 100, the top size) are left out.
 * @throws as `designBlend`. Source: own arithmetic.
 *
 * @example
 * const material = (id, finesPct) => ({ id, curve: { points: [{ sizeMm: 0.063, passingPct: finesPct, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] }, minSharePct: 0, maxSharePct: 100 });
 * const materials = [{ ...material("soil", 40), maxSharePct: 50 }, material("sand", 0)];
 * const input = { materials, target: { kind: "curve", points: [{ sizeMm: 0.063, passingPct: 25 }] } };
 * const [relaxed] = relaxLimits(input, designBlend(input));
 * [render(relaxed.label), relaxed.relaxedTo, relaxed.gainPct] // => ["share of soil", 52.5, 1.0]
 */
export function relaxLimits(input: BlendInput, design: BlendDesign, byPct = 5): Relaxation[] {
  if (design.status !== "ok") return [];
  const row = (what: LimitSide, relaxedTo: number, changed: BlendInput): Relaxation => {
    const { rmsDifferencePct, costPerT, siteSoilPct } = designBlend(changed);
    const gainPct = design.rmsDifferencePct - rmsDifferencePct;
    return { ...what, relaxedTo, rmsDifferencePct, gainPct, costPerT, siteSoilPct };
  };
  const moved = ({ limit, side, unit }: Omit<LimitSide, "label">) => {
    const step = Math.max(unit === "%" ? 1 : 0, (Math.abs(limit) * byPct) / 100);
    const to = side === "max" ? limit + step : limit - step;
    return unit === "%" ? Math.min(100, Math.max(0, to)) : Math.max(0, to);
  };
  const bounds = design.shares.flatMap(({ id, bound }, j): Relaxation[] => {
    const { minSharePct, maxSharePct, name } = input.materials[j];
    const ends = [
      ...(bound === -1 && minSharePct > 0 ? (["min"] as const) : []),
      ...(bound === 1 || (bound === -1 && minSharePct === maxSharePct) ? (["max"] as const) : []),
    ];
    return ends.flatMap((side) => {
      const key = side === "min" ? "minSharePct" : "maxSharePct";
      const limit = input.materials[j][key];
      const bounded = { label: say`share of ${name ?? id}`, side, limit, unit: "%" } as const;
      const to = moved(bounded);
      if (to === limit) return [];
      const materials = input.materials.map((material, i) =>
        i === j ? { ...material, [key]: to } : material,
      );
      return [row(bounded, to, { ...input, materials })];
    });
  });
  const limits = design.limits.flatMap(
    ({ active, index, label, side, limit, unit }): Relaxation[] => {
      const own = input.limits?.[index];
      if (!active || own === undefined || own.kind === "top-size") return [];
      const to = moved({ limit, side, unit });
      if (to === limit) return [];
      const changed = input.limits!.map((other, i) =>
        i === index ? widened(other, side, to) : other,
      );
      return [row({ label, side, limit, unit }, to, { ...input, limits: changed })];
    },
  );
  return [...bounds, ...limits];
}

function widened(limit: BlendLimit, side: "min" | "max", to: number): BlendLimit {
  if (limit.kind === "cost") return { ...limit, maxPerT: to };
  if (limit.kind === "carbon") return { ...limit, maxKgPerT: to };
  if (limit.kind === "top-size") return limit;
  return side === "min" ? { ...limit, minPct: to } : { ...limit, maxPct: to };
}
