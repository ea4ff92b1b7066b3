import { mean, sampleStandardDeviation } from "simple-statistics";
import { tQuantile } from "../numerics/distributions.js";
import { toleranceFactor } from "../numerics/noncentralT.js";
import { checkNotNegative, checkThat } from "../quantities/checkNumber.js";
import { formatFixed } from "../quantities/format.js";
import { say, type Text } from "../words/message.js";

export interface CharacteristicStrength {
  /**
   * `too-few-blocks`: fewer than the rule is meant for; `needs-known-variation`: the rule needs a
   * coefficient of variation; `not-positive`: the value falls to zero or below, or a logarithm fails.
   */
  readonly status: "ok" | "too-few-blocks" | "needs-known-variation" | "not-positive";
  readonly message: Text;
  readonly rule: CharacteristicRule;
  readonly blocks: number;
  readonly meanMpa: number;
  /** Null for one block. */
  readonly sdMpa: number | null;
  /** The factor k of the rule's formula; null where it does not exist. */
  readonly factor: number | null;
  /** Null unless the status is `ok`. */
  readonly valueMpa: number | null;
}

/**
 * Gives the characteristic strength of blocks of one mix and age by one named rule.
 *
 * Formula: the rule's own, printed in `rule.formula`; m, s the mean and standard deviation (n − 1) of
 * the strengths, m_ln, s_ln of their logarithms, V the coefficient of variation known beforehand.
 *
 * @param strengthsMpa as measured, or corrected for aspect ratio: say which in the report.
 * @param ruleId a name from `CHARACTERISTIC_RULES`.
 * @param options.knownVariation V as a fraction, for the rules with variation known beforehand.
 * @throws RangeError for no strengths, one that is not finite or below 0, an unknown rule, or V not
 * above 0. Source: in `rule.source`, with its honesty mark in `rule.basis`.
 *
 * @example
 * const { factor, valueMpa } = characteristicStrength([2.5, 2.8, 3.2, 3.1], "en1990-normal");
 * [factor, valueMpa] // => [2.6311, 2.068]
 */
export function characteristicStrength(
  strengthsMpa: readonly number[],
  ruleId: string,
  options: { readonly knownVariation?: number } = {},
): CharacteristicStrength {
  const rule = CHARACTERISTIC_RULES.find(({ id }) => id === ruleId);
  const known = CHARACTERISTIC_RULES.map(({ id }) => id).join(", ");
  checkThat(rule !== undefined, { ruleId }, `one of ${known}`);
  checkStrengths(strengthsMpa);
  const { knownVariation } = options;
  if (knownVariation !== undefined) {
    checkThat(
      knownVariation > 0 && knownVariation < 1,
      { knownVariation },
      "a fraction above 0 and below 1, such as 0.15",
    );
  }
  const blocks = strengthsMpa.length;
  const plain = meanAndSd(strengthsMpa);
  const head = { rule, blocks, meanMpa: plain.mean, sdMpa: plain.sd };
  const without = (
    status: CharacteristicStrength["status"],
    message: Text,
    factor: number | null = null,
  ): CharacteristicStrength => ({ status, message, ...head, factor, valueMpa: null });
  if (blocks < rule.minBlocks) {
    return without(
      "too-few-blocks",
      say`This rule is meant for at least ${rule.minBlocks} blocks; there are ${blocks}.`,
    );
  }
  if (rule.factorKind === "prediction-known" && knownVariation === undefined) {
    return without(
      "needs-known-variation",
      say`This rule needs a coefficient of variation known from earlier work with the same materials.`,
    );
  }
  const factor = characteristicFactor(rule, blocks);
  const valueMpa = characteristicValue(rule, factor, strengthsMpa, knownVariation ?? 0);
  if (!(valueMpa > 0)) {
    return without(
      "not-positive",
      say`The blocks scatter so much that this rule gives no strength above zero. Find the cause, or make more blocks.`,
      factor,
    );
  }
  return {
    status: "ok",
    message: say`${rule.name}: factor ${formatFixed(factor, 2)} with ${blocks} blocks.`,
    ...head,
    factor,
    valueMpa,
  };
}

/** The 5 % quantile of EN 1990, to the digits the standard works with. */
const Z95 = 1.645;

/** Refuses no strengths at all, and one that is not finite or below 0. */
export function checkStrengths(strengthsMpa: readonly number[]): void {
  checkThat(strengthsMpa.length > 0, { strengthsMpa: "[]" }, "at least one");
  strengthsMpa.forEach((value, index) => {
    checkNotNegative(`strengthsMpa[${index}]`, value);
  });
}

/** Mean and standard deviation (n − 1); no deviation for one value. */
export function meanAndSd(values: readonly number[]): { mean: number; sd: number | null } {
  const all = [...values];
  return { mean: mean(all), sd: all.length > 1 ? sampleStandardDeviation(all) : null };
}

