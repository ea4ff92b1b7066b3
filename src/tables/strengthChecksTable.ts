import type { FormsCompared } from "../strength/compareForms.js";
import type { ResidualCheck } from "../strength/residualChecks.js";
import type { RobustStrength } from "../strength/robustStrength.js";
import type { FittedStrength } from "../strength/strengthFit.js";
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
    caption: "Checks of the regression",
    columns: [
      { header: "Check" },
      { header: "Test" },
      numberColumn("Statistic"),
      numberColumn("p"),
      { header: "What it says" },
    ],
    rows: [
      ...checks.map(({ check, test, statistic, pValue, message }) => [
        ...[check, test, digits(statistic ?? undefined, 3), p(pValue), message],
      ]),
      ["single odd blocks", "robust fit (Huber)", BLANK, BLANK, robust.message],
    ],
    notes: ["Residuals are not quite independent of one another, so p is approximate."],
  };
}

/** The four forms fitted to the same blocks. */
export function formsTable({ forms, message }: FormsCompared): TableBlock {
  return {
    kind: "table",
    caption: "Forms of the curve compared",
    columns: [
      { header: "Form" },
      numberColumn("Rank"),
      numberColumn("AICc less the best"),
      numberColumn("Leave-one-out error", "MPa"),
      numberColumn("p of lack of fit"),
    ],
    rows: forms.map(({ form, rank, aiccDifference, leaveOneOutErrorMpa, lackOfFitPValue }) => [
      form,
      rank === null ? BLANK : String(rank),
      fixed(aiccDifference ?? undefined, 1),
      digits(leaveOneOutErrorMpa ?? undefined, 3),
      p(lackOfFitPValue),
    ]),
    notes: [message, "Forms that differ by less than 2 are not told apart (common practice)."],
  };
}

/** What the fit says of each block in it. */
export function influenceTable(fit: FittedStrength): TableBlock {
  return {
    kind: "table",
    caption: "Blocks in the regression",
    columns: [
      { header: "Block" },
      numberColumn("Cement", "%"),
      numberColumn("Leverage"),
      numberColumn("Studentised residual"),
      numberColumn("Cook's distance"),
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
