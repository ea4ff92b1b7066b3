import { noncentralTCdf } from "../numerics/noncentralTCdf.js";
import { noncentralTQuantile } from "../numerics/noncentralTQuantile.js";
import { normalQuantile } from "../numerics/normalQuantile.js";
import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import type { AcceptanceRule } from "./acceptanceRule.js";
import { checkFraction, checkPositive } from "./checkOption.js";

const MOST_BLOCKS = 200;

export interface AcceptanceDesign {
  readonly status: "ok" | "too-many-blocks";
  readonly message: string;
  readonly rule: AcceptanceRule | null;
}

/**
 * Finds the fewest blocks a lot, and the factor k, that keep both sides' risks of mean − k s ≥ f.
 *
 * For each n, k is the factor at which a good lot is rejected with just the builder's risk,
 * k = t′(builderRisk; n − 1, z_good √n)/√n; the first n is taken whose owner's risk is small enough.
 *
 * @param of.goodBelow share below f of a lot that should pass. @param of.poorBelow of one that should not.
 * @throws RangeError for a share or risk outside 0 to 1, or `goodBelow` not below `poorBelow`.
 * Source: sampling by variables, e.g. Montgomery, Statistical Quality Control (from memory).
 *
 * @example
 * const { rule } = designAcceptance({ requiredMpa: 2, goodBelow: 0.01, poorBelow: 0.2, builderRisk: 0.05, ownerRisk: 0.1 });
 * [rule.blocks, rule.factor] // => [9, 1.5303]
 */
export function designAcceptance(of: {
  readonly requiredMpa: number;
  readonly goodBelow: number;
  readonly poorBelow: number;
  readonly builderRisk: number;
  readonly ownerRisk: number;
}): AcceptanceDesign {
  const { requiredMpa, goodBelow, poorBelow, builderRisk, ownerRisk } = of;
  checkPositive("requiredMpa", requiredMpa);
  for (const [name, value] of Object.entries({ goodBelow, poorBelow, builderRisk, ownerRisk })) {
    checkFraction(name, value);
  }
  if (!(goodBelow < poorBelow)) {
    throw new RangeError(`invalid \`goodBelow\`: ${goodBelow}; expected below ${poorBelow}`);
  }
  for (let blocks = 2; blocks <= MOST_BLOCKS; blocks += 1) {
    const root = Math.sqrt(blocks);
    const reached = noncentralTQuantile(
      builderRisk,
      blocks - 1,
      normalQuantile(1 - goodBelow) * root,
    );
    const accepted = noncentralTCdf(-reached, blocks - 1, -normalQuantile(1 - poorBelow) * root);
    if (accepted > ownerRisk || reached < 0) continue;
    const factor = reached / root;
    return {
      status: "ok",
      message: say`${blocks} blocks a lot, factor ${formatFixed(factor, 2)}: the owner's risk is then ${formatFixed(100 * accepted, 1)} %.`,
      rule: { kind: "mean-less-ks", blocks, requiredMpa, factor },
    };
  }
  return {
    status: "too-many-blocks",
    message: say`More than ${MOST_BLOCKS} blocks a lot would be needed: take shares farther apart, or larger risks.`,
    rule: null,
  };
}
