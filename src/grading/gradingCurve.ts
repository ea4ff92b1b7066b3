/** Percent by dry mass finer than a size. */
export interface GradingPoint {
  readonly sizeMm: number;
  readonly passingPct: number;
  readonly origin: "sieve" | "sedimentation";
}

/**
 * A grading curve: points with strictly increasing size and non-decreasing passing.
 * Between points the curve is a straight line of passing against the logarithm of size.
 */
export interface GradingCurve {
  readonly points: readonly GradingPoint[];
}
