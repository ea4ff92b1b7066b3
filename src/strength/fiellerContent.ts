import { tQuantile } from "../numerics/tQuantile.js";
import { say } from "../words/say.js";
import { checkFraction } from "./checkOption.js";
import { requireFitted } from "./requireFitted.js";
import { toFittedScale } from "./strengthAt.js";
import type { StrengthFit } from "./strengthFit.js";
import { STRENGTH_FORMS } from "./strengthForm.js";

export interface FiellerContent {
  /** `slope-not-significant`: g ≥ 1, strength may not depend on cement, no finite interval exists. */
  readonly status: "ok" | "slope-not-significant";
  readonly message: string;
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
 * Formula (u: content from its mean, on the scale of the form): u₀ = (f − a)/b;
 * g = t² s² / (b² Sxx); limits [u₀ ± (t s/|b|) √(u₀²/Sxx + (1 − g)(1/m + 1/n))] / (1 − g), with t on
 * the fit's degrees of freedom; 1/m = 0 for the `mean`, 1 for one block (`prediction`). The limits are the
 * contents whose two-sided band contains the strength. The closed form is not cut at the tested
 * contents.
 *
 * Source: Fieller's theorem as in Draper & Smith pp. 47–51, read through the vignette of the R package
 * investr (Greenwell & Schubert Kabban 2014, R Journal 6(1)).
 *
 * @throws RangeError for a fit without a curve, the quadratic form, one block under proportional spread, a strength that the form has no
 * logarithm of, or a confidence outside 0 to 1.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const fit = fitStrength([block("A", 4, 1.5), block("B", 6, 2.4), block("C", 8, 3.0), block("D", 10, 3.6)], { form: "linear", ageDays: 28 });
 * const { cementPct, lowPct, highPct } = fiellerContent(fit, { strengthMpa: 2.5, statistic: "mean" });
 * [cementPct, lowPct, highPct] // => [6.6377, 5.8182, 7.3722]
 */
export function fiellerContent(
  fit: StrengthFit,
  of: {
    readonly strengthMpa: number;
    readonly statistic: "mean" | "prediction";
    /** Two-sided; default 0.95. */
    readonly confidence?: number;
  },
): FiellerContent {
  const fitted = requireFitted(fit);
  const { strengthMpa, statistic, confidence = 0.95 } = of;
  checkFraction("confidence", confidence);
  const facts = STRENGTH_FORMS[fitted.form];
  if (facts.degree !== 1) {
    throw new RangeError(
      `invalid \`fit.form\`: ${fitted.form}; expected a form that is a straight line`,
    );
  }
  if (statistic === "prediction" && fitted.basis.spread !== "even") {
    throw new RangeError(
      `invalid \`statistic\`: ${statistic}; expected mean for scatter that grows with strength`,
    );
  }
  const response = toFittedScale(fitted, strengthMpa);
  if (!Number.isFinite(response)) {
    throw new RangeError(
      `invalid \`strengthMpa\`: ${strengthMpa}; expected a strength that the ${fitted.form} form can reach`,
    );
  }
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
      message: say`At ${100 * confidence} % confidence these blocks do not show that strength depends on cement, so no finite interval of cement content exists. Make more blocks, or test contents farther apart.`,
      ...head,
      lowPct: null,
      highPct: null,
    };
  }
  const half =
    ((t * fitted.residualSd) / Math.abs(b)) * Math.sqrt(u * u * perSlope + (1 - g) * own);
  return {
    status: "ok",
    message: say`The contents whose ${100 * confidence} % band contains ${strengthMpa} MPa.`,
    ...head,
    lowPct: toContent((u - half) / (1 - g)),
    highPct: toContent((u + half) / (1 - g)),
  };
}
