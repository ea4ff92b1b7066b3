import type { FormsCompared } from "../strength/compareForms.js";
import type { ResidualCheck } from "../strength/residualChecks.js";
import type { RobustStrength } from "../strength/robustStrength.js";
import type { FittedStrength } from "../strength/strengthFit.js";
import { say, sayOf } from "../words/say.js";
import { BLANK, digits, fixed, numberColumn, plain } from "./cell.js";
import type { TableBlock } from "./reportBlock.js";

const p = (value: number | null) =>
  value === null ? BLANK : value < 0.001 ? "< 0.001" : digits(value, 2);

/** What the bands rest on, and what was found: normality, spread, and the robust cross-check. */
export function strengthChecksTable(
  checks: readonly ResidualCheck[],
  robust: RobustStrength,
): TableBlock {
  return {
    kind: "table",
    caption: say`Checks of the regression`,
    columns: [
      { header: say`Check` },
      { header: say`Test` },
      numberColumn(say`Statistic`),
      numberColumn("p"),
      { header: say`What it says` },
    ],
    rows: [
      ...checks.map(({ check, test, statistic, pValue, message }) => [
        ...[sayOf(check), test, digits(statistic ?? undefined, 3), p(pValue), message],
      ]),
      [say`single odd blocks`, say`robust fit (Huber)`, BLANK, BLANK, robust.message],
    ],
    notes: [say`Residuals are not quite independent of one another, so p is approximate.`],
  };
}

/** The four forms fitted to the same blocks. */
export function formsTable({ forms, message }: FormsCompared): TableBlock {
  return {
    kind: "table",
    caption: say`Forms of the curve compared`,
    columns: [
      { header: say`Form` },
      numberColumn(say`Rank`),
      numberColumn(say`AICc less the best`),
      numberColumn(say`Leave-one-out error`, "MPa"),
      numberColumn(say`p of lack of fit`),
    ],
    rows: forms.map(({ form, rank, aiccDifference, leaveOneOutErrorMpa, lackOfFitPValue }) => [
      sayOf(form),
      rank === null ? BLANK : String(rank),
      fixed(aiccDifference ?? undefined, 1),
      digits(leaveOneOutErrorMpa ?? undefined, 3),
      p(lackOfFitPValue),
    ]),
    notes: [message, say`Forms that differ by less than 2 are not told apart (common practice).`],
  };
}

/** What the fit says of each block in it. */
export function influenceTable(fit: FittedStrength): TableBlock {
  return {
    kind: "table",
    caption: say`Blocks in the regression`,
    columns: [
      { header: say`Block` },
      numberColumn(say`Cement`, "%"),
      numberColumn(say`Leverage`),
      numberColumn(say`Studentised residual`),
      numberColumn(say`Cook's distance`),
    ],
    rows: fit.points.map(({ id, cementPct, leverage, studentised, cooksDistance }) => [
      id,
      plain(cementPct),
      fixed(leverage, 3),
      fixed(studentised ?? undefined, 2),
      fixed(cooksDistance ?? undefined, 3),
    ]),
  };
}
