import { type Finding, type FindingWords, finding, STUDY_FILE } from "../findings/finding.js";
import { tQuantile } from "../numerics/distributions.js";
import { checkFraction, checkPositive } from "../quantities/checkNumber.js";
import { formatFixed, formatPlain, measured } from "../quantities/format.js";
import { joinTexts, say, type Text, wordFor } from "../words/message.js";
import {
  type ContentInterval,
  contentInterval,
  firstReach,
  reachMargin,
} from "./contentInterval.js";
import { knownSds, type StrengthRequirement, strengthBound } from "./regression/bounds.js";
import {
  type FittedStrength,
  fromFittedScale,
  type StrengthFit,
  strengthAt,
  testedRange,
  toFittedScale,
} from "./regression/curve.js";
import { STRENGTH_MODELS } from "./regression/model.js";

export interface LeastCement {
  /**
   * `below-range`: the lowest tested content already meets the requirement, and is given;
   * `above-range`: no tested content does; `falls`: the curve meets it where it falls with more cement, so
   * that it gives no content; `no-fit`: there is no curve.
   */
  readonly status: "ok" | "below-range" | "above-range" | "falls" | "no-fit";
  readonly message: Text;
  /** Exact; percent of the dry mass of soil and aggregate. Null without an answer. */
  readonly cementPct: number | null;
  /** Rounded up to the step. */
  readonly batchablePct: number | null;
  readonly roundUpToPct: number;
  /** The bound at the batchable content, MPa. */
  readonly boundAtBatchableMpa: number | null;
  /** The fitted line there, MPa. */
  readonly lineAtBatchableMpa: number | null;
  /** Where the fitted line itself, without any margin, reaches the requirement inside the range. */
  readonly lineContentPct: number | null;
  readonly interval: ContentInterval | null;
  readonly nextBlocks: NextBlocks | null;
  readonly findings: readonly Finding[];
}

/**
 * Finds the least cement content whose lower strength bound meets a requirement.
 *
 * Solves bound(c) = requirement for the smallest tested-range c, bound as in `strengthBound` (root
 * search on 100 steps of the range, then to 1e-10 of it). Nothing is extrapolated: outside the tested
 * contents the answer is a status with advice on which blocks to make next. `batchablePct` is always
 * rounded up. `interval` is the inversion of the two-sided band at the same confidence (Fieller's
 * closed form where the fit is a straight line): it says how well the blocks fix the content at all.
 *
 * Says nothing of safety: that the requirement is the right one is for the responsible engineer.
 *
 * @param options.roundUpToPct default 0.5.
 * @throws RangeError for a strength or step not above 0, or a fraction outside 0 to 1. Source: as
 * `strengthBound` and `fiellerContent`.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const fit = fitStrength([block("A", 4, 1.5), block("B", 6, 2.4), block("C", 8, 3.0), block("D", 10, 3.6)], { model: "linear", ageDays: 28 });
 * const { status, cementPct, batchablePct } = leastCement(fit, { strengthMpa: 2.5, statistic: "mean", confidence: 0.95 });
 * [status, cementPct, batchablePct] // => ["ok", 7.1302, 7.5]
 */
export function leastCement(
  fit: StrengthFit,
  requirement: StrengthRequirement,
  options: { readonly roundUpToPct?: number } = {},
): LeastCement {
  const { strengthMpa, statistic, confidence, coverage = 0.95 } = requirement;
  const { roundUpToPct = 0.5 } = options;
  checkPositive("strengthMpa", strengthMpa);
  checkFraction("confidence", confidence);
  checkFraction("coverage", coverage);
  checkPositive("roundUpToPct", roundUpToPct);
  const empty = {
    cementPct: null,
    batchablePct: null,
    roundUpToPct,
    boundAtBatchableMpa: null,
    lineAtBatchableMpa: null,
    lineContentPct: null,
    interval: null,
    nextBlocks: null,
    findings: [],
  };
  if (fit.status !== "ok") return { status: "no-fit", message: fit.message, ...empty };
  const [first, last] = testedRange(fit);
  const rule = { strengthMpa, statistic, confidence, coverage };
  const line = lineOf(fit);
  const margin = reachMargin(fit, { ...rule, probability: 1 - confidence });
  const { reached, fallsAtPct } = reachOf(fit, margin);
  const lineReached = firstReach((content) => line(content) - strengthMpa, first, last);
  const cementPct = reached?.cementPct ?? null;
  const batchablePct = reached && roundUpToStep(reached.cementPct, roundUpToPct);
  const common = {
    cementPct,
    batchablePct,
    roundUpToPct,
    boundAtBatchableMpa: batchablePct === null ? null : strengthBound(fit, batchablePct, rule),
    lineAtBatchableMpa: batchablePct === null ? null : line(batchablePct),
    lineContentPct: lineReached?.at === "inside" ? lineReached.cementPct : null,
    interval: fallsAtPct !== null ? null : contentInterval(fit, rule),
    nextBlocks: null,
    findings: leastCementFindings(fit, { strengthMpa, margin, cementPct, batchablePct }),
  };
  if (fallsAtPct !== null) {
    return {
      status: "falls",
      message: say`The fitted strength falls with more cement at ${formatPlain(fallsAtPct, 3)} %, where it meets the requirement: no least cement can be read from such a curve.`,
      ...common,
    };
  }
  if (reached === null) {
    const nextBlocks = blocksAbove(fit, rule);
    return {
      status: "above-range",
      message: say`The requirement is not met within the tested contents, ${first} to ${last} %. ${nextBlocks.reason}`,
      ...common,
      nextBlocks,
    };
  }
  if (reached.at === "start") {
    const nextBlocks = blocksBelow(fit, rule);
    const enough = say`The lowest tested content, ${first} %, already meets the requirement.`;
    return {
      status: "below-range",
      message: joinTexts([enough, nextBlocks?.reason], " "),
      ...common,
      nextBlocks,
    };
  }
  return {
    status: "ok",
    message: say`From ${formatFixed(reached.cementPct, 2)} % cement the bound meets the requirement; rounded up, ${batchablePct!} %.`,
    ...common,
  };
}

