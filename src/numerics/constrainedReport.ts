import type { ConstrainedFit, ConstrainedProblem } from "./constrainedFit.js";
import { isUniqueSolution } from "./isUniqueSolution.js";
import { kktResidual } from "./kktResidual.js";
import type { ScaledProgramme } from "./scaledProgramme.js";
import { unscaledCovariance } from "./unscaledCovariance.js";
import type { WorkingSet } from "./workingSet.js";

/** A limit met to within rounding counts as active. */
const ON_LIMIT = 1e-12;

/** From the scaled solution back to the caller's units, with the measures of how good it is. */
export function constrainedReport(
  problem: ConstrainedProblem,
  scaled: ScaledProgramme,
  z: Float64Array,
  outcome: {
    status: ConstrainedFit["status"];
    message: string;
    breach: number;
    /** Missing when there was no feasible point to start from. */
    set?: WorkingSet;
    iterations?: number;
  },
): ConstrainedFit {
  const { columnScale, rank } = scaled;
  const { set } = outcome;
  const x = Array.from(z, (value, j) => value * columnScale[j]);
  const residuals = problem.matrix.map((row, i) => dot(row, x) - problem.target[i]);
  return {
    status: outcome.status,
    message: outcome.message,
    x,
    objective: residuals.reduce((sum, r, i) => sum + (problem.weights?.[i] ?? 1) * r * r, 0),
    residuals,
    activeBounds: x.map((value, j) => {
      if (value === problem.lower?.[j]) return -1;
      return value === problem.upper?.[j] ? 1 : 0;
    }),
    activeInequalities: (problem.inequalities?.matrix ?? []).map((row, i) => {
      const limit = problem.inequalities!.limit[i];
      const size = row.reduce((sum, g, j) => sum + Math.abs(g * x[j]), Math.abs(limit));
      return dot(row, x) >= limit - ON_LIMIT * size;
    }),
    multipliers: multipliersOf(problem, scaled, set),
    optimalityResidual: set ? kktResidual(scaled, set, z) : NaN,
    infeasibility: outcome.breach,
    condition: set ? conditionOf(set) : NaN,
    rank,
    iterations: outcome.iterations ?? 0,
    unique: set ? isUniqueSolution(set, z) : false,
  };
}

function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let j = 0; j < b.length; j++) sum += a[j] * b[j];
  return sum;
}

function conditionOf({ reduced }: WorkingSet): number {
  return reduced.columns === 0 ? 1 : unscaledCovariance(reduced).condition;
}

/** Twice, because the solver works with half the objective. */
function multipliersOf(
  problem: ConstrainedProblem,
  { columnScale, rowScale }: ScaledProgramme,
  set: WorkingSet | undefined,
): ConstrainedFit["multipliers"] {
  const equalities = problem.equalities?.matrix.length ?? 0;
  const rows = Array.from(rowScale, (s, i) => (set ? 2 * s * set.rowMultipliers[i] : NaN));
  return {
    equalities: rows.slice(0, equalities),
    bounds: Array.from(columnScale, (s, j) => (set ? (2 * set.boundMultipliers[j]) / s : NaN)),
    inequalities: rows.slice(equalities).map((value) => 0 - value),
  };
}
