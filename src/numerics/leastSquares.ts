import { checkMatrix, checkVector, columnsOf } from "./checkVector.js";
import { HouseholderQr, unscaledCovariance } from "./householderQr.js";

/** What a linear least-squares fit found; arrays are in the order of the design's columns or rows. */
export interface LeastSquaresFit {
  /**
   * `rank-deficient`: some columns are combinations of others; the fitted values are right but the
   * coefficients are not unique. `too-few-points`: fewer rows of positive weight than columns.
   */
  readonly status: "ok" | "rank-deficient" | "too-few-points";
  readonly message: string;
  /** Where not unique: a solution with zeros for the surplus columns. All NaN for too few points. */
  readonly coefficients: number[];
  /** Square roots of the diagonal of `covariance`. */
  readonly standardErrors: number[];
  /** `s² (XᵀWX)⁻¹`; NaN unless status is `ok` and there are degrees of freedom. */
  readonly covariance: number[][];
  /** `(XᵀWX)⁻¹`; NaN unless status is `ok`. */
  readonly unscaledCovariance: number[][];
  readonly fitted: number[];
  /** Response less fitted, not weighted. */
  readonly residuals: number[];
  /** Diagonal of the hat matrix of the weighted problem, 0 to 1. */
  readonly leverages: number[];
  /** Weighted: `Σ wᵢ rᵢ²`. */
  readonly residualSumOfSquares: number;
  /** Rows of positive weight less rank. */
  readonly degreesOfFreedom: number;
  /** `√(RSS / df)`; NaN without degrees of freedom. */
  readonly residualSd: number;
  /** `1 - RSS / TSS`; NaN where the response does not vary. */
  readonly rSquared: number;
  /** `centred` about the weighted mean when a constant lies in the column space. */
  readonly rSquaredKind: "centred" | "uncentred";
  readonly rank: number;
  /** 1-norm condition number of the columns scaled to like length; Infinity where deficient. */
  readonly condition: number;
}

/**
 * Fits `response ≈ design · coefficients` by (weighted) linear least squares.
 *
 * Minimises `Σ wᵢ (yᵢ - Σⱼ xᵢⱼ bⱼ)²` by column-pivoted Householder QR of the weighted, column-scaled
 * design, then refines the solution with residuals summed in doubled precision, so that columns of
 * very different size or nearly parallel columns cost as few digits as the data allow. The normal
 * equations are never formed. A constant is a column of ones that the caller gives.
 *
 * @param design Rows by columns, `design[i][j]`; at least one row and one column; no unit of its own.
 * @param response One number a row.
 * @param options.weights One non-negative number a row, by default all 1. A weight of 0 leaves the
 *   row out of the fit, still giving it a fitted value and a residual.
 * @returns Never throws for the data being poor: see `status`, `rank` and `condition`.
 * @throws TypeError when lengths differ; RangeError for an entry that is not finite, or a weight
 *   below zero.
 *
 * Source: Björck, *Numerical Methods for Least Squares Problems*, §1.3, §2.9 (from memory); proved on
 * the NIST Statistical Reference Datasets for linear regression.
 *
 * @example
 * const fit = leastSquares([[1, 1], [1, 2], [1, 3]], [2, 4, 7]);
 * fit.coefficients // => [-0.6666667, 2.5]
 * fit.degreesOfFreedom // => 1
 */
export function leastSquares(
  design: readonly (readonly number[])[],
  response: readonly number[],
  options: { weights?: readonly number[] } = {},
): LeastSquaresFit {
  const rows = design.length;
  const columns = columnsOf("design", design);
  checkVector("response", response, rows);
  checkMatrix("design", design, columns);
  if (options.weights) checkVector("weights", options.weights, rows, 0);
  const rootWeights = new Float64Array(rows).fill(1);
  options.weights?.forEach((weight, i) => {
    rootWeights[i] = Math.sqrt(weight);
  });
  const weighted = new Float64Array(rows * columns);
  for (let j = 0; j < columns; j++) {
    for (let i = 0; i < rows; i++) weighted[j * rows + i] = rootWeights[i] * design[i][j];
  }
  const target = rootWeights.map((root, i) => root * response[i]);
  const qr = new HouseholderQr(weighted.slice(), rows, columns);
  const refined = refineLeastSquares(qr, weighted, target);
  return leastSquaresSummary(qr, design, response, rootWeights, refined);
}

