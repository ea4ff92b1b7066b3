import { normalCdf, normalQuantile } from "../../numerics/distributions.js";
import { noncentralTCdf, noncentralTQuantile } from "../../numerics/noncentralT.js";
import { createRandom } from "../../numerics/random.js";
import {
  checkFraction,
  checkNotNegative,
  checkPositive,
  checkThat,
} from "../../quantities/checkNumber.js";
import { formatFixed, measured } from "../../quantities/format.js";
import { joinTexts, say, type Text } from "../../words/message.js";
import { checkStrengths, meanAndSd } from "../characteristicStrength.js";

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
      readonly minMpa: number;
    };

/** Refuses a rule whose numbers make no sense. */
function checkRule(rule: AcceptanceRule): void {
  const minBlocks = rule.kind === "mean-less-ks" ? 2 : 1;
  checkThat(
    Number.isInteger(rule.blocks) && rule.blocks >= minBlocks,
    { "rule.blocks": rule.blocks },
    `a whole number, at least ${minBlocks}`,
  );
  if (rule.kind === "mean-less-ks") {
    checkPositive("rule.requiredMpa", rule.requiredMpa);
    checkNotNegative("rule.factor", rule.factor);
  } else {
    checkPositive("rule.meanMpa", rule.meanMpa);
    checkPositive("rule.minMpa", rule.minMpa);
  }
}

/** Refuses shares of bad blocks that do not tell a good lot from a poor one. */
function checkQualities(acceptableQuality: number, rejectableQuality: number): void {
  checkFraction("acceptableQuality", acceptableQuality);
  checkFraction("rejectableQuality", rejectableQuality);
  const apart = acceptableQuality < rejectableQuality;
  checkThat(apart, { acceptableQuality }, `below ${rejectableQuality}`);
}

/** The rule in words. */
export function acceptanceWords(rule: AcceptanceRule): Text {
  return rule.kind === "mean-less-ks"
    ? say`Accept the lot when the mean of its ${rule.blocks} blocks less ${formatFixed(rule.factor, 2)} times their standard deviation is at least ${measured(rule.requiredMpa, "stress")}.`
    : say`Accept the lot when the mean of its ${rule.blocks} blocks is at least ${measured(rule.meanMpa, "stress")} and the weakest at least ${measured(rule.minMpa, "stress")}.`;
}

const MAX_BLOCKS = 200;

export interface AcceptanceDesign {
  readonly status: "ok" | "too-many-blocks";
  readonly message: Text;
  readonly rule: AcceptanceRule | null;
}

/**
 * Finds the fewest blocks a lot, and the factor k, that keep both sides' risks of mean − k s ≥ f.
 *
 * For each n, k is the factor at which a good lot is rejected with just the builder's risk,
 * k = t′(builderRisk; n − 1, z_good √n)/√n; the first n is taken whose owner's risk is small enough.
 *
 * @param options.acceptableQuality share below f of a lot that should pass.
 * @param options.rejectableQuality of one that should not.
 * @throws RangeError for a share or risk outside 0 to 1, or `acceptableQuality` not below `rejectableQuality`.
 * Source: sampling by variables, e.g. Montgomery, Statistical Quality Control (from memory).
 *
 * @example
 * const { rule } = designAcceptance({ requiredMpa: 2, acceptableQuality: 0.01, rejectableQuality: 0.2, builderRisk: 0.05, ownerRisk: 0.1 });
 * [rule.blocks, rule.factor] // => [9, 1.5303]
 */
export function designAcceptance(options: {
  readonly requiredMpa: number;
  readonly acceptableQuality: number;
  readonly rejectableQuality: number;
  readonly builderRisk: number;
  readonly ownerRisk: number;
}): AcceptanceDesign {
  const { requiredMpa, acceptableQuality, rejectableQuality, builderRisk, ownerRisk } = options;
  checkPositive("requiredMpa", requiredMpa);
  checkQualities(acceptableQuality, rejectableQuality);
  checkFraction("builderRisk", builderRisk);
  checkFraction("ownerRisk", ownerRisk);
  const [good, poor] = [acceptableQuality, rejectableQuality].map((below) =>
    normalQuantile(1 - below),
  );
  for (let blocks = 2; blocks <= MAX_BLOCKS; blocks += 1) {
    const root = Math.sqrt(blocks);
    const reached = noncentralTQuantile(builderRisk, blocks - 1, good * root);
    const accepted = noncentralTCdf(-reached, blocks - 1, -poor * root);
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
    message: say`More than ${MAX_BLOCKS} blocks a lot would be needed: take shares farther apart, or larger risks.`,
    rule: null,
  };
}

export interface AcceptanceRisks {
  /** Chance that a good lot is rejected: the builder's risk. */
  readonly builderRisk: number;
  /** Chance that a poor lot is accepted: the owner's risk. */
  readonly ownerRisk: number;
  readonly goodMeanMpa: number;
  readonly poorMeanMpa: number;
  readonly message: Text;
}

