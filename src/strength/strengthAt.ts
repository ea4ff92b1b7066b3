import { basisRow } from "./contentBasis.js";
import type { FittedStrength } from "./strengthFit.js";
import { STRENGTH_FORMS } from "./strengthForm.js";
import { relativeSpread } from "./strengthSpread.js";

/**
 * Fitted value of a content on the fitted scale, the standard deviation of blocks there, and the leverage:
 * variance of the fitted value over that of one block, x'(XᵀWX)⁻¹x w.
 */
export function strengthAt(
  fit: FittedStrength,
  cementPct: number,
): { readonly value: number; readonly leverage: number; readonly sd: number } {
  const facts = STRENGTH_FORMS[fit.form];
  const positive = facts.contentScale === "logarithm";
  if (!(Number.isFinite(cementPct) && (positive ? cementPct > 0 : cementPct >= 0))) {
    const needs = positive ? "above 0" : "0 or above";
    throw new RangeError(
      `invalid \`cementPct\`: ${cementPct}; expected ${needs} for the ${fit.form} form`,
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
  const { spread, reference } = fit.basis;
  const relative = relativeSpread(spread, value, reference);
  return { value, leverage: leverage / relative ** 2, sd: fit.residualSd * relative };
}

/** From the fitted scale to MPa. */
export function fromFittedScale(fit: FittedStrength, value: number): number {
  return STRENGTH_FORMS[fit.form].strengthScale === "logarithm" ? Math.exp(value) : value;
}

/** From MPa to the fitted scale. */
export function toFittedScale(fit: FittedStrength, strengthMpa: number): number {
  return STRENGTH_FORMS[fit.form].strengthScale === "logarithm"
    ? Math.log(strengthMpa)
    : strengthMpa;
}
