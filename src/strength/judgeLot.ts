import { formatFixed } from "../quantities/formatNumber.js";
import { phrase, say, sayOf } from "../words/say.js";
import { type AcceptanceRule, acceptanceWords, checkRule } from "./acceptanceRule.js";
import { meanAndSd } from "./characteristicValue.js";

export interface LotJudgement {
  readonly status: "accepted" | "rejected" | "wrong-number";
  readonly message: string;
  readonly rule: string;
  readonly meanMpa: number;
  readonly sdMpa: number | null;
  readonly leastMpa: number;
  /** What to do now, in order; empty for an accepted lot. Common practice, no source. */
  readonly steps: readonly string[];
}

const ON_FAILURE: readonly string[] = [
  phrase`Stop building on this lot, mark where it lies in the wall, and tell the responsible engineer.`,
  phrase`Look for a fault of the test first: capping, age, soaking, the press, a mixed-up label. Crush the kept spare blocks of the same batches.`,
  phrase`Look for a fault of the mix: batching record, cement bags used, moisture, mixing time, time from mixing to ramming.`,
  phrase`Have the strength in the wall itself found, by cores or cut blocks, where the engineer asks for it.`,
  phrase`Let the engineer decide in writing: accept with reason, strengthen, or take down. A new sample of the same lot does not undo the first.`,
  phrase`Before going on, change what was found, and test the next lots at twice the frequency.`,
];

/**
 * Judges a lot of site blocks by an acceptance rule, and says what to do where it fails.
 *
 * @param strengthsMpa all blocks of the lot, none left out; their number must be the rule's.
 * @throws RangeError for a rule or strength that makes no sense. Source: the rule is the user's entry.
 *
 * @example
 * const rule = { kind: "mean-and-least", blocks: 5, meanMpa: 2.07, leastMpa: 1.72 };
 * judgeLot(rule, [2.1, 2.3, 1.9, 2.2, 2.4]).status // => "accepted"
 * judgeLot(rule, [2.1, 2.3, 1.6, 2.2, 2.4]).status // => "rejected"
 */
export function judgeLot(rule: AcceptanceRule, strengthsMpa: readonly number[]): LotJudgement {
  checkRule(rule);
  if (strengthsMpa.length === 0) {
    throw new RangeError("invalid `strengthsMpa`: []; expected at least one");
  }
  strengthsMpa.forEach((value, index) => {
    if (!(Number.isFinite(value) && value >= 0)) {
      throw new RangeError(`invalid \`strengthsMpa[${index}]\`: ${value}; expected 0 or above`);
    }
  });
  const { mean, sd } = meanAndSd(strengthsMpa);
  const leastMpa = Math.min(...strengthsMpa);
  const head = { rule: acceptanceWords(rule), meanMpa: mean, sdMpa: sd, leastMpa };
  if (strengthsMpa.length !== rule.blocks) {
    return {
      status: "wrong-number",
      message: say`The rule is made for ${rule.blocks} blocks, and the lot has ${strengthsMpa.length}: its risks would be others. Crush the missing blocks; leave none out.`,
      ...head,
      steps: [],
    };
  }
  const misses: string[] = [];
  if (rule.kind === "mean-less-ks") {
    const reached = mean - rule.factor * sd!;
    if (reached < rule.requiredMpa) {
      misses.push(say`${formatFixed(reached, 2)} MPa is below ${rule.requiredMpa} MPa`);
    }
  } else {
    if (mean < rule.meanMpa) misses.push(say`the mean, ${formatFixed(mean, 2)} MPa, is too low`);
    if (leastMpa < rule.leastMpa)
      misses.push(say`the weakest, ${formatFixed(leastMpa, 2)} MPa, is too low`);
  }
  return misses.length === 0
    ? { status: "accepted", message: say`The lot meets the rule.`, ...head, steps: [] }
    : {
        status: "rejected",
        message: say`The lot does not meet the rule: ${misses.join("; ")}.`,
        ...head,
        steps: ON_FAILURE.map(sayOf),
      };
}
