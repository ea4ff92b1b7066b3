import type { HouseholderQr } from "./householderQr.js";

/**
 * `(AᵀA)⁻¹ = D P R⁻¹ R⁻ᵀ Pᵀ D` from a QR, in the original column order, with the 1-norm condition
 * `‖R‖₁ ‖R⁻¹‖₁` of the scaled columns. NaN and Infinity where the columns are deficient.
 */
export function unscaledCovariance(qr: HouseholderQr): { matrix: number[][]; condition: number } {
  const { rows, columns, rank, packed, order, scale } = qr;
  const matrix = Array.from({ length: columns }, () => new Array<number>(columns).fill(NaN));
  if (rank < columns) return { matrix, condition: Infinity };
  // inverse[k] is column k of R⁻¹.
  const inverse = Array.from({ length: columns }, (_, k) => {
    const column = new Float64Array(columns);
    column[k] = 1;
    qr.solveUpper(column);
    return column;
  });
  let size = 0;
  let inverseSize = 0;
  for (let k = 0; k < columns; k++) {
    let sum = 0;
    for (let i = 0; i <= k; i++) sum += Math.abs(packed[k * rows + i]);
    size = Math.max(size, sum);
    inverseSize = Math.max(
      inverseSize,
      inverse[k].reduce((total, value) => total + Math.abs(value), 0),
    );
  }
  for (let a = 0; a < columns; a++) {
    for (let b = 0; b <= a; b++) {
      let sum = 0;
      for (let k = a; k < columns; k++) sum += inverse[k][a] * inverse[k][b];
      const value = sum * scale[order[a]] * scale[order[b]];
      matrix[order[a]][order[b]] = value;
      matrix[order[b]][order[a]] = value;
    }
  }
  return { matrix, condition: size * inverseSize };
}
