import type { FittedStrength, StrengthFit } from "./strengthFit.js";

/** Refuses a fit that has no curve, quoting why. */
export function requireFitted(fit: StrengthFit): FittedStrength {
  if (fit.status !== "ok") {
    throw new RangeError(`invalid \`fit\`: status "${fit.status}" (${fit.message}); expected "ok"`);
  }
  return fit;
}
