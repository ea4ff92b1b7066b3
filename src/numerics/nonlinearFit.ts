/** A nonlinear least-squares problem: find the parameters that make `Σ residuals²` least. */
export interface NonlinearProblem {
  /** Residuals at given parameters, always the same number of them; weights already applied. */
  readonly residuals: (parameters: readonly number[]) => number[];
  readonly start: readonly number[];
  /** Least values, -Infinity for none; none by default. */
  readonly lower?: readonly number[];
  /** Largest values, Infinity for none; none by default. */
  readonly upper?: readonly number[];
  /** Residuals by parameters; central differences by default. */
  readonly jacobian?: (parameters: readonly number[]) => number[][];
  /** Default 200. */
  readonly maxIterations?: number;
  /** Relative step and relative gradient at which to stop; default 1e-10. */
  readonly tolerance?: number;
}

/** What a nonlinear least-squares fit found. */
export interface NonlinearFit {
  /**
   * `no-progress`: no shorter step helps, yet the gradient is not small. `invalid-start`: residuals
   * not finite at the start, a start outside its bounds, or fewer residuals than parameters.
   */
  readonly status: "converged" | "iteration-limit" | "no-progress" | "invalid-start";
  readonly message: string;
  readonly parameters: number[];
  /** NaN for a parameter on a bound, and for all where the data do not settle those left. */
  readonly standardErrors: number[];
  /** `s² (JᵀJ)⁻¹` over the parameters not on a bound. */
  readonly covariance: number[][];
  readonly correlation: number[][];
  readonly residuals: number[];
  readonly residualSumOfSquares: number;
  /** Residuals less parameters, those on a bound included. */
  readonly degreesOfFreedom: number;
  /** `√(RSS / df)`; NaN without degrees of freedom. */
  readonly residualSd: number;
  /** -1: on its least value; 1: on its largest; 0: between. */
  readonly activeBounds: (-1 | 0 | 1)[];
  /** True for a parameter that never left its start: a sign that the data say nothing about it. */
  readonly unmoved: boolean[];
  readonly iterations: number;
  /** Calls of `residuals`. */
  readonly evaluations: number;
  /** Largest cosine between the residuals and a free column of the Jacobian, 0 to 1. */
  readonly gradientNorm: number;
}