const lineOf = (fit: FittedStrength) => (content: number) =>
  fromFittedScale(fit, strengthAt(fit, content).value);

/**
 * Where a margin (see `reachMargin`) is first met within the tested contents; where the fitted line falls
 * there, that is not reached, and the content is told as `fallsAtPct`.
 */
export function reachOf(fit: FittedStrength, margin: (cementPct: number) => number) {
  const [first, last] = testedRange(fit);
  const met = firstReach(margin, first, last);
  const falling = met !== null && fallsAt(lineOf(fit), met.cementPct, first, last);
  return falling
    ? { reached: null, fallsAtPct: met.cementPct }
    : { reached: met, fallsAtPct: null };
}

const STEPS = 100;

/** Whether the line falls just above a content; at the highest, just below it. */
function fallsAt(
  line: (cementPct: number) => number,
  cementPct: number,
  first: number,
  last: number,
): boolean {
  const step = (last - first) / STEPS;
  const from = Math.min(cementPct, last - step);
  const strength = line(from);
  return line(from + step) < strength - 1e-9 * Math.abs(strength);
}

/** What a reader must know beside the least cement content. */
function leastCementFindings(
  fit: FittedStrength,
  options: {
    readonly strengthMpa: number;
    /** Below zero where the bound misses the requirement. */
    readonly margin: (cementPct: number) => number;
    readonly cementPct: number | null;
    readonly batchablePct: number | null;
  },
): Finding[] {
  const { strengthMpa, margin, cementPct, batchablePct } = options;
  const [first, last] = testedRange(fit);
  const grid = Array.from({ length: STEPS + 1 }, (_, i) => first + ((last - first) * i) / STEPS);
  const line = grid.map(lineOf(fit));
  const span = Math.max(...line.map(Math.abs));
  const falls = line.findIndex((value, i) => i > 0 && value < line[i - 1] - 1e-9 * span);
  const lost =
    cementPct === null
      ? undefined
      : grid.find((content) => content > cementPct && margin(content) < 0);
  const findings: Finding[] = [];
  const warn = (code: string, key: string, value: Text, words: FindingWords) => {
    const place = { file: STUDY_FILE, column: `strength.${key}`, value };
    findings.push(finding(place, "warning", code, words));
  };
  if (falls > 0) {
    warn("strength-falls-with-cement", "model", fit.model, {
      message: say`The fitted ${wordFor(fit.model)} curve falls with more cement from about ${formatFixed(grid[falls - 1], 1)} %.`,
      expected: say`strength that rises with cement`,
      remedy: say`Look at the blocks there, and compare the other models.`,
    });
  }
  if (lost !== undefined) {
    warn("requirement-lost-again", "requirement", say`${measured(strengthMpa, "stress", 2)}`, {
      message: say`The bound falls below the requirement again at about ${formatFixed(lost, 1)} % cement.`,
      expected: say`a bound that stays above the requirement with more cement`,
      remedy: say`Do not take more cement for safer; make more blocks at the highest content.`,
    });
  }
  if (batchablePct !== null && batchablePct > last) {
    warn("rounded-beyond-tested", "round-up-to", `${batchablePct} %`, {
      message: say`Rounded up, the content lies above the highest tested content, ${last} %.`,
      expected: say`at most ${last} %`,
      remedy: say`Choose a smaller step, or test blocks with that content.`,
    });
  }
  return findings;
}

/** Which blocks to make next, and why. */
export interface NextBlocks {
  /** Null where no content in reach would do. Beyond the tested contents it is the curve's guess. */
  readonly cementPct: number | null;
  /**
   * The contents that the blocks do not rule out, by the curve carried on beyond the tested contents;
   * an end is null where the curve does not give it in reach. Null where the content is a tested one.
   */
  readonly interval: { readonly lowPct: number | null; readonly highPct: number | null } | null;
  readonly reason: Text;
}

/** A content a person would choose: whole tenths of a percent. */
const tenth = (content: number) => Number(content.toFixed(1));

/**
 * What to make where the lowest tested content already meets the requirement: the content at which the
 * curve, carried on downwards by no more than the tested range, gives it.
 */
