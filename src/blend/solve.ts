import {
  type ConstrainedFit,
  constrainedLeastSquares,
} from "../numerics/constrainedLeastSquares.js";
import { checkThat } from "../quantities/checkNumber.js";
import { type BlendProgramme, limitCoefficients, onlyMaterials } from "./limits.js";

/** What the shares are sought for, as numbers: one row a size. */
export interface BlendAims {
  /** Sizes by materials, percent. */
  readonly passing: readonly (readonly number[])[];
  readonly weights: readonly number[];
  readonly lowPct: readonly number[];
  readonly highPct: readonly number[];
  /** One number a material whose mean is to be least, once the band is kept as well as can be. */
  readonly second: readonly number[] | null;
}

export interface BlendSolution {
  readonly fit: ConstrainedFit;
  /** Parts of one. */
  readonly shares: readonly number[];
  /** What was made least, the most important first. */
  readonly score: readonly number[];
}

/** Room, in points, that the first aim leaves to the next, so that rounding does not shut it out. */
const ROOM_PCT = 1e-7;

/** Nearest to a line where low and high are the same; else least breach of the band first, then the next aim. */
function solveBlend(programme: BlendProgramme, aims: BlendAims): BlendSolution {
  const { passing, weights, lowPct, highPct, second } = aims;
  const { lower, upper, rows } = programme;
  const limits = rows.map(limitCoefficients);
  const oneEach = lower.map(() => 1);
  const middle = lowPct.map((low, i) => (low + highPct[i]) / 2);
  const solve = (
    matrix: readonly (readonly number[])[],
    target: readonly number[],
    rowWeights: readonly number[],
    more: { matrix: readonly (readonly number[])[]; limit: readonly number[] },
  ) =>
    constrainedLeastSquares({
      matrix,
      target,
      weights: rowWeights,
      equalities: { matrix: [oneEach], target: [1] },
      lower,
      upper,
      inequalities:
        limits.length + more.limit.length === 0
          ? undefined
          : {
              matrix: [...limits, ...more.matrix],
              limit: [...limits.map(() => 0), ...more.limit],
            },
    });
  if (lowPct.every((low, i) => low === highPct[i])) {
    const fit = solve(passing, middle, weights, { matrix: [], limit: [] });
    return { fit, shares: fit.x, score: [fit.objective] };
  }
  const within = (breach: readonly number[]) => ({
    matrix: [...passing, ...passing.map((row) => row.map((value) => -value))],
    limit: [
      ...highPct.map((high, i) => high + breach[i] + ROOM_PCT),
      ...lowPct.map((low, i) => ROOM_PCT + breach[i] - low),
    ],
  });
  // Most bands can be kept, and that is quicker to see than by how much one cannot be.
  let breach = passing.map(() => 0);
  let kept = within(breach);
  let nearest = solve(passing, middle, weights, kept);
  if (nearest.status !== "ok") {
    const nearestBand = minBreach(programme, aims, limits);
    if (nearestBand.fit.status !== "ok") {
      return {
        fit: nearestBand.fit,
        shares: nearestBand.fit.x.slice(0, lower.length),
        score: [Infinity],
      };
    }
    breach = nearestBand.breach;
    kept = within(breach);
    nearest = solve(passing, middle, weights, kept);
  }
  const outside = breach.reduce((sum, size, i) => sum + weights[i] * size ** 2, 0);
  const spread = second ? Math.max(...second) - Math.min(...second) : 0;
  if (second && spread > 0) {
    // A mean is made least by drawing it to a value that no blend can reach.
    const scaled = second.map((value) => (value - Math.min(...second)) / spread);
    const lowest = solve([scaled], [-1], [1], kept);
    if (lowest.status !== "ok") return { fit: lowest, shares: lowest.x, score: [outside] };
    const mean = scaled.reduce((sum, value, j) => sum + value * lowest.x[j], 0);
    kept.matrix.push(scaled);
    kept.limit.push(mean + 1e-9);
    const last = solve(passing, middle, weights, kept);
    return { fit: last, shares: last.x, score: [outside, spread * mean, last.objective] };
  }
  return { fit: nearest, shares: nearest.x, score: [outside, nearest.objective] };
}

