import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
/** When a lot of site blocks is accepted. The numbers are the user's, from the code or the engineer. */
export type AcceptanceRule =
  | {
      /** Mean less `factor` standard deviations of the lot's own blocks reaches the requirement. */
      readonly kind: "mean-less-ks";
      readonly blocks: number;
      readonly requiredMpa: number;
      readonly factor: number;
    }
  | {
      /** The mean reaches one strength and the weakest block another. */
      readonly kind: "mean-and-least";
      readonly blocks: number;
      readonly meanMpa: number;
      readonly leastMpa: number;
    };

/** Refuses a rule whose numbers make no sense. */
export function checkRule(rule: AcceptanceRule): void {
  const least = rule.kind === "mean-less-ks" ? 2 : 1;
  if (!(Number.isInteger(rule.blocks) && rule.blocks >= least)) {
    throw new RangeError(
      `invalid \`rule.blocks\`: ${rule.blocks}; expected a whole number, at least ${least}`,
    );
  }
  const numbers: Readonly<Record<string, number>> =
    rule.kind === "mean-less-ks"
      ? { requiredMpa: rule.requiredMpa, factor: rule.factor }
      : { meanMpa: rule.meanMpa, leastMpa: rule.leastMpa };
  for (const [name, value] of Object.entries(numbers)) {
    if (!(Number.isFinite(value) && (value > 0 || (name === "factor" && value === 0)))) {
      throw new RangeError(`invalid \`rule.${name}\`: ${value}; expected a number above 0`);
    }
  }
}

/** The rule in words. */
export function acceptanceWords(rule: AcceptanceRule): string {
  return rule.kind === "mean-less-ks"
    ? say`Accept the lot when the mean of its ${rule.blocks} blocks less ${formatFixed(rule.factor, 2)} times their standard deviation is at least ${rule.requiredMpa} MPa.`
    : say`Accept the lot when the mean of its ${rule.blocks} blocks is at least ${rule.meanMpa} MPa and the weakest at least ${rule.leastMpa} MPa.`;
}
