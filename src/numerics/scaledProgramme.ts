import type { ActiveSetProgramme } from "./activeSetProgramme.js";
import type { ConstrainedProblem } from "./constrainedFit.js";
import { HouseholderQr } from "./householderQr.js";
import { scaledConditions } from "./scaledConditions.js";

/** A problem in unknowns `z = x / columnScale` with conditions multiplied by `rowScale`. */
export interface ScaledProgramme {
  readonly programme: ActiveSetProgramme;
  /** Minimum over all z without conditions (zeros for surplus columns): where to start looking. */
  readonly start: Float64Array;
  /** Powers of two, so that scaling rounds nothing. */
  readonly columnScale: Float64Array;
  readonly rowScale: Float64Array;
  /** Weighted and scaled matrix, column-major, and weighted target, before reduction. */
  readonly matrix: Float64Array;
  readonly target: Float64Array;
  readonly rank: number;
}

/**
 * Scales the columns of the weighted matrix and the rows of the conditions to about unit length, and
 * shrinks the matrix to the triangle of its QR, which has the same minimum over any conditions.
 */
export function scaledProgramme(problem: ConstrainedProblem, unknowns: number): ScaledProgramme {
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
  const triangle = new Float64Array(short * unknowns);
  let rank = 0;
  for (let k = 0; k < unknowns; k++) {
    const most = Math.min(k + 1, short);
    for (let i = 0; i < most; i++) {
      triangle[i * unknowns + qr.order[k]] = i < qr.rank ? qr.packed[k * rows + i] : 0;
    }
    if (k < qr.rank && isSound(qr, k)) rank = k + 1;
  }
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
      lower: Float64Array.from(columnScale, (s, j) => (problem.lower?.[j] ?? -Infinity) / s),
      upper: Float64Array.from(columnScale, (s, j) => (problem.upper?.[j] ?? Infinity) / s),
    },
    start,
    columnScale,
    rowScale,
    matrix,
    target,
    rank,
  };
}

function isSound(qr: HouseholderQr, k: number): boolean {
  const tolerance = Math.max(qr.rows, qr.columns) * Number.EPSILON;
  return Math.abs(qr.packed[k * qr.rows + k]) > tolerance * Math.abs(qr.packed[0]);
}