/** Unknowns are the shares and, at each size, the points by which the band is left. */
function minBreach(
  programme: BlendProgramme,
  { passing, weights, lowPct, highPct }: BlendAims,
  limits: readonly (readonly number[])[],
): { fit: ConstrainedFit; breach: number[] } {
  const { lower, upper } = programme;
  const [count, sizes] = [lower.length, passing.length];
  const unit = (at: number, value: number) => passing.map((_, i): number => (i === at ? value : 0));
  const none = passing.map(() => 0);
  const fit = constrainedLeastSquares({
    matrix: passing.map((_, i) => [...lower.map(() => 0), ...unit(i, 1)]),
    target: none,
    weights,
    equalities: { matrix: [[...lower.map(() => 1), ...none]], target: [1] },
    lower: [...lower, ...none],
    upper: [...upper, ...passing.map(() => Infinity)],
    inequalities: {
      matrix: [
        ...limits.map((row) => [...row, ...none]),
        ...passing.map((row, i) => [...row, ...unit(i, -1)]),
        ...passing.map((row, i) => [...row.map((value) => -value), ...unit(i, -1)]),
      ],
      limit: [...limits.map(() => 0), ...highPct, ...lowPct.map((low) => -low)],
    },
  });
  return { fit, breach: fit.x.slice(count, count + sizes).map((size) => Math.max(0, size)) };
}

/** More sets of materials than this would make a person wait. */
const MAX_SETS = 20_000;

/**
 * The best blend of at most so many materials: every set of that size is solved (a smaller set is part
 * of a larger one), so the answer is exact. Materials with a smallest share are in every set.
 *
 * @throws RangeError where the sets to try are more than 20 000, or materials that must be used are more
 * than allowed.
 */
export function chooseMaterials(
  programme: BlendProgramme,
  aims: BlendAims,
  maxMaterials: number,
): BlendSolution {
  const count = programme.lower.length;
  const forced = programme.lower.flatMap((min, j) => (min > 0 ? [j] : []));
  checkThat(
    Number.isInteger(maxMaterials) && maxMaterials >= Math.max(1, forced.length),
    { maxMaterials },
    `a whole number from ${Math.max(1, forced.length)}, as so many have a smallest share`,
  );
  if (maxMaterials >= count) return solveBlend(programme, aims);
  const free = programme.lower.flatMap((min, j) => (min > 0 ? [] : [j]));
  let best: BlendSolution | null = null;
  let tried = 0;
  const grow = (chosen: readonly number[], from: number): void => {
    if (chosen.length === maxMaterials) {
      tried += 1;
      if (tried > MAX_SETS) {
        throw new RangeError(
          `invalid \`maxMaterials\`: ${maxMaterials} of ${count} makes more than ${MAX_SETS} sets; expected fewer`,
        );
      }
      const found = solveBlend(
        onlyMaterials(programme, (j) => chosen.includes(j)),
        aims,
      );
      if (best === null || isBetter(found, best)) best = found;
      return;
    }
    for (let k = from; k < free.length; k += 1) grow([...chosen, free[k]], k + 1);
  };
  grow(forced, 0);
  return best!;
}

/** Feasible before infeasible, then by the scores in their order; a difference within rounding is none. */
function isBetter(found: BlendSolution, best: BlendSolution): boolean {
  if ((found.fit.status === "ok") !== (best.fit.status === "ok")) return found.fit.status === "ok";
  for (let i = 0; i < Math.min(found.score.length, best.score.length); i += 1) {
    const gap = found.score[i] - best.score[i];
    if (Math.abs(gap) > 1e-7 * (1 + Math.abs(best.score[i]))) return gap < 0;
  }
  return false;
}
