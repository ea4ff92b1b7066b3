import type { ContentBasis } from "./contentBasis.js";
import type { CovariateAt } from "./strengthCovariate.js";
import type { StrengthForm } from "./strengthForm.js";
import type { StrengthSpread } from "./strengthSpread.js";

export interface StrengthCoefficient {
  /** As in the formula of the form. */
  readonly name: string;
  readonly value: number;
  readonly standardError: number;
  /** Two-sided t interval at `confidence` of the fit. */
  readonly low: number;
  readonly high: number;
  /** Two-sided, of the hypothesis that the coefficient is zero. */
  readonly pValue: number;
}

/** One block in the regression, with what the fit says of it. */
export interface StrengthFitPoint {
  readonly id: string;
  readonly row: number;
  readonly cementPct: number;
  readonly strengthMpa: number;
  readonly fittedMpa: number;
  /** Measured minus fitted, MPa. */
  readonly residualMpa: number;
  /** Diagonal of the hat matrix, 0 to 1. */
  readonly leverage: number;
  /** Externally studentised residual on the fitted scale; null where it is not defined. */
  readonly studentised: number | null;
  /** Cook's distance; null where it is not defined. */
  readonly cooksDistance: number | null;
}

/** The curve of strength on cement content at one age. Plain data, JSON-safe. */
export interface FittedStrength {
  readonly status: "ok";
  readonly message: string;
  readonly form: StrengthForm;
  readonly formula: string;
  readonly ageDays: number;
  /** What the fitted line is: the power form gives the median, the others the mean. */
  readonly line: "mean" | "median";
  readonly blocks: number;
  /** Different cement contents tested, ascending. */
  readonly contentsPct: readonly number[];
  readonly coefficients: readonly StrengthCoefficient[];
  /** Confidence of the coefficient intervals. */
  readonly confidence: number;
  readonly degreesOfFreedom: number;
  /** On the fitted scale: MPa, or ln MPa for the power form; where the scatter grows, at `basis.reference`. */
  readonly residualSd: number;
  /** On the fitted scale. Null where all strengths are the same. */
  readonly rSquared: number | null;
  /**
   * Smaller is better; comparable among forms fitted to the same blocks, the power form's carrying
   * the Jacobian of the logarithm. Null with too few blocks or without scatter.
   */
  readonly aicc: number | null;
  /** Root of the mean squared error at the block left out, MPa. Null where a block has leverage 1. */
  readonly leaveOneOutErrorMpa: number | null;
  readonly condition: number;
  readonly points: readonly StrengthFitPoint[];
  /** What else is in the regression, and where the curve is asked. */
  readonly covariates: readonly CovariateAt[];
  /** Batches with a level of their own; empty where batches are not in the regression. */
  readonly batches: readonly string[];
  /**
   * What the bands are computed from: the curve's coefficients on the centred basis and their part of
   * (XᵀWX)⁻¹; how the scatter goes with strength, and the strength at which `residualSd` holds.
   */
  readonly basis: ContentBasis & {
    readonly coefficients: readonly number[];
    readonly unscaledCovariance: readonly (readonly number[])[];
    readonly spread: StrengthSpread;
    readonly reference: number;
  };
}

export interface UnfittedStrength {
  /**
   * `not-defined`: a logarithm of zero; `missing-reading`: a block lacks a covariate or batch;
   * `outside-tested`: an age, density or moisture that no block has; `not-converged`: weights.
   */
  readonly status:
    | "too-few-points"
    | "rank-deficient"
    | "not-defined"
    | "missing-reading"
    | "outside-tested"
    | "not-converged";
  /** Why there is no curve, and what would mend it. */
  readonly message: string;
  readonly form: StrengthForm;
  readonly formula: string;
  readonly ageDays: number;
  readonly blocks: number;
}

export type StrengthFit = FittedStrength | UnfittedStrength;
