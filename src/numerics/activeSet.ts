import { HouseholderQr, minimumNormSolve } from "./householderQr.js";

/**
 * The form in which the active-set solver takes a problem, all arrays row-major:
 * minimise `‖matrix z - target‖` with `conditions z = limits` for the first `equalities` rows,
 * `conditions z <= limits` for the others, and `lower <= z <= upper`.
 */
export interface ActiveSetProgramme {
  readonly unknowns: number;
  readonly rows: number;
  readonly matrix: Float64Array;
  readonly target: Float64Array;
  readonly conditions: Float64Array;
  readonly limits: Float64Array;
  readonly equalities: number;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
}

/**
 * Improves a point that meets the conditions until none of them, let go, would allow better.
 *
 * Primal active set: step to the minimum over the held conditions; where another condition stops the
 * step, hold it; at the minimum let go the condition with the most wrong multiplier. After steps of no
 * length, lowest numbers go first (Bland), so that it cannot circle. Source: Nocedal and Wright,
 * *Numerical Optimization*, ch. 16 (from memory).
 *
 * @param z A point that meets the conditions; overwritten with the solution.
 */
// biome-ignore lint/complexity/noExcessiveCognitiveComplexity: one iteration, read beside its source
export function activeSetSolve(
  programme: ActiveSetProgramme,
  z: Float64Array,
): { set: WorkingSet; converged: boolean; iterations: number } {
  const { unknowns, limits } = programme;
  const set = new WorkingSet(programme);
  const most = 100 + 20 * (unknowns + limits.length);
  /** Conditions that, let go, came straight back: their multipliers are noise until z moves. */
  const barred = new Uint8Array(unknowns + limits.length);
  let released = -1;
  let stalled = 0;
  for (let iterations = 1; iterations <= most; iterations++) {
    if (set.factorise() > 0) {
      set.findDirection(z);
      const stop = nearestStop(set, z, stalled > unknowns);
      for (let j = 0; j < unknowns; j++) z[j] += stop.length * set.direction[j];
      clamp(programme, z);
      const at = stop.condition;
      if (at >= 0) {
        hold(set, z, at);
        if (stop.length > 0) barred.fill(0);
        if (stop.length === 0 && at === released) barred[at] = 1;
        stalled = stop.length > 0 ? 0 : stalled + 1;
        released = -1;
        continue;
      }
      stalled = 0;
    }
    set.findMultipliers(z);
    released = worstCondition(set, z, barred, stalled > unknowns);
    if (released < 0) return { set, converged: true, iterations };
    if (released < unknowns) set.bounds[released] = 0;
    else set.held[released - unknowns] = 0;
  }
  set.factorise();
  set.findMultipliers(z);
  return { set, converged: false, iterations: most };
}

/** Holds a condition that stopped a step; an unknown stands on its bound from then on. */
function hold(set: WorkingSet, z: Float64Array, condition: number): void {
  const { unknowns, lower, upper } = set.programme;
  if (condition >= unknowns) {
    set.held[condition - unknowns] = 1;
    return;
  }
  const falls = set.direction[condition] < 0;
  set.bounds[condition] = falls ? -1 : 1;
  z[condition] = falls ? lower[condition] : upper[condition];
}

/** Rounding must not carry a free unknown past its bound. */
function clamp({ lower, upper }: ActiveSetProgramme, z: Float64Array): void {
  for (let j = 0; j < z.length; j++) z[j] = Math.min(upper[j], Math.max(lower[j], z[j]));
}

/** The held condition whose multiplier has the wrong sign beyond rounding, or -1. */
function worstCondition(
  set: WorkingSet,
  z: Float64Array,
  barred: Uint8Array,
  lowestFirst: boolean,
): number {
  const { unknowns, limits } = set.programme;
  let worst = 16 * Number.EPSILON * sizeOf(set.programme, z);
  let found = -1;
  for (let c = 0; c < unknowns + limits.length; c++) {
    const wrong = barred[c] ? 0 : pull(set, c);
    if (!(wrong > worst)) continue;
    found = c;
    if (lowestFirst) return found;
    worst = wrong;
  }
  return found;
}

/** How strongly the objective pulls away from a held condition; 0 where it cannot be let go. */
function pull(set: WorkingSet, condition: number): number {
  const { bounds, held, boundMultipliers, rowMultipliers, programme } = set;
  const { unknowns, lower, upper, equalities } = programme;
  if (condition < unknowns) {
    if (bounds[condition] === 0 || lower[condition] === upper[condition]) return 0;
    return boundMultipliers[condition] * bounds[condition];
  }
  const row = condition - unknowns;
  return row >= equalities && held[row] ? rowMultipliers[row] : 0;
}

/** The size that multipliers are compared with: of the target and of the unknowns. */
function sizeOf({ target }: ActiveSetProgramme, z: Float64Array): number {
  let size = 0;
  for (const value of target) size += value * value;
  let length = 0;
  for (const value of z) length += Math.abs(value);
  return Math.sqrt(size) + length;
}

/** How far a step may go, and which condition stops it; -1 where none does. */
interface Stop {
  /** 0 to 1. */
  length: number;
  /** Unknown `j` on a bound as `j`, row `i` of the conditions as `unknowns + i`. */
  condition: number;
}

/** A slope this small beside the step is rounding noise. */
const NOISE = 1e-14;

/**
 * Walks from `z` along the working set's direction until a condition not held would be broken.
 *
 * @param lowestFirst Among conditions met at the same length take the lowest number (Bland's rule,
 *   which cannot cycle) rather than the one crossed most steeply.
 */
