import { normalQuantile } from "../numerics/normalQuantile.js";
import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import { type AcceptanceRule, acceptanceWords } from "./acceptanceRule.js";
import { checkFraction } from "./checkOption.js";
import { operatingCharacteristic } from "./operatingCharacteristic.js";

export interface AcceptanceRisks {
  /** Chance that a good lot is rejected: the builder's risk. */
  readonly builderRisk: number;
  /** Chance that a poor lot is accepted: the owner's risk. */
  readonly ownerRisk: number;
  readonly goodMeanMpa: number;
  readonly poorMeanMpa: number;
  readonly message: string;
}

/**
 * The risk of an acceptance rule to each side.
 *
 * A good lot has the share `goodBelow` of its blocks below the rule's strength (the least block's, for a
 * rule of mean and least), a poor one `poorBelow`; both are the user's choice. Risks as in
 * `operatingCharacteristic`.
 *
 * @param of.goodBelow default 0.01. @param of.poorBelow default 0.2: common practice, no source.
 * @throws RangeError as `operatingCharacteristic`, and where `goodBelow` is not below `poorBelow`.
 * Source: as `operatingCharacteristic`.
 *
 * @example
 * const rule = { kind: "mean-less-ks", blocks: 5, requiredMpa: 2, factor: 1 };
 * const { builderRisk, ownerRisk } = acceptanceRisks(rule, { sdMpa: 0.3 });
 * [builderRisk, ownerRisk] // => [0.0083, 0.4365]
 */
export function acceptanceRisks(
  rule: AcceptanceRule,
  of: {
    readonly sdMpa: number;
    readonly goodBelow?: number;
    readonly poorBelow?: number;
    readonly seed?: number;
  },
): AcceptanceRisks {
  const { sdMpa, goodBelow = 0.01, poorBelow = 0.2, seed } = of;
  checkFraction("goodBelow", goodBelow);
  checkFraction("poorBelow", poorBelow);
  if (!(goodBelow < poorBelow)) {
    throw new RangeError(`invalid \`goodBelow\`: ${goodBelow}; expected below ${poorBelow}`);
  }
  const wanted = rule.kind === "mean-less-ks" ? rule.requiredMpa : rule.leastMpa;
  const meanAt = (below: number) => wanted + normalQuantile(1 - below) * sdMpa;
  const [goodMeanMpa, poorMeanMpa] = [meanAt(goodBelow), meanAt(poorBelow)];
  const [good, poor] = operatingCharacteristic(rule, {
    ...{ sdMpa, seed, meansMpa: [goodMeanMpa, poorMeanMpa] },
  });
  const percent = (share: number) => `${formatFixed(100 * share, 1)} %`;
  return {
    builderRisk: 1 - good.acceptance,
    ownerRisk: poor.acceptance,
    goodMeanMpa,
    poorMeanMpa,
    message: say`${acceptanceWords(rule)} A good lot, ${percent(goodBelow)} of its blocks below ${wanted} MPa, is rejected in ${percent(1 - good.acceptance)} of cases; a poor one, ${percent(poorBelow)} below, is accepted in ${percent(poor.acceptance)}.`,
  };
}
