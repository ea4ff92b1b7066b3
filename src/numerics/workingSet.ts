import type { ActiveSetProgramme } from "./activeSetProgramme.js";
import { HouseholderQr } from "./householderQr.js";
import { minimumNormSolve } from "./minimumNormSolve.js";

/**
 * The conditions an active-set solver holds as equations for now, and the linear algebra on them.
 *
 * Unknowns on a held bound are taken out; the held rows, restricted to the free unknowns, are
 * factorised as `C_Fᵀ = Q R`, whose last columns of `Q` span the directions that keep them.
 * Memory is taken once for the life of the object.
 */
export class WorkingSet {
  /** -1, 1: held on the least or largest value; 0: free. */
  readonly bounds: Int8Array;
  /** 1 for each held row of the conditions; equalities always are. */
  readonly held: Uint8Array;
  /** Multipliers found by `findMultipliers`, of the rows and of the bounds. */
  readonly rowMultipliers: Float64Array;
  readonly boundMultipliers: Float64Array;
  /** Factors of the matrix in the directions that keep the held conditions. */
  readonly reduced: HouseholderQr;
  readonly direction: Float64Array;
  private readonly rowsQr: HouseholderQr;
  private readonly free: Int32Array;
  private freeCount = 0;
  private readonly rows: Int32Array;
  private rowCount = 0;
  private readonly work: Float64Array;
  private readonly residual: Float64Array;

  constructor(readonly programme: ActiveSetProgramme) {
    const { unknowns, rows, limits, equalities, lower, upper } = programme;
    const conditions = limits.length;
    this.bounds = new Int8Array(unknowns);
    this.held = new Uint8Array(conditions).fill(1, 0, equalities);
    this.rowMultipliers = new Float64Array(conditions);
    this.boundMultipliers = new Float64Array(unknowns);
    this.direction = new Float64Array(unknowns);
    this.rowsQr = new HouseholderQr(new Float64Array(unknowns * conditions), 0, conditions);
    this.reduced = new HouseholderQr(new Float64Array(rows * unknowns), 0, unknowns);
    this.free = new Int32Array(unknowns);
    this.rows = new Int32Array(conditions);
    this.work = new Float64Array(Math.max(unknowns, conditions));
    this.residual = new Float64Array(Math.max(rows, unknowns));
    for (let j = 0; j < unknowns; j++) if (lower[j] === upper[j]) this.bounds[j] = -1;
  }

  /** Factorises for the conditions now held; returns the number of free directions. */
  factorise(): number {
    const { rowsQr, reduced, free, rows, work } = this;
    const { unknowns, matrix, rows: matrixRows, conditions, limits } = this.programme;
    this.freeCount = 0;
    for (let j = 0; j < unknowns; j++) if (this.bounds[j] === 0) free[this.freeCount++] = j;
    this.rowCount = 0;
    for (let i = 0; i < limits.length; i++) if (this.held[i]) rows[this.rowCount++] = i;
    const count = this.freeCount;
    for (let a = 0; a < this.rowCount; a++) {
      const from = rows[a] * unknowns;
      for (let f = 0; f < count; f++) rowsQr.packed[a * count + f] = conditions[from + free[f]];
    }
    rowsQr.factorise(count, this.rowCount);
    const kept = rowsQr.rank;
    for (let i = 0; i < matrixRows; i++) {
      for (let f = 0; f < count; f++) work[f] = matrix[i * unknowns + free[f]];
      rowsQr.applyTranspose(work);
      for (let t = kept; t < count; t++) reduced.packed[(t - kept) * matrixRows + i] = work[t];
    }
    // Columns of the matrix have about unit length, so this is a relative tolerance too.
    reduced.factorise(matrixRows, count - kept, 0, 4 * (unknowns + 4) * Number.EPSILON);
    return count - kept;
  }

  /** The step from `z` to a minimum over the held conditions, left in `direction`; the shortest one. */
  findDirection(z: Float64Array): void {
    const { rowsQr, reduced, residual, work, direction } = this;
    this.findResidual(z);
    reduced.applyTranspose(residual);
    if (reduced.rank < reduced.columns) minimumNormSolve(reduced, residual);
    else reduced.solveUpper(residual);
    work.fill(0);
    for (let t = 0; t < reduced.columns; t++) work[rowsQr.rank + reduced.order[t]] = residual[t];
    rowsQr.apply(work);
    direction.fill(0);
    for (let f = 0; f < this.freeCount; f++) direction[this.free[f]] = work[f];
  }

  /** Multipliers at `z` of the half objective: `matrixᵀ (matrix z - target) = Cᵀ rows + bounds`. */
  findMultipliers(z: Float64Array): void {
    const { rowsQr, work, rowMultipliers, boundMultipliers: gradient, residual } = this;
    const { unknowns, rows, matrix, conditions } = this.programme;
    this.findResidual(z);
    gradient.fill(0);
    for (let i = 0; i < rows; i++) {
      for (let j = 0; j < unknowns; j++) gradient[j] -= matrix[i * unknowns + j] * residual[i];
    }
    for (let f = 0; f < this.freeCount; f++) work[f] = gradient[this.free[f]];
    rowsQr.applyTranspose(work);
    rowsQr.solveUpper(work);
    rowMultipliers.fill(0);
    for (let k = 0; k < rowsQr.rank; k++) {
      const at = rowsQr.order[k];
      const row = this.rows[at];
      rowMultipliers[row] = work[k] * rowsQr.scale[at];
      for (let j = 0; j < unknowns; j++) {
        gradient[j] -= conditions[row * unknowns + j] * rowMultipliers[row];
      }
    }
    for (let f = 0; f < this.freeCount; f++) gradient[this.free[f]] = 0;
  }

  private findResidual(z: Float64Array): void {
    const { unknowns, rows, matrix, target } = this.programme;
    for (let i = 0; i < rows; i++) {
      let value = target[i];
      for (let j = 0; j < unknowns; j++) value -= matrix[i * unknowns + j] * z[j];
      this.residual[i] = value;
    }
  }
}