/** Corrections shrink by about condition × 1e-16 each, so a few suffice wherever they help at all. */
const MAX_STEPS = 4;

/**
 * Solves `min ‖target - matrix · x‖` from a QR of `matrix`, then refines.
 *
 * Residuals and solution are corrected together as the augmented system `r + A x = b, Aᵀ r = 0`, with
 * the errors of both equations summed in doubled precision. Correcting x alone would not help when
 * the residual is large. Source: Björck, *Iterative refinement of linear least squares solutions I*,
 * BIT 7 (1967), from memory.
 *
 * @param matrix Column-major, `qr.rows` by `qr.columns`, before scaling.
 * @returns Coefficients in the original order, zeros for the columns beyond the rank, and the residual,
 *   which keeps digits that `target - matrix · solution` loses once the solution is rounded.
 */
function refineLeastSquares(
  qr: HouseholderQr,
  matrix: Float64Array,
  target: Float64Array,
): { solution: Float64Array; residual: Float64Array } {
  const { rows, columns, rank, order, scale } = qr;
  const solution = new Float64Array(columns);
  const residual = new Float64Array(rows);
  const first = new Float64Array(rows);
  const second = new Float64Array(rows);
  let before = Infinity;
  for (let step = 0; step <= MAX_STEPS; step++) {
    findErrors(qr, matrix, target, solution, residual, first, second);
    qr.applyTranspose(first);
    qr.solveUpperTransposed(second);
    for (let k = 0; k < rank; k++) {
      const held = second[k];
      second[k] = first[k] - held;
      first[k] = held;
    }
    qr.solveUpper(second);
    qr.apply(first);
    let size = 0;
    for (let k = 0; k < rank; k++) size = Math.max(size, Math.abs(second[k]));
    // A correction no smaller than the last is noise: the digits the data allow are reached.
    if (!(size < before / 2)) break;
    before = size;
    for (let k = 0; k < rank; k++) solution[order[k]] += second[k] * scale[order[k]];
    for (let i = 0; i < rows; i++) residual[i] += first[i];
    if (size === 0) break;
  }
  return { solution, residual };
}

/** By how much both equations of the augmented system are missed, in `first` and `second`. */
function findErrors(
  { rows, columns, rank, order, scale }: HouseholderQr,
  matrix: Float64Array,
  target: Float64Array,
  solution: Float64Array,
  residual: Float64Array,
  first: Float64Array,
  second: Float64Array,
): void {
  const sum = new PreciseSum();
  for (let i = 0; i < rows; i++) {
    sum.reset(target[i]).add(-residual[i]);
    for (let j = 0; j < columns; j++) sum.addProduct(-matrix[j * rows + i], solution[j]);
    first[i] = sum.value();
  }
  for (let k = 0; k < rank; k++) {
    const start = order[k] * rows;
    sum.reset();
    for (let i = 0; i < rows; i++) sum.addProduct(-matrix[start + i], residual[i]);
    second[k] = sum.value() * scale[order[k]];
  }
}

/** From coefficients and the QR of the weighted design to everything a fit reports. */
function leastSquaresSummary(
  qr: HouseholderQr,
  design: readonly (readonly number[])[],
  response: readonly number[],
  rootWeights: Float64Array,
  refined: { solution: Float64Array; residual: Float64Array },
): LeastSquaresFit {
  const { columns, rank } = qr;
  const counted = rootWeights.reduce((count, root) => count + Number(root > 0), 0);
  const { status, message } = verdict(counted, columns, rank);
  const isFit = status !== "too-few-points";
  const coefficients = [...refined.solution.map((b) => (isFit ? b : NaN))];
  const sum = new PreciseSum();
  const residuals = response.map((value, i) => {
    if (isFit && rootWeights[i] > 0) return refined.residual[i] / rootWeights[i];
    sum.reset(value);
    for (let j = 0; j < columns; j++) sum.addProduct(-design[i][j], coefficients[j]);
    return sum.value();
  });
  const residualSumOfSquares = weightedSquares(rootWeights, residuals, 0);
  const degreesOfFreedom = Math.max(0, counted - rank);
  const variance = degreesOfFreedom > 0 ? residualSumOfSquares / degreesOfFreedom : NaN;
  const { matrix, condition } = unscaledCovariance(qr);
  const covariance = matrix.map((row) => row.map((value) => value * variance));
  const centred = spansConstant(qr, rootWeights);
  const total = weightedSquares(rootWeights, response, centred ? mean(rootWeights, response) : 0);
  return {
    status,
    message,
    coefficients,
    standardErrors: covariance.map((row, j) => Math.sqrt(row[j])),
    covariance,
    unscaledCovariance: matrix,
    fitted: response.map((value, i) => value - residuals[i]),
    residuals,
    leverages: leverages(qr),
    residualSumOfSquares,
    degreesOfFreedom,
    residualSd: Math.sqrt(variance),
    rSquared: total > 0 ? 1 - residualSumOfSquares / total : NaN,
    rSquaredKind: centred ? "centred" : "uncentred",
    rank,
    condition,
  };
}

