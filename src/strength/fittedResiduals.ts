import { toFittedScale } from "./strengthAt.js";
import type { FittedStrength } from "./strengthFit.js";
import { relativeSpread } from "./strengthSpread.js";

/** Measured less fitted on the fitted scale, over the relative spread there: of one spread, if the fit is right. */
export function fittedResiduals(fit: FittedStrength): number[] {
  const { spread, reference } = fit.basis;
  return fit.points.map(({ strengthMpa, fittedMpa }) => {
    const fitted = toFittedScale(fit, fittedMpa);
    return (toFittedScale(fit, strengthMpa) - fitted) / relativeSpread(spread, fitted, reference);
  });
}
