import type { Text } from "../words/message.js";
import type { SizedAims } from "./aims.js";
import {
  type BlendProgramme,
  type LimitRow,
  type LimitSide,
  type LimitUnit,
  limitValue,
} from "./limits.js";
import type { BlendSolution } from "./solve.js";

export interface BlendShare {
  readonly id: string;
  /** Percent of the dry mass of all soil and aggregate, cement excluded. */
  readonly sharePct: number;
  /** −1: held by its smallest allowed share; 1: by its largest; 0: free. */
  readonly bound: -1 | 0 | 1;
}

export interface BlendFitPoint {
  readonly sizeMm: number;
  /** Against a band: the allowed value nearest to the blend. */
  readonly targetPct: number;
  readonly blendPct: number;
  /** Blend minus target, percentage points; against a band 0 inside it. */
  readonly differencePct: number;
}

/** How well a blend does, and what the search for it says of itself. */
export interface BlendResult {
  readonly status: "ok" | "infeasible" | "iteration-limit";
  readonly message: Text;
  readonly shares: readonly BlendShare[];
  readonly points: readonly BlendFitPoint[];
  /** Root of the weighted mean squared difference, percentage points. */
  readonly rmsDifferencePct: number;
  /** The size at which the blend misses the target by most. */
  readonly worst: BlendFitPoint;
  /** False where other shares would fit equally well: two materials are alike at these sizes. */
  readonly unique: boolean;
  /** Relative residual of the optimality conditions; near machine precision where all is well. */
  readonly optimalityResidual: number;
  /** How far an error of the curves may grow in the shares, in the directions left free; null where `unique` is false for two materials of one curve. */
  readonly condition: number | null;
}

/** Where a blend stands against one side of a limit. */
export interface LimitState extends LimitSide {
  /** Place in the list of limits. */
  readonly index: number;
  readonly value: number;
  /** The blend stands on the limit. */
  readonly active: boolean;
  /** From the materials' own tests by the share passing 0.425 mm: to be confirmed by a test of the blend. */
  readonly estimate: boolean;
}

/** A limit that the allowed shares cannot meet, whatever the others say. */
export interface UnreachableLimit extends LimitSide {
  /** Nearest that any allowed blend comes. */
  readonly nearest: number;
  readonly shortBy: number;
  /** What a further material that takes up the stated share would have to bring, at least or at most. */
  readonly furtherMaterial: { readonly sharePct: number; readonly value: number };
}

/** Why no blend keeps all limits. */
export interface BlendConflict {
  readonly alone: readonly UnreachableLimit[];
  /** Limits that exclude one another, though each can be met: without any one of them the rest can be. */
  readonly together: readonly Text[];
  /** Shares that break the limits least, and by how much each is broken, in its own unit. */
  readonly sharesPct: readonly number[];
  readonly minBreach: readonly {
    readonly label: Text;
    readonly by: number;
    readonly unit: LimitUnit;
  }[];
}

export interface BlendDesign extends BlendResult {
  readonly target: {
    readonly kind: "power" | "curve" | "band-middle" | "band";
    /** Of the power curve; null for other targets. */
    readonly exponent: number | null;
    readonly topSizeMm: number | null;
    /** The exponent or top size found stands at an end of its range: a wider range would fit better. */
    readonly atEndOfRange: boolean;
  };
  readonly limits: readonly LimitState[];
  /** Null where a material used has none. */
  readonly costPerT: number | null;
  readonly carbonKgPerT: number | null;
  readonly siteSoilPct: number;
  /** Null unless infeasible. */
  readonly conflict: BlendConflict | null;
  /** What was made least, the most important first: for comparing designs of the same target. */
  readonly score: readonly number[];
  /** Ids of the materials whose share is zero: the best blend has none of them, or less than can be weighed. */
  readonly notUsed: readonly string[];
  /** Ids of those that have no more than can just be weighed, because limits, band or user ask for them. */
  readonly hardlyUsed: readonly string[];
}

