import type { Text } from "../../words/message.js";
import { render } from "../../words/render.js";
import {
  basisRow,
  type ContentBasis,
  type CovariateAt,
  relativeSd,
  STRENGTH_MODELS,
  type StrengthModel,
  type StrengthVariance,
} from "./model.js";

export interface StrengthCoefficient {
  /** As in the formula of the model. */
  readonly name: Text;
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
  readonly message: Text;
  readonly model: StrengthModel;
  readonly formula: string;
  readonly ageDays: number;
  /** What the fitted line is: the power model gives the median, the others the mean. */
  readonly line: "mean" | "median";
  readonly blocks: number;
  /** Different cement contents tested, ascending. */
  readonly contentsPct: readonly number[];
  readonly coefficients: readonly StrengthCoefficient[];
  /** Confidence of the coefficient intervals. */
  readonly confidence: number;
  readonly degreesOfFreedom: number;
  /** On the fitted scale: MPa, or ln MPa for the power model; where the scatter grows, at `basis.reference`. */
  readonly residualSd: number;
  /** On the fitted scale. Null where all strengths are the same. */
  readonly rSquared: number | null;
  /**
   * Smaller is better; comparable among models fitted to the same blocks, the power model's carrying
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
    readonly variance: StrengthVariance;
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
  readonly message: Text;
  readonly model: StrengthModel;
  readonly formula: string;
  readonly ageDays: number;
  readonly blocks: number;
}

export type StrengthFit = FittedStrength | UnfittedStrength;

/**
 * Fitted value of a content on the fitted scale, the standard deviation of blocks there, and the leverage:
 * variance of the fitted value over that of one block, x'(XᵀWX)⁻¹x w.
 */
export function strengthAt(
  fit: FittedStrength,
  cementPct: number,
): { readonly value: number; readonly leverage: number; readonly sd: number } {
  const facts = STRENGTH_MODELS[fit.model];
  const positive = facts.contentScale === "logarithm";
  if (!(Number.isFinite(cementPct) && (positive ? cementPct > 0 : cementPct >= 0))) {
    const needs = positive ? "above 0" : "0 or above";
    throw new RangeError(
      `invalid \`cementPct\`: ${cementPct}; expected ${needs} for the ${fit.model} model`,
    );
  }
  const row = basisRow(facts, fit.basis, cementPct);
  const { coefficients, unscaledCovariance } = fit.basis;
  let value = 0;
  let leverage = 0;
  // Plain loops: this is asked hundreds of times for one answer.
  for (let i = 0; i < row.length; i += 1) {
    value += row[i] * coefficients[i];
    const covariances = unscaledCovariance[i];
    for (let j = 0; j < row.length; j += 1) leverage += row[i] * covariances[j] * row[j];
  }
  const { variance, reference } = fit.basis;
  const relative = relativeSd(variance, value, reference);
  return { value, leverage: leverage / relative ** 2, sd: fit.residualSd * relative };
}

/** The lowest and the highest tested content. */
export function testedRange({ contentsPct }: FittedStrength): readonly [number, number] {
  return [contentsPct[0], contentsPct[contentsPct.length - 1]];
}

/** Where strengths are fitted: MPa, or ln MPa. */
type OfModel = Pick<FittedStrength, "model">;

/** From the fitted scale to MPa. */
export function fromFittedScale({ model }: OfModel, value: number): number {
  return STRENGTH_MODELS[model].strengthScale === "logarithm" ? Math.exp(value) : value;
}

/** From MPa to the fitted scale. */
export function toFittedScale({ model }: OfModel, strengthMpa: number): number {
  return STRENGTH_MODELS[model].strengthScale === "logarithm" ? Math.log(strengthMpa) : strengthMpa;
}

/** Refuses a fit that has no curve, quoting why. */
export function requireFitted(fit: StrengthFit): FittedStrength {
  if (fit.status !== "ok") {
    throw new RangeError(
      `invalid \`fit\`: status "${fit.status}" (${render(fit.message)}); expected "ok"`,
    );
  }
  return fit;
}