/** The factor k of the rule for n blocks. */
function characteristicFactor({ factorKind }: CharacteristicRule, n: number): number {
  const spread = Math.sqrt(1 + 1 / n);
  if (factorKind === "prediction-unknown") return tQuantile(0.95, n - 1) * spread;
  if (factorKind === "prediction-known") return Z95 * spread;
  if (factorKind === "tolerance-75") return toleranceFactor(n, 0.95, 0.75);
  if (factorKind === "tolerance-95") return toleranceFactor(n, 0.95, 0.95);
  return factorKind === "margin-1.65" ? 1.65 : 1.5;
}

/** Below zero, or NaN where a zero strength has no logarithm, means no value. */
function characteristicValue(
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

/** How a characteristic strength is made from the blocks. */
export interface CharacteristicRule {
  readonly id: string;
  readonly name: Text;
  readonly formula: string;
  readonly distribution: "normal" | "lognormal" | "none";
  readonly factorKind:
    | "prediction-unknown"
    | "prediction-known"
    | "tolerance-75"
    | "tolerance-95"
    | "margin-1.65"
    | "least-block";
  /** Fewest blocks that the rule is meant for. */
  readonly minBlocks: number;
  readonly source: Text;
  readonly basis: "read" | "own calculation" | "memory";
}

const EN1990 = {
  source: say`EN 1990:2002 Annex D.7.2; its Table D.1 read as coded in open software, recomputed here without its truncation`,
  basis: "read",
} as const;
const TOLERANCE = {
  source: say`Exact one-sided tolerance factor, noncentral t; own calculation`,
  basis: "own calculation",
} as const;

/**
 * The rules for a characteristic (5 %) strength from a handful of blocks. They differ widely for few
 * blocks: with three, the factor is 3.37, 3.15 or 7.66; so a report must say which was used.
 *
 * @example
 * CHARACTERISTIC_RULES.length // => 9
 */
export const CHARACTERISTIC_RULES: readonly CharacteristicRule[] = [
  {
    id: "en1990-normal",
    name: say`EN 1990 Annex D, scatter from these blocks, normal`,
    formula: "m − k s, k = t(0.95, n−1) √(1 + 1/n)",
    distribution: "normal",
    factorKind: "prediction-unknown",
    minBlocks: 3,
    ...EN1990,
  },
  {
    id: "en1990-lognormal",
    name: say`EN 1990 Annex D, scatter from these blocks, lognormal`,
    formula: "exp(m_ln − k s_ln), k = t(0.95, n−1) √(1 + 1/n)",
    distribution: "lognormal",
    factorKind: "prediction-unknown",
    minBlocks: 3,
    ...EN1990,
  },
  {
    id: "en1990-normal-known",
    name: say`EN 1990 Annex D, coefficient of variation known beforehand, normal`,
    formula: "m (1 − k V), k = 1.645 √(1 + 1/n)",
    distribution: "normal",
    factorKind: "prediction-known",
    minBlocks: 1,
    ...EN1990,
  },
  {
    id: "en1990-lognormal-known",
    name: say`EN 1990 Annex D, coefficient of variation known beforehand, lognormal`,
    formula: "exp(m_ln − k √(ln(V² + 1))), k = 1.645 √(1 + 1/n)",
    distribution: "lognormal",
    factorKind: "prediction-known",
    minBlocks: 1,
    ...EN1990,
  },
  {
    id: "tolerance-75",
    name: say`95 % of all blocks above, with 75 % confidence, normal`,
    formula: "m − k s",
    distribution: "normal",
    factorKind: "tolerance-75",
    minBlocks: 2,
    ...TOLERANCE,
  },
  {
    id: "tolerance-95",
    name: say`95 % of all blocks above, with 95 % confidence, normal`,
    formula: "m − k s",
    distribution: "normal",
    factorKind: "tolerance-95",
    minBlocks: 2,
    ...TOLERANCE,
  },
  {
    id: "tolerance-95-lognormal",
    name: say`95 % of all blocks above, with 95 % confidence, lognormal`,
    formula: "exp(m_ln − k s_ln)",
    distribution: "lognormal",
    factorKind: "tolerance-95",
    minBlocks: 2,
    ...TOLERANCE,
  },
  {
    id: "margin-1.65",
    name: say`Mean less 1.65 s: no allowance for how few the blocks are`,
    formula: "m − 1.65 s",
    distribution: "normal",
    factorKind: "margin-1.65",
    minBlocks: 2,
    source: say`IS 10262 margin for concrete, read in a forum discussion; not in the standard itself`,
    basis: "read",
  },
  {
    id: "nzs4298-least-block",
    name: say`NZS 4298:1998 small sample`,
    formula: "(1 − 1.5 s/m) × least block",
    distribution: "none",
    factorKind: "least-block",
    minBlocks: 5,
    source: say`NZS 4298:1998, from memory: check against the standard; strengths there are corrected for aspect ratio first`,
    basis: "memory",
  },
];
