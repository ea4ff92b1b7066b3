import type { KeyValuesBlock, NoteBlock, TableBlock } from "../blocks/block.js";
import type { RequirementStatistic } from "../entries/studyConfig.js";
import type { SpecimenRecord } from "../lab/specimens.js";
import {
  displayUnit,
  displayValue,
  formatFixed,
  formatQuantity,
  type UnitSystem,
} from "../quantities/format.js";
import type { ContentInterval } from "../strength/contentInterval.js";
import type { LeastCementOfOthers } from "../strength/otherBlocks.js";
import type { StrengthBand } from "../strength/regression/bounds.js";
import type { FittedStrength } from "../strength/regression/curve.js";
import type { LackOfFit } from "../strength/regression/lackOfFit.js";
import type { ModelsCompared } from "../strength/regression/modelComparison.js";
import type { ResidualCheck } from "../strength/regression/residuals.js";
import type { RobustStrength } from "../strength/regression/robustFit.js";
import type { StrengthByAge } from "../strength/strengthByAge.js";
import { notKnownYet } from "../study/stages.js";
import type { BlockMeans, StrengthStudy, StudyResult } from "../study/studyResult.js";
import { joinTexts, say, type Text, wordFor } from "../words/message.js";
import { BLANK, digits, fixed, numberColumn, plain, pValueText, quantity } from "./cell.js";
import { type ListLine, listOf, present, quantityCells, tableOf, warning } from "./tableOf.js";

/** Every block that was crushed, the excluded ones with their reason. Strengths as measured. */
export function specimensTable(
  specimens: readonly SpecimenRecord[],
  fit: FittedStrength,
  units: UnitSystem,
): TableBlock {
  const residualOf = new Map(fit.points.map(({ id, residualMpa }) => [id, residualMpa]));
  return tableOf(
    say`Blocks as crushed`,
    specimens,
    [
      [say`Block`, (block) => block.id],
      [say`Batch`, (block) => block.batch ?? BLANK],
      [numberColumn(say`Cement`, "%"), (block) => plain(block.cementPct)],
      [numberColumn(say`Age`, "d"), (block) => plain(block.ageDays)],
      quantityCells(say`Dry density`, "density", units, (block) => block.dryDensityKgM3, 4),
      quantityCells(say`Strength`, "stress", units, (block) => block.strengthMpa),
      quantityCells(say`Measured less fitted`, "stress", units, ({ id }) => residualOf.get(id), 2),
      [
        say`Remark`,
        (block) =>
          joinTexts(
            [block.excluded ? say`Excluded: ${block.excluded}` : undefined, block.remark],
            "; ",
          ),
      ],
    ],
    [
      say`Strength is load over the loaded face, without a correction for the block's proportions.`,
      say`“Measured less fitted” is given for the blocks of ${fit.ageDays} days that are in the regression.`,
    ],
  );
}

/** Mean and range of the blocks of each content and age, where no curve could be fitted to them. */
export function blockMeansTable({ means, message }: BlockMeans, units: UnitSystem): TableBlock {
  return tableOf(
    say`Blocks as crushed, without a curve`,
    means,
    [
      [numberColumn(say`Cement`, "%"), ({ cementPct }) => plain(cementPct)],
      [numberColumn(say`Age`, "d"), ({ ageDays }) => plain(ageDays)],
      [numberColumn(say`Blocks`), ({ blocks }) => plain(blocks)],
      quantityCells(say`Mean`, "stress", units, ({ meanMpa }) => meanMpa),
      quantityCells(say`Lowest`, "stress", units, ({ lowestMpa }) => lowestMpa),
      quantityCells(say`Highest`, "stress", units, ({ highestMpa }) => highestMpa),
    ],
    [
      message,
      say`Strength is load over the loaded face, without a correction for the block's proportions.`,
    ],
  );
}

/**
 * Coefficients of the regression with their uncertainty, and how well it fits.
 *
 * @param units of the strength in the formula and its coefficients; default SI.
 */
