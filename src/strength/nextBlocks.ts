import { normalQuantile } from "../numerics/normalQuantile.js";
import { say } from "../words/say.js";
import type { StrengthStatistic } from "./boundOffset.js";
import { fromFittedScale, strengthAt } from "./strengthAt.js";
import type { FittedStrength } from "./strengthFit.js";

/** Which blocks to make next, and why. */
export interface NextBlocks {
  readonly cementPct: number;
  readonly reason: string;
}

/** The usual distance between tested contents: their median gap. */
function usualGap(contentsPct: readonly number[]): number {
  const gaps = contentsPct
    .slice(1)
    .map((content, index) => content - contentsPct[index])
    .sort((a, b) => a - b);
  return gaps[Math.floor(gaps.length / 2)];
}

/** A content a person would choose: whole tenths of a percent. */
const tenth = (content: number) => Number(content.toFixed(1));

/** What to make where the lowest tested content already meets the requirement. */
export function blocksBelow(fit: FittedStrength): NextBlocks | null {
  const lowest = fit.contentsPct[0];
  const next = tenth(lowest - usualGap(fit.contentsPct));
  if (!(next > 0)) return null;
  return {
    cementPct: next,
    reason: say`Less than ${lowest} % may do, but has not been tested: make blocks with about ${next} % cement.`,
  };
}

/**
 * What to make where the requirement is not met within the tested contents. Were the curve known
 * without error, the bound would still stand z s below it for single blocks: if even that misses the
 * requirement, more cement must be tested; otherwise more blocks near the top would do.
 */
export function blocksAbove(
  fit: FittedStrength,
  of: {
    readonly strengthMpa: number;
    readonly statistic: StrengthStatistic;
    readonly confidence: number;
    readonly coverage: number;
  },
): NextBlocks {
  const highest = fit.contentsPct[fit.contentsPct.length - 1];
  const sds =
    of.statistic === "mean"
      ? 0
      : normalQuantile(of.statistic === "prediction" ? of.confidence : of.coverage);
  const { value, sd } = strengthAt(fit, highest);
  const known = fromFittedScale(fit, value - sds * sd);
  if (known >= of.strengthMpa) {
    return {
      cementPct: highest,
      reason: say`The curve is high enough at ${highest} %, but it is not known well enough: make more blocks with ${highest} % cement.`,
    };
  }
  const next = tenth(highest + usualGap(fit.contentsPct));
  return {
    cementPct: next,
    reason: say`More blocks of the tested contents would not be enough: make blocks with about ${next} % cement, or improve the grading, the compaction or the evenness of the mix.`,
  };
}
