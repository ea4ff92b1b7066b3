import { mean } from "simple-statistics";
import type { SpecimenRecord } from "../../lab/specimens.js";
import { tCdf, tQuantile } from "../../numerics/distributions.js";
import { type LeastSquaresFit, leastSquares } from "../../numerics/leastSquares.js";
import { checkFraction, checkThat } from "../../quantities/checkNumber.js";
import { joinTexts, say } from "../../words/message.js";
import { type SelectedBlocks, selectBlocks } from "./blocks.js";
import {
  fromFittedScale,
  type StrengthCoefficient,
  type StrengthFit,
  type StrengthFitPoint,
  toFittedScale,
} from "./curve.js";
import {
  type ContentBasis,
  contentBasis,
  relativeSd,
  STRENGTH_MODELS,
  type StrengthCovariate,
  type StrengthDesign,
  type StrengthModel,
  type StrengthModelFacts,
  type StrengthVariance,
  strengthDesign,
  toPlainCoefficients,
} from "./model.js";

export interface FitStrengthOptions {
  readonly model: StrengthModel;
  /** Only blocks crushed at this age are used, unless `ln age` is a covariate: then all are. */
  readonly ageDays: number;
  /** Of the coefficient intervals; default 0.95. */
  readonly confidence?: number;
  /** What else the strength may depend on; default none. */
  readonly covariates?: readonly StrengthCovariate[];
  /** Where the curve is asked, kg/m³ or percent; default the mean of the blocks. Age is `ageDays`. */
  readonly at?: Partial<Readonly<Record<Exclude<StrengthCovariate, "ln age">, number>>>;
  /** `block` gives each batch its own level; default `ignore`. */
  readonly batches?: "ignore" | "block";
  /** Default `even`. */
  readonly variance?: StrengthVariance;
}

/**
 * Fits strength on cement content at one age, by least squares, to the blocks that are not excluded.
 *
 * Formula: f = a + b c, f = a + b c + d c², f = a + b ln c, or ln f = ln a + b ln c, with f in MPa and
 * c in percent of the dry mass of soil and aggregate. A covariate x adds g (x − x₀) on the fitted scale,
 * so the curve is the one at x₀; age enters as ln days (common practice, no source). Errors are taken as
 * independent and normal: of one spread on the fitted scale, or, `proportional`, of one coefficient of
 * variation, by weights (reference/fitted)² renewed until they stand still. `batches: "block"` gives each
 * batch its own level, summing to zero, and the curve of the average batch; it needs batches moulded at
 * more than one content. Where each batch has one content, see `batchScatter` and fit `batchMeans`.
 *
 * Needs at least one block more than coefficients, and as many contents as the model has coefficients;
 * otherwise the status says what is missing, with no numbers.
 *
 * Source: least squares, e.g. Draper & Smith, Applied Regression Analysis (from memory); proved on
 * published sets and beside statsmodels in `tests/strength`.
 *
 * @throws RangeError where `ageDays` is below 0, `confidence` not between 0 and 1, or the power model
 * is asked for a proportional spread: on ln f it already is.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const fit = fitStrength([block("A", 4, 1.5), block("B", 6, 2.4), block("C", 8, 3.0), block("D", 10, 3.6)], { model: "linear", ageDays: 28 });
 * fit.coefficients.map(({ value }) => value) // => [0.21, 0.345]
 * fit.degreesOfFreedom // => 2
 */
