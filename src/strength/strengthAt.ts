import { basisRow } from "./contentBasis.js";
import type { FittedStrength } from "./strengthFit.js";
import { STRENGTH_FORMS } from "./strengthForm.js";

/** Fitted value on the fitted scale, and the leverage x'(XᵀX)⁻¹x of a content. */
export function strengthAt(
  fit: FittedStrength,
  cementPct: number,
): { readonly value: number; readonly leverage: number } {
  const facts = STRENGTH_FORMS[fit.form];
  const needs = facts.contentScale === "logarithm" ? "above 0" : "0 or above";
  if (!(Number.isFinite(cementPct) && (needs === "above 0" ? cementPct > 0 : cementPct >= 0))) {
    throw new RangeError(
      `invalid \`cementPct\`: ${cementPct}; expected ${needs} for the ${fit.form} form`,
    );
  }
  const row = basisRow(facts, fit.basis, cementPct);
  let value = 0;
  let leverage = 0;
  row.forEach((entry, i) => {
    value += entry * fit.basis.coefficients[i];
    row.forEach((other, j) => {
      leverage += entry * fit.basis.unscaledCovariance[i][j] * other;
    });
  });
  return { value, leverage };
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
