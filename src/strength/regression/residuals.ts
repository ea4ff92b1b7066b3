import { mean, median, sumNthPowerDeviations } from "simple-statistics";
import { normalCdf, normalQuantile } from "../../numerics/distributions.js";
import { leastSquares } from "../../numerics/leastSquares.js";
import { checkThat } from "../../quantities/checkNumber.js";
import { say, type Text } from "../../words/message.js";
import { LEVEL, upperTailF } from "../significance.js";
import { type FittedStrength, requireFitted, type StrengthFit, toFittedScale } from "./curve.js";
import { relativeSd } from "./model.js";

export interface ResidualCheck {
  readonly check: "normality" | "equal spread of the contents" | "spread that grows with strength";
  readonly test: Text;
  /** Null where the blocks are too few, or do not scatter. */
  readonly statistic: number | null;
  readonly pValue: number | null;
  /** `doubt`: p below 0.05; `not-tested`: see the message. */
  readonly status: "no-doubt" | "doubt" | "not-tested";
  /** What was found and what to do. */
  readonly message: Text;
}

/** Residuals of fewer blocks say nothing of their distribution; common practice, no source. */
const MIN_NORMALITY = 8;

/**
 * Checks what the bands rest on: that the residuals are normal, and of one spread.
 *
 * Shapiro–Wilk on the residuals (of the fitted scale, weighted as in the fit); Brown–Forsythe among
 * cement contents with replicates; Breusch–Pagan in Koenker's form against the fitted strength. With few
 * blocks these tests see only gross faults: look at the residuals as well. Residuals are not quite
 * independent, so p is approximate.
 *
 * @throws RangeError for a fit without a curve. Source: as `shapiroWilk`; the tests' own sources are in
 * their files, results proved beside SciPy and statsmodels.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const blocks = [block("A", 4, 1.0), block("B", 4, 1.2), block("C", 6, 2.4), block("D", 6, 2.6), block("E", 8, 2.9), block("F", 8, 3.1)];
 * residualChecks(fitStrength(blocks, { model: "linear", ageDays: 28 })).map(({ status }) => status) // => ["not-tested", "not-tested", "no-doubt"]
 */
export function residualChecks(fit: StrengthFit): ResidualCheck[] {
  const fitted = requireFitted(fit);
  const residuals = fittedResiduals(fitted);
  const contents = [...new Set(fitted.points.map(({ cementPct }) => cementPct))];
  const groups = contents.map((content) =>
    residuals.filter((_, index) => fitted.points[index].cementPct === content),
  );
  const normal = residuals.length < MIN_NORMALITY ? null : shapiroWilk(residuals);
  const groupSpread = brownForsythe(groups);
  const growth = breuschPagan(
    residuals,
    fitted.points.map(({ fittedMpa }) => toFittedScale(fitted, fittedMpa)),
  );
  const { model, basis } = fitted;
  const weighted = basis.variance === "proportional" || model === "power";
  return [
    judge("normality", "Shapiro–Wilk", normal && { statistic: normal.w, pValue: normal.pValue }, {
      fine: say`The residuals give no reason to doubt that they are normal.`,
      doubt: say`The residuals are not normally distributed, so the bounds for single blocks may be wrong. Look for outliers first, and at the robust fit; if all are sound, try the power model, whose errors are lognormal.`,
    }),
    judge("equal spread of the contents", "Brown–Forsythe", groupSpread, {
      fine: say`No sign that the variance differs between contents, as far as so few blocks can tell.`,
      doubt: say`Some contents scatter more than others. Look at how those blocks were mixed and crushed; the bands are too narrow there and too wide elsewhere.`,
    }),
    judge("spread that grows with strength", "Breusch–Pagan (Koenker)", growth, {
      fine: say`The scatter does not clearly grow or shrink with strength.`,
      doubt: growthWords(growth?.rises ?? false, weighted),
    }),
  ];
}

function growthWords(rises: boolean, weighted: boolean): Text {
  if (rises) {
    return weighted
      ? say`The scatter grows even faster than the strength. Look at the strongest blocks.`
      : say`Strong blocks scatter more than weak ones: fit with variance “proportional”, or the power model.`;
  }
  return weighted
    ? say`Allowing for a scatter that grows went too far: fit with even spread.`
    : say`Weak blocks scatter more than strong ones. Look at how the weak ones were made and capped.`;
}

function judge(
  check: ResidualCheck["check"],
  test: Text,
  found: { readonly statistic: number; readonly pValue: number } | null,
  words: { readonly fine: Text; readonly doubt: Text },
): ResidualCheck {
  if (!found) {
    const message = say`The blocks are too few, or do not scatter, so this was not tested.`;
    return { check, test, statistic: null, pValue: null, status: "not-tested", message };
  }
  const doubt = found.pValue < LEVEL;
  return {
    check,
    test,
    statistic: found.statistic,
    pValue: found.pValue,
    status: doubt ? "doubt" : "no-doubt",
    message: doubt ? words.doubt : words.fine,
  };
}

/** Measured less fitted on the fitted scale, over the relative spread there: of one spread, if the fit is right. */
export function fittedResiduals(fit: FittedStrength): number[] {
  const { variance, reference } = fit.basis;
  return fit.points.map(({ strengthMpa, fittedMpa }) => {
    const fitted = toFittedScale(fit, fittedMpa);
    return (toFittedScale(fit, strengthMpa) - fitted) / relativeSd(variance, fitted, reference);
  });
}

interface VarianceTest {
  readonly statistic: number;
  readonly pValue: number;
}

/**
 * Brown–Forsythe test of whether groups have one spread: analysis of variance of the distances from each
 * group's median. Null without two groups of two values, or without scatter.
 * Source: Brown & Forsythe 1974 (from memory); proved beside SciPy.
 */
