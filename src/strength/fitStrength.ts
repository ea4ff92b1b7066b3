import type { SpecimenRecord } from "../lab/specimenRecord.js";
import { leastSquares } from "../numerics/leastSquares.js";
import { checkFraction, checkPositive } from "./checkOption.js";
import { basisRow, contentBasis } from "./contentBasis.js";
import { correctedAic } from "./correctedAic.js";
import { fitPoints } from "./fitPoints.js";
import { leaveOneOutError } from "./leaveOneOutError.js";
import { plainCoefficients } from "./plainCoefficients.js";
import type { StrengthFit, UnfittedStrength } from "./strengthFit.js";
import { STRENGTH_FORMS, type StrengthForm } from "./strengthForm.js";

export interface FitStrengthOptions {
  readonly form: StrengthForm;
  /** Only blocks crushed at this age are used. */
  readonly ageDays: number;
  /** Of the coefficient intervals; default 0.95. */
  readonly confidence?: number;
}

/**
 * Fits strength on cement content at one age, by least squares, to the blocks that are not excluded.
 *
 * Formula: f = a + b c, f = a + b c + d c², f = a + b ln c, or ln f = ln a + b ln c, with f in MPa and
 * c in percent of the dry mass of soil and aggregate. Blocks count alike; their errors are taken as
 * independent, of one spread on the fitted scale, and normal. Blocks moulded from one batch share
 * that batch's error, which this regression cannot see: `includedSpecimens` warns of it.
 *
 * Needs at least one block more than coefficients, and as many different contents as coefficients;
 * otherwise the status says what is missing, with no numbers.
 *
 * Source: ordinary least squares, e.g. Draper & Smith, Applied Regression Analysis (from memory);
 * proved on published sets in `tests/strength`.
 *
 * @throws RangeError where `ageDays` is not above 0 or `confidence` not between 0 and 1.
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
  const { form, ageDays, confidence = 0.95 } = options;
  const facts = STRENGTH_FORMS[form];
  if (!facts) {
    throw new RangeError(
      `invalid \`form\`: ${String(form)}; expected ${Object.keys(STRENGTH_FORMS).join(", ")}`,
    );
  }
  checkPositive("ageDays", ageDays);
  checkFraction("confidence", confidence);
  const used = specimens.filter((block) => !block.excluded && block.ageDays === ageDays);
  const contents = used.map(({ cementPct }) => cementPct);
  const contentsPct = [...new Set(contents)].sort((a, b) => a - b);
  const count = facts.coefficientNames.length;
  const head = { form, formula: facts.formula, ageDays, blocks: used.length };
  const unfitted = (status: UnfittedStrength["status"], message: string): UnfittedStrength => ({
    status,
    message,
    ...head,
  });
  const undefinedAt = used.find(
    ({ cementPct, strengthMpa }) =>
      (facts.contentScale === "logarithm" && !(cementPct > 0)) ||
      (facts.strengthScale === "logarithm" && !(strengthMpa > 0)),
  );
  if (undefinedAt) {
    const { id, cementPct, strengthMpa } = undefinedAt;
    return unfitted(
      "not-defined",
      `The ${form} form takes logarithms; block ${id} has ${cementPct} % cement and ${strengthMpa} MPa. Choose another form, or exclude the block with the reason.`,
    );
  }
  if (used.length < count + 1) {
    return unfitted(
      "too-few-points",
      `The ${form} form needs at least ${count + 1} blocks of ${ageDays} days; there are ${used.length}.`,
    );
  }
  if (contentsPct.length < count) {
    return unfitted(
      "rank-deficient",
      `The ${form} form needs at least ${count} different cement contents; the blocks of ${ageDays} days have ${contentsPct.length}.`,
    );
  }
  const basis = contentBasis(facts, contents);
  const response = used.map(({ strengthMpa }) =>
    facts.strengthScale === "logarithm" ? Math.log(strengthMpa) : strengthMpa,
  );
  const solved = leastSquares(
    contents.map((content) => basisRow(facts, basis, content)),
    response,
  );
  if (solved.status !== "ok") return unfitted(solved.status, solved.message);
  return {
    status: "ok",
    message: `${facts.formula}, fitted to ${used.length} blocks of ${ageDays} days at ${contentsPct.length} cement contents.`,
    ...head,
    line: facts.strengthScale === "logarithm" ? "median" : "mean",
    contentsPct,
    coefficients: plainCoefficients(facts, basis, solved, confidence),
    confidence,
    degreesOfFreedom: solved.degreesOfFreedom,
    residualSd: solved.residualSd,
    rSquared: Number.isFinite(solved.rSquared) ? solved.rSquared : null,
    aicc: correctedAic(facts, solved, used),
    leaveOneOutErrorMpa: leaveOneOutError(facts, solved, used),
    condition: solved.condition,
    points: fitPoints(facts, solved, used),
    basis: {
      ...basis,
      coefficients: solved.coefficients,
      unscaledCovariance: solved.unscaledCovariance,
    },
  };
}
