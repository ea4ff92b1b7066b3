import { constrainedLeastSquares } from "../numerics/convexQuadraticProgramme.js";
import type { BlendMaterial, TargetPoint } from "./blendMaterial.js";
import { blendPassing } from "./blendPassing.js";

export interface BlendShare {
  readonly id: string;
  /** Percent of the dry mass of all soil and aggregate, cement excluded. */
  readonly sharePct: number;
  /** −1: held by its smallest allowed share; 1: by its largest; 0: free. */
  readonly bound: -1 | 0 | 1;
}

export interface BlendFitPoint {
  readonly sizeMm: number;
  readonly targetPct: number;
  readonly blendPct: number;
  /** Blend minus target, percentage points. */
  readonly differencePct: number;
}

export interface BlendResult {
  readonly status: "ok" | "infeasible" | "iteration-limit";
  readonly message: string;
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
  readonly condition: number;
}

/**
 * Finds the shares whose blend comes nearest to a target grading.
 *
 * Formula: minimise Σ weight (Σ share passing − target)² over the target's sizes, with shares that sum
 * to 100 % and stay within each material's bounds. Blending by dry mass: passing of the blend is
 * Σ share passing / 100 (Iowa DOT I.M. 531, method A: for particle densities that are close, read).
 *
 * @throws RangeError where there is no material, no target size, a share bound outside 0 to 100, or a
 * size coarser than a curve that does not reach 100 %.
 *
 * @example
 * const soil = { points: [{ sizeMm: 0.063, passingPct: 40, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const sand = { points: [{ sizeMm: 0.063, passingPct: 0, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const materials = [{ id: "soil", curve: soil, minSharePct: 0, maxSharePct: 100 }, { id: "sand", curve: sand, minSharePct: 0, maxSharePct: 100 }];
 * const blend = blendMaterials(materials, [{ sizeMm: 0.063, passingPct: 25 }]);
 * blend.shares.map(({ sharePct }) => sharePct) // => [62.5, 37.5]
 */
export function blendMaterials(
  materials: readonly BlendMaterial[],
  target: readonly TargetPoint[],
): BlendResult {
  if (materials.length === 0)
    throw new RangeError("invalid `materials`: []; expected at least one");
  if (target.length === 0) throw new RangeError("invalid `target`: []; expected at least one size");
  materials.forEach(({ minSharePct, maxSharePct }, index) => {
    if (!(minSharePct >= 0 && minSharePct <= maxSharePct && maxSharePct <= 100)) {
      throw new RangeError(
        `invalid \`materials[${index}]\` share: ${minSharePct} to ${maxSharePct}; expected 0 to 100, smallest first`,
      );
    }
  });
  const passing = target.map(({ sizeMm }) =>
    materials.map(({ curve }) => blendPassing(curve, sizeMm).passingPct),
  );
  const weights = target.map(({ weight }) => weight ?? 1);
  // Shares as parts of one, so that the design and the constraints have the same scale.
  const fit = constrainedLeastSquares({
    matrix: passing,
    target: target.map(({ passingPct }) => passingPct),
    weights,
    equalities: { matrix: [materials.map(() => 1)], target: [1] },
    lower: materials.map(({ minSharePct }) => minSharePct / 100),
    upper: materials.map(({ maxSharePct }) => maxSharePct / 100),
  });
  const points = target.map(({ sizeMm, passingPct }, row): BlendFitPoint => {
    const blendPct = passing[row].reduce((sum, value, column) => sum + value * fit.x[column], 0);
    return { sizeMm, targetPct: passingPct, blendPct, differencePct: blendPct - passingPct };
  });
  const totalWeight = weights.reduce((sum, weight) => sum + weight, 0);
  return {
    status: fit.status,
    message: fit.status === "infeasible" ? boundsMessage(materials) : fit.message,
    shares: materials.map(({ id }, index) => ({
      id,
      sharePct: 100 * fit.x[index],
      bound: fit.activeBounds[index],
    })),
    points,
    rmsDifferencePct: Math.sqrt(
      points.reduce((sum, { differencePct }, row) => sum + weights[row] * differencePct ** 2, 0) /
        totalWeight,
    ),
    worst: points.reduce((worst, point) =>
      Math.abs(point.differencePct) > Math.abs(worst.differencePct) ? point : worst,
    ),
    unique: fit.unique,
    optimalityResidual: fit.optimalityResidual,
    condition: fit.condition,
  };
}

function boundsMessage(materials: readonly BlendMaterial[]): string {
  const least = materials.reduce((sum, { minSharePct }) => sum + minSharePct, 0);
  const most = materials.reduce((sum, { maxSharePct }) => sum + maxSharePct, 0);
  return least > 100
    ? `The smallest allowed shares add up to ${least} %: lower them by ${least - 100} points in all.`
    : `The largest allowed shares add up to ${most} %: raise them by ${100 - most} points in all, or add a material.`;
}