export function regressionTable(
  fit: FittedStrength,
  lack: LackOfFit,
  units: UnitSystem = "SI",
): TableBlock {
  const test =
    lack.fValue === null || lack.pValue === null
      ? lack.message
      : say`Lack of fit against replicates: F = ${digits(lack.fValue, 3)} on ${lack.lackDegreesOfFreedom} and ${lack.pureDegreesOfFreedom} degrees of freedom, p = ${digits(lack.pValue, 2)}. ${lack.message}`;
  const unit = displayUnit("stress", units);
  const median = fit.line === "median";
  const scale = median ? say`ln ${unit}` : unit;
  const leaveOneOut =
    fit.leaveOneOutErrorMpa === null
      ? BLANK
      : say`${quantity(fit.leaveOneOutErrorMpa, "stress", units)} ${unit}`;
  const coefficients = fit.coefficients.map((coefficient, index) => {
    const logarithm = index === 0 ? "intercept of logarithms" : "logarithm";
    return inStress(coefficient, median ? logarithm : "stress", units);
  });
  return tableOf(
    fit.basis.variance === "proportional"
      ? say`Weighted regression of strength on cement content at ${fit.ageDays} days`
      : say`Regression of strength on cement content at ${fit.ageDays} days`,
    coefficients,
    [
      [say`Coefficient`, ({ name }) => name],
      [numberColumn(say`Value`), ({ value }) => digits(value, 4)],
      [numberColumn(say`Standard error`), ({ standardError }) => digits(standardError, 2)],
      [
        numberColumn(say`${digits(100 * fit.confidence, 2)} % interval, low`),
        ({ low }) => digits(low, 3),
      ],
      [numberColumn(say`high`), ({ high }) => digits(high, 3)],
      [numberColumn("p"), ({ pValue }) => pValueText(pValue)],
    ],
    [
      say`${fit.formula}, with f in ${unit} and c in percent. ${fit.blocks} blocks, ${fit.degreesOfFreedom} degrees of freedom, residual standard deviation ${digits(median ? fit.residualSd : displayValue(fit.residualSd, "stress", units), 3)} ${scale}, R² ${fixed(fit.rSquared, 3)}, leave-one-out error ${leaveOneOut}.`,
      test,
      ...termNotes(fit, units),
    ],
  );
}

type Coefficient = FittedStrength["coefficients"][number];

/**
 * A coefficient of a curve whose strength is in the units of a reader. In a curve of logarithms only the
 * intercept moves, by the logarithm of the unit, and whether it differs from nothing is a matter of the unit.
 */
function inStress(
  coefficient: Coefficient,
  part: "stress" | "logarithm" | "intercept of logarithms",
  units: UnitSystem,
): Omit<Coefficient, "pValue"> & { readonly pValue: number | null } {
  if (units === "SI" || part === "logarithm") return coefficient;
  const scale = displayValue(1, "stress", units);
  const change =
    part === "stress"
      ? (value: number) => scale * value
      : (value: number) => value + Math.log(scale);
  return {
    ...coefficient,
    value: change(coefficient.value),
    low: change(coefficient.low),
    high: change(coefficient.high),
    standardError:
      part === "stress" ? scale * coefficient.standardError : coefficient.standardError,
    pValue: part === "stress" ? coefficient.pValue : null,
  };
}

/** Where the curve stands among covariates and batches, and what its standard deviation speaks of. */
function termNotes({ covariates, batches, basis }: FittedStrength, units: UnitSystem): Text[] {
  return present([
    covariates.length > 0 &&
      say`The curve is that at ${joinTexts(covariates.map((one) => covariateText(one, units)))}.`,
    batches.length > 0 &&
      say`The curve is that of the average of ${batches.length} batches; a further batch may lie above or below it. The level of batch ${batches[batches.length - 1]} is what makes the sum zero.`,
    basis.variance === "proportional" &&
      say`The scatter is taken as proportional to strength; the standard deviation given is that at ${formatQuantity(basis.reference, "stress", units)}.`,
  ]);
}

function covariateText(
  { kind, at }: FittedStrength["covariates"][number],
  units: UnitSystem,
): Text {
  if (kind === "ln age") return say`age ${plain(Math.exp(at))} d`;
  if (kind !== "dry density") return say`${wordFor(kind)} ${plain(at)} %`;
  return say`${wordFor(kind)} ${plain(displayValue(at, "density", units))} ${displayUnit("density", units)}`;
}

