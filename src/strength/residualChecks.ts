import { say } from "../words/say.js";
import { breuschPagan } from "./breuschPagan.js";
import { brownForsythe } from "./brownForsythe.js";
import { fittedResiduals } from "./fittedResiduals.js";
import { requireFitted } from "./requireFitted.js";
import { shapiroWilk } from "./shapiroWilk.js";
import { toFittedScale } from "./strengthAt.js";
import type { StrengthFit } from "./strengthFit.js";

export interface ResidualCheck {
  readonly check: "normality" | "equal spread of the contents" | "spread that grows with strength";
  readonly test: string;
  /** Null where the blocks are too few, or do not scatter. */
  readonly statistic: number | null;
  readonly pValue: number | null;
  /** `doubt`: p below 0.05; `not-tested`: see the message. */
  readonly status: "no-doubt" | "doubt" | "not-tested";
  /** What was found and what to do. */
  readonly message: string;
}

/** Usual level of a test: common practice, no source. */
const LEVEL = 0.05;

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
 * residualChecks(fitStrength(blocks, { form: "linear", ageDays: 28 })).map(({ status }) => status) // => ["no-doubt", "not-tested", "no-doubt"]
 */
export function residualChecks(fit: StrengthFit): ResidualCheck[] {
  const fitted = requireFitted(fit);
  const residuals = fittedResiduals(fitted);
  const contents = [...new Set(fitted.points.map(({ cementPct }) => cementPct))];
  const groups = contents.map((content) =>
    residuals.filter((_, index) => fitted.points[index].cementPct === content),
  );
  const normal = shapiroWilk(residuals);
  const groupSpread = brownForsythe(groups);
  const growth = breuschPagan(
    residuals,
    fitted.points.map(({ fittedMpa }) => toFittedScale(fitted, fittedMpa)),
  );
  const { form, basis } = fitted;
  const weighted = basis.spread === "proportional" || form === "power";
  return [
    judge(
      "normality",
      say`Shapiro–Wilk`,
      normal && { statistic: normal.w, pValue: normal.pValue },
      {
        fine: say`The residuals give no reason to doubt that they are normal.`,
        doubt: say`The residuals are not like normal ones, so the bounds of single blocks may be wrong. Look for single odd blocks first, and at the robust fit; if all are sound, try the power form, whose errors are lognormal.`,
      },
    ),
    judge("equal spread of the contents", "Brown–Forsythe", groupSpread, {
      fine: say`The contents scatter alike, as far as so few blocks can tell.`,
      doubt: say`Some contents scatter more than others. Look at how those blocks were mixed and crushed; the bands are too narrow there and too wide elsewhere.`,
    }),
    judge("spread that grows with strength", "Breusch–Pagan (Koenker)", growth, {
      fine: say`The scatter does not clearly grow or shrink with strength.`,
      doubt: growth?.rises
        ? weighted
          ? say`The scatter grows even faster than the strength. Look at the strongest blocks.`
          : say`Strong blocks scatter more than weak ones: fit with spread “proportional”, or the power form.`
        : weighted
          ? say`Allowing for a scatter that grows went too far: fit with even spread.`
          : say`Weak blocks scatter more than strong ones. Look at how the weak ones were made and capped.`,
    }),
  ];
}

function judge(
  check: ResidualCheck["check"],
  test: string,
  found: { readonly statistic: number; readonly pValue: number } | null,
  words: { readonly fine: string; readonly doubt: string },
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
