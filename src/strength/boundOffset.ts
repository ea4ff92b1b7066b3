import { noncentralTQuantile } from "../numerics/noncentralTQuantile.js";
import { normalQuantile } from "../numerics/normalQuantile.js";
import { tQuantile } from "../numerics/tQuantile.js";

/** What a strength requirement speaks of: the mean, one block to come, or most of all blocks. */
export type StrengthStatistic = "mean" | "prediction" | "tolerance";

/**
 * Residual standard deviations from the fitted line to a one-sided bound, negative downwards.
 *
 * mean: t(P, df) √h; prediction of one block: t(P, df) √(1 + h); quantile of the blocks that a share
 * `coverage` exceeds: −√h t′(1 − P, df, z/√h), t′ the noncentral t quantile and z the normal quantile
 * of `coverage`. P is the chance that the truth lies below the bound, so a lower bound of 95 %
 * confidence has P = 0.05.
 */
export function boundOffset(of: {
  readonly statistic: StrengthStatistic;
  readonly probability: number;
  readonly coverage: number;
  readonly leverage: number;
  readonly degreesOfFreedom: number;
}): number {
  const { statistic, probability, coverage, leverage, degreesOfFreedom } = of;
  if (statistic === "mean") return tQuantile(probability, degreesOfFreedom) * Math.sqrt(leverage);
  if (statistic === "prediction") {
    return tQuantile(probability, degreesOfFreedom) * Math.sqrt(1 + leverage);
  }
  const root = Math.sqrt(leverage);
  return (
    -root * noncentralTQuantile(1 - probability, degreesOfFreedom, normalQuantile(coverage) / root)
  );
}
