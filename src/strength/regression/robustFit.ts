import { median } from "simple-statistics";
import { leastSquares } from "../../numerics/leastSquares.js";
import { formatFixed, measured } from "../../quantities/format.js";
import { say, type Text } from "../../words/message.js";
import {
  fromFittedScale,
  requireFitted,
  type StrengthFit,
  strengthAt,
  testedRange,
  toFittedScale,
} from "./curve.js";
import { basisRow, STRENGTH_MODELS, toPlainCoefficients } from "./model.js";

/** Huber's constant: 95 % efficiency on normal errors. */
const HUBER = 1.345;
/** Median absolute value of a standard normal variable. */
const MAD = 0.6744897501960817;
const ROUNDS = 200;
const STEPS = 60;

export interface RobustStrength {
  /** `other-terms`: covariates, batches or weights; `no-scatter`: half the blocks lie on the curve. */
  readonly status: "ok" | "not-converged" | "other-terms" | "no-scatter";
  readonly message: Text;
  /** As the formula of the model names them; empty without a fit. */
  readonly coefficients: readonly number[];
  /** Blocks that count less than fully, with their weight. */
  readonly reduced: readonly { readonly id: string; readonly weight: number }[];
  /** Largest difference to the least-squares curve within the tested contents. */
  readonly maxDifferenceMpa: number | null;
  readonly atPct: number | null;
}

/**
 * Fits the same curve again so that single odd blocks pull less, as a cross-check; the bands stay those
 * of the least-squares fit.
 *
 * Huber's M-estimate by reweighting: weight min(1, 1.345 s/|e|), s the median |e| over 0.6745, renewed
 * until the curve stands still. Nothing is left out.
 *
 * @throws RangeError for a fit without a curve. Source: Huber 1981, Robust Statistics (from memory);
 * proved beside statsmodels RLM.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const blocks = [block("A", 4, 1.5), block("B", 5, 2.0), block("C", 6, 2.4), block("D", 7, 2.7), block("E", 8, 3.0), block("F", 9, 1.2), block("G", 10, 3.6)];
 * const { reduced } = robustStrength(fitStrength(blocks, { model: "linear", ageDays: 28 }));
 * reduced.map(({ id }) => id) // => ["F"]
 */
export function robustStrength(fit: StrengthFit): RobustStrength {
  const fitted = requireFitted(fit);
  const { basis, points } = fitted;
  const nothing = { coefficients: [], reduced: [], maxDifferenceMpa: null, atPct: null };
  const without = (status: RobustStrength["status"], message: Text): RobustStrength => {
    return { status, message, ...nothing };
  };
  if (fitted.covariates.length + fitted.batches.length > 0 || basis.variance !== "even") {
    return without("other-terms", say`The robust fit is made for the plain curve only.`);
  }
  const facts = STRENGTH_MODELS[fitted.model];
  const rows = points.map(({ cementPct }) => basisRow(facts, basis, cementPct));
  const response = points.map(({ strengthMpa }) => toFittedScale(fitted, strengthMpa));
  const size = Math.max(...response.map(Math.abs));
  let weights = points.map(() => 1);
  let solved = leastSquares(rows, response);
  for (let round = 0; round < ROUNDS; round += 1) {
    const scale = median(solved.residuals.map(Math.abs)) / MAD;
    if (scale <= 1e-12 * size) {
      return without(
        "no-scatter",
        say`Half of the blocks lie exactly on the curve; nothing to check.`,
      );
    }
    weights = solved.residuals.map((e) => Math.min(1, (HUBER * scale) / Math.abs(e)));
    const before = solved.coefficients;
    solved = leastSquares(rows, response, { weights });
    const moved = Math.max(...solved.coefficients.map((value, i) => Math.abs(value - before[i])));
    if (moved > 1e-10 * size) continue;
    const dot = (row: readonly number[]) =>
      row.reduce((sum, value, i) => sum + value * solved.coefficients[i], 0);
    const [first, last] = testedRange(fitted);
    let max = { mpa: 0, pct: first };
    for (let i = 0; i <= STEPS; i += 1) {
      const pct = first + ((last - first) * i) / STEPS;
      const robust = fromFittedScale(fitted, dot(basisRow(facts, basis, pct)));
      const mpa = Math.abs(robust - fromFittedScale(fitted, strengthAt(fitted, pct).value));
      if (mpa > max.mpa) max = { mpa, pct };
    }
    const reduced = points
      .map(({ id }, i) => ({ id, weight: weights[i] }))
      .filter(({ weight }) => weight < 1);
    return {
      status: "ok",
      message: say`The robust curve differs from the least-squares one by ${measured(max.mpa, "stress", 2)} at most, at ${formatFixed(max.pct, 1)} % cement. ${reduced.length === 0 ? say`All blocks count fully.` : say`Down-weighted: ${reduced.map(({ id }) => id).join(", ")}. Look at those with the smallest weight.`}`,
      coefficients: toPlainCoefficients(facts, basis).map(dot),
      reduced,
      maxDifferenceMpa: max.mpa,
      atPct: max.pct,
    };
  }
  return without(
    "not-converged",
    say`The robust fit did not settle: the blocks fall into two crowds.`,
  );
}
