import { checkVector } from "./checkVector.js";
import { HouseholderQr } from "./householderQr.js";
import type { LeastSquaresFit } from "./leastSquaresFit.js";
import { leastSquaresSummary } from "./leastSquaresSummary.js";
import { refineLeastSquares } from "./refineLeastSquares.js";

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
  const columns = design[0]?.length ?? 0;
  if (rows === 0 || columns === 0) {
    throw new RangeError(
      `invalid \`design\`: ${rows} rows by ${columns} columns; expected at least one of each`,
    );
  }
  checkVector("response", response, rows);
  design.forEach((row, i) => {
    checkVector(`design[${i}]`, row, columns);
  });
  if (options.weights) checkVector("weights", options.weights, rows, 0);
  const rootWeights = Float64Array.from({ length: rows }, (_, i) =>
    Math.sqrt(options.weights?.[i] ?? 1),
  );
  const weighted = new Float64Array(rows * columns);
  for (let j = 0; j < columns; j++) {
    for (let i = 0; i < rows; i++) weighted[j * rows + i] = rootWeights[i] * design[i][j];
  }
  const target = Float64Array.from(response, (value, i) => rootWeights[i] * value);
  const qr = new HouseholderQr(weighted.slice(), rows, columns);
  const refined = refineLeastSquares(qr, weighted, target);
  return leastSquaresSummary(qr, design, response, rootWeights, refined);
}
