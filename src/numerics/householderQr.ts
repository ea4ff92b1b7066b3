/**
 * Column-pivoted Householder QR of a small dense matrix: `A D P = Q R`.
 *
 * `D` scales each column by a power of two to a length near one (which rounds nothing), so the
 * rank decision `|R_kk| <= tolerance |R_00|` does not depend on the units of the columns. `P` brings
 * the longest remaining column forward. Works in place on a column-major array, so that solvers
 * called thousands of times can reuse their memory. Source: Golub and Van Loan, *Matrix
 * Computations*, §5.4 (from memory).
 */
export class HouseholderQr {
  /** Reflectors below the diagonal, `R` on and above it, column-major. */
  readonly packed: Float64Array;
  rows: number;
  columns: number;
  /** `order[k]` is the original column standing in place `k`. */
  readonly order: Int32Array;
  /** Power of two by which each original column was multiplied. */
  readonly scale: Float64Array;
  /** Number of columns told apart from combinations of the others. */
  rank = 0;
  private readonly tau: Float64Array;
  private readonly norms: Float64Array;

  /** Takes over `columnMajor` (length at least `rows * columns`) and factorises it. */
  constructor(columnMajor: Float64Array, rows: number, columns: number, tolerance?: number) {
    this.packed = columnMajor;
    this.rows = rows;
    this.columns = columns;
    this.order = new Int32Array(columns);
    this.scale = new Float64Array(columns);
    this.tau = new Float64Array(columns);
    this.norms = new Float64Array(columns);
    this.factorise(rows, columns, tolerance);
  }

  /**
   * Factorises afresh what now stands in `packed`, at most as large as at first.
   *
   * @param tolerance Relative to the longest scaled column.
   * @param floor A length counted as nothing. When given, columns keep their lengths: for columns that
   *   may be mere rounding noise of others, where scaling would make the noise look sound.
   */
  factorise(rows: number, columns: number, tolerance?: number, floor?: number): void {
    this.rows = rows;
    this.columns = columns;
    const { order, norms, scale } = this;
    const relative = tolerance ?? Math.max(rows, columns) * Number.EPSILON;
    for (let j = 0; j < columns; j++) {
      order[j] = j;
      scale[j] = 1;
      norms[j] = floor === undefined ? this.scaleColumn(j) : this.tailNorm(j, 0);
    }
    this.rank = 0;
    let first = 0;
    for (let k = 0; k < Math.min(rows, columns); k++) {
      this.bringLongest(k);
      const length = this.tailNorm(k, k);
      if (k === 0) first = length;
      if (length === 0 || length <= Math.max(relative * first, floor ?? 0)) break;
      this.rank = k + 1;
      this.reflect(k, length);
      this.shortenNorms(k);
    }
  }

  /** Overwrites `vector` (length `rows`) with `Qᵀ vector`. */
  applyTranspose(vector: Float64Array): void {
    for (let k = 0; k < this.rank; k++) this.reflectVector(k, vector, 0);
  }

  /** Overwrites `vector` (length `rows`) with `Q vector`. */
  apply(vector: Float64Array): void {
    for (let k = this.rank - 1; k >= 0; k--) this.reflectVector(k, vector, 0);
  }

  /** Overwrites the first `rank` entries of `vector` with `R⁻¹ vector` (leading block). */
  solveUpper(vector: Float64Array): void {
    const { packed, rows } = this;
    for (let k = this.rank - 1; k >= 0; k--) {
      const value = vector[k] / packed[k * rows + k];
      vector[k] = value;
      for (let i = 0; i < k; i++) vector[i] -= packed[k * rows + i] * value;
    }
  }

  /** Overwrites the first `rank` entries of `vector` with `R⁻ᵀ vector` (leading block). */
  solveUpperTransposed(vector: Float64Array): void {
    const { packed, rows } = this;
    for (let k = 0; k < this.rank; k++) {
      let value = vector[k];
      for (let i = 0; i < k; i++) value -= packed[k * rows + i] * vector[i];
      vector[k] = value / packed[k * rows + k];
    }
  }