/**
 * The risk of an acceptance rule to each side.
 *
 * A good lot has the share `acceptableQuality` of its blocks below the rule's strength (the least block's, for a
 * rule of mean and least), a poor one `rejectableQuality`; both are the user's choice. Risks as in
 * `operatingCharacteristic`.
 *
 * @param options.acceptableQuality default 0.01.
 * @param options.rejectableQuality default 0.2: common practice, no source.
 * @throws RangeError as `operatingCharacteristic`, and where `acceptableQuality` is not below `rejectableQuality`.
 * Source: as `operatingCharacteristic`.
 *
 * @example
 * const rule = { kind: "mean-less-ks", blocks: 5, requiredMpa: 2, factor: 1 };
 * const { builderRisk, ownerRisk } = acceptanceRisks(rule, { sdMpa: 0.3 });
 * [builderRisk, ownerRisk] // => [0.0083, 0.4365]
 */
export function acceptanceRisks(
  rule: AcceptanceRule,
  options: {
    readonly sdMpa: number;
    readonly acceptableQuality?: number;
    readonly rejectableQuality?: number;
    readonly seed?: number;
  },
): AcceptanceRisks {
  const { sdMpa, acceptableQuality = 0.01, rejectableQuality = 0.2, seed } = options;
  checkQualities(acceptableQuality, rejectableQuality);
  const wanted = rule.kind === "mean-less-ks" ? rule.requiredMpa : rule.minMpa;
  const meanAt = (below: number) => wanted + normalQuantile(1 - below) * sdMpa;
  const [goodMeanMpa, poorMeanMpa] = [meanAt(acceptableQuality), meanAt(rejectableQuality)];
  const [good, poor] = operatingCharacteristic(rule, {
    sdMpa,
    seed,
    meansMpa: [goodMeanMpa, poorMeanMpa],
  });
  const percent = (share: number) => say`${formatFixed(100 * share, 1)} %`;
  return {
    builderRisk: 1 - good.acceptance,
    ownerRisk: poor.acceptance,
    goodMeanMpa,
    poorMeanMpa,
    message: say`A good lot, ${percent(acceptableQuality)} of its blocks below ${measured(wanted, "stress")}, is rejected in ${percent(1 - good.acceptance)} of cases; a poor one, ${percent(rejectableQuality)} below, is accepted in ${percent(poor.acceptance)}.`,
  };
}

export interface CharacteristicPoint {
  /** True mean of the lot. */
  readonly meanMpa: number;
  /** Blocks of such a lot below the strength that the rule speaks of, percent. */
  readonly belowPct: number;
  /** Chance that the lot is accepted, 0 to 1. */
  readonly acceptance: number;
}

/** Lots drawn for a rule that has no closed form; the chance is then known to ±0.005 or better. */
const DRAWS = 40_000;

/**
 * How likely a lot is accepted, by its true mean: the operating characteristic of a rule.
 *
 * Blocks normal with `sdMpa`. For mean − k s ≥ f: P(T ≥ k √n), T noncentral t with n − 1 degrees of freedom
 * and noncentrality (μ − f) √n / σ. For mean and least block: seeded simulation of 40,000 lots (standard
 * error 0.0025 at most), the same lots at every mean, so that the curve never falls.
 *
 * @param options.sdMpa standard deviation of blocks of a lot.
 * @param options.meansMpa true means to ask at.
 * @param options.seed default 1.
 * @throws RangeError for a rule, deviation or mean that makes no sense.
 * Source: sampling by variables, e.g. Montgomery, Statistical Quality Control (from memory); proved
 * beside SciPy's noncentral t in `tests/strength`.
 *
 * @example
 * const rule = { kind: "mean-less-ks", blocks: 5, requiredMpa: 2, factor: 1 };
 * operatingCharacteristic(rule, { sdMpa: 0.3, meansMpa: [2, 2.6] }).map(({ acceptance }) => acceptance) // => [0.0445, 0.9677]
 */
export function operatingCharacteristic(
  rule: AcceptanceRule,
  options: {
    readonly sdMpa: number;
    readonly meansMpa: readonly number[];
    readonly seed?: number;
  },
): CharacteristicPoint[] {
  const { sdMpa, meansMpa, seed = 1 } = options;
  checkRule(rule);
  checkPositive("sdMpa", sdMpa);
  meansMpa.forEach((mean, index) => {
    checkPositive(`meansMpa[${index}]`, mean);
  });
  const wanted = rule.kind === "mean-less-ks" ? rule.requiredMpa : rule.minMpa;
  const accept =
    rule.kind === "mean-less-ks" ? byNoncentralT(rule, sdMpa) : bySimulation(rule, sdMpa, seed);
  return meansMpa.map((meanMpa) => ({
    meanMpa,
    belowPct: 100 * normalCdf((wanted - meanMpa) / sdMpa),
    acceptance: accept(meanMpa),
  }));
}

