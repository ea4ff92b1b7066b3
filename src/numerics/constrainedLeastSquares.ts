import {
  type ActiveSetProgramme,
  activeSetSolve,
  feasibleStart,
  isUniqueSolution,
  relativeBreach,
  type WorkingSet,
} from "./activeSet.js";
import { checkBounds, checkMatrix, checkVector, columnsOf } from "./checkVector.js";
import { HouseholderQr, unscaledCovariance } from "./householderQr.js";

/** A constrained linear least-squares problem in `n` unknowns. */
export interface ConstrainedProblem {
  /** Rows by unknowns. */
  readonly matrix: readonly (readonly number[])[];
  readonly target: readonly number[];
  /** One non-negative number a row; all 1 by default. */
  readonly weights?: readonly number[];
  /** Rows to meet exactly: `matrix · x = target`. */
  readonly equalities?: {
    readonly matrix: readonly (readonly number[])[];
    readonly target: readonly number[];
  };
  /** Least values, -Infinity for none; none by default. */
  readonly lower?: readonly number[];
  /** Largest values, Infinity for none; none by default. */
  readonly upper?: readonly number[];
  /** Rows to stay below: `matrix · x <= limit`. */
  readonly inequalities?: {
    readonly matrix: readonly (readonly number[])[];
    readonly limit: readonly number[];
  };
}

/** What a constrained least-squares solution found. */
export interface ConstrainedFit {
  /** `infeasible`: no x meets the conditions; x is then one that breaks them least. */
  readonly status: "ok" | "infeasible" | "iteration-limit";
  readonly message: string;
  readonly x: number[];
  /** `Σ wᵢ (matrix · x - target)ᵢ²`, not halved. */
  readonly objective: number;
  /** `matrix · x - target`, not weighted. */
  readonly residuals: number[];
  /** -1: x stands on its least value; 1: on its largest; 0: between. */
  readonly activeBounds: (-1 | 0 | 1)[];
  readonly activeInequalities: boolean[];
  /**
   * What each condition costs, so that
   * `∇objective = Eᵀ equalities + bounds - Gᵀ inequalities`: the change of the objective for a unit
   * change of an equality's target or of a bound, or the fall for a unit more of a limit. `bounds` is
   * at least 0 on a least value, at most 0 on a largest; `inequalities` at least 0.
   */
  readonly multipliers: {
    readonly equalities: number[];
    readonly bounds: number[];
    readonly inequalities: number[];
  };
  /** Largest breach of that equation and of those signs, columns scaled to unit length, relative to
   * `‖ |matrix| |x| ‖ + ‖target‖`; NaN when infeasible. */
  readonly optimalityResidual: number;
  /** Largest breach of a condition, relative to the sizes of the terms in its row. */
  readonly infeasibility: number;
  /** 1-norm condition of the problem in the directions left free at the solution; 1 where none is. */
  readonly condition: number;
  /** Rank of the weighted matrix. */
  readonly rank: number;
  readonly iterations: number;
  /** False where another x may do just as well. */
  readonly unique: boolean;
}

/** A breach beyond this is no rounding: the conditions contradict each other. */
const MAX_BREACH = 1e-10;
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
 * @throws TypeError for parts that do not fit together; RangeError for an entry that is not a number, or for
 *   bounds that cross.
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
  const scaled = scaledProgramme(problem, checkConstrainedProblem(problem));
  const { programme, start: z } = scaled;
  const size = z.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  let first = feasibleStart(programme, z);
  let breach = relativeBreach(programme, z, size);
  if (breach > WORTH_REPEATING) {
    // A long first step leaves its rounding behind; a second, short one clears it away.
    first += feasibleStart(programme, z);
    breach = relativeBreach(programme, z, size);
  }
  if (breach > MAX_BREACH) {
    const message = `no x meets all conditions; the closest breaks one by ${breach.toPrecision(2)} of its size`;
    return constrainedReport(problem, scaled, z, { status: "infeasible", message, breach });
  }
  const { set, converged, iterations } = activeSetSolve(programme, z);
  return constrainedReport(problem, scaled, z, {
    status: converged ? "ok" : "iteration-limit",
    message: converged
      ? "the conditions hold and no allowed change lessens the objective"
      : `stopped after ${iterations} iterations; x meets the conditions but may not be the best`,
    breach: relativeBreach(programme, z, size),
    set,
    iterations: first + iterations,
  });
}

