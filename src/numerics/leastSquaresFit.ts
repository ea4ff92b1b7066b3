/** What a linear least-squares fit found; arrays are in the order of the design's columns or rows. */
export interface LeastSquaresFit {
  /**
   * `rank-deficient`: some columns are combinations of others; the fitted values are right but the
   * coefficients are not unique. `too-few-points`: fewer rows of positive weight than columns.
   */
  readonly status: "ok" | "rank-deficient" | "too-few-points";
  readonly message: string;
  /** Where not unique: a solution with zeros for the surplus columns. All NaN for too few points. */
  readonly coefficients: number[];
  /** Square roots of the diagonal of `covariance`. */
  readonly standardErrors: number[];
  /** `s² (XᵀWX)⁻¹`; NaN unless status is `ok` and there are degrees of freedom. */
  readonly covariance: number[][];
  /** `(XᵀWX)⁻¹`; NaN unless status is `ok`. */
  readonly unscaledCovariance: number[][];
  readonly fitted: number[];
  /** Response less fitted, not weighted. */
  readonly residuals: number[];
  /** Diagonal of the hat matrix of the weighted problem, 0 to 1. */
  readonly leverages: number[];
  /** Weighted: `Σ wᵢ rᵢ²`. */
  readonly residualSumOfSquares: number;
  /** Rows of positive weight less rank. */
  readonly degreesOfFreedom: number;
  /** `√(RSS / df)`; NaN without degrees of freedom. */
  readonly residualSd: number;
  /** `1 - RSS / TSS`; NaN where the response does not vary. */
  readonly rSquared: number;
  /** `centred` about the weighted mean when a constant lies in the column space. */
  readonly rSquaredKind: "centred" | "uncentred";
  readonly rank: number;
  /** 1-norm condition number of the columns scaled to like length; Infinity where deficient. */
  readonly condition: number;
}