/** The fitted strength and its bounds at each tested content and at the chosen one. */
export function bandsTable(
  bands: readonly StrengthBand[],
  units: UnitSystem,
  options: { readonly required?: boolean } = {},
): TableBlock {
  const { required = true } = options;
  return tableOf(
    say`Fitted strength and its lower bounds`,
    bands,
    [
      [numberColumn(say`Cement`, "%"), ({ cementPct }) => plain(cementPct)],
      quantityCells(say`Mean`, "stress", units, ({ meanMpa }) => meanMpa),
      quantityCells(
        say`Lower bound of the mean`,
        "stress",
        units,
        (band) => band.lowerBoundMpa.mean,
      ),
      quantityCells(
        say`Prediction bound (one further block)`,
        "stress",
        units,
        ({ lowerBoundMpa }) => lowerBoundMpa.prediction,
      ),
      quantityCells(
        say`Tolerance bound (exceeded by 95 % of blocks)`,
        "stress",
        units,
        ({ lowerBoundMpa }) => lowerBoundMpa.tolerance,
      ),
    ],
    [
      required
        ? say`Bounds are one-sided, each at the confidence of the requirement.`
        : say`Bounds are one-sided, each with 95 % confidence, as the study states no requirement yet.`,
    ],
  );
}

/** Strength against age at one cement content, at the tested ages: the curve beside the blocks themselves. */
export function strengthByAgeTable(
  { status, message, cementPct, ages }: StrengthByAge,
  units: UnitSystem,
): TableBlock | NoteBlock {
  if (status !== "ok") return warning(message);
  return tableOf(
    say`Strength by age at ${plain(cementPct)} % cement`,
    ages,
    [
      [numberColumn(say`Age`, "d"), (age) => plain(age.ageDays)],
      quantityCells(say`Curve`, "stress", units, (age) => age.meanMpa),
      quantityCells(say`Band of the curve, from`, "stress", units, (age) => age.meanLowMpa),
      quantityCells(say`to`, "stress", units, (age) => age.meanHighMpa),
      quantityCells(say`One further block, from`, "stress", units, (age) => age.predictionLowMpa),
      quantityCells(say`to`, "stress", units, (age) => age.predictionHighMpa),
      [numberColumn(say`Blocks of this content`), (age) => String(age.blocks)],
      quantityCells(say`Their mean`, "stress", units, (age) => age.blocksMeanMpa),
    ],
    [message, say`No values are given for ages between or beyond those tested.`],
  );
}

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
        wordFor(check),
        test,
        digits(statistic),
        pValueText(pValue),
        message,
      ]),
      [say`outliers`, say`robust fit (Huber)`, BLANK, BLANK, robust.message],
    ],
    notes: [say`Residuals are not quite independent of one another, so p is approximate.`],
  };
}

/**
 * The four models fitted to the same blocks.
 *
 * @param units of the errors; default SI.
 */
export function modelsTable(
  { models, message }: ModelsCompared,
  units: UnitSystem = "SI",
): TableBlock {
  return tableOf(
    say`Models of the curve compared`,
    models,
    [
      [say`Model`, ({ model }) => wordFor(model)],
      [numberColumn(say`Rank`), ({ rank }) => (rank === null ? BLANK : String(rank))],
      [numberColumn(say`AICc less the best`), ({ aiccDifference }) => fixed(aiccDifference, 1)],
      quantityCells(say`Leave-one-out error`, "stress", units, (one) => one.leaveOneOutErrorMpa),
      [numberColumn(say`p of lack of fit`), ({ lackOfFitPValue }) => pValueText(lackOfFitPValue)],
    ],
    [message, say`AICc differences below 2 do not separate models (common practice).`],
  );
}

/** The interval by inversion of the two-sided band, and whether it was cut at a tested content. */
function intervalWords(interval: ContentInterval | null): Text {
  if (interval === null) return say`none of the tested contents`;
  const { lowPct, highPct, lowOpen, highOpen, confidence } = interval;
  const [from, to] = [formatFixed(lowPct, 2), formatFixed(highPct, 2)];
  const low = lowOpen ? say`${from} % or less` : say`${from} %`;
  const high = highOpen ? say`${to} % or more` : say`${to} %`;
  const percent = Number((100 * confidence).toPrecision(4));
  return say`from ${low} to ${high}, with ${percent} % confidence`;
}

