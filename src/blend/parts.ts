import { forEachWholeRatio } from "../numerics/wholeRatios.js";
import { checkThat } from "../quantities/checkNumber.js";
import { say, type Text, wordFor } from "../words/message.js";
import type { SizedAims } from "./aims.js";
import {
  type BlendDesign,
  type BlendFitPoint,
  blendPoints,
  rmsOf,
  worstOf,
} from "./description.js";
import { type BlendInput, blendAims } from "./design.js";
import { keepsConditions, limitRows, limitValue } from "./limits.js";
import { checkOneEach } from "./material.js";

export interface PartsOptions {
  /** Sum of all parts of soil and aggregate; default 12. */
  readonly maxTotal?: number;
  /** Parts by loose volume (buckets) or by dry mass; default `volume`. */
  readonly by?: "volume" | "mass";
  /** For parts by volume: dry mass in a loose cubic metre of each material as it is shovelled. */
  readonly looseDryDensityKgM3?: readonly number[];
  /** How much room each gains by its moisture, percent of the dry loose volume; default 0. */
  readonly bulkingPct?: readonly number[];
}

export interface PartsLine {
  readonly id: string;
  readonly parts: number;
  readonly sharePct: number;
  /** Against the optimum, percentage points. */
  readonly changePct: number;
}

/** Parts without cement: see `mixRecord` for a recipe with cement. */
export interface PracticalParts {
  readonly status: "ok" | "none";
  readonly message: Text;
  readonly by: "volume" | "mass";
  readonly cementIncluded: false;
  readonly materials: readonly PartsLine[];
  readonly total: number;
  readonly points: readonly BlendFitPoint[];
  readonly rmsDifferencePct: number;
  /** What rounding costs: the optimum's difference beside it. */
  readonly optimumRmsDifferencePct: number;
}

/**
 * The whole-number parts, up to a total, whose blend does best by the same target and within the same
 * limits as the optimum, from the materials that it uses. Every ratio is tried, so the answer is exact;
 * among equals the fewest parts.
 *
 * Formula: dry-mass share = parts × kg in a part / Σ; kg in a part = loose density / (1 + bulking/100).
 * Cement is not in these parts; the shares are of the dry mass of soil and aggregate.
 *
 * @param design what `designBlend` found for the same input.
 * @returns status `none` where no whole-number ratio up to the total keeps all limits.
 * @throws RangeError for a total that is no whole number from 1, a missing or unusable density, or more
 * than two million ratios. Source: exact enumeration, own arithmetic.
 *
 * @example
 * const material = (id, finesPct) => ({ id, curve: { points: [{ sizeMm: 0.063, passingPct: finesPct, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] }, minSharePct: 0, maxSharePct: 100 });
 * const materials = [material("soil", 40), material("sand", 0)];
 * const input = { materials, target: { kind: "curve", points: [{ sizeMm: 0.063, passingPct: 25 }] } };
 * const parts = practicalParts(input, designBlend(input), { by: "mass", maxTotal: 6 });
 * parts.materials.map(({ parts }) => parts) // => [3, 2]
 * parts.points[0].blendPct // => 24.0
 */
export function practicalParts(
  input: BlendInput,
  design: BlendDesign,
  options: PartsOptions = {},
): PracticalParts {
  const { maxTotal = 12, by = "volume" } = options;
  checkThat(
    Number.isInteger(maxTotal) && maxTotal >= 1,
    { maxTotal },
    "a whole number, at least 1",
  );
  const { materials } = input;
  const massOfPart = materials.map((_, j) => partMass(by, options, j));
  const aims = blendAims(input, design);
  const rows = limitRows(materials, input.limits ?? []);
  const maxMaterials = input.maxMaterials ?? materials.length;
  const notUsed = materials.map(({ id }) => design.notUsed.includes(id));
  const minParts = materials.map(({ minSharePct }) => (minSharePct > 0 ? 1 : 0));
  const shares = materials.map(() => 0);
  let best = null as FoundParts | null;
  forEachWholeRatio(minParts, maxTotal, (parts, total) => {
    if (total === 0) return;
    if (parts.some((count, j) => count > 0 && notUsed[j])) return;
    if (parts.filter((count) => count > 0).length > maxMaterials) return;
    const mass = parts.reduce((sum, count, j) => sum + count * massOfPart[j], 0);
    for (let j = 0; j < parts.length; j += 1) shares[j] = (parts[j] * massOfPart[j]) / mass;
    const objective = distance(aims, shares);
    if (isBetter({ objective, total }, best) && keepsConditions(materials, rows, shares)) {
      best = { parts: [...parts], shares: [...shares], objective, total };
    }
  });
  const points = best ? blendPoints(aims, best.shares) : [];
  return {
    status: best ? "ok" : "none",
    message: best
      ? say`Parts by ${wordFor(by)}, cement not included.`
      : say`No ratio of whole parts with up to ${maxTotal} parts in all meets the limits. Allow more parts, or batch by mass.`,
    by,
    cementIncluded: false,
    materials: materials.map(({ id }, j) => {
      const sharePct = 100 * (best?.shares[j] ?? 0);
      const changePct = sharePct - design.shares[j].sharePct;
      return { id, parts: best?.parts[j] ?? 0, sharePct, changePct };
    }),
    total: best?.total ?? 0,
    points,
    rmsDifferencePct: best ? rmsOf(points, aims.weights) : Number.NaN,
    optimumRmsDifferencePct: design.rmsDifferencePct,
  };
}

