import { mean } from "simple-statistics";
import { say, type Text } from "../../words/message.js";
import { groupBy } from "../groupBy.js";
import { LEVEL, upperTailF } from "../significance.js";
import { requireFitted, type StrengthFit, toFittedScale } from "./curve.js";
import { relativeSd } from "./model.js";

export interface LackOfFit {
  /**
   * `no-replicates`: no content has two blocks; `no-spare-contents`: as many coefficients as
   * contents, so the curve goes through every group mean; `no-scatter`: replicates are identical;
   * `other-terms`: covariates or batches tell blocks of one content apart.
   */
  readonly status: "ok" | "no-replicates" | "no-spare-contents" | "no-scatter" | "other-terms";
  readonly message: Text;
  /** Between the group means and the curve; on the fitted scale squared. */
  readonly lackSumOfSquares: number;
  readonly lackDegreesOfFreedom: number;
  /** Within the groups. */
  readonly pureSumOfSquares: number;
  readonly pureDegreesOfFreedom: number;
  readonly fValue: number | null;
  readonly pValue: number | null;
}

/**
 * Tests whether the curve's shape fits, against the scatter of blocks of the same content.
 *
 * F = (SS_lack / (m − p)) / (SS_pure / (n − m)) for n blocks at m contents and p coefficients, where
 * SS_pure is the scatter of the blocks about their content's mean and SS_lack the rest of the residual
 * sum of squares, each weighted as in the fit. A small `pValue` says that the shape is wrong. For the power model all on ln f.
 *
 * Source: Draper & Smith, Applied Regression Analysis, pure-error test (from memory); proved on
 * published sets in `tests/strength`.
 *
 * @throws RangeError for a fit without a curve.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const blocks = [block("A", 4, 1.0), block("B", 4, 1.2), block("C", 6, 2.4), block("D", 6, 2.6), block("E", 8, 2.9), block("F", 8, 3.1)];
 * const { fValue, lackDegreesOfFreedom, pureDegreesOfFreedom } = lackOfFit(fitStrength(blocks, { model: "linear", ageDays: 28 }));
 * [fValue, lackDegreesOfFreedom, pureDegreesOfFreedom] // => [13.5, 1, 3]
 */
export function lackOfFit(fit: StrengthFit): LackOfFit {
  const fitted = requireFitted(fit);
  const groups = groupBy(fitted.points, ({ cementPct }) => cementPct);
  const { variance, reference } = fitted.basis;
  let pureSumOfSquares = 0;
  let lackSumOfSquares = 0;
  let size = 0;
  for (const group of groups.values()) {
    const values = group.map(({ strengthMpa }) => toFittedScale(fitted, strengthMpa));
    const ofContent = mean(values);
    const fittedValue = toFittedScale(fitted, group[0].fittedMpa);
    const weight = 1 / relativeSd(variance, fittedValue, reference) ** 2;
    lackSumOfSquares += weight * values.length * (ofContent - fittedValue) ** 2;
    for (const value of values) {
      pureSumOfSquares += weight * (value - ofContent) ** 2;
      size += weight * value * value;
    }
  }
  const lackDegreesOfFreedom = groups.size - fitted.coefficients.length;
  const pureDegreesOfFreedom = fitted.blocks - groups.size;
  const lack = { lackSumOfSquares, lackDegreesOfFreedom };
  const pure = { pureSumOfSquares, pureDegreesOfFreedom };
  const without = (status: LackOfFit["status"], message: Text): LackOfFit => {
    return { status, message, ...lack, ...pure, fValue: null, pValue: null };
  };
  if (fitted.covariates.length + fitted.batches.length > 0) {
    return without(
      "other-terms",
      say`With covariates or batches in the regression, blocks of one cement content are not replicates, so the curve's shape is not tested. Test it on the fit without them.`,
    );
  }
  if (pureDegreesOfFreedom === 0) {
    return without(
      "no-replicates",
      say`No cement content has two blocks, so the curve's shape cannot be tested. Make replicates.`,
    );
  }
  if (lackDegreesOfFreedom <= 0) {
    return without(
      "no-spare-contents",
      say`The curve has as many coefficients as there are contents, so its shape cannot be tested. Test one content more.`,
    );
  }
  // Identical replicates leave rounding error only.
  if (pureSumOfSquares <= 1e-24 * size) {
    return without(
      "no-scatter",
      say`The blocks of each content have the same strength, so there is no scatter to test against. Check that these are separate readings.`,
    );
  }
  const fValue =
    lackSumOfSquares / lackDegreesOfFreedom / (pureSumOfSquares / pureDegreesOfFreedom);
  const pValue = upperTailF(fValue, lackDegreesOfFreedom, pureDegreesOfFreedom);
  return {
    status: "ok",
    message:
      pValue < LEVEL
        ? say`The curve misses the group means by more than the scatter of the blocks explains (p below 0.05): try another model.`
        : say`The scatter of the blocks gives no reason to doubt the curve's shape.`,
    ...lack,
    ...pure,
    fValue,
    pValue,
  };
}
