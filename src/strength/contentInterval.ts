import { tQuantile } from "../numerics/distributions.js";
import { findRoot } from "../numerics/findRoot.js";
import { checkFraction, checkThat } from "../quantities/checkNumber.js";
import { formatPlain, measured } from "../quantities/format.js";
import { say, type Text } from "../words/message.js";
import { type OneSided, type StrengthRequirement, toleranceOffset } from "./regression/bounds.js";
import {
  type FittedStrength,
  requireFitted,
  type StrengthFit,
  strengthAt,
  testedRange,
  toFittedScale,
} from "./regression/curve.js";
import { STRENGTH_MODELS } from "./regression/model.js";

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
  options: Required<StrengthRequirement>,
): ContentInterval | null {
  const { strengthMpa, statistic, confidence, coverage } = options;
  const [first, last] = testedRange(fit);
  const straight = STRENGTH_MODELS[fit.model].degree === 1 && fit.basis.coefficients[1] > 0;
  const closed =
    statistic === "mean" || (statistic === "prediction" && fit.basis.variance === "even");
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

export interface FiellerContent {
  /** `slope-not-significant`: g ≥ 1, strength may not depend on cement, no finite interval exists. */
  readonly status: "ok" | "slope-not-significant";
  readonly message: Text;
  /** Where the fitted line reaches the strength. */
  readonly cementPct: number;
  /** Wald (delta-method) standard error of that content. */
  readonly standardErrorPct: number;
  readonly lowPct: number | null;
  readonly highPct: number | null;
  /** t² s² / (b² Sxx): how far the slope is from being certain; below 1 for a finite interval. */
  readonly g: number;
}

/**
 * Finds the cement content at which a straight-line fit reaches a strength, with its exact interval.
 *
 * Formula (u: content from its mean, on the scale of the model): u₀ = (f − a)/b;
 * g = t² s² / (b² Sxx); limits [u₀ ± (t s/|b|) √(u₀²/Sxx + (1 − g)(1/m + 1/n))] / (1 − g), with t on
 * the fit's degrees of freedom; 1/m = 0 for the `mean`, 1 for one block (`prediction`). The limits are the
 * contents whose two-sided band contains the strength. The closed form is not cut at the tested
 * contents.
 *
 * Source: Fieller's theorem as in Draper & Smith pp. 47–51, read through the vignette of the R package
 * investr (Greenwell & Schubert Kabban 2014, R Journal 6(1)).
 *
 * @throws RangeError for a fit without a curve, the quadratic model, one block under proportional spread, a strength that the model has no
 * logarithm of, or a confidence outside 0 to 1.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const fit = fitStrength([block("A", 4, 1.5), block("B", 6, 2.4), block("C", 8, 3.0), block("D", 10, 3.6)], { model: "linear", ageDays: 28 });
 * const { cementPct, lowPct, highPct } = fiellerContent(fit, { strengthMpa: 2.5, statistic: "mean" });
 * [cementPct, lowPct, highPct] // => [6.6377, 5.8182, 7.3722]
 */
export function fiellerContent(
  fit: StrengthFit,
  options: {
    readonly strengthMpa: number;
    readonly statistic: "mean" | "prediction";
    /** Two-sided; default 0.95. */
    readonly confidence?: number;
  },
): FiellerContent {
  const fitted = requireFitted(fit);
  const { strengthMpa, statistic, confidence = 0.95 } = options;
  checkFraction("confidence", confidence);
  const facts = STRENGTH_MODELS[fitted.model];
  checkThat(facts.degree === 1, { "fit.model": fitted.model }, "a model that is a straight line");
  const closed = statistic === "mean" || fitted.basis.variance === "even";
  checkThat(closed, { statistic }, "mean for scatter that grows with strength");
  const response = toFittedScale(fitted, strengthMpa);
  const expected = `a strength that the ${fitted.model} model can reach`;
  checkThat(Number.isFinite(response), { strengthMpa }, expected);
  const { centre, scale, coefficients, unscaledCovariance } = fitted.basis;
  const [a, b] = coefficients;
  // Weights or covariates tie the two coefficients together; shifting u by that tie sets them free again.
  const perSlope = unscaledCovariance[1][1];
  const shift = unscaledCovariance[0][1] / perSlope;
  const own =
    unscaledCovariance[0][0] -
    shift * unscaledCovariance[0][1] +
    (statistic === "prediction" ? 1 : 0);
  const u = (response - a) / b + shift;
  const t = tQuantile((1 + confidence) / 2, fitted.degreesOfFreedom);
  const g = (t * fitted.residualSd) ** 2 * (perSlope / (b * b));
  const toContent = (value: number) => {
    const scaled = centre + scale * (value - shift);
    return facts.contentScale === "logarithm" ? Math.exp(scaled) : scaled;
  };
  const cementPct = toContent(u);
  const standardErrorPct =
    (fitted.residualSd / Math.abs(b)) *
    Math.sqrt(own + u * u * perSlope) *
    scale *
    (facts.contentScale === "logarithm" ? cementPct : 1);
  const head = { cementPct, standardErrorPct, g };
  if (!(g < 1)) {
    return {
      status: "slope-not-significant",
      message: say`At ${formatPlain(100 * confidence)} % confidence these blocks do not show that strength depends on cement, so no finite interval of cement content exists. Make more blocks, or test contents farther apart.`,
      ...head,
      lowPct: null,
      highPct: null,
    };
  }
  const half =
    ((t * fitted.residualSd) / Math.abs(b)) * Math.sqrt(u * u * perSlope + (1 - g) * own);
  return {
    status: "ok",
    message: say`The contents whose ${100 * confidence} % band contains ${measured(strengthMpa, "stress")}.`,
    ...head,
    lowPct: toContent((u - half) / (1 - g)),
    highPct: toContent((u + half) / (1 - g)),
  };
}

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
  options: OneSided & { readonly strengthMpa: number },
  offset = offsetOf(fit, options),
): (cementPct: number) => number {
  const wanted = toFittedScale(fit, options.strengthMpa);
  return (cementPct) => {
    const { value, leverage, sd } = strengthAt(fit, cementPct);
    const over = value - wanted;
    return sd === 0 ? over : over + offset(leverage) * sd;
  };
}

