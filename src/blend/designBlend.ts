import type { BlendMaterial } from "./blendMaterial.js";
import { blendProgramme } from "./blendProgramme.js";
import type { BlendDesign } from "./blendResult.js";
import type { BlendLimit, BlendTarget } from "./blendTarget.js";
import { chooseMaterials } from "./chooseMaterials.js";
import { describeBlend } from "./describeBlend.js";
import { explainConflict } from "./explainConflict.js";
import { fitPowerTarget } from "./fitPowerTarget.js";
import { resolveTarget, type SizedAims } from "./resolveTarget.js";

export interface BlendInput {
  readonly materials: readonly BlendMaterial[];
  readonly target: BlendTarget;
  /** Default none but the materials' own bounds. */
  readonly limits?: readonly BlendLimit[];
  /** At most so many materials in the blend; default all. */
  readonly mostMaterials?: number;
}

/**
 * Finds the shares that bring a blend nearest to its target within all limits, or says why none can.
 *
 * Formula: minimise Σ weight (Σ share passing − target)² over the target's sizes, with shares that sum
 * to one and keep their bounds and all limits (each linear in the shares). Against a band the
 * difference is to its nearest edge; among all blends that leave the band equally little, the second
 * aim decides, and then the nearness to the middle. A range of exponents or top sizes is searched for
 * the curve that fits best.
 *
 * @param input weights default to 1 at each size: standard sieves stand about evenly on the logarithm
 * of size, so that equal weights treat coarse and fine alike.
 * @returns `infeasible` with `conflict` and a message in the user's terms; the shares are then those
 * that break the limits least.
 * @throws RangeError where an input is out of range or a material lacks what a limit or aim needs: see
 * `checkBlend` for the same as findings.
 * Source: Iowa DOT I.M. 531, method A, for the blended passing (read); the rest own arithmetic.
 *
 * @example
 * const soil = { points: [{ sizeMm: 0.063, passingPct: 40, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const sand = { points: [{ sizeMm: 0.063, passingPct: 0, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const materials = [{ id: "soil", curve: soil, minSharePct: 0, maxSharePct: 100, siteSoil: true }, { id: "sand", curve: sand, minSharePct: 0, maxSharePct: 100 }];
 * const target = { kind: "band", points: [{ sizeMm: 0.063, lowPct: 20, highPct: 30 }], aim: "most-site-soil" };
 * designBlend({ materials, target }).siteSoilPct // => 75.0
 * designBlend({ materials, target, limits: [{ kind: "fines", maxPct: 25 }] }).siteSoilPct // => 62.5
 */
export function designBlend(input: BlendInput): BlendDesign {
  const { materials, target, limits = [], mostMaterials = materials.length } = input;
  const programme = blendProgramme(materials, limits);
  const solve = (aims: SizedAims) => chooseMaterials(programme, aims, mostMaterials);
  const plain = () => {
    const aims = resolveTarget(target as Exclude<BlendTarget, { kind: "power" }>, materials);
    return { aims, solution: solve(aims), exponent: null, topSizeMm: null, atEndOfRange: false };
  };
  const found = target.kind === "power" ? fitPowerTarget(target, materials, solve) : plain();
  const { aims, solution, exponent, topSizeMm, atEndOfRange } = found;
  const report =
    solution.fit.status === "infeasible"
      ? explainConflict(programme, mostMaterials)
      : { conflict: null, message: solution.fit.message };
  const shares = report.conflict
    ? report.conflict.sharesPct.map((sharePct) => sharePct / 100)
    : solution.shares;
  return {
    ...describeBlend(programme, aims, solution, shares),
    message: report.message,
    target: { kind: target.kind, exponent, topSizeMm, atEndOfRange },
    conflict: report.conflict,
    score: solution.score,
  };
}