  private scaleColumn(j: number): number {
    const { packed, rows } = this;
    const start = j * rows;
    let max = 0;
    for (let i = start; i < start + rows; i++) max = Math.max(max, Math.abs(packed[i]));
    if (max === 0) return 0;
    // Clamped so that the scale and its reciprocal both stay ordinary numbers.
    let power = powerOfTwo(-Math.max(-1000, Math.min(1000, Math.floor(Math.log2(max)))));
    let sum = 0;
    for (let i = start; i < start + rows; i++) sum += (packed[i] * power) ** 2;
    power *= powerOfTwo(-Math.round(0.5 * Math.log2(sum)));
    for (let i = start; i < start + rows; i++) packed[i] *= power;
    this.scale[j] = power;
    return this.tailNorm(j, 0);
  }

  private tailNorm(j: number, from: number): number {
    let sum = 0;
    for (let i = j * this.rows + from; i < (j + 1) * this.rows; i++) sum += this.packed[i] ** 2;
    return Math.sqrt(sum);
  }

  /** Brings the longest remaining column to place `k`. */
  private bringLongest(k: number): void {
    const { packed, rows, columns, order, norms } = this;
    let longest = k;
    for (let j = k + 1; j < columns; j++) if (norms[j] > norms[longest]) longest = j;
    if (longest === k) return;
    for (let i = 0; i < rows; i++) {
      const held = packed[k * rows + i];
      packed[k * rows + i] = packed[longest * rows + i];
      packed[longest * rows + i] = held;
    }
    [order[k], order[longest]] = [order[longest], order[k]];
    norms[longest] = norms[k];
  }

  /** Lengths of the remaining columns below row `k`. */
  private shortenNorms(k: number): void {
    const { packed, norms, rows, columns } = this;
    for (let j = k + 1; j < columns; j++) {
      if (norms[j] === 0) continue;
      const above = packed[j * rows + k] / norms[j];
      const left = 1 - above * above;
      // Subtracting squares loses digits once most of the length is gone: measure again.
      norms[j] = left > 0.01 ? norms[j] * Math.sqrt(left) : this.tailNorm(j, k + 1);
    }
  }

  private reflect(k: number, length: number): void {
    const { packed, rows } = this;
    const at = k * rows + k;
    const diagonal = packed[at] > 0 ? -length : length;
    const head = packed[at] - diagonal;
    for (let i = at + 1; i < (k + 1) * rows; i++) packed[i] /= head;
    this.tau[k] = -head / diagonal;
    packed[at] = diagonal;
    for (let j = k + 1; j < this.columns; j++) this.reflectVector(k, packed, j * rows);
  }

  private reflectVector(k: number, target: Float64Array, start: number): void {
    const { packed, rows } = this;
    const base = k * rows;
    let dot = target[start + k];
    for (let i = k + 1; i < rows; i++) dot += packed[base + i] * target[start + i];
    dot *= this.tau[k];
    target[start + k] -= dot;
    for (let i = k + 1; i < rows; i++) target[start + i] -= dot * packed[base + i];
  }
}

const LEAST_EXPONENT = -1022;
const POWERS_OF_TWO = Float64Array.from({ length: 2046 }, (_, at) => 2 ** (at + LEAST_EXPONENT));

/** Looked up: raising takes longer than all else that scales a short column. */
function powerOfTwo(exponent: number): number {
  return POWERS_OF_TWO[exponent - LEAST_EXPONENT];
}

/**
 * `(AᵀA)⁻¹ = D P R⁻¹ R⁻ᵀ Pᵀ D` from a QR, in the original column order, with the 1-norm condition
 * `‖R‖₁ ‖R⁻¹‖₁` of the scaled columns, 1 without any. NaN and Infinity where the columns are deficient.
 */
export function unscaledCovariance(qr: HouseholderQr): { matrix: number[][]; condition: number } {
  const { rows, columns, rank, order, scale, packed } = qr;
  const matrix: number[][] = [];
  for (let k = 0; k < columns; k++) matrix.push(new Array<number>(columns).fill(NaN));
  if (columns === 0) return { matrix, condition: 1 };
  if (rank < columns) return { matrix, condition: Infinity };
  /** Column k of R⁻¹ in place k. */
  const inverse: Float64Array[] = [];
  let size = 0;
  let inverseSize = 0;
  for (let k = 0; k < columns; k++) {
    const column = new Float64Array(columns);
    column[k] = 1;
    qr.solveUpper(column);
    inverse.push(column);
    let sum = 0;
    let inverseSum = 0;
    for (let i = 0; i <= k; i++) {
      sum += Math.abs(packed[k * rows + i]);
      inverseSum += Math.abs(column[i]);
    }
    size = Math.max(size, sum);
    inverseSize = Math.max(inverseSize, inverseSum);
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
