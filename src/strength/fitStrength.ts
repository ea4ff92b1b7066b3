import type { SpecimenRecord } from "../lab/specimenRecord.js";
import type { LeastSquaresFit } from "../numerics/leastSquaresFit.js";
import { say } from "../words/say.js";
import { checkFraction, checkPositive } from "./checkOption.js";
import { contentBasis } from "./contentBasis.js";
import { correctedAic } from "./correctedAic.js";
import { fitPoints } from "./fitPoints.js";
import { leaveOneOutError } from "./leaveOneOutError.js";
import { plainCoefficients } from "./plainCoefficients.js";
import { type SelectedBlocks, selectBlocks } from "./selectBlocks.js";
import { solveStrength } from "./solveStrength.js";
import type { StrengthCovariate } from "./strengthCovariate.js";
import { strengthDesign } from "./strengthDesign.js";
import type { StrengthFit } from "./strengthFit.js";
import { STRENGTH_FORMS, type StrengthForm } from "./strengthForm.js";
import type { StrengthSpread } from "./strengthSpread.js";

export interface FitStrengthOptions {
  readonly form: StrengthForm;
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
  readonly spread?: StrengthSpread;
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
 * Needs at least one block more than coefficients, and as many contents as the form has coefficients;
 * otherwise the status says what is missing, with no numbers.
 *
 * Source: least squares, e.g. Draper & Smith, Applied Regression Analysis (from memory); proved on
 * published sets and beside statsmodels in `tests/strength`.
 *
 * @throws RangeError where `ageDays` is not above 0, `confidence` not between 0 and 1, or the power form
 * is asked for a proportional spread: on ln f it already is.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const fit = fitStrength([block("A", 4, 1.5), block("B", 6, 2.4), block("C", 8, 3.0), block("D", 10, 3.6)], { form: "linear", ageDays: 28 });
 * fit.coefficients.map(({ value }) => value) // => [0.21, 0.345]
 * fit.degreesOfFreedom // => 2
 */
export function fitStrength(
  specimens: readonly SpecimenRecord[],
  options: FitStrengthOptions,
): StrengthFit {
  const { form, ageDays, confidence = 0.95, covariates = [], spread = "even" } = options;
  const facts = STRENGTH_FORMS[form];
  if (!facts) {
    throw new RangeError(
      `invalid \`form\`: ${String(form)}; expected ${Object.keys(STRENGTH_FORMS).join(", ")}`,
    );
  }
  checkPositive("ageDays", ageDays);
  checkFraction("confidence", confidence);
  const logarithm = facts.strengthScale === "logarithm";
  if (spread === "proportional" && logarithm) {
    throw new RangeError(`invalid \`spread\`: ${spread}; expected even for the ${form} form`);
  }
  const batches = options.batches === "block";
  const chosen = selectBlocks(specimens, facts, {
    ...{ ageDays, covariates, batches, at: options.at ?? {} },
  });
  const { used, problem } = chosen;
  const head = { form, formula: facts.formula, ageDays, blocks: used.length };
  if (problem) return { ...problem, ...head };
  const contents = used.map(({ cementPct }) => cementPct);
  const contentsPct = [...new Set(contents)].sort((a, b) => a - b);
  const basis = contentBasis(facts, contents);
  const design = strengthDesign(facts, basis, chosen);
  const response = used.map(({ strengthMpa }) => (logarithm ? Math.log(strengthMpa) : strengthMpa));
  const { solved, weights, reference, converged } = solveStrength(design.rows, response, spread);
  if (solved.status !== "ok") return { ...unsolved(solved, chosen), ...head };
  if (!converged) {
    const message = say`The weights for scatter that grows with strength do not settle.`;
    return { status: "not-converged", message, ...head };
  }
  const count = facts.coefficientNames.length;
  const terms = design.termNames.length > 0 ? say`, with ${design.termNames.join(", ")}` : "";
  return {
    status: "ok",
    message: say`${facts.formula}${terms}, fitted to ${used.length} blocks of ${agesOf(used)} days at ${contentsPct.length} cement contents.`,
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
      ...basis,
      coefficients: solved.coefficients.slice(0, count),
      unscaledCovariance: solved.unscaledCovariance
        .slice(0, count)
        .map((row) => row.slice(0, count)),
      spread,
      reference,
    },
  };
}

function agesOf(used: readonly SpecimenRecord[]): string {
  return [...new Set(used.map(({ ageDays }) => ageDays))].sort((a, b) => a - b).join(", ");
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
