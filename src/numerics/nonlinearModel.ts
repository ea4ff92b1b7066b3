import type { NonlinearProblem } from "./nonlinearFit.js";

/** Central differences of second order lose least at the cube root of the rounding unit. */
const STEP = Math.cbrt(Number.EPSILON);
/** Those of fourth order at its fifth root. */
const LONG_STEP = Number.EPSILON ** 0.2;

/** A nonlinear problem with counted evaluations and a Jacobian in every case. */
export class NonlinearModel {
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  evaluations = 0;
  private readonly moved: number[];

  constructor(
    private readonly problem: NonlinearProblem,
    readonly rows: number,
  ) {
    const { start, lower, upper } = problem;
    this.lower = Float64Array.from(start, (_, j) => lower?.[j] ?? -Infinity);
    this.upper = Float64Array.from(start, (_, j) => upper?.[j] ?? Infinity);
    this.moved = [...start];
  }

  /** Residuals at `p`, or undefined where one is not finite. */
  residuals(p: readonly number[]): number[] | undefined {
    this.evaluations++;
    const found = this.problem.residuals(p);
    if (found.length !== this.rows) {
      throw new TypeError(
        `invalid \`residuals\`: ${found.length} values; expected ${this.rows} as at the start`,
      );
    }
    return found.every(Number.isFinite) ? found : undefined;
  }

  /**
   * Writes the Jacobian at `p`, column-major, into `into`.
   *
   * @param fine Fourth-order differences, for the last steps and the covariance.
   * @returns False where a column cannot be found because the residuals around are not finite.
   */
  jacobian(
    p: readonly number[],
    at: readonly number[],
    into: Float64Array,
    fine: boolean,
  ): boolean {
    const { rows } = this;
    if (this.problem.jacobian) {
      const given = this.problem.jacobian(p);
      for (let j = 0; j < p.length; j++) {
        for (let i = 0; i < rows; i++) into[j * rows + i] = given[i][j];
      }
      return into.every(Number.isFinite);
    }
    for (let j = 0; j < p.length; j++) {
      this.moved[j] = p[j];
    }
    for (let j = 0; j < p.length; j++) {
      if (this.lower[j] === this.upper[j]) {
        into.fill(0, j * rows, (j + 1) * rows);
        continue;
      }
      const found =
        (fine && this.column(p, at, j, into, [-2, -1, 1, 2], [1, -8, 8, -1], 12, LONG_STEP)) ||
        this.column(p, at, j, into, [-1, 1], [-1, 1], 2, STEP) ||
        this.column(p, at, j, into, [0, 1, 2], [-3, 4, -1], 2, STEP) ||
        this.column(p, at, j, into, [0, -1, -2], [3, -4, 1], 2, STEP);
      if (!found) return false;
    }
    return true;
  }

  /** One column by the given stencil; false where that leaves the bounds or a residual is not finite. */
  private column(
    p: readonly number[],
    at: readonly number[],
    j: number,
    into: Float64Array,
    places: readonly number[],
    factors: readonly number[],
    divisor: number,
    relative: number,
  ): boolean {
    const { rows, moved } = this;
    const start = Math.abs(this.problem.start[j]);
    const room = (this.upper[j] - this.lower[j]) / 4;
    const wished = Math.min(room, relative * (Math.max(Math.abs(p[j]), 1e-3 * start) || 1));
    // The step as the addition really makes it, so that no digits are lost in dividing by it.
    const step = p[j] + wished - p[j];
    const ends = places.map((place) => p[j] + place * step);
    if (ends.some((end) => end < this.lower[j] || end > this.upper[j])) return false;
    into.fill(0, j * rows, (j + 1) * rows);
    // Factors sum to nothing, so differences from here do too: a parameter without effect gives zeros.
    for (let k = 0; k < places.length; k++) {
      moved[j] = ends[k];
      const found = places[k] === 0 ? at : this.residuals(moved);
      moved[j] = p[j];
      if (!found) return false;
      const factor = factors[k] / (divisor * step);
      for (let i = 0; i < rows; i++) into[j * rows + i] += factor * (found[i] - at[i]);
    }
    return true;
  }
}