/**
 * The same as `boundOffset` over the leverages of the tested contents. It depends on the contents of the
 * blocks alone, not on their strengths: fits of other blocks at the same contents may share it.
 */
export function offsetOf(
  fit: FittedStrength,
  { statistic, probability, coverage }: OneSided,
): (leverage: number) => number {
  const { degreesOfFreedom } = fit;
  if (statistic !== "tolerance") {
    const t = tQuantile(probability, degreesOfFreedom);
    const own = statistic === "prediction" ? 1 : 0;
    return (leverage) => t * Math.sqrt(own + leverage);
  }
  const [first, last] = testedRange(fit);
  const roots = Array.from({ length: STEPS + 1 }, (_, i) =>
    Math.sqrt(strengthAt(fit, first + ((last - first) * i) / STEPS).leverage),
  );
  const range = [Math.min(...roots), Math.max(...roots)] as const;
  const rule = { confidence: 1 - probability, coverage, degreesOfFreedom };
  const offset = toleranceOffset(rule, range, STEPS);
  return (leverage) => offset(Math.sqrt(leverage));
}

/** Steps that the tested range is looked at in; a curve that turns twice within one would be missed. */
const SEARCH_STEPS = 100;

/**
 * The smallest content in a range from which a curve has reached zero: `start` where it has at the
 * lower end, null where it nowhere has.
 */
export function firstReach(
  curve: (cementPct: number) => number,
  fromPct: number,
  toPct: number,
): { readonly cementPct: number; readonly at: "start" | "inside" } | null {
  if (curve(fromPct) >= 0) return { cementPct: fromPct, at: "start" };
  let before = fromPct;
  for (let step = 1; step <= SEARCH_STEPS; step += 1) {
    const here =
      step === SEARCH_STEPS ? toPct : fromPct + ((toPct - fromPct) * step) / SEARCH_STEPS;
    if (curve(here) >= 0) return { cementPct: findRoot(curve, before, here), at: "inside" };
    before = here;
  }
  return null;
}
