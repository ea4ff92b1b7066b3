import { toleranceFactor } from "../numerics/toleranceFactor.js";
import { tQuantile } from "../numerics/tQuantile.js";
import type { CharacteristicRule } from "./characteristicRules.js";

/** The 5 % quantile of EN 1990, to the digits the standard works with. */
const Z95 = 1.645;

/** Mean and standard deviation (n − 1); no deviation for one value. */
export function meanAndSd(values: readonly number[]): { mean: number; sd: number | null } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, sd: values.length > 1 ? Math.sqrt(squares / (values.length - 1)) : null };
}

/** The factor k of the rule for n blocks. */
export function characteristicFactor({ factorKind }: CharacteristicRule, n: number): number {
  const spread = Math.sqrt(1 + 1 / n);
  if (factorKind === "prediction-unknown") return tQuantile(0.95, n - 1) * spread;
  if (factorKind === "prediction-known") return Z95 * spread;
  if (factorKind === "tolerance-75") return toleranceFactor(n, 0.95, 0.75);
  if (factorKind === "tolerance-95") return toleranceFactor(n, 0.95, 0.95);
  return factorKind === "margin-1.65" ? 1.65 : 1.5;
}

/** Below zero, or NaN where a zero strength has no logarithm, means no value. */
export function characteristicValue(
  rule: CharacteristicRule,
  factor: number,
  strengthsMpa: readonly number[],
  variation: number,
): number {
  const known = rule.factorKind === "prediction-known";
  if (rule.distribution === "lognormal") {
    const { mean, sd } = meanAndSd(strengthsMpa.map(Math.log));
    return Math.exp(mean - factor * (known ? Math.sqrt(Math.log(variation ** 2 + 1)) : sd!));
  }
  const { mean, sd } = meanAndSd(strengthsMpa);
  if (rule.factorKind === "least-block") {
    return (1 - (factor * sd!) / mean) * Math.min(...strengthsMpa);
  }
  return mean - factor * (known ? variation * mean : sd!);
}
