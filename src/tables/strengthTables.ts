import type { SpecimenRecord } from "../lab/specimenRecord.js";
import type { UnitSystem } from "../quantities/displayUnits.js";
import type { LackOfFit } from "../strength/lackOfFit.js";
import type { StrengthBand } from "../strength/strengthBands.js";
import type { FittedStrength } from "../strength/strengthFit.js";
import { say } from "../words/say.js";
import { BLANK, digits, fixed, numberColumn, plain, quantity, quantityColumn } from "./cell.js";
import type { TableBlock } from "./reportBlock.js";

/** Every block that was crushed, the excluded ones with their reason. Strengths as measured. */
export function specimensTable(
  specimens: readonly SpecimenRecord[],
  fit: FittedStrength,
  units: UnitSystem,
): TableBlock {
  const residualOf = new Map(fit.points.map(({ id, residualMpa }) => [id, residualMpa]));
  return {
    kind: "table",
    caption: say`Blocks as crushed`,
    columns: [
      { header: say`Block` },
      { header: say`Batch` },
      numberColumn(say`Cement`, "%"),
      numberColumn(say`Age`, "d"),
      quantityColumn(say`Dry density`, "density", units),
      quantityColumn(say`Strength`, "stress", units),
      quantityColumn(say`Measured less fitted`, "stress", units),
      { header: say`Remark` },
    ],
    rows: specimens.map((block) => [
      block.id,
      block.batch ?? BLANK,
      plain(block.cementPct),
      plain(block.ageDays),
      quantity(block.dryDensityKgM3, "density", units, 4),
      quantity(block.strengthMpa, "stress", units),
      quantity(residualOf.get(block.id), "stress", units, 2),
      [block.excluded ? say`Excluded: ${block.excluded}` : undefined, block.remark]
        .filter(Boolean)
        .join("; "),
    ]),
    notes: [
      say`Strength is load over the loaded face, without a correction for the block's proportions.`,
      say`“Measured less fitted” is given for the blocks of ${fit.ageDays} days that are in the regression.`,
    ],
  };
}

/** Coefficients of the regression with their uncertainty, and how well it fits. */
export function regressionTable(fit: FittedStrength, lack: LackOfFit): TableBlock {
  const test =
    lack.fValue === null || lack.pValue === null
      ? lack.message
      : say`Lack of fit against replicates: F = ${digits(lack.fValue, 3)} on ${lack.lackDegreesOfFreedom} and ${lack.pureDegreesOfFreedom} degrees of freedom, p = ${digits(lack.pValue, 2)}. ${lack.message}`;
  const scale = fit.line === "median" ? say`ln MPa` : "MPa";
  return {
    kind: "table",
    caption: say`Regression of strength on cement content at ${fit.ageDays} days`,
    columns: [
      { header: say`Coefficient` },
      numberColumn(say`Value`),
      numberColumn(say`Standard error`),
      numberColumn(say`${digits(100 * fit.confidence, 2)} % interval, low`),
      numberColumn(say`high`),
      numberColumn("p"),
    ],
    rows: fit.coefficients.map(({ name, value, standardError, low, high, pValue }) => [
      name,
      digits(value, 4),
      digits(standardError, 2),
      digits(low, 3),
      digits(high, 3),
      pValue < 0.001 ? "< 0.001" : digits(pValue, 2),
    ]),
    notes: [
      say`${fit.formula}, with f in MPa and c in percent. ${fit.blocks} blocks, ${fit.degreesOfFreedom} degrees of freedom, residual standard deviation ${digits(fit.residualSd, 3)} ${scale}, R² ${fit.rSquared === null ? BLANK : fixed(fit.rSquared, 3)}, leave-one-out error ${fit.leaveOneOutErrorMpa === null ? BLANK : say`${digits(fit.leaveOneOutErrorMpa, 3)} MPa`}.`,
      test,
      ...termNotes(fit),
    ],
  };
}

/** Where the curve stands among covariates and batches, and what its standard deviation speaks of. */
function termNotes({ covariates, batches, basis }: FittedStrength): string[] {
  const notes: string[] = [];
  if (covariates.length > 0) {
    const at = covariates.map(({ kind, at: value }) =>
      kind === "ln age"
        ? say`age ${plain(Math.exp(value))} d`
        : `${kind} ${plain(value)} ${kind === "dry density" ? "kg/m³" : "%"}`,
    );
    notes.push(say`The curve is that at ${at.join(", ")}.`);
  }
  if (batches.length > 0) {
    notes.push(
      say`The curve is that of the average of ${batches.length} batches; a further batch may lie above or below it. The level of batch ${batches[batches.length - 1]} is what makes the sum zero.`,
    );
  }
  if (basis.spread === "proportional") {
    notes.push(
      say`The scatter is taken as proportional to strength; the standard deviation given is that at ${digits(basis.reference, 3)} MPa.`,
    );
  }
  return notes;
}

/** The fitted strength and its bounds at each tested content and at the chosen one. */
export function bandsTable(bands: readonly StrengthBand[], units: UnitSystem): TableBlock {
  const stress = (value: number) => quantity(value, "stress", units);
  return {
    kind: "table",
    caption: say`Fitted strength and its lower bounds`,
    columns: [
      numberColumn(say`Cement`, "%"),
      quantityColumn(say`Mean`, "stress", units),
      quantityColumn(say`Lower bound of the mean`, "stress", units),
      quantityColumn(say`Lower bound of one further block`, "stress", units),
      quantityColumn(say`Bound that 95 % of blocks exceed`, "stress", units),
    ],
    rows: bands.map(({ cementPct, meanMpa, lowerBoundMpa }) => [
      plain(cementPct),
      stress(meanMpa),
      stress(lowerBoundMpa.mean),
      stress(lowerBoundMpa.prediction),
      stress(lowerBoundMpa.tolerance),
    ]),
    notes: [say`Bounds are one-sided, each at the confidence of the requirement.`],
  };
}
