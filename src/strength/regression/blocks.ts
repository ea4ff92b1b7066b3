import { mean } from "simple-statistics";
import type { SpecimenRecord } from "../../lab/specimens.js";
import { measured } from "../../quantities/format.js";
import { say, wordFor } from "../../words/message.js";
import type { UnfittedStrength } from "./curve.js";
import {
  type CovariateAt,
  covariateValue,
  type StrengthCovariate,
  type StrengthModelFacts,
} from "./model.js";

export interface SelectedBlocks {
  readonly used: readonly SpecimenRecord[];
  readonly covariates: readonly CovariateAt[];
  /** In order of first appearance; empty unless they are a block of the regression. */
  readonly batches: readonly string[];
  readonly problem: SelectionProblem | null;
}

type SelectionProblem = Pick<UnfittedStrength, "status" | "message">;

interface SelectionOptions {
  readonly ageDays: number;
  readonly covariates: readonly StrengthCovariate[];
  /** Where the curve is asked; left out, at the mean of the blocks. */
  readonly at: Partial<Readonly<Record<StrengthCovariate, number>>>;
  /** Batches are a block of the regression. */
  readonly batches: boolean;
}

/** The blocks that a regression uses, and why it cannot be made where it cannot. */
export function selectBlocks(
  specimens: readonly SpecimenRecord[],
  facts: StrengthModelFacts,
  options: SelectionOptions,
): SelectedBlocks {
  const withAges = options.covariates.includes("ln age");
  const used = specimens.filter(
    (block) => !block.excluded && (withAges || block.ageDays === options.ageDays),
  );
  const batches = options.batches ? [...new Set(used.map(({ batch }) => batch ?? ""))] : [];
  const missing =
    logarithmProblem(used, facts, withAges) ??
    (withAges ? ageProblem(used, options.ageDays) : null) ??
    countProblem(used, facts, options, batches) ??
    readingProblem(used, options);
  if (missing) return { used, covariates: [], batches, problem: missing };
  const covariates = options.covariates.map((kind) => covariateAt(used, kind, options));
  return { used, covariates, batches, problem: outsideProblem(used, covariates) };
}

/** A logarithm of something that is not above zero. */
function logarithmProblem(
  used: readonly SpecimenRecord[],
  { model, contentScale, strengthScale }: StrengthModelFacts,
  withAges: boolean,
): SelectionProblem | null {
  const block = used.find(
    ({ cementPct, strengthMpa }) =>
      (contentScale === "logarithm" && !(cementPct > 0)) ||
      (strengthScale === "logarithm" && !(strengthMpa > 0)),
  );
  if (block) {
    const { id, cementPct, strengthMpa } = block;
    return {
      status: "not-defined",
      message: say`The ${wordFor(model)} model takes logarithms; block ${id} has ${cementPct} % cement and ${measured(strengthMpa, "stress")}. Choose another model, or exclude the block with the reason.`,
    };
  }
  const ageless = withAges ? used.find(({ ageDays }) => !(ageDays > 0)) : undefined;
  if (!ageless) return null;
  return {
    status: "not-defined",
    message: say`The regression takes the logarithm of the age; block ${ageless.id} was crushed at ${ageless.ageDays} days. Exclude it with that reason, or leave the age out.`,
  };
}

/** An age that lies outside those of the blocks. */
function ageProblem(used: readonly SpecimenRecord[], ageDays: number): SelectionProblem | null {
  if (used.length === 0) return null;
  const ages = used.map((block) => block.ageDays);
  const [first, last] = [Math.min(...ages), Math.max(...ages)];
  if (ageDays >= first && ageDays <= last) return null;
  return {
    status: "outside-tested",
    message:
      ageDays > last
        ? say`No block was crushed at ${ageDays} days or later, and nothing is extrapolated: the tested ages are ${first} to ${last} days. Keep blocks to crush at ${ageDays} days.`
        : say`No block was crushed at ${ageDays} days or earlier, and nothing is extrapolated: the tested ages are ${first} to ${last} days. Keep blocks to crush at ${ageDays} days.`,
  };
}

/** Too few blocks or contents for the coefficients. */
function countProblem(
  used: readonly SpecimenRecord[],
  { model, coefficientNames }: StrengthModelFacts,
  { ageDays, covariates }: SelectionOptions,
  batches: readonly string[],
): SelectionProblem | null {
  const count = coefficientNames.length + covariates.length + Math.max(0, batches.length - 1);
  if (used.length < count + 1) {
    return {
      status: "too-few-points",
      message:
        covariates.length + batches.length > 0
          ? say`The ${wordFor(model)} model with its covariates and batches needs at least ${count + 1} blocks; there are ${used.length}.`
          : say`The ${wordFor(model)} model needs at least ${count + 1} blocks of ${ageDays} days; there are ${used.length}.`,
    };
  }
  const contents = new Set(used.map(({ cementPct }) => cementPct)).size;
  if (contents >= coefficientNames.length) return null;
  return {
    status: "rank-deficient",
    message: say`The ${wordFor(model)} model needs at least ${coefficientNames.length} different cement contents; the blocks of ${ageDays} days have ${contents}.`,
  };
}

/** Blocks without a reading that the regression needs. */
function readingProblem(
  used: readonly SpecimenRecord[],
  { covariates, batches }: SelectionOptions,
): SelectionProblem | null {
  const named = (blocks: readonly SpecimenRecord[]) => blocks.map(({ id }) => id).join(", ");
  for (const kind of covariates) {
    const lacking = used.filter((block) => covariateValue(block, kind) === undefined);
    if (lacking.length > 0) {
      return {
        status: "missing-reading",
        message: say`These blocks have no ${wordFor(kind)}: ${named(lacking)}. Enter it, or leave ${wordFor(kind)} out of the regression.`,
      };
    }
  }
  const lacking = batches ? used.filter(({ batch }) => !batch) : [];
  if (lacking.length === 0) return null;
  return {
    status: "missing-reading",
    message: say`These blocks have no batch: ${named(lacking)}. Enter it.`,
  };
}

function covariateAt(
  used: readonly SpecimenRecord[],
  kind: StrengthCovariate,
  { ageDays, at }: SelectionOptions,
): CovariateAt {
  if (kind === "ln age") return { kind, at: Math.log(ageDays) };
  const values = used.map((block) => covariateValue(block, kind)!);
  return { kind, at: at[kind] ?? mean(values) };
}

/** A density or moisture that no block has; ages were seen to before. */
function outsideProblem(
  used: readonly SpecimenRecord[],
  covariates: readonly CovariateAt[],
): SelectionProblem | null {
  const far = covariates.find(({ kind, at }) => {
    const values = used.map((block) => covariateValue(block, kind)!);
    return kind !== "ln age" && (at < Math.min(...values) || at > Math.max(...values));
  });
  if (!far) return null;
  return {
    status: "outside-tested",
    message: say`The ${wordFor(far.kind)} asked for, ${far.at}, lies outside that of the blocks, and nothing is extrapolated. Make blocks with it.`,
  };
}
