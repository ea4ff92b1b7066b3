import { formatFixed } from "../quantities/formatNumber.js";
import { say, sayOf } from "../words/say.js";
import { CHARACTERISTIC_RULES, type CharacteristicRule } from "./characteristicRules.js";
import { characteristicFactor, characteristicValue, meanAndSd } from "./characteristicValue.js";
import { checkPositive } from "./checkOption.js";

export interface CharacteristicStrength {
  /**
   * `too-few-blocks`: fewer than the rule is meant for; `needs-known-variation`: the rule needs a
   * coefficient of variation; `not-positive`: the value falls to zero or below, or a logarithm fails.
   */
  readonly status: "ok" | "too-few-blocks" | "needs-known-variation" | "not-positive";
  readonly message: string;
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
  if (!rule) {
    const known = CHARACTERISTIC_RULES.map(({ id }) => id).join(", ");
    throw new RangeError(`invalid \`ruleId\`: ${ruleId}; expected one of ${known}`);
  }
  if (strengthsMpa.length === 0) {
    throw new RangeError("invalid `strengthsMpa`: []; expected at least one");
  }
  strengthsMpa.forEach((value, index) => {
    if (!(Number.isFinite(value) && value >= 0)) {
      throw new RangeError(
        `invalid \`strengthsMpa[${index}]\`: ${value}; expected 0 or above, in MPa`,
      );
    }
  });
  const { knownVariation } = options;
  if (knownVariation !== undefined) checkPositive("knownVariation", knownVariation);
  const blocks = strengthsMpa.length;
  const plain = meanAndSd(strengthsMpa);
  const head = { rule, blocks, meanMpa: plain.mean, sdMpa: plain.sd };
  const without = (
    status: CharacteristicStrength["status"],
    message: string,
    factor: number | null = null,
  ): CharacteristicStrength => ({ status, message, ...head, factor, valueMpa: null });
  if (blocks < rule.leastBlocks) {
    return without(
      "too-few-blocks",
      say`This rule is meant for at least ${rule.leastBlocks} blocks; there are ${blocks}.`,
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
    message: say`${sayOf(rule.name)}: factor ${formatFixed(factor, 2)} with ${blocks} blocks.`,
    ...head,
    factor,
    valueMpa,
  };
}