function verdict(
  counted: number,
  columns: number,
  rank: number,
): Pick<LeastSquaresFit, "status" | "message"> {
  if (counted < columns) {
    const message = `${counted} points of positive weight cannot settle ${columns} coefficients`;
    return { status: "too-few-points", message };
  }
  if (rank < columns) {
    const message = `the ${columns} columns have rank ${rank}: some repeat what others say`;
    return { status: "rank-deficient", message };
  }
  const exact = counted === columns ? ": exact fit, no standard errors" : "";
  return { status: "ok", message: `${counted} points, ${columns} coefficients${exact}` };
}

function mean(rootWeights: Float64Array, values: readonly number[]): number {
  const sum = new PreciseSum();
  let weights = 0;
  values.forEach((value, i) => {
    sum.addProduct(rootWeights[i] ** 2, value);
    weights += rootWeights[i] ** 2;
  });
  return sum.value() / weights;
}

function weightedSquares(
  rootWeights: Float64Array,
  values: readonly number[],
  centre: number,
): number {
  return values.reduce((sum, value, i) => sum + (rootWeights[i] * (value - centre)) ** 2, 0);
}

function spansConstant(qr: HouseholderQr, rootWeights: Float64Array): boolean {
  const constant = rootWeights.slice();
  qr.applyTranspose(constant);
  const outside = constant.subarray(qr.rank).reduce((sum, value) => sum + value * value, 0);
  const whole = rootWeights.reduce((sum, value) => sum + value * value, 0);
  return Math.sqrt(outside) <= 1e-10 * Math.sqrt(whole);
}

function leverages(qr: HouseholderQr): number[] {
  const found = new Array<number>(qr.rows).fill(0);
  const column = new Float64Array(qr.rows);
  for (let k = 0; k < qr.rank; k++) {
    column.fill(0);
    column[k] = 1;
    qr.apply(column);
    for (let i = 0; i < qr.rows; i++) found[i] += column[i] ** 2;
  }
  return found;
}

/** 2^27 + 1: splits a double into two halves whose products are exact (Veltkamp). */
const SPLITTER = 134217729;

/**
 * A running sum of products carried in twice the working precision.
 *
 * Each product and each addition keeps its own rounding error, and the errors are summed
 * beside the main sum (algorithm Dot2 of Ogita, Rump and Oishi, *Accurate sum and dot product*,
 * SIAM J. Sci. Comput. 26 (2005), from memory). Factors beyond about 1e300 overflow the split.
 */
class PreciseSum {
  private main = 0;
  private error = 0;

  /** Starts again from `value`. */
  reset(value = 0): this {
    this.main = value;
    this.error = 0;
    return this;
  }

  /** Adds `value`. */
  add(value: number): this {
    const sum = this.main + value;
    const part = sum - this.main;
    this.error += this.main - (sum - part) + (value - part);
    this.main = sum;
    return this;
  }

  /** Adds `a * b` without losing the low half of the product. */
  addProduct(a: number, b: number): this {
    const product = a * b;
    const splitA = SPLITTER * a;
    const highA = splitA - (splitA - a);
    const lowA = a - highA;
    const splitB = SPLITTER * b;
    const highB = splitB - (splitB - b);
    const lowB = b - highB;
    this.error += lowA * lowB - (product - highA * highB - lowA * highB - highA * lowB);
    return this.add(product);
  }

  /** The sum, rounded once. */
  value(): number {
    return this.main + this.error;
  }
}