/** Nearer than this, in the limit's own unit relative to its size, a blend stands on the limit. */
const ON_LIMIT = 1e-6;

/** Where shares, as parts of one, stand against a row of the programme. */
export function limitState(row: LimitRow, shares: readonly number[]): LimitState {
  const value = limitValue(row, shares);
  const { index, label, unit, side, limit, estimate } = row;
  const active = Math.abs(value - limit) <= ON_LIMIT * Math.max(1, Math.abs(limit));
  return { index, label, unit, side, limit, value, active, estimate };
}

/** A band left by less than this is kept: the solver's own room between its aims. */
const ROUNDING_PCT = 1e-6;

/** What shares mean in the user's terms: points, limits, cost. */
export function describeBlend(
  programme: BlendProgramme,
  aims: SizedAims,
  { fit, score }: BlendSolution,
  shares: readonly number[],
  {
    message,
    conflict,
    target,
    hardlyPct,
  }: Pick<BlendDesign, "message" | "conflict" | "target"> & {
    /** A share up to this is hardly one. */
    readonly hardlyPct: number;
  },
): BlendDesign {
  const { materials, lower, upper, rows } = programme;
  const points = blendPoints(aims, shares);
  const limits = rows.map((row) => limitState(row, shares));
  const mean = (key: "costPerT" | "carbonKgPerT"): number | null =>
    materials.some((material, j) => shares[j] > 0 && material[key] === undefined)
      ? null
      : materials.reduce((sum, material, j) => sum + shares[j] * (material[key] ?? 0), 0);
  const usedWithin = (abovePct: number, maxPct: number) =>
    materials
      .filter((_, j) => !conflict && 100 * shares[j] > abovePct && 100 * shares[j] <= maxPct)
      .map(({ id }) => id);
  return {
    status: fit.status,
    shares: materials.map(({ id }, j) => ({
      id,
      sharePct: 100 * shares[j],
      bound: boundOf(shares[j], lower[j], upper[j]),
    })),
    points,
    rmsDifferencePct: rmsOf(points, aims.weights),
    worst: worstOf(points),
    unique: fit.unique,
    optimalityResidual: fit.optimalityResidual,
    condition: Number.isFinite(fit.condition) ? fit.condition : null,
    limits,
    costPerT: mean("costPerT"),
    carbonKgPerT: mean("carbonKgPerT"),
    siteSoilPct: materials.reduce(
      (sum, { siteSoil }, j) => sum + (siteSoil ? 100 * shares[j] : 0),
      0,
    ),
    message,
    target,
    conflict,
    score,
    notUsed: usedWithin(-Infinity, 0),
    hardlyUsed: usedWithin(0, hardlyPct),
  };
}

/** The blend at the target's sizes; against a band the target is the allowed value nearest to it. */
export function blendPoints(aims: SizedAims, shares: readonly number[]): BlendFitPoint[] {
  return aims.sizesMm.map((sizeMm, row) => {
    let blendPct = 0;
    for (let j = 0; j < shares.length; j += 1) blendPct += aims.passing[row][j] * shares[j];
    const inside = Math.min(Math.max(blendPct, aims.lowPct[row]), aims.highPct[row]);
    const differencePct = Math.abs(blendPct - inside) < ROUNDING_PCT ? 0 : blendPct - inside;
    return { sizeMm, targetPct: inside, blendPct, differencePct };
  });
}

/** The size at which a blend misses its target by most. */
export function worstOf(points: readonly BlendFitPoint[]): BlendFitPoint {
  return points.reduce((worst, point) =>
    Math.abs(point.differencePct) > Math.abs(worst.differencePct) ? point : worst,
  );
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

function boundOf(share: number, min: number, max: number): -1 | 0 | 1 {
  if (share - min <= 1e-9) return -1;
  return max - share <= 1e-9 ? 1 : 0;
}
