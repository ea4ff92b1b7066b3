import type { HouseholderQr } from "./householderQr.js";
import { PreciseSum } from "./preciseSum.js";

/** Corrections shrink by about condition × 1e-16 each, so a few suffice wherever they help at all. */
const MOST_STEPS = 4;

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
export function refineLeastSquares(
  qr: HouseholderQr,
  matrix: Float64Array,
  target: Float64Array,
): { solution: Float64Array; residual: Float64Array } {
  const { rows, columns, rank, order, scale } = qr;
  const solution = new Float64Array(columns);
  const residual = new Float64Array(rows);
  const first = new Float64Array(rows);
  const second = new Float64Array(rows);
  const sum = new PreciseSum();
  let before = Infinity;
  for (let step = 0; step <= MOST_STEPS; step++) {
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