/** Refuses a problem whose parts do not fit together; returns the number of unknowns. */
function checkConstrainedProblem(problem: ConstrainedProblem): number {
  const { matrix, target, weights, equalities, inequalities } = problem;
  const unknowns = columnsOf("matrix", matrix);
  checkMatrix("matrix", matrix, unknowns);
  checkVector("target", target, matrix.length);
  if (weights) checkVector("weights", weights, matrix.length, 0);
  if (equalities) {
    checkMatrix("equalities.matrix", equalities.matrix, unknowns);
    checkVector("equalities.target", equalities.target, equalities.matrix.length);
  }
  if (inequalities) {
    checkMatrix("inequalities.matrix", inequalities.matrix, unknowns);
    checkVector("inequalities.limit", inequalities.limit, inequalities.matrix.length);
  }
  checkBounds(problem, unknowns);
  return unknowns;
}

/** A problem in unknowns `z = x / columnScale` with conditions multiplied by `rowScale`. */
interface ScaledProgramme {
  readonly programme: ActiveSetProgramme;
  /** Minimum over all z without conditions (zeros for surplus columns): where to start looking. */
  readonly start: Float64Array;
  /** Powers of two, so that scaling rounds nothing. */
  readonly columnScale: Float64Array;
  readonly rowScale: readonly number[];
  /** Weighted and scaled matrix, column-major, and weighted target, before reduction. */
  readonly matrix: Float64Array;
  readonly target: Float64Array;
  readonly rank: number;
}

/**
 * Scales the columns of the weighted matrix and the rows of the conditions to about unit length, and
 * shrinks the matrix to the triangle of its QR, which has the same minimum over any conditions.
 */
function scaledProgramme(problem: ConstrainedProblem, unknowns: number): ScaledProgramme {
  const rows = problem.matrix.length;
  const matrix = new Float64Array(rows * unknowns);
  const target = new Float64Array(rows);
  for (let i = 0; i < rows; i++) {
    const root = Math.sqrt(problem.weights?.[i] ?? 1);
    target[i] = root * problem.target[i];
    for (let j = 0; j < unknowns; j++) matrix[j * rows + i] = root * problem.matrix[i][j];
  }
  const qr = new HouseholderQr(matrix.slice(), rows, unknowns, 0);
  const columnScale = qr.scale;
  for (let j = 0; j < unknowns; j++) {
    for (let i = 0; i < rows; i++) matrix[j * rows + i] *= columnScale[j];
  }
  const short = Math.min(rows, unknowns);
  const triangle = upperTriangle(qr);
  const rank = soundRank(qr);
  const reducedTarget = target.slice();
  qr.applyTranspose(reducedTarget);
  const start = new Float64Array(unknowns);
  const solved = reducedTarget.slice();
  qr.rank = rank;
  qr.solveUpper(solved);
  for (let k = 0; k < rank; k++) start[qr.order[k]] = solved[k];
  const { conditions, limits, rowScale } = scaledConditions(problem, columnScale);
  return {
    programme: {
      unknowns,
      rows: short,
      matrix: triangle,
      target: reducedTarget.slice(0, short),
      conditions,
      limits,
      equalities: problem.equalities?.matrix.length ?? 0,
      lower: columnScale.map((s, j) => (problem.lower?.[j] ?? -Infinity) / s),
      upper: columnScale.map((s, j) => (problem.upper?.[j] ?? Infinity) / s),
    },
    start,
    columnScale,
    rowScale,
    matrix,
    target,
    rank,
  };
}

/** `R` row-major, its columns in the order of the matrix. */
function upperTriangle({ rows, columns, rank, order, packed }: HouseholderQr): Float64Array {
  const short = Math.min(rows, columns);
  const triangle = new Float64Array(short * columns);
  for (let k = 0; k < columns; k++) {
    for (let i = 0; i < Math.min(k + 1, short, rank); i++) {
      triangle[i * columns + order[k]] = packed[k * rows + i];
    }
  }
  return triangle;
}

/** Up to the last column whose part that is new lies above rounding. */
function soundRank({ rows, columns, rank, packed }: HouseholderQr): number {
  const tolerance = Math.max(rows, columns) * Number.EPSILON;
  let sound = rank;
  while (
    sound > 0 &&
    !(Math.abs(packed[(sound - 1) * rows + sound - 1]) > tolerance * Math.abs(packed[0]))
  ) {
    sound--;
  }
  return sound;
}

