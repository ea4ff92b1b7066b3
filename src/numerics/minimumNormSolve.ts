import { HouseholderQr } from "./householderQr.js";

/**
 * Of all `y` that solve a rank-deficient least-squares problem, the shortest.
 *
 * From the leading `rank` rows `[R₁₁ R₁₂]` of a QR without column scaling and the first `rank` entries
 * of `Qᵀ b`, by a second QR of their transpose. Overwrites `vector` with `y` in the order of the QR.
 */
export function minimumNormSolve(qr: HouseholderQr, vector: Float64Array): void {
  const { rank, columns, rows, packed } = qr;
  const transposed = new Float64Array(columns * rank);
  for (let k = 0; k < rank; k++) {
    for (let j = k; j < columns; j++) transposed[k * columns + j] = packed[j * rows + k];
  }
  const second = new HouseholderQr(transposed, columns, rank, 0);
  const work = new Float64Array(columns);
  for (let k = 0; k < rank; k++) work[k] = vector[second.order[k]] * second.scale[second.order[k]];
  second.solveUpperTransposed(work);
  second.apply(work);
  vector.set(work);
}
