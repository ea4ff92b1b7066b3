import {
  fitPowerTarget,
  passingMatrix,
  powerAims,
  resolveTarget,
  type SizedAims,
  targetSizes,
} from "./aims.js";
import { explainConflict } from "./conflict.js";
import { type BlendDesign, describeBlend } from "./description.js";
import { type BlendProgramme, blendProgramme, onlyMaterials } from "./limits.js";
import type { BlendMaterial } from "./material.js";
import { type BlendSolution, chooseMaterials } from "./solve.js";
import type { BlendLimit, BlendTarget } from "./target.js";

export interface BlendInput {
  readonly materials: readonly BlendMaterial[];
  readonly target: BlendTarget;
  /** Default none but the materials' own bounds. */
  readonly limits?: readonly BlendLimit[];
  /** At most so many materials in the blend; default all. */
  readonly maxMaterials?: number;
}

/**
 * The smallest share of the dry mass that a design gives a material: 50 g in a batch of 100 kg, about
 * the step of a balance on site, so that less cannot be weighed out. Common practice, no source.
 */
export const MIN_SHARE_PCT = 0.05;
/** Shares below this, as parts of one, are rounding of the solver. */
const ROUNDING = 1e-12;
/** Room that the solver leaves between its aims, relative to the smallest share. */
const SLACK = 1e-5;

/**
 * Finds the shares that bring a blend nearest to its target within all limits, or says why none can.
 *
 * Formula: minimise Σ weight (Σ share passing − target)² over the target's sizes, with shares that sum
 * to one and keep their bounds and all limits (each linear in the shares). Against a band the
 * difference is to its nearest edge; among all blends that leave the band equally little, the second
 * aim decides, and then the nearness to the middle. A range of exponents or top sizes is searched for
 * the curve that fits best. A share too small to be weighed (below 0.05 %, see `MIN_SHARE_PCT`) is none:
 * the material is dropped and the rest solved again. Where the limits or the band cannot do without it, it
 * is held at 0.05 %; a smallest share of the user's own is kept as it is.
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
 * const material = (id, finesPct) => ({ id, curve: { points: [{ sizeMm: 0.063, passingPct: finesPct, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] }, minSharePct: 0, maxSharePct: 100 });
 * const materials = [{ ...material("soil", 40), siteSoil: true }, material("sand", 0)];
 * const target = { kind: "band", points: [{ sizeMm: 0.063, lowPct: 20, highPct: 30 }], aim: "most-site-soil" };
 * designBlend({ materials, target }).siteSoilPct // => 75.0
 * designBlend({ materials, target, limits: [{ kind: "fines", maxPct: 25 }] }).siteSoilPct // => 62.5
 */
export function designBlend(input: BlendInput): BlendDesign {
  const { materials, target, limits = [], maxMaterials = materials.length } = input;
  const programme = blendProgramme(materials, limits);
  const plainAims = target.kind === "power" ? null : resolveTarget(target, materials);
  const find = (within: BlendProgramme): Found => {
    const solve = (aims: SizedAims) => chooseMaterials(within, aims, maxMaterials);
    if (target.kind === "power") return fitPowerTarget(target, materials, solve);
    const [aims, solution] = [plainAims!, solve(plainAims!)];
    return { aims, solution, exponent: null, topSizeMm: null, atEndOfRange: false };
  };
  const found = withoutTraces(programme, find, target.kind === "band");
  const { aims, solution, exponent, topSizeMm, atEndOfRange } = found;
  const report =
    solution.fit.status === "infeasible"
      ? explainConflict(programme, maxMaterials)
      : { conflict: null, message: solution.fit.message };
  const shares = report.conflict
    ? report.conflict.sharesPct.map((sharePct) => sharePct / 100)
    : solution.shares;
  return describeBlend(programme, aims, solution, shares, {
    message: report.message,
    conflict: report.conflict,
    target: { kind: target.kind, exponent, topSizeMm, atEndOfRange },
    hardlyPct: MIN_SHARE_PCT * (1 + SLACK),
  });
}

interface Found extends Omit<BlendDesign["target"], "kind"> {
  readonly aims: SizedAims;
  readonly solution: BlendSolution;
}

/** Solves again until no share is smaller than can be weighed, but for those that cannot be helped. */
function withoutTraces(
  programme: BlendProgramme,
  find: (within: BlendProgramme) => Found,
  isBand: boolean,
): Found {
  const minShare = MIN_SHARE_PCT / 100;
  let within = programme;
  let found = find(within);
  const settled = new Set<number>();
  const isTrace = (j: number) => {
    const share = found.solution.shares[j];
    const mayGo = programme.lower[j] === 0 && within.upper[j] > 0 && !settled.has(j);
    return mayGo && share > ROUNDING && share < minShare;
  };
  while (found.solution.fit.status === "ok") {
    const traces = programme.lower.map((_, j) => j).filter(isTrace);
    if (traces.length === 0) break;
    const { shares, score } = found.solution;
    const smallest = traces.reduce((min, j) => (shares[j] < shares[min] ? j : min));
    // A band that was kept is not given up for a trace, if the trace can be made weighable.
    const keptBand = isBand && score[0] < ROUNDING;
    const attempt = (next: BlendProgramme, giveUpBand = false): boolean => {
      const tried = find(next);
      if (tried.solution.fit.status !== "ok") return false;
      if (keptBand && !giveUpBand && tried.solution.score[0] >= ROUNDING) return false;
      [within, found] = [next, tried];
      return true;
    };
    const without = (gone: readonly number[]) => onlyMaterials(within, (j) => !gone.includes(j));
    if (attempt(without(traces)) || attempt(without([smallest]))) continue;
    settled.add(smallest);
    const raised = within.lower.map((share, j) => (j === smallest ? minShare : share));
    if (within.upper[smallest] >= minShare && attempt({ ...within, lower: raised })) continue;
    attempt(without([smallest]), true);
  }
  const { solution } = found;
  const clean = (share: number, j: number) =>
    within.upper[j] === 0 || (programme.lower[j] === 0 && share <= ROUNDING) ? 0 : share;
  return { ...found, solution: { ...solution, shares: solution.shares.map(clean) } };
}

/** The aims that a design was held against, with the exponent and top size that it found. */
export function blendAims({ target, materials }: BlendInput, design: BlendDesign): SizedAims {
  if (target.kind !== "power") return resolveTarget(target, materials);
  const sizesMm = targetSizes(target, materials);
  const { exponent, topSizeMm } = design.target;
  return powerAims(exponent!, topSizeMm!, sizesMm, passingMatrix(materials, sizesMm));
}
