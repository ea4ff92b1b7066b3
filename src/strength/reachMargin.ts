import { noncentralTCdf } from "../numerics/noncentralTCdf.js";
import { normalQuantile } from "../numerics/normalQuantile.js";
import { boundOffset, type StrengthStatistic } from "./boundOffset.js";
import { strengthAt, toFittedScale } from "./strengthAt.js";
import type { FittedStrength } from "./strengthFit.js";

/**
 * A number that is at or above zero exactly where the one-sided bound of `boundOffset` reaches a
 * strength, for root finding. For the quantile bound it compares probabilities, F(T) − (1 − P) with
 * T = (ŷ − f)/(s √h), instead of inverting the noncentral t at each content: twenty times less work.
 */
export function reachMargin(
  fit: FittedStrength,
  of: {
    readonly strengthMpa: number;
    readonly statistic: StrengthStatistic;
    readonly probability: number;
    readonly coverage: number;
  },
): (cementPct: number) => number {
  const { statistic, probability, coverage } = of;
  const { degreesOfFreedom, residualSd } = fit;
  const wanted = toFittedScale(fit, of.strengthMpa);
  const z = normalQuantile(coverage);
  return (cementPct) => {
    const { value, leverage } = strengthAt(fit, cementPct);
    const over = value - wanted;
    if (residualSd === 0) return over;
    if (statistic !== "tolerance") {
      const place = { statistic, probability, coverage, leverage, degreesOfFreedom };
      return over + boundOffset(place) * residualSd;
    }
    const root = Math.sqrt(leverage);
    return noncentralTCdf(over / (residualSd * root), degreesOfFreedom, z / root) - 1 + probability;
  };
}
