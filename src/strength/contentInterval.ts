import type { StrengthStatistic } from "./boundOffset.js";
import { fiellerContent } from "./fiellerContent.js";
import { firstReach } from "./firstReach.js";
import { reachMargin } from "./reachMargin.js";
import type { FittedStrength } from "./strengthFit.js";
import { STRENGTH_FORMS } from "./strengthForm.js";

/** The cement contents that the blocks do not rule out. */
export interface ContentInterval {
  readonly lowPct: number;
  readonly highPct: number;
  /** True where the interval goes on below the lowest tested content. */
  readonly lowOpen: boolean;
  /** True where it goes on above the highest tested content. */
  readonly highOpen: boolean;
  /** Two-sided. */
  readonly confidence: number;
  readonly method: "fieller" | "inversion";
}

/**
 * Inverts the two-sided band of the statistic: the contents at which that band contains the strength,
 * cut at the tested contents. For `mean` it is an interval for the content whose mean is the strength,
 * for `tolerance` for the content whose `coverage` quantile is the strength; for `prediction` it holds
 * the contents at which one block of that strength would be no surprise. Null where no tested content
 * qualifies.
 */
export function contentInterval(
  fit: FittedStrength,
  of: {
    readonly strengthMpa: number;
    readonly statistic: StrengthStatistic;
    readonly confidence: number;
    readonly coverage: number;
  },
): ContentInterval | null {
  const { strengthMpa, statistic, confidence, coverage } = of;
  const { contentsPct } = fit;
  const [first, last] = [contentsPct[0], contentsPct[contentsPct.length - 1]];
  const straight = STRENGTH_FORMS[fit.form].degree === 1 && fit.basis.coefficients[1] > 0;
  const closed =
    statistic === "mean" || (statistic === "prediction" && fit.basis.spread === "even");
  if (closed && straight) {
    const { lowPct, highPct } = fiellerContent(fit, { strengthMpa, statistic, confidence });
    if (lowPct !== null && highPct !== null) {
      if (highPct < first || lowPct > last) return null;
      return {
        lowPct: Math.max(lowPct, first),
        highPct: Math.min(highPct, last),
        lowOpen: lowPct < first,
        highOpen: highPct > last,
        confidence,
        method: "fieller",
      };
    }
  }
  const edge = (probability: number) =>
    reachMargin(fit, { strengthMpa, statistic, probability, coverage });
  const low = firstReach(edge((1 + confidence) / 2), first, last);
  if (low === null) return null;
  const high = firstReach(edge((1 - confidence) / 2), first, last);
  if (high?.at === "start") return null;
  return {
    lowPct: low.cementPct,
    highPct: high === null ? last : high.cementPct,
    lowOpen: low.at === "start",
    highOpen: high === null,
    confidence,
    method: "inversion",
  };
}
