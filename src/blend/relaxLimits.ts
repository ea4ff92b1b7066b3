import { say } from "../words/say.js";
import type { BlendDesign } from "./blendResult.js";
import type { BlendLimit } from "./blendTarget.js";
import { type BlendInput, designBlend } from "./designBlend.js";

/** What a little more room at one limit would buy. */
export interface Relaxation {
  readonly label: string;
  readonly side: "least" | "largest";
  readonly limit: number;
  readonly relaxedTo: number;
  readonly unit: string;
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
 * const soil = { points: [{ sizeMm: 0.063, passingPct: 40, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const sand = { points: [{ sizeMm: 0.063, passingPct: 0, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const materials = [{ id: "soil", curve: soil, minSharePct: 0, maxSharePct: 50 }, { id: "sand", curve: sand, minSharePct: 0, maxSharePct: 100 }];
 * const input = { materials, target: { kind: "curve", points: [{ sizeMm: 0.063, passingPct: 25 }] } };
 * const [relaxed] = relaxLimits(input, designBlend(input));
 * [relaxed.label, relaxed.relaxedTo, relaxed.gainPct] // => ["share of soil", 52.5, 1.0]
 */
export function relaxLimits(input: BlendInput, design: BlendDesign, byPct = 5): Relaxation[] {
  if (design.status !== "ok") return [];
  const row = (
    what: Pick<Relaxation, "label" | "side" | "limit" | "unit">,
    relaxedTo: number,
    changed: BlendInput,
  ): Relaxation => {
    const { rmsDifferencePct, costPerT, siteSoilPct } = designBlend(changed);
    const gainPct = design.rmsDifferencePct - rmsDifferencePct;
    return { ...what, relaxedTo, rmsDifferencePct, gainPct, costPerT, siteSoilPct };
  };
  const moved = (limit: number, side: "least" | "largest", unit: string) => {
    const step = Math.max(unit === "%" ? 1 : 0, (Math.abs(limit) * byPct) / 100);
    const to = side === "largest" ? limit + step : limit - step;
    return unit === "%" ? Math.min(100, Math.max(0, to)) : Math.max(0, to);
  };
  const bounds = design.shares.flatMap(({ id, bound }, j): Relaxation[] => {
    const { minSharePct, maxSharePct, name } = input.materials[j];
    const ends = [
      ...(bound === -1 && minSharePct > 0 ? (["least"] as const) : []),
      ...(bound === 1 || (bound === -1 && minSharePct === maxSharePct)
        ? (["largest"] as const)
        : []),
    ];
    return ends.flatMap((side) => {
      const limit = side === "least" ? minSharePct : maxSharePct;
      const to = moved(limit, side, "%");
      if (to === limit) return [];
      const key = side === "least" ? "minSharePct" : "maxSharePct";
      const materials = input.materials.map((material, i) =>
        i === j ? { ...material, [key]: to } : material,
      );
      return [
        row({ label: say`share of ${name ?? id}`, side, limit, unit: "%" }, to, {
          ...input,
          materials,
        }),
      ];
    });
  });
  const limits = design.limits.flatMap(
    ({ active, index, label, side, limit, unit }): Relaxation[] => {
      const own = input.limits?.[index];
      if (!active || own === undefined || own.kind === "top-size") return [];
      const to = moved(limit, side, unit);
      if (to === limit) return [];
      const changed = input.limits!.map((other, i) =>
        i === index ? widened(other, side, to) : other,
      );
      return [row({ label, side, limit, unit }, to, { ...input, limits: changed })];
    },
  );
  return [...bounds, ...limits];
}

function widened(limit: BlendLimit, side: "least" | "largest", to: number): BlendLimit {
  if (limit.kind === "cost") return { ...limit, maxPerT: to };
  if (limit.kind === "carbon") return { ...limit, maxKgPerT: to };
  if (limit.kind === "top-size") return limit;
  return side === "least" ? { ...limit, minPct: to } : { ...limit, maxPct: to };
}