/** What the contents of the interval have in common. */
const JUST_REACHED = {
  mean: say`Content at which the mean just reaches the requirement`,
  prediction: say`Contents at which a single block may have just that strength`,
  tolerance: say`Content at which 95 % of blocks just reach the requirement`,
} as const;

/** The least cement content that meets the requirement, and how sure it is; a note where it is not known yet. */
export function leastCementTable(result: StudyResult): KeyValuesBlock | NoteBlock {
  const { config, strength, testing } = result;
  const { units } = config;
  const { requirement } = config.strength;
  if (!strength?.leastCement || !requirement) return notKnownYet(result, "cement");
  const { leastCement: least, fit } = strength;
  const percent = (value: number | null) =>
    value === null ? BLANK : say`${formatFixed(value, 2)} %`;
  const stress = (value: number | null) =>
    value === null ? BLANK : formatQuantity(value, "stress", units);
  const [first, last] = [fit.contentsPct[0], fit.contentsPct[fit.contentsPct.length - 1]];
  return listOf(
    testing?.state === "proposed"
      ? say`The least cement of another blend, whose blocks were crushed: not of this one`
      : say`The least cement that meets the requirement`,
    [
      [say`Required`, say`${stress(requirement.strengthMpa)} at ${requirement.ageDays} days`],
      [say`To be met by`, statisticName(requirement.statistic, requirement.confidence)],
      [say`Basis (as entered)`, requirement.basis],
      [say`Tested contents`, say`${first} to ${last} %; nothing is extrapolated`],
      [say`Outcome`, least.message],
      [say`Least content`, percent(least.cementPct), "bands"],
      [
        say`Rounded up to steps of ${least.roundUpToPct} %`,
        least.batchablePct === null ? BLANK : say`${plain(least.batchablePct)} %`,
      ],
      [say`Bound at that content`, stress(least.boundAtBatchableMpa), "calculation-bound"],
      [say`Fitted ${wordFor(fit.line)} at that content`, stress(least.lineAtBatchableMpa), "bands"],
      [
        say`Content at which the ${wordFor(fit.line)} alone would meet it`,
        least.lineContentPct === null
          ? say`outside the tested contents`
          : percent(least.lineContentPct),
      ],
      [JUST_REACHED[requirement.statistic], intervalWords(least.interval)],
      ...(strength.leastCementOfOthers ?? []).map((others) => otherBlocksLine(others, strength)),
      [say`Choice of the curve`, strength.models.message],
    ],
  );
}

/** The least content with other blocks, so that it shows whether one of them decides it. */
function otherBlocksLine(
  { without, withBack, cementPct, batchablePct }: LeastCementOfOthers,
  { specimens }: Pick<StrengthStudy, "specimens">,
): ListLine {
  const [back] = withBack;
  const reason = specimens.find(({ id }) => id === back)?.excluded ?? "";
  return [
    back === undefined
      ? say`Without ${without.join(", ")}, far from the others`
      : say`With ${back} put back (excluded: ${reason})`,
    cementPct === null || batchablePct === null
      ? say`none of the tested contents`
      : say`${formatFixed(cementPct, 2)} %, rounded up ${plain(batchablePct)} %`,
  ];
}

/**
 * What has to meet the required strength, in words that state the confidence.
 *
 * @example
 * render(statisticName("tolerance", 0.9)) // => "the 95 % / 90 % tolerance bound (exceeded by 95 % of blocks)"
 */
export function statisticName(statistic: RequirementStatistic, confidence: number): Text {
  const percent = Number((100 * confidence).toPrecision(4));
  switch (statistic) {
    case "mean":
      return say`the lower bound of the mean strength, with ${percent} % confidence`;
    case "prediction":
      return say`the prediction bound (one further block), with ${percent} % probability`;
    case "tolerance":
      return say`the 95 % / ${percent} % tolerance bound (exceeded by 95 % of blocks)`;
  }
}
