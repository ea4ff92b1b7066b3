import type { HouseholderQr } from "./householderQr.js";
import type { LeastSquaresFit } from "./leastSquaresFit.js";
import { PreciseSum } from "./preciseSum.js";
import { unscaledCovariance } from "./unscaledCovariance.js";

/** From coefficients and the QR of the weighted design to everything a fit reports. */
export function leastSquaresSummary(
  qr: HouseholderQr,
  design: readonly (readonly number[])[],
  response: readonly number[],
  rootWeights: Float64Array,
  refined: { solution: Float64Array; residual: Float64Array },
): LeastSquaresFit {
  const { columns, rank } = qr;
  const counted = rootWeights.filter((weight) => weight > 0).length;
  const status = counted < columns ? "too-few-points" : rank < columns ? "rank-deficient" : "ok";
  const coefficients = Array.from(refined.solution, (b) => (status === "too-few-points" ? NaN : b));
  const sum = new PreciseSum();
  const residuals = response.map((value, i) => {
    if (status !== "too-few-points" && rootWeights[i] > 0)
      return refined.residual[i] / rootWeights[i];
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
    message: describe(status, counted, columns, rank, degreesOfFreedom),
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

function describe(
  status: LeastSquaresFit["status"],
  counted: number,
  columns: number,
  rank: number,
  degreesOfFreedom: number,
): string {
  if (status === "too-few-points") {
    return `${counted} points of positive weight cannot settle ${columns} coefficients`;
  }
  if (status === "rank-deficient") {
    return `the ${columns} columns have rank ${rank}: some repeat what others say`;
  }
  return degreesOfFreedom > 0
    ? `${counted} points, ${columns} coefficients`
    : `${counted} points, ${columns} coefficients: exact fit, no standard errors`;
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
