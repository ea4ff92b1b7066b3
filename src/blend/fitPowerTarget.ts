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
const ROUNDS = 13;

/**
 * The power curve within the ranges that some blend comes nearest to, and that blend. For each pair of
 * exponent and top size the shares are exact, so only these two are searched: on a grid, again and
 * again, each time a quarter as wide about the best. The sizes are the same throughout, so that a curve is
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
  if (!infeasible && (exponent.min < exponent.max || top.min < top.max)) {
    let [nRange, topRange] = [exponent, top];
    for (let round = 0; round < ROUNDS; round += 1) {
      for (const n of grid(nRange, false)) {
        for (const size of grid(topRange, true)) {
          const next = attempt(n, size);
          if (next.solution.score[0] < best.solution.score[0]) best = next;
        }
      }
      nRange = around(best.exponent, nRange, exponent, false);
      topRange = around(best.topSizeMm, topRange, top, true);
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

function grid({ min, max }: Range, byRatio: boolean): number[] {
  if (min === max) return [min];
  const to = byRatio ? Math.log : (value: number) => value;
  const from = byRatio ? Math.exp : (value: number) => value;
  const step = (to(max) - to(min)) / STEPS;
  return [min, ...Array.from({ length: STEPS - 1 }, (_, i) => from(to(min) + (i + 1) * step)), max];
}

function around(value: number, last: Range, whole: Range, byRatio: boolean): Range {
  if (last.min === last.max) return last;
  if (byRatio) {
    const half = (last.max / last.min) ** 0.125;
    return { min: Math.max(whole.min, value / half), max: Math.min(whole.max, value * half) };
  }
  const half = (last.max - last.min) / 8;
  return { min: Math.max(whole.min, value - half), max: Math.min(whole.max, value + half) };
}

function isAtEnd(value: number, { min, max }: Range): boolean {
  if (min === max) return false;
  const near = 1e-6 * (max - min);
  return value - min < near || max - value < near;
}