function blocksBelow(fit: FittedStrength, rule: Required<StrengthRequirement>): NextBlocks | null {
  const [lowest, highest] = testedRange(fit);
  // A logarithm has no value at 0.
  const min = STRENGTH_MODELS[fit.model].contentScale === "logarithm" ? 0.1 * lowest : 0;
  const from = Math.max(min, lowest - (highest - lowest));
  if (!(from < lowest)) return null;
  const { cementPct, interval } = carriedOn(fit, rule, from, lowest);
  const next = tenth(cementPct ?? lowest);
  if (!(next < lowest)) return null;
  const reason =
    next <= tenth(from)
      ? say`Less than ${lowest} % may do, but has not been tested: carried on downwards, the curve still meets the requirement at ${next} %. Make blocks with contents between ${next} and ${lowest} %.`
      : say`Less than ${lowest} % may do, but has not been tested: carried on downwards, the curve gives about ${next} % (${intervalWords(interval, rule.confidence)}). Make blocks with about that content.`;
  return { cementPct: next, interval, reason };
}

/**
 * What to make where the requirement is not met within the tested contents. Were the curve known
 * without error, the bound would still stand z s below it for single blocks: if even that misses the
 * requirement, more cement must be tested, at the content that the curve itself gives when it is carried
 * on, by no more than the tested range; otherwise more blocks near the top would do.
 */
function blocksAbove(fit: FittedStrength, rule: Required<StrengthRequirement>): NextBlocks {
  const [lowest, highest] = testedRange(fit);
  if (knownMargin(fit, rule)(highest) >= 0) {
    return {
      cementPct: highest,
      interval: null,
      reason: say`The curve is high enough at ${highest} %, but it is not known well enough: make more blocks with ${highest} % cement.`,
    };
  }
  const furthest = highest + (highest - lowest);
  const { cementPct, interval } = carriedOn(fit, rule, highest, furthest);
  if (cementPct === null) {
    return {
      cementPct,
      interval: null,
      reason: say`Carried on to ${tenth(furthest)} %, the curve does not give this strength, so no cement content in reach will do: improve the grading, the compaction or the evenness of the mix.`,
    };
  }
  const next = Math.max(tenth(cementPct), tenth(highest + 0.1));
  return {
    cementPct: next,
    interval,
    reason: say`More blocks of the tested contents would not be enough. Carried on beyond them, which only blocks can prove, the curve gives about ${next} % cement (${intervalWords(interval, rule.confidence)}): make blocks with about that content, or improve the grading, the compaction or the evenness of the mix.`,
  };
}

/** Above zero where the curve, were it known without error, would meet the requirement; fitted scale. */
function knownMargin(
  fit: FittedStrength,
  rule: StrengthRequirement,
): (cementPct: number) => number {
  const sds = knownSds(rule);
  const wanted = toFittedScale(fit, rule.strengthMpa);
  return (cementPct) => {
    const { value, sd } = strengthAt(fit, cementPct);
    return value - sds * sd - wanted;
  };
}

/**
 * Where the curve, less the scatter of blocks that the requirement allows for, reaches the strength
 * within a range beyond the tested contents, and where the two-sided band of the curve does.
 */
function carriedOn(
  fit: FittedStrength,
  rule: Required<StrengthRequirement>,
  fromPct: number,
  toPct: number,
) {
  const known = knownMargin(fit, rule);
  const t = tQuantile((1 + rule.confidence) / 2, fit.degreesOfFreedom);
  const reached = (side: -1 | 0 | 1) =>
    firstReach(
      (cementPct) => {
        const { leverage, sd } = strengthAt(fit, cementPct);
        return known(cementPct) + side * t * Math.sqrt(leverage) * sd;
      },
      fromPct,
      toPct,
    )?.cementPct ?? null;
  return { cementPct: reached(0), interval: { lowPct: reached(1), highPct: reached(-1) } };
}

function intervalWords(interval: ReturnType<typeof carriedOn>["interval"], confidence: number) {
  const { lowPct, highPct } = interval;
  const level = tenth(100 * confidence);
  const low = formatFixed(lowPct ?? 0, 1);
  return highPct === null
    ? say`from ${low} % up without an end in reach, at ${level} % confidence`
    : say`${low} to ${formatFixed(highPct, 1)} %, at ${level} % confidence`;
}

/** Root finding ends within this much of the true content, percent points. */
const ROOT_ERROR_PCT = 1e-9;

/**
 * Rounds a cement content up, never down, to a step that can be weighed out on site.
 *
 * @param stepPct step in percent points, for example 0.1, 0.25 or 0.5.
 * @throws RangeError where the step is not above 0. Source: own arithmetic.
 *
 * @example
 * roundUpToStep(7.31, 0.25) // => 7.5
 * roundUpToStep(7.5, 0.5) // => 7.5
 */
export function roundUpToStep(cementPct: number, stepPct: number): number {
  checkPositive("stepPct", stepPct);
  const steps = Math.ceil((cementPct - ROOT_ERROR_PCT) / stepPct);
  // 83 × 0.1 is 8.3 only after the binary remainder is taken off.
  return Number((steps * stepPct).toFixed(10));
}
