import { boundOffset, type StrengthStatistic } from "./boundOffset.js";
import { checkFraction } from "./checkOption.js";
import { requireFitted } from "./requireFitted.js";
import { fromFittedScale, strengthAt } from "./strengthAt.js";
import type { StrengthFit } from "./strengthFit.js";
import { toleranceOffsets } from "./toleranceOffsets.js";

export interface StrengthBoundOptions {
  readonly statistic: StrengthStatistic;
  /** One-sided; default 0.95. */
  readonly confidence?: number;
  /** Share of blocks above the tolerance bound; default 0.95. Only used by `tolerance`. */
  readonly coverage?: number;
}

/**
 * Gives the one-sided lower bound of strength at a cement content, MPa.
 *
 * - `mean`: the true mean lies above it. ŷ − t s √h.
 * - `prediction`: one more block lies above it. ŷ − t s √(1 + h).
 * - `tolerance`: at least the share `coverage` of all blocks lies above it. ŷ − k s with
 *   k = √h t′(confidence; df, z/√h), the noncentral t with effective number of blocks 1/h.
 *
 * Each with `confidence` at that one content, under normal errors of one spread. For the power form
 * the bounds are made on ln f; `mean` then bounds the median. Between tested contents the curve is
 * trusted, beyond them it is extrapolated: this function does not refuse that, `leastCement` does.
 *
 * Source: Lieberman & Miller 1963, Biometrika 50, for regression tolerance bounds (from memory);
 * coverage checked by seeded simulation in `tests/strength`.
 *
 * @throws RangeError for a fit without a curve, a content the form is not defined at, or a fraction
 * outside 0 to 1.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const fit = fitStrength([block("A", 4, 1.5), block("B", 6, 2.4), block("C", 8, 3.0), block("D", 10, 3.6)], { form: "linear", ageDays: 28 });
 * strengthBound(fit, 7, { statistic: "mean" }) // => 2.4554
 */
export function strengthBound(
  fit: StrengthFit,
  cementPct: number,
  options: StrengthBoundOptions,
): number {
  const { statistic, confidence = 0.95, coverage = 0.95 } = options;
  const fitted = requireFitted(fit);
  checkFraction("confidence", confidence);
  checkFraction("coverage", coverage);
  const { value, leverage, sd } = strengthAt(fitted, cementPct);
  const { degreesOfFreedom } = fitted;
  const offset =
    statistic === "tolerance"
      ? toleranceOffsets([leverage], { confidence, coverage, degreesOfFreedom })[0]
      : boundOffset({
          ...{ statistic, probability: 1 - confidence, coverage, leverage, degreesOfFreedom },
        });
  return fromFittedScale(fitted, value + offset * sd);
}
