import type { BlendProgramme } from "./blendProgramme.js";
import type { BlendDesign, BlendFitPoint, LimitState } from "./blendResult.js";
import { limitValue } from "./limitRows.js";
import type { SizedAims } from "./resolveTarget.js";
import type { BlendSolution } from "./solveBlend.js";

/** Nearer than this, in the limit's own unit relative to its size, a blend stands on the limit. */
const ON_LIMIT = 1e-6;
/** A band left by less than this is kept: the solver's own room between its aims. */
const ROUNDING_PCT = 1e-6;

/** What shares mean in the user's terms: points, limits, cost. */
export function describeBlend(
  programme: BlendProgramme,
  aims: SizedAims,
  { fit }: BlendSolution,
  shares: readonly number[],
): Omit<BlendDesign, "message" | "target" | "conflict" | "score" | "notUsed" | "hardlyUsed"> {
  const { materials, lower, upper, rows } = programme;
  const points = blendPoints(aims, shares);
  const limits = rows.map((row): LimitState => {
    const value = limitValue(row, shares);
    const { index, label, unit, side, limit, estimate } = row;
    const active = Math.abs(value - limit) <= ON_LIMIT * Math.max(1, Math.abs(limit));
    return { index, label, unit, side, limit, value, active, estimate };
  });
  const mean = (key: "costPerT" | "carbonKgPerT"): number | null =>
    materials.some((material, j) => shares[j] > 0 && material[key] === undefined)
      ? null
      : materials.reduce((sum, material, j) => sum + shares[j] * (material[key] ?? 0), 0);
  return {
    status: fit.status,
    shares: materials.map(({ id }, j) => ({
      id,
      sharePct: 100 * shares[j],
      bound: boundOf(shares[j], lower[j], upper[j]),
    })),
    points,
    rmsDifferencePct: rmsOf(points, aims.weights),
    worst: points.reduce((worst, point) =>
      Math.abs(point.differencePct) > Math.abs(worst.differencePct) ? point : worst,
    ),
    unique: fit.unique,
    optimalityResidual: fit.optimalityResidual,
    condition: fit.condition,
    limits,
    costPerT: mean("costPerT"),
    carbonKgPerT: mean("carbonKgPerT"),
    siteSoilPct: materials.reduce(
      (sum, { siteSoil }, j) => sum + (siteSoil ? 100 * shares[j] : 0),
      0,
    ),
  };
}

/** The blend at the target's sizes; against a band the target is the allowed value nearest to it. */
export function blendPoints(aims: SizedAims, shares: readonly number[]): BlendFitPoint[] {
  return aims.sizesMm.map((sizeMm, row) => {
    const blendPct = aims.passing[row].reduce((sum, value, j) => sum + value * shares[j], 0);
    const inside = Math.min(Math.max(blendPct, aims.lowPct[row]), aims.highPct[row]);
    const differencePct = Math.abs(blendPct - inside) < ROUNDING_PCT ? 0 : blendPct - inside;
    return { sizeMm, targetPct: inside, blendPct, differencePct };
  });
}

/** Root of the weighted mean squared difference. */
export function rmsOf(points: readonly BlendFitPoint[], weights: readonly number[]): number {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const squares = points.reduce(
    (sum, { differencePct }, row) => sum + weights[row] * differencePct ** 2,
    0,
  );
  return total > 0 ? Math.sqrt(squares / total) : 0;
}

function boundOf(share: number, least: number, most: number): -1 | 0 | 1 {
  if (share - least <= 1e-9) return -1;
  return most - share <= 1e-9 ? 1 : 0;
}
