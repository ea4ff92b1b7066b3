import {
  type ConstrainedFit,
  type ConstrainedProblem,
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
    { matrix, target, weights }: Pick<ConstrainedProblem, "matrix" | "target" | "weights">,
    more: NonNullable<ConstrainedProblem["inequalities"]>,
  ) =>
    constrainedLeastSquares({
      matrix,
      target,
      weights,
      equalities: { matrix: [oneEach], target: [1] },
      lower,
      upper,
      inequalities: {
        matrix: [...limits, ...more.matrix],
        limit: [...limits.map(() => 0), ...more.limit],
      },
    });
  const toMiddle = { matrix: passing, target: middle, weights };
  if (lowPct.every((low, i) => low === highPct[i])) {
    const fit = solve(toMiddle, { matrix: [], limit: [] });
    return { fit, shares: fit.x, score: [fit.objective] };
  }
  const negative = passing.map((row) => row.map((value) => -value));
  const within = (breach: readonly number[]) => ({
    matrix: [...passing, ...negative],
    limit: [
      ...highPct.map((high, i) => high + breach[i] + ROOM_PCT),
      ...lowPct.map((low, i) => ROOM_PCT + breach[i] - low),
    ],
  });
  // Most bands can be kept, and that is quicker to see than by how much one cannot be.
  let breach = passing.map(() => 0);
  let kept = within(breach);
  let nearest = solve(toMiddle, kept);
  if (nearest.status !== "ok") {
    const { fit, shares, slack } = leastSlack(programme, {
      hard: limits,
      soft: [
        ...passing.map((row, i) => ({ row, limit: highPct[i], slack: i })),
        ...negative.map((row, i) => ({ row, limit: -lowPct[i], slack: i })),
      ],
      maxSlack: passing.map(() => Infinity),
      weights,
    });
    if (fit.status !== "ok") return { fit, shares, score: [Infinity] };
    breach = slack.map((size) => Math.max(0, size));
    kept = within(breach);
    nearest = solve(toMiddle, kept);
  }
  const outside = breach.reduce((sum, size, i) => sum + weights[i] * size ** 2, 0);
  const spread = second ? Math.max(...second) - Math.min(...second) : 0;
  if (second && spread > 0) {
    // A mean is made least by drawing it to a value that no blend can reach.
    const scaled = second.map((value) => (value - Math.min(...second)) / spread);
    const lowest = solve({ matrix: [scaled], target: [-1] }, kept);
    if (lowest.status !== "ok") return { fit: lowest, shares: lowest.x, score: [outside] };
    const mean = scaled.reduce((sum, value, j) => sum + value * lowest.x[j], 0);
    kept.matrix.push(scaled);
    kept.limit.push(mean + 1e-9);
    const last = solve(toMiddle, kept);
    return { fit: last, shares: last.x, score: [outside, spread * mean, last.objective] };
  }
  return { fit: nearest, shares: nearest.x, score: [outside, nearest.objective] };
}

/**
 * The allowed shares that break soft conditions least, by the weighted sum of squares of their slacks:
 * `row · shares <= limit + slack`, beside the hard ones `row · shares <= 0`.
 */
export function leastSlack(
  { lower, upper }: Pick<BlendProgramme, "lower" | "upper">,
  conditions: {
    readonly hard: readonly (readonly number[])[];
    readonly soft: readonly {
      readonly row: readonly number[];
      readonly limit: number;
      /** Place of its slack, which several conditions may share. */
      readonly slack: number;
    }[];
    readonly maxSlack: readonly number[];
    readonly weights?: readonly number[];
  },
): { readonly fit: ConstrainedFit; readonly shares: number[]; readonly slack: number[] } {
  const { hard, soft, maxSlack, weights } = conditions;
  const none = maxSlack.map(() => 0);
  const noShare = lower.map(() => 0);
  const unit = (at: number, value: number) => none.map((_, i): number => (i === at ? value : 0));
  const fit = constrainedLeastSquares({
    matrix: none.length > 0 ? none.map((_, i) => [...noShare, ...unit(i, 1)]) : [noShare],
    target: none.length > 0 ? none : [0],
    weights,
    equalities: { matrix: [[...lower.map(() => 1), ...none]], target: [1] },
    lower: [...lower, ...none],
    upper: [...upper, ...maxSlack],
    inequalities: {
      matrix: [
        ...hard.map((row) => [...row, ...none]),
        ...soft.map(({ row, slack }) => [...row, ...unit(slack, -1)]),
      ],
      limit: [...hard.map(() => 0), ...soft.map(({ limit }) => limit)],
    },
  });
  return { fit, shares: fit.x.slice(0, lower.length), slack: fit.x.slice(lower.length) };
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
      const what = `${maxMaterials} of ${count} makes more than ${MAX_SETS} sets`;
      checkThat(tried <= MAX_SETS, { maxMaterials: what }, "fewer");
      const within = onlyMaterials(programme, (j) => chosen.includes(j));
      const found = solveBlend(within, aims);
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