export function fitStrength(
  specimens: readonly SpecimenRecord[],
  options: FitStrengthOptions,
): StrengthFit {
  const { model, ageDays, confidence = 0.95, covariates = [], variance = "even" } = options;
  const facts = STRENGTH_MODELS[model];
  checkThat(facts !== undefined, { model }, Object.keys(STRENGTH_MODELS).join(", "));
  checkThat(Number.isFinite(ageDays) && ageDays >= 0, { ageDays }, "0 or above");
  checkFraction("confidence", confidence);
  const logarithm = facts.strengthScale === "logarithm";
  checkThat(variance === "even" || !logarithm, { variance }, `even for the ${model} model`);
  const batches = options.batches === "block";
  const asked = { ageDays, covariates, batches, at: options.at ?? {} };
  const chosen = selectBlocks(specimens, facts, asked);
  const { used, problem } = chosen;
  const head = { model, formula: facts.formula, ageDays, blocks: used.length };
  if (problem) return { ...problem, ...head };
  const contents = used.map(({ cementPct }) => cementPct);
  const contentsPct = [...new Set(contents)].sort((a, b) => a - b);
  const basis = contentBasis(facts, contents);
  const design = strengthDesign(facts, basis, chosen);
  const response = used.map(({ strengthMpa }) => toFittedScale(facts, strengthMpa));
  const { solved, weights, reference, converged } = solveStrength(design.rows, response, variance);
  if (solved.status !== "ok") return { ...unsolved(solved, chosen), ...head };
  if (!converged) {
    const message = say`The weights for scatter that grows with strength do not settle.`;
    return { status: "not-converged", message, ...head };
  }
  const count = facts.coefficientNames.length;
  const ages = [...new Set(used.map((block) => block.ageDays))].sort((a, b) => a - b).join(", ");
  const names = design.terms.map(({ name }) => name);
  const terms = names.length > 0 ? say`, with ${joinTexts(names)}` : "";
  return {
    status: "ok",
    message: say`${facts.formula}${terms}, fitted to ${used.length} blocks of ${ages} days at ${contentsPct.length} cement contents.`,
    ...head,
    line: logarithm ? "median" : "mean",
    contentsPct,
    coefficients: plainCoefficients(facts, basis, solved, confidence, design),
    confidence,
    degreesOfFreedom: solved.degreesOfFreedom,
    residualSd: solved.residualSd,
    rSquared: Number.isFinite(solved.rSquared) ? solved.rSquared : null,
    aicc: correctedAic(facts, solved, used, weights),
    leaveOneOutErrorMpa: leaveOneOutError(facts, solved, used),
    condition: solved.condition,
    points: fitPoints(facts, solved, used, weights),
    covariates: chosen.covariates,
    batches: chosen.batches,
    basis: {
      centre: basis.centre,
      scale: basis.scale,
      coefficients: solved.coefficients.slice(0, count),
      unscaledCovariance: solved.unscaledCovariance
        .slice(0, count)
        .map((row) => row.slice(0, count)),
      variance,
      reference,
    },
  };
}

/** Aliased columns: usually batches that were each moulded at one content only. */
function unsolved(solved: LeastSquaresFit, { batches }: SelectedBlocks) {
  const status = solved.status === "ok" ? "rank-deficient" : solved.status;
  const message =
    batches.length > 0
      ? say`Batches and cement contents cannot be told apart, as the batches do not have contents in common. Fit the means of the batches instead.`
      : say`Two of the things that were measured go in step and cannot be told apart. ${solved.message}`;
  return { status, message } as const;
}

const ROUNDS = 100;

/**
 * Least squares, or, for scatter that grows with strength, least squares with weights
 * (reference/fitted)², renewed until the fitted values stand still. The reference is the strength at which
 * the residual standard deviation holds.
 */
function solveStrength(
  rows: readonly (readonly number[])[],
  response: readonly number[],
  variance: StrengthVariance,
) {
  const reference = mean([...response]);
  let weights = response.map(() => 1);
  let solved = leastSquares(rows, response);
  let converged = variance === "even" || solved.status !== "ok";
  for (let round = 0; round < ROUNDS && !converged; round += 1) {
    const before = solved.fitted;
    weights = before.map((value) => 1 / relativeSd(variance, value, reference) ** 2);
    solved = leastSquares(rows, response, { weights });
    const moved = Math.max(...solved.fitted.map((value, i) => Math.abs(value - before[i])));
    converged = moved <= 1e-11 * Math.abs(reference);
  }
  return { solved, weights, reference, converged };
}

/**
 * Coefficients on c or ln c, as the formula names them, then those of covariates and batches in their own
 * units: value T b, variance T C Tᵀ.
 */
function plainCoefficients(
  facts: StrengthModelFacts,
  basis: ContentBasis,
  solved: LeastSquaresFit,
  confidence: number,
  { terms }: StrengthDesign,
): StrengthCoefficient[] {
  const dot = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, value, index) => sum + value * b[index], 0);
  const t = tQuantile((1 + confidence) / 2, solved.degreesOfFreedom);
  const curve = toPlainCoefficients(facts, basis);
  const columns = [
    ...curve.map((turn, index) => ({ name: facts.coefficientNames[index], turn })),
    ...terms.map(({ name, scale }, index) => {
      return { name, turn: [...Array<number>(curve.length + index).fill(0), scale] };
    }),
  ];
  return columns.map(({ name, turn }) => {
    const value = dot(turn, solved.coefficients);
    const turned = solved.covariance.map((row) => dot(turn, row));
    const standardError = Math.sqrt(dot(turn, turned));
    return {
      name,
      value,
      standardError,
      low: value - t * standardError,
      high: value + t * standardError,
      // An exact fit leaves no doubt of a coefficient that differs from zero.
      pValue:
        standardError > 0
          ? 2 * tCdf(-Math.abs(value / standardError), solved.degreesOfFreedom)
          : Number(value === 0),
    };
  });
}

