/** A constrained linear least-squares problem in `n` unknowns. */
export interface ConstrainedProblem {
  /** Rows by unknowns. */
  readonly matrix: readonly (readonly number[])[];
  readonly target: readonly number[];
  /** One non-negative number a row; all 1 by default. */
  readonly weights?: readonly number[];
  /** Rows to meet exactly: `matrix · x = target`. */
  readonly equalities?: {
    readonly matrix: readonly (readonly number[])[];
    readonly target: readonly number[];
  };
  /** Least values, -Infinity for none; none by default. */
  readonly lower?: readonly number[];
  /** Largest values, Infinity for none; none by default. */
  readonly upper?: readonly number[];
  /** Rows to stay below: `matrix · x <= limit`. */
  readonly inequalities?: {
    readonly matrix: readonly (readonly number[])[];
    readonly limit: readonly number[];
  };
}

/** What a constrained least-squares solution found. */
export interface ConstrainedFit {
  /** `infeasible`: no x meets the conditions; x is then one that breaks them least. */
  readonly status: "ok" | "infeasible" | "iteration-limit";
  readonly message: string;
  readonly x: number[];
  /** `Σ wᵢ (matrix · x - target)ᵢ²`, not halved. */
  readonly objective: number;
  /** `matrix · x - target`, not weighted. */
  readonly residuals: number[];
  /** -1: x stands on its least value; 1: on its largest; 0: between. */
  readonly activeBounds: (-1 | 0 | 1)[];
  readonly activeInequalities: boolean[];
  /**
   * What each condition costs, so that
   * `∇objective = Eᵀ equalities + bounds - Gᵀ inequalities`: the change of the objective for a unit
   * change of an equality's target or of a bound, or the fall for a unit more of a limit. `bounds` is
   * at least 0 on a least value, at most 0 on a largest; `inequalities` at least 0.
   */
  readonly multipliers: {
    readonly equalities: number[];
    readonly bounds: number[];
    readonly inequalities: number[];
  };
  /** Largest breach of that equation and of those signs, columns scaled to unit length, relative to
   * `‖ |matrix| |x| ‖ + ‖target‖`; NaN when infeasible. */
  readonly optimalityResidual: number;
  /** Largest breach of a condition, relative to the sizes of the terms in its row. */
  readonly infeasibility: number;
  /** 1-norm condition of the problem in the directions left free at the solution; 1 where none is. */
  readonly condition: number;
  /** Rank of the weighted matrix. */
  readonly rank: number;
  readonly iterations: number;
  /** False where another x may do just as well. */
  readonly unique: boolean;
}
