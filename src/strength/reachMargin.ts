import { tQuantile } from "../numerics/tQuantile.js";
import type { StrengthStatistic } from "./boundOffset.js";
import { strengthAt, toFittedScale } from "./strengthAt.js";
import type { FittedStrength } from "./strengthFit.js";
import { toleranceOffset } from "./toleranceOffsets.js";

/** Contents that the range of leverages is looked for at, and about as many that will be asked. */
const STEPS = 40;

/**
 * A number that is at or above zero exactly where the one-sided bound of `boundOffset` reaches a
 * strength, for root finding: the bound less the strength, on the fitted scale. The quantile's factor is
 * interpolated over the leverages of the tested contents, which is far cheaper than one noncentral t a
 * content (see `toleranceOffsets` for its error).
 */
export function reachMargin(
  fit: FittedStrength,
  of: {
    readonly strengthMpa: number;
    readonly statistic: StrengthStatistic;
    readonly probability: number;
    readonly coverage: number;
  },
): (cementPct: number) => number {
  const wanted = toFittedScale(fit, of.strengthMpa);
  const offset = offsetOf(fit, of);
  return (cementPct) => {
    const { value, leverage, sd } = strengthAt(fit, cementPct);
    const over = value - wanted;
    return sd === 0 ? over : over + offset(leverage) * sd;
  };
}

function offsetOf(
  fit: FittedStrength,
  of: {
    readonly statistic: StrengthStatistic;
    readonly probability: number;
    readonly coverage: number;
  },
): (leverage: number) => number {
  const { statistic, probability, coverage } = of;
  const { degreesOfFreedom, contentsPct } = fit;
  if (statistic !== "tolerance") {
    const t = tQuantile(probability, degreesOfFreedom);
    const own = statistic === "prediction" ? 1 : 0;
    return (leverage) => t * Math.sqrt(own + leverage);
  }
  const [first, last] = [contentsPct[0], contentsPct[contentsPct.length - 1]];
  const roots = Array.from({ length: STEPS + 1 }, (_, i) =>
    Math.sqrt(strengthAt(fit, first + ((last - first) * i) / STEPS).leverage),
  );
  const offset = toleranceOffset(
    { confidence: 1 - probability, coverage, degreesOfFreedom },
    [Math.min(...roots), Math.max(...roots)],
    STEPS,
  );
  return (leverage) => offset(Math.sqrt(leverage));
}
