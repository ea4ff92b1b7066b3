import { powerOf } from "../numerics/powerOf.js";
import type { BlendMaterial } from "./blendMaterial.js";
import type { BlendTarget, FixedOrRange } from "./blendTarget.js";
import { powerTarget } from "./powerTarget.js";
import { passingMatrix, type SizedAims, targetSizes } from "./resolveTarget.js";
import type { BlendSolution } from "./solveBlend.js";

export interface PowerFit {
  readonly aims: SizedAims;
  readonly solution: BlendSolution;
  readonly exponent: number;
  readonly topSizeMm: number;
  readonly atEndOfRange: boolean;
}

const STEPS = 12;
/** Of a step of the grid. */
const FINEST_STEP = 1e-6;

/**
 * The power curve within the ranges that some blend comes nearest to, and that blend. For each pair of
 * exponent and top size the shares are exact, so only these two are searched: on a grid first, then about
 * the best by steps that are halved when none of them helps. The sizes are the same throughout, so that a curve is
 * not preferred for having fewer of them.
 */
export function fitPowerTarget(
  target: Extract<BlendTarget, { kind: "power" }>,
  materials: readonly BlendMaterial[],
  solve: (aims: SizedAims) => BlendSolution,
): PowerFit {
  const exponent = range("exponent", target.exponent);
  const top = range("topSizeMm", target.topSizeMm);
  const sizesMm = targetSizes(target, materials);
  if (sizesMm.length === 0) {
    throw new RangeError("invalid `target`: no size below the top size; expected at least one");
  }
  const passing = passingMatrix(materials, sizesMm);
  const weights = sizesMm.map(() => 1);
  const attempt = (n: number, topSizeMm: number) => {
    const line = powerTarget(n, topSizeMm, sizesMm).map(({ passingPct }) => passingPct);
    const aims = { sizesMm, passing, weights, lowPct: line, highPct: line, second: null };
    return { aims, solution: solve(aims), exponent: n, topSizeMm };
  };
  let best = attempt(exponent.min, top.min);
  const infeasible = best.solution.fit.status !== "ok";
  // Limits do not depend on the target: where they exclude one another, no curve helps.
  if (!infeasible) {
    const [nStep, topStep] = [
      (exponent.max - exponent.min) / STEPS,
      powerOf(top.max / top.min, 1 / STEPS),
    ];
    const consider = (n: number, size: number): void => {
      const next = attempt(clamp(n, exponent), clamp(size, top));
      if (next.solution.score[0] < best.solution.score[0]) best = next;
    };
    const each = (range: Range) =>
      Array.from({ length: range.min < range.max ? STEPS + 1 : 1 }, (_, i) => i);
    for (const i of each(exponent)) {
      for (const j of each(top)) consider(exponent.min + i * nStep, top.min * powerOf(topStep, j));
    }
    const moves = (range: Range) => (range.min < range.max ? [-1, 0, 1] : [0]);
    for (let scale = 1 / 2; scale > FINEST_STEP; ) {
      const { exponent: n, topSizeMm: size } = best;
      for (const i of moves(exponent)) {
        for (const j of moves(top))
          consider(n + i * scale * nStep, size * powerOf(topStep, j * scale));
      }
      if (best.exponent === n && best.topSizeMm === size) scale /= 2;
    }
  }
  return {
    ...best,
    atEndOfRange: !infeasible && (isAtEnd(best.exponent, exponent) || isAtEnd(best.topSizeMm, top)),
  };
}

interface Range {
  readonly min: number;
  readonly max: number;
}

function range(name: string, value: FixedOrRange): Range {
  const found = typeof value === "number" ? { min: value, max: value } : value;
  if (!(found.min > 0 && found.min <= found.max && Number.isFinite(found.max))) {
    throw new RangeError(
      `invalid \`${name}\`: ${found.min} to ${found.max}; expected more than 0, smallest first`,
    );
  }
  return found;
}

function clamp(value: number, { min, max }: Range): number {
  return Math.min(Math.max(value, min), max);
}

function isAtEnd(value: number, { min, max }: Range): boolean {
  if (min === max) return false;
  const near = 1e-6 * (max - min);
  return value - min < near || max - value < near;
}