export function brownForsythe(groups: readonly (readonly number[])[]): VarianceTest | null {
  const distances = groups
    .filter((group) => group.length > 1)
    .map((group) => {
      const middle = median(group);
      return group.map((value) => Math.abs(value - middle));
    });
  const all = distances.flat();
  const [between, within] = [distances.length - 1, all.length - distances.length];
  if (between < 1 || within < 1) return null;
  const grand = mean(all);
  let [outer, inner] = [0, 0];
  for (const group of distances) {
    outer += group.length * (mean(group) - grand) ** 2;
    inner += sumNthPowerDeviations(group, 2);
  }
  if (inner <= 1e-24 * all.length * grand * grand) return null;
  const statistic = outer / between / (inner / within);
  return { statistic, pValue: upperTailF(statistic, between, within) };
}

/**
 * Koenker's form of the Breusch–Pagan test: n R² of the squared residuals on the fitted values, against
 * χ² with one degree of freedom. `rises` tells whether the scatter grows with strength.
 * Source: Breusch & Pagan 1979, Koenker 1981 (from memory); proved beside statsmodels.
 */
export function breuschPagan(
  residuals: readonly number[],
  fitted: readonly number[],
): (VarianceTest & { readonly rises: boolean }) | null {
  if (residuals.length < 4) return null;
  const solved = leastSquares(
    fitted.map((value) => [1, value]),
    residuals.map((value) => value * value),
  );
  if (solved.status !== "ok" || !Number.isFinite(solved.rSquared)) return null;
  const statistic = residuals.length * solved.rSquared;
  return {
    statistic,
    pValue: 2 * normalCdf(-Math.sqrt(Math.max(0, statistic))),
    rises: solved.coefficients[1] > 0,
  };
}

const poly = (coefficients: readonly number[], x: number) =>
  coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);

/**
 * Shapiro–Wilk test of whether values come from one normal distribution.
 *
 * W = (Σ aᵢ x₍ᵢ₎)² / Σ (x − x̄)², with Royston's approximations of the weights a and of the
 * distribution of W. A small `pValue` speaks against normality.
 *
 * @param values 3 to 5000 of any unit.
 * @returns null for fewer than 3 values, more than 5000, or values that are all the same.
 * @throws RangeError for a value that is not finite.
 *
 * Source: Royston 1995, Applied Statistics 44, algorithm AS R94 (constants from memory; results proved
 * beside SciPy in `tests/strength`).
 *
 * @example
 * const { w, pValue } = shapiroWilk([2.1, 2.4, 2.2, 2.8, 2.5, 2.3, 4.9]);
 * [w, pValue] // => [0.6660, 0.0016]
 */
export function shapiroWilk(
  values: readonly number[],
): { readonly w: number; readonly pValue: number } | null {
  values.forEach((value, index) => {
    checkThat(Number.isFinite(value), { [`values[${index}]`]: value }, "a finite number");
  });
  const n = values.length;
  if (n < 3 || n > 5000) return null;
  const x = [...values].sort((a, b) => a - b);
  const squares = sumNthPowerDeviations(x, 2);
  const size = Math.max(Math.abs(x[0]), Math.abs(x[n - 1]));
  if (squares <= 1e-24 * n * size * size) return null;
  const weights = royston(n);
  const w = Math.min(1, x.reduce((sum, value, i) => sum + weights[i] * value, 0) ** 2 / squares);
  return { w, pValue: significance(w, n) };
}

/** Weights of the ordered values, ascending, antisymmetric. */
function royston(n: number): number[] {
  if (n === 3) return [-Math.SQRT1_2, 0, Math.SQRT1_2];
  const scores = Array.from({ length: n }, (_, i) => normalQuantile((i + 1 - 0.375) / (n + 0.25)));
  const square = scores.reduce((sum, score) => sum + score * score, 0);
  const u = 1 / Math.sqrt(n);
  const [top, next] = [scores[n - 1], scores[n - 2]];
  const last =
    top / Math.sqrt(square) + poly([0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056], u);
  const fixed = [last];
  let rest = (square - 2 * top * top) / (1 - 2 * last * last);
  if (n > 5) {
    const second =
      next / Math.sqrt(square) + poly([0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633], u);
    fixed.push(second);
    rest = (square - 2 * top * top - 2 * next * next) / (1 - 2 * last * last - 2 * second * second);
  }
  return scores.map((score, i) => {
    if (i >= n - fixed.length) return fixed[n - 1 - i];
    if (i < fixed.length) return -fixed[i];
    return score / Math.sqrt(rest);
  });
}

function significance(w: number, n: number): number {
  if (n === 3) {
    return Math.max(0, (6 / Math.PI) * (Math.asin(Math.sqrt(w)) - Math.asin(Math.sqrt(0.75))));
  }
  const lost = Math.log(Math.max(1 - w, 1e-300));
  if (n <= 11) {
    const gamma = -2.273 + 0.459 * n;
    // Below this W no normal sample falls.
    if (lost >= gamma) return 1e-99;
    const mean = poly([0.544, -0.39978, 0.025054, -6.714e-4], n);
    const sd = Math.exp(poly([1.3822, -0.77857, 0.062767, -0.0020322], n));
    return normalCdf(-(-Math.log(gamma - lost) - mean) / sd);
  }
  const logN = Math.log(n);
  const mean = poly([-1.5861, -0.31082, -0.083751, 0.0038915], logN);
  const sd = Math.exp(poly([-0.4803, -0.082676, 0.0030302], logN));
  return normalCdf(-(lost - mean) / sd);
}