/** Fitted value, residual, leverage, studentised residual and Cook's distance of each block. */
function fitPoints(
  facts: StrengthModelFacts,
  solved: LeastSquaresFit,
  used: readonly SpecimenRecord[],
  weights: readonly number[],
): StrengthFitPoint[] {
  const { residuals, leverages, residualSumOfSquares, degreesOfFreedom, residualSd } = solved;
  const scatter = { residualSumOfSquares, degreesOfFreedom };
  return used.map(({ id, row, cementPct, strengthMpa }, index) => {
    const fitted = solved.fitted[index];
    const fittedMpa = fromFittedScale(facts, fitted);
    const residual = residuals[index] * Math.sqrt(weights[index]);
    const leverage = leverages[index];
    const ratio = studentisedResidual({ residual, leverage, ...scatter });
    return {
      id,
      row,
      cementPct,
      strengthMpa,
      fittedMpa,
      residualMpa: strengthMpa - fittedMpa,
      leverage,
      studentised: ratio !== null && Number.isFinite(ratio) ? ratio : null,
      cooksDistance:
        ratio === null || residualSd === 0
          ? null
          : (residual ** 2 * leverage) /
            (solved.coefficients.length * residualSd ** 2 * (1 - leverage) ** 2),
    };
  });
}

/**
 * Externally studentised residual: e / (s₍ᵢ₎ √(1 − h)), where s₍ᵢ₎ is the residual standard deviation
 * without that block, s₍ᵢ₎² = (RSS − e²/(1 − h)) / (df − 1). Under the model it follows t with df − 1
 * degrees of freedom. Null where h is 1 or df below 2; infinite where the other blocks lie exactly on
 * their fit, so that this one is all the scatter there is.
 */
export function studentisedResidual(options: {
  readonly residual: number;
  readonly leverage: number;
  readonly residualSumOfSquares: number;
  readonly degreesOfFreedom: number;
}): number | null {
  const { residual, leverage, residualSumOfSquares, degreesOfFreedom } = options;
  const free = 1 - leverage;
  if (free < 1e-10 || degreesOfFreedom < 2) return null;
  const left = residualSumOfSquares - residual ** 2 / free;
  if (residualSumOfSquares === 0) return null;
  if (left <= 1e-12 * residualSumOfSquares) return Math.sign(residual) * Infinity;
  return residual / Math.sqrt((left / (degreesOfFreedom - 1)) * free);
}

/**
 * AICc of normal errors: n (ln(2π RSS/n) + 1) + 2k + 2k(k+1)/(n−k−1), k counting the coefficients
 * and the variance. A model fitted to ln f gets + 2 Σ ln f, the Jacobian of the logarithm, so that all
 * models are judged as densities of the same strengths in MPa. Null with too few blocks, or where the
 * residuals are rounding error (the criterion then has no floor). Weights add − Σ ln w.
 * Source: Hurvich & Tsai 1989 for the correction; the Jacobian term after Akaike (from memory).
 */
function correctedAic(
  facts: StrengthModelFacts,
  solved: LeastSquaresFit,
  used: readonly SpecimenRecord[],
  weights: readonly number[],
): number | null {
  const n = used.length;
  const k = solved.coefficients.length + 1;
  const size = solved.fitted.reduce((sum, value) => sum + value * value, 0);
  if (n - k - 1 <= 0 || solved.residualSumOfSquares <= 1e-24 * size) return null;
  const jacobian =
    facts.strengthScale === "logarithm"
      ? 2 * used.reduce((sum, { strengthMpa }) => sum + Math.log(strengthMpa), 0)
      : 0;
  const deviance =
    n * (Math.log((2 * Math.PI * solved.residualSumOfSquares) / n) + 1) -
    weights.reduce((sum, weight) => sum + Math.log(weight), 0);
  return deviance + jacobian + 2 * k + (2 * k * (k + 1)) / (n - k - 1);
}

/** A leverage this near 1 leaves nothing of the block's own residual. */
const FULL_LEVERAGE = 1 - 1e-10;

/**
 * Root of the mean of (f − prediction without that block)², MPa, by the identity e/(1 − h): no
 * refitting. For a model in ln f the prediction is carried back to MPa before the difference.
 */
function leaveOneOutError(
  facts: StrengthModelFacts,
  solved: LeastSquaresFit,
  used: readonly SpecimenRecord[],
): number | null {
  let sum = 0;
  for (let index = 0; index < used.length; index += 1) {
    if (solved.leverages[index] > FULL_LEVERAGE) return null;
    const deleted = solved.residuals[index] / (1 - solved.leverages[index]);
    const { strengthMpa } = used[index];
    const error =
      facts.strengthScale === "logarithm"
        ? strengthMpa - Math.exp(Math.log(strengthMpa) - deleted)
        : deleted;
    sum += error * error;
  }
  return Math.sqrt(sum / used.length);
}