/**
 * The rows of equalities, then inequalities, in scaled unknowns, each multiplied by a power of two so
 * that its largest entry is near one.
 */
function scaledConditions(
  problem: ConstrainedProblem,
  columnScale: Float64Array,
): { conditions: Float64Array; limits: Float64Array; rowScale: number[] } {
  const unknowns = columnScale.length;
  const rows = [...(problem.equalities?.matrix ?? []), ...(problem.inequalities?.matrix ?? [])];
  const given = [...(problem.equalities?.target ?? []), ...(problem.inequalities?.limit ?? [])];
  const conditions = new Float64Array(rows.length * unknowns);
  const rowScale = rows.map((row, i) => {
    let max = 0;
    for (let j = 0; j < unknowns; j++) max = Math.max(max, Math.abs(row[j] * columnScale[j]));
    const scale = max === 0 ? 1 : 2 ** -Math.round(Math.log2(max));
    for (let j = 0; j < unknowns; j++) {
      conditions[i * unknowns + j] = row[j] * columnScale[j] * scale;
    }
    return scale;
  });
  return { conditions, limits: new Float64Array(given.map((v, i) => v * rowScale[i])), rowScale };
}

/** A limit met to within rounding counts as active. */
const ON_LIMIT = 1e-12;

/** From the scaled solution back to the caller's units, with the measures of how good it is. */
function constrainedReport(
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
  const x = [...z.map((value, j) => value * columnScale[j])];
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
    condition: set ? unscaledCovariance(set.reduced).condition : NaN,
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

/** Twice, because the solver works with half the objective. */
function multipliersOf(
  problem: ConstrainedProblem,
  { columnScale, rowScale }: ScaledProgramme,
  set: WorkingSet | undefined,
): ConstrainedFit["multipliers"] {
  const equalities = problem.equalities?.matrix.length ?? 0;
  const rows = rowScale.map((s, i) => (set ? 2 * s * set.rowMultipliers[i] : NaN));
  return {
    equalities: rows.slice(0, equalities),
    bounds: [...columnScale.map((s, j) => (set ? (2 * set.boundMultipliers[j]) / s : NaN))],
    inequalities: rows.slice(equalities).map((value) => 0 - value),
  };
}

/**
 * How far a point and its multipliers are from the Karush–Kuhn–Tucker conditions: the largest entry
 * of `Aᵀ(A z - b) - Cᵀ λ - μ` and the largest multiplier of the wrong sign, relative to
 * `‖ |A| |z| ‖ + ‖b‖`, the terms of the residual (the columns of A have about unit length). Uses the whole matrix, not its triangle, so
 * that it checks the reduction as well.
 */
function kktResidual(scaled: ScaledProgramme, set: WorkingSet, z: Float64Array): number {
  const { matrix, target, programme } = scaled;
  const { unknowns, conditions, limits, equalities, lower, upper } = programme;
  const rows = target.length;
  const residual = new Float64Array(rows);
  let size = 0;
  let targetSize = 0;
  for (let i = 0; i < rows; i++) {
    let value = 0;
    let terms = 0;
    for (let j = 0; j < unknowns; j++) {
      const term = matrix[j * rows + i] * z[j];
      value += term;
      terms += Math.abs(term);
    }
    residual[i] = value - target[i];
    size += terms * terms;
    targetSize += target[i] * target[i];
  }
  let worst = 0;
  for (let j = 0; j < unknowns; j++) {
    const multiplier = set.boundMultipliers[j];
    let value = -multiplier;
    for (let i = 0; i < rows; i++) value += matrix[j * rows + i] * residual[i];
    for (let c = 0; c < limits.length; c++) {
      value -= conditions[c * unknowns + j] * set.rowMultipliers[c];
    }
    const wrong = lower[j] === upper[j] ? 0 : multiplier * set.bounds[j];
    worst = Math.max(worst, Math.abs(value), wrong);
  }
  for (let c = equalities; c < limits.length; c++) worst = Math.max(worst, set.rowMultipliers[c]);
  const scale = Math.sqrt(size) + Math.sqrt(targetSize);
  return scale > 0 ? worst / scale : worst;
}