// biome-ignore lint/complexity/noExcessiveCognitiveComplexity: bounds and rows side by side
function nearestStop(set: WorkingSet, z: Float64Array, lowestFirst: boolean): Stop {
  const { direction, bounds, held, programme } = set;
  const { unknowns, lower, upper, limits } = programme;
  const stop: Stop = { length: 1, condition: -1 };
  let steepest = 0;
  let longest = 0;
  for (let j = 0; j < unknowns; j++) longest = Math.max(longest, Math.abs(direction[j]));
  const meet = (condition: number, room: number, slope: number): void => {
    const length = Math.max(0, room / slope);
    if (length > stop.length) return;
    if (length === stop.length && (lowestFirst || slope <= steepest)) return;
    stop.length = length;
    stop.condition = condition;
    steepest = slope;
  };
  for (let j = 0; j < unknowns; j++) {
    const slope = direction[j];
    if (bounds[j] !== 0 || Math.abs(slope) <= NOISE * longest) continue;
    if (slope < 0 && lower[j] > -Infinity) meet(j, z[j] - lower[j], -slope);
    if (slope > 0 && upper[j] < Infinity) meet(j, upper[j] - z[j], slope);
  }
  for (let i = programme.equalities; i < limits.length; i++) {
    if (held[i]) continue;
    const { slope, room } = approach(programme, i, direction, z);
    if (slope > NOISE * longest) meet(unknowns + i, room, slope);
  }
  return stop;
}

/** How fast a step along `direction` comes nearer to a row of the conditions, and the room left at `z`. */
function approach(
  { unknowns, conditions, limits }: ActiveSetProgramme,
  row: number,
  direction: Float64Array,
  z: Float64Array,
): { slope: number; room: number } {
  let slope = 0;
  let room = limits[row];
  for (let j = 0; j < unknowns; j++) {
    slope += conditions[row * unknowns + j] * direction[j];
    room -= conditions[row * unknowns + j] * z[j];
  }
  return { slope, room };
}

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

/**
 * Moves `z` (overwritten) to a nearby point that meets the conditions, or breaks them least.
 *
 * Least squares again: the breaches of the rows are minimised within the bounds, each inequality with
 * a slack unknown of its own, `C z + s = d, s >= 0`.
 *
 * @returns Iterations used.
 */
export function feasibleStart(programme: ActiveSetProgramme, z: Float64Array): number {
  const { unknowns, conditions, limits, equalities } = programme;
  clamp(programme, z);
  const rows = limits.length;
  if (rows === 0) return 0;
  const wide = unknowns + rows - equalities;
  const matrix = new Float64Array(rows * wide);
  const start = new Float64Array(wide);
  start.set(z);
  for (let i = 0; i < rows; i++) {
    let room = limits[i];
    for (let j = 0; j < unknowns; j++) {
      matrix[i * wide + j] = conditions[i * unknowns + j];
      room -= conditions[i * unknowns + j] * z[j];
    }
    if (i < equalities) continue;
    matrix[i * wide + unknowns + i - equalities] = 1;
    start[unknowns + i - equalities] = Math.max(0, room);
  }
  const lower = new Float64Array(wide);
  const upper = new Float64Array(wide).fill(Infinity);
  lower.set(programme.lower);
  upper.set(programme.upper);
  const { iterations } = activeSetSolve(
    {
      unknowns: wide,
      rows,
      matrix,
      target: limits,
      conditions: new Float64Array(0),
      limits: new Float64Array(0),
      equalities: 0,
      lower,
      upper,
    },
    start,
  );
  z.set(start.subarray(0, unknowns));
  return iterations;
}

/**
 * The largest breach of a condition at `z`, which stays within its bounds, relative to the sizes of the terms in its row
 * (`Σ|C_ij z_j| + |d_i|`), with a trace of the largest unknown so that rows of zeros stay calm.
 *
 * @param size Size of the unknowns where the search began: rounding of that size is no breach.
 */
export function relativeBreach(
  programme: ActiveSetProgramme,
  z: Float64Array,
  size: number,
): number {
  const { unknowns, conditions, limits, equalities } = programme;
  let max = 1e-3 * size;
  for (const value of z) max = Math.max(max, Math.abs(value));
  let worst = 0;
  for (let i = 0; i < limits.length; i++) {
    let value = -limits[i];
    let terms = Math.abs(limits[i]);
    for (let j = 0; j < unknowns; j++) {
      const term = conditions[i * unknowns + j] * z[j];
      value += term;
      terms += Math.abs(term) + 1e-6 * Math.abs(conditions[i * unknowns + j]) * max;
    }
    const breach = i < equalities ? Math.abs(value) : Math.max(value, 0);
    if (breach > 0) worst = Math.max(worst, breach / terms);
  }
  return worst;
}

/**
 * Whether no other point does as well: whether the directions that leave both the matrix and every
 * condition with a multiplier above rounding untouched are none. Conditions that cost nothing are let
 * go first, since another solution may lie behind them; so `false` says *may*, `true` is sure.
 *
 * Leaves the working set changed: call it last.
 */
export function isUniqueSolution(set: WorkingSet, z: Float64Array): boolean {
  const { reduced, bounds, held, programme, boundMultipliers, rowMultipliers } = set;
  if (reduced.rank < reduced.columns) return false;
  const nothing = 1e-12 * sizeOf(programme, z);
  for (let j = 0; j < bounds.length; j++) {
    if (programme.lower[j] === programme.upper[j]) continue;
    if (Math.abs(boundMultipliers[j]) <= nothing) bounds[j] = 0;
  }
  for (let i = programme.equalities; i < held.length; i++) {
    if (Math.abs(rowMultipliers[i]) <= nothing) held[i] = 0;
  }
  set.factorise();
  return reduced.rank === reduced.columns;
}
