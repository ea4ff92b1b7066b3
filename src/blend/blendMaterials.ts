import type { BlendMaterial, TargetPoint } from "./blendMaterial.js";
import type { BlendResult } from "./blendResult.js";
import { designBlend } from "./designBlend.js";

export type { BlendFitPoint, BlendResult, BlendShare } from "./blendResult.js";

/**
 * Finds the shares whose blend comes nearest to a target grading: `designBlend` with a curve and no
 * limits but the materials' own.
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
  return designBlend({ materials, target: { kind: "curve", points: target } });
}
