import { activeSetSolve } from "./activeSetSolve.js";
import { checkConstrainedProblem } from "./checkConstrainedProblem.js";
import type { ConstrainedFit, ConstrainedProblem } from "./constrainedFit.js";
import { constrainedReport } from "./constrainedReport.js";
import { feasibleStart } from "./feasibleStart.js";
import { relativeBreach } from "./relativeBreach.js";
import { scaledProgramme } from "./scaledProgramme.js";

/** A breach beyond this is no rounding: the conditions contradict each other. */
const MOST_BREACH = 1e-10;
const WORTH_REPEATING = 1e-14;

/**
 * Linear least squares under conditions: the convex quadratic programme in least-squares form.
 *
 * Minimises `Σᵢ wᵢ (Σⱼ Aᵢⱼ xⱼ - bᵢ)²` subject to `E x = f`, `lower <= x <= upper` and `G x <= h`.
 * Primal active-set method: phase one finds a point that meets the conditions (or breaks them least);
 * equalities and active rows are met by moving in their null space, from a QR; each step is a small
 * least-squares problem by QR, so `AᵀA` is never formed. Columns and rows are scaled by powers of two,
 * so the answer does not depend on units. Where the matrix does not settle x, each step is the shortest
 * one and `unique` is false.
 *
 * @param problem See `ConstrainedProblem`; `n` unknowns, at least one row. Meant for up to some tens of
 *   unknowns.
 * @returns Never throws for conditions that contradict: see `status` and `infeasibility` (at most 1e-10
 *   when met). An infeasible answer has NaN multipliers and optimality residual.
 * @throws TypeError for parts that do not fit together; RangeError for an entry that is not a number.
 *
 * Source: Lawson and Hanson, *Solving Least Squares Problems*, ch. 20–23; Nocedal and Wright, *Numerical
 * Optimization*, ch. 16 (both from memory); checked against SciPy and against every active set in turn.
 *
 * @example
 * const fit = constrainedLeastSquares({
 *   matrix: [[100, 20], [60, 5], [10, 0]],
 *   target: [60, 35, 4],
 *   equalities: { matrix: [[1, 1]], target: [1] },
 *   lower: [0, 0],
 *   upper: [1, 1],
 * });
 * fit.x // => [0.5133858, 0.4866142]
 * fit.objective // => 5.5433071
 * fit.activeBounds // => [0, 0]
 */
export function constrainedLeastSquares(problem: ConstrainedProblem): ConstrainedFit {
  const unknowns = checkConstrainedProblem(problem);
  const crossed = findCrossed(problem);
  if (crossed >= 0) return solve(untangled(problem), unknowns, crossed);
  return solve(problem, unknowns, -1);
}

function solve(problem: ConstrainedProblem, unknowns: number, crossed: number): ConstrainedFit {
  const scaled = scaledProgramme(problem, unknowns);
  const z = scaled.start;
  const size = z.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  let first = feasibleStart(scaled.programme, z);
  let breach = relativeBreach(scaled.programme, z, size);
  if (breach > WORTH_REPEATING) {
    // A long first step leaves its rounding behind; a second, short one clears it away.
    first += feasibleStart(scaled.programme, z);
    breach = relativeBreach(scaled.programme, z, size);
  }
  if (crossed >= 0 || breach > MOST_BREACH) {
    const message =
      crossed >= 0
        ? `lower[${crossed}] lies above upper[${crossed}]`
        : `no x meets all conditions; the closest breaks one by ${breach.toPrecision(2)} of its size`;
    const worst = crossed >= 0 ? Math.max(breach, 1) : breach;
    return constrainedReport(problem, scaled, z, { status: "infeasible", message, breach: worst });
  }
  const { set, converged, iterations } = activeSetSolve(scaled.programme, z);
  return constrainedReport(problem, scaled, z, {
    status: converged ? "ok" : "iteration-limit",
    message: converged
      ? "the conditions hold and no allowed change lessens the objective"
      : `stopped after ${iterations} iterations; x meets the conditions but may not be the best`,
    breach: relativeBreach(scaled.programme, z, size),
    set,
    iterations: first + iterations,
  });
}

function findCrossed(problem: ConstrainedProblem): number {
  const { lower, upper } = problem;
  return lower && upper ? lower.findIndex((value, j) => value > upper[j]) : -1;
}

/** Crossed bounds meet halfway, so that the report can still show a point near both. */
function untangled(problem: ConstrainedProblem): ConstrainedProblem {
  const [lower, upper] = [problem.lower!, problem.upper!];
  const meet = (own: readonly number[]): number[] =>
    own.map((value, j) => (lower[j] > upper[j] ? lower[j] / 2 + upper[j] / 2 : value));
  return { ...problem, lower: meet(lower), upper: meet(upper) };
}
