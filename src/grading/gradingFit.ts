import type { GradingModelName } from "./models/gradingModel.js";

export interface GradingFitParameter {
  readonly name: string;
  readonly unit: "mm" | "";
  readonly value: number;
  /** Absent, like the interval, where the data give none: no degree of freedom, or a parameter on a bound. */
  readonly standardError?: number;
  /** 95 % confidence limits by Student's t; for sizes worked out on the logarithm, hence not symmetric. */
  readonly interval95?: readonly [number, number];
}

export interface GradingFitPoint {
  readonly sizeMm: number;
  readonly measuredPct: number;
  readonly fittedPct: number;
  /** Error that the fit gave this point, percentage points beside the others; absent where all were alike. */
  readonly sdPct?: number;
}

export interface GradingFit {
  readonly model: GradingModelName;
  readonly title: string;
  readonly source: string;
  readonly converged: boolean;
  readonly message: string;
  readonly parameters: readonly GradingFitParameter[];
  /** Count of points that the fit used. */
  readonly points: number;
  readonly degreesOfFreedom: number;
  /** √(Σ residual² / degrees of freedom), percentage points; absent without a degree of freedom. */
  readonly residualSdPct?: number;
  /** Akaike's criterion corrected for few points; absent where there are too few for it. */
  readonly aicc?: number;
  /** When not to trust the fit. */
  readonly warnings: readonly string[];
  readonly fitted: readonly GradingFitPoint[];
}