interface FoundParts {
  readonly parts: readonly number[];
  readonly shares: readonly number[];
  /** Weighted squares of what the blend lacks of its aims. */
  readonly objective: number;
  readonly total: number;
}

type Rated = Pick<FoundParts, "objective" | "total">;

/** Clearly nearer to the aims, or as near with fewer parts. */
function isBetter({ objective, total }: Rated, best: Rated | null): boolean {
  if (best === null) return true;
  const gain = best.objective - objective;
  const slight = 1e-9 * (1 + objective);
  return gain > slight || (gain >= -slight && total < best.total);
}

/** Weighted squares of what a blend lacks of its aims. */
function distance(aims: SizedAims, shares: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < aims.passing.length; i += 1) {
    const row = aims.passing[i];
    let blend = 0;
    for (let j = 0; j < shares.length; j += 1) blend += row[j] * shares[j];
    const off = Math.max(aims.lowPct[i] - blend, blend - aims.highPct[i], 0);
    // Inside a band the nearness to the middle decides, so lightly that it never outweighs a breach.
    const middle = blend - (aims.lowPct[i] + aims.highPct[i]) / 2;
    const inside = aims.lowPct[i] < aims.highPct[i] ? 1e-6 * middle ** 2 : 0;
    sum += aims.weights[i] * (off ** 2 + inside);
  }
  return sum;
}

function partMass(by: "volume" | "mass", options: PartsOptions, j: number): number {
  if (by === "mass") return 1;
  const density = options.looseDryDensityKgM3?.[j];
  const bulking = options.bulkingPct?.[j] ?? 0;
  checkThat(
    density !== undefined && density > 0 && Number.isFinite(density),
    { [`looseDryDensityKgM3[${j}]`]: density },
    "more than 0, as parts are by volume",
  );
  checkThat(bulking >= 0 && bulking < 100, { [`bulkingPct[${j}]`]: bulking }, "0 to below 100");
  return density / (1 + bulking / 100);
}

export interface BucketChange {
  readonly id: string;
  readonly change: -1 | 1;
  readonly sharesPct: readonly number[];
  readonly rmsDifferencePct: number;
  readonly worst: { readonly sizeMm: number; readonly differencePct: number };
  /** False where the miscount breaks a share's bound or a limit. */
  readonly keepsLimits: boolean;
  readonly limitValues: readonly { readonly label: Text; readonly value: number }[];
}

/**
 * What a miscount does: for each material used one part more and one part less, all else as it was.
 *
 * @param massShares dry mass per part of each material, in any one unit: all 1 for parts by mass, the
 * loose dry densities for parts by volume.
 * @throws RangeError where parts or masses are not as many as the materials, or negative.
 * Source: own arithmetic.
 *
 * @example
 * const material = (id, finesPct) => ({ id, curve: { points: [{ sizeMm: 0.063, passingPct: finesPct, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] }, minSharePct: 0, maxSharePct: 100 });
 * const materials = [material("soil", 40), material("sand", 0)];
 * const input = { materials, target: { kind: "curve", points: [{ sizeMm: 0.063, passingPct: 24 }] } };
 * const changes = bucketSensitivity(input, designBlend(input), [3, 2], [1, 1]);
 * changes.map(({ id, change, rmsDifferencePct }) => [id, change, rmsDifferencePct]) // => [["soil", -1, 4], ["soil", 1, 2.666667], ["sand", -1, 6], ["sand", 1, 4]]
 */
export function bucketSensitivity(
  input: BlendInput,
  design: BlendDesign,
  parts: readonly number[],
  massShares: readonly number[],
): BucketChange[] {
  const { materials, limits = [] } = input;
  checkOneEach("parts", parts, materials);
  checkOneEach("massShares", massShares, materials);
  const aims = blendAims(input, design);
  const rows = limitRows(materials, limits);
  return materials.flatMap(({ id }, at) =>
    ([-1, 1] as const).flatMap((change): BucketChange[] => {
      if (parts[at] === 0 && design.notUsed.includes(id)) return [];
      const changed = parts.map((value, j) => (j === at ? value + change : value));
      const mass = changed.reduce((sum, value, j) => sum + value * massShares[j], 0);
      if (changed[at] < 0 || !(mass > 0)) return [];
      const shares = changed.map((value, j) => (value * massShares[j]) / mass);
      const points = blendPoints(aims, shares);
      const { sizeMm, differencePct } = worstOf(points);
      return [
        {
          id,
          change,
          sharesPct: shares.map((share) => 100 * share),
          rmsDifferencePct: rmsOf(points, aims.weights),
          worst: { sizeMm, differencePct },
          keepsLimits: keepsConditions(materials, rows, shares),
          limitValues: rows.map((row) => ({ label: row.label, value: limitValue(row, shares) })),
        },
      ];
    }),
  );
}
