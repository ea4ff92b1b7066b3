import type { Finding } from "../lab/finding.js";
import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import type { StrengthStatistic } from "./boundOffset.js";
import { checkFraction, checkPositive } from "./checkOption.js";
import { type ContentInterval, contentInterval } from "./contentInterval.js";
import { firstReach } from "./firstReach.js";
import { leastCementFindings } from "./leastCementFindings.js";
import { blocksAbove, blocksBelow, type NextBlocks } from "./nextBlocks.js";
import { reachMargin } from "./reachMargin.js";
import { roundUpToStep } from "./roundUpToStep.js";
import { fromFittedScale, strengthAt } from "./strengthAt.js";
import { strengthBound } from "./strengthBound.js";
import type { StrengthFit } from "./strengthFit.js";

export interface StrengthRequirement {
  readonly strengthMpa: number;
  /** Which lower bound must reach it: see `strengthBound`. */
  readonly statistic: StrengthStatistic;
  /** One-sided for the bound, two-sided for the interval; between 0 and 1. */
  readonly confidence: number;
  /** Share of blocks above the tolerance bound; default 0.95. */
  readonly coverage?: number;
}

export interface LeastCement {
  /**
   * `below-range`: the lowest tested content already meets the requirement, and is given;
   * `above-range`: no tested content does; `no-fit`: there is no curve.
   */
  readonly status: "ok" | "below-range" | "above-range" | "no-fit";
  readonly message: string;
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
 * @param options.roundUpToPct default 0.5. @param options.file named in findings; default `study.yaml`.
 * @throws RangeError for a strength or step not above 0, or a fraction outside 0 to 1. Source: as
 * `strengthBound` and `fiellerContent`.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const fit = fitStrength([block("A", 4, 1.5), block("B", 6, 2.4), block("C", 8, 3.0), block("D", 10, 3.6)], { form: "linear", ageDays: 28 });
 * const { status, cementPct, batchablePct } = leastCement(fit, { strengthMpa: 2.5, statistic: "mean", confidence: 0.95 });
 * [status, cementPct, batchablePct] // => ["ok", 7.1302, 7.5]
 */
export function leastCement(
  fit: StrengthFit,
  requirement: StrengthRequirement,
  options: { readonly roundUpToPct?: number; readonly file?: string } = {},
): LeastCement {
  const { strengthMpa, statistic, confidence, coverage = 0.95 } = requirement;
  const { roundUpToPct = 0.5, file = "study.yaml" } = options;
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
  const [first, last] = [fit.contentsPct[0], fit.contentsPct[fit.contentsPct.length - 1]];
  const rule = { strengthMpa, statistic, confidence, coverage };
  const line = (content: number) => fromFittedScale(fit, strengthAt(fit, content).value);
  const bound = (content: number) => strengthBound(fit, content, rule);
  const margin = reachMargin(fit, { ...rule, probability: 1 - confidence });
  const reached = firstReach(margin, first, last);
  const lineReached = firstReach((content) => line(content) - strengthMpa, first, last);
  const cementPct = reached?.cementPct ?? null;
  const batchablePct = cementPct === null ? null : roundUpToStep(cementPct, roundUpToPct);
  const common = {
    cementPct,
    batchablePct,
    roundUpToPct,
    boundAtBatchableMpa: batchablePct === null ? null : bound(batchablePct),
    lineAtBatchableMpa: batchablePct === null ? null : line(batchablePct),
    lineContentPct: lineReached?.at === "inside" ? lineReached.cementPct : null,
    interval: contentInterval(fit, rule),
    findings: leastCementFindings(fit, { file, strengthMpa, margin, cementPct, batchablePct }),
  };
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
    const nextBlocks = blocksBelow(fit);
    return {
      status: "below-range",
      message:
        say`The lowest tested content, ${first} %, already meets the requirement. ${nextBlocks?.reason ?? ""}`.trim(),
      ...common,
      nextBlocks,
    };
  }
  return {
    status: "ok",
    message: say`From ${formatFixed(reached.cementPct, 2)} % cement the bound meets the requirement; rounded up, ${batchablePct} %.`,
    ...common,
    nextBlocks: null,
  };
}