function byNoncentralT(
  { blocks, factor, requiredMpa }: Extract<AcceptanceRule, { kind: "mean-less-ks" }>,
  sdMpa: number,
) {
  const root = Math.sqrt(blocks);
  // 1 − F(x; δ) is F(−x; −δ), which keeps its digits where acceptance is rare.
  return (mean: number) =>
    noncentralTCdf(-factor * root, blocks - 1, (-(mean - requiredMpa) * root) / sdMpa);
}

/** Each drawn lot is accepted from one mean upwards; the curve counts those already passed. */
function bySimulation(
  { blocks, meanMpa, minMpa }: Extract<AcceptanceRule, { kind: "mean-and-least" }>,
  sdMpa: number,
  seed: number,
) {
  const random = createRandom(seed);
  const passes = Float64Array.from({ length: DRAWS }, () => {
    let [sum, min] = [0, Infinity];
    for (let block = 0; block < blocks; block += 1) {
      const draw = random.normal();
      sum += draw;
      min = Math.min(min, draw);
    }
    return Math.max(meanMpa - (sdMpa * sum) / blocks, minMpa - sdMpa * min);
  }).sort();
  return (mean: number) => {
    let [low, high] = [0, DRAWS];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (passes[middle] <= mean) low = middle + 1;
      else high = middle;
    }
    return low / DRAWS;
  };
}

export interface LotJudgement {
  readonly status: "accepted" | "rejected" | "wrong-number";
  readonly message: Text;
  readonly rule: Text;
  readonly meanMpa: number;
  readonly sdMpa: number | null;
  readonly minMpa: number;
  /** What to do now, in order; empty for an accepted lot. Common practice, no source. */
  readonly steps: readonly Text[];
}

const ON_FAILURE: readonly Text[] = [
  say`Stop building on this lot, mark where it lies in the wall, and tell the responsible engineer.`,
  say`Look for a fault of the test first: capping, age, soaking, the press, a mixed-up label. Crush the kept spare blocks of the same batches.`,
  say`Look for a fault of the mix: batching record, cement bags used, moisture, mixing time, time from mixing to ramming.`,
  say`Have the strength in the wall itself found, by cores or cut blocks, where the engineer asks for it.`,
  say`Let the engineer decide in writing: accept with reason, strengthen, or take down. A new sample of the same lot does not undo the first.`,
  say`Before going on, change what was found, and test the next lots at twice the frequency.`,
];

/**
 * Judges a lot of site blocks by an acceptance rule, and says what to do where it fails.
 *
 * @param strengthsMpa all blocks of the lot, none left out; their number must be the rule's.
 * @throws RangeError for a rule or strength that makes no sense. Source: the rule is the user's entry.
 *
 * @example
 * const rule = { kind: "mean-and-least", blocks: 5, meanMpa: 2.07, minMpa: 1.72 };
 * judgeLot(rule, [2.1, 2.3, 1.9, 2.2, 2.4]).status // => "accepted"
 * judgeLot(rule, [2.1, 2.3, 1.6, 2.2, 2.4]).status // => "rejected"
 */
export function judgeLot(rule: AcceptanceRule, strengthsMpa: readonly number[]): LotJudgement {
  checkRule(rule);
  checkStrengths(strengthsMpa);
  const { mean, sd } = meanAndSd(strengthsMpa);
  const minMpa = Math.min(...strengthsMpa);
  const head = { rule: acceptanceWords(rule), meanMpa: mean, sdMpa: sd, minMpa };
  if (strengthsMpa.length !== rule.blocks) {
    return {
      status: "wrong-number",
      message: say`The rule is made for ${rule.blocks} blocks, and the lot has ${strengthsMpa.length}: its risks would be others. Crush the missing blocks; leave none out.`,
      ...head,
      steps: [],
    };
  }
  const misses: Text[] = [];
  if (rule.kind === "mean-less-ks") {
    const reached = mean - rule.factor * sd!;
    const wanted = measured(rule.requiredMpa, "stress");
    if (reached < rule.requiredMpa) {
      misses.push(say`${measured(reached, "stress", 2)} is below ${wanted}`);
    }
  } else {
    if (mean < rule.meanMpa) misses.push(say`the mean, ${measured(mean, "stress", 2)}, is too low`);
    if (minMpa < rule.minMpa)
      misses.push(say`the weakest, ${measured(minMpa, "stress", 2)}, is too low`);
  }
  if (misses.length === 0) {
    return { status: "accepted", message: say`The lot meets the rule.`, ...head, steps: [] };
  }
  const message = say`The lot does not meet the rule: ${joinTexts(misses, "; ")}.`;
  return { status: "rejected", message, ...head, steps: ON_FAILURE };
}
