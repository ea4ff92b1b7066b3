import type { SpecimenRecord } from "../../lab/specimens.js";
import { say, type Text, wordFor } from "../../words/message.js";
import type { UnfittedStrength } from "./curve.js";
import {
  type CovariateAt,
  covariateValue,
  type StrengthCovariate,
  type StrengthFormFacts,
} from "./model.js";

export interface SelectedBlocks {
  readonly used: readonly SpecimenRecord[];
  readonly covariates: readonly CovariateAt[];
  /** In order of first appearance; empty unless they are a block of the regression. */
  readonly batches: readonly string[];
  readonly problem: {
    readonly status: UnfittedStrength["status"];
    readonly message: Text;
  } | null;
}

/** The blocks that a regression uses, and why it cannot be made where it cannot. */
export function selectBlocks(
  specimens: readonly SpecimenRecord[],
  facts: StrengthFormFacts,
  options: {
    readonly ageDays: number;
    readonly covariates: readonly StrengthCovariate[];
    readonly at: Partial<Readonly<Record<StrengthCovariate, number>>>;
    readonly batches: boolean;
  },
): SelectedBlocks {
  const { ageDays, covariates: kinds } = options;
  const withAges = kinds.includes("ln age");
  const used = specimens.filter(
    (block) => !block.excluded && (withAges || block.ageDays === ageDays),
  );
  const batches = options.batches ? [...new Set(used.map(({ batch }) => batch ?? ""))] : [];
  const count = facts.coefficientNames.length + kinds.length + Math.max(0, batches.length - 1);
  const contents = new Set(used.map(({ cementPct }) => cementPct)).size;
  const name = (blocks: readonly SpecimenRecord[]) => blocks.map(({ id }) => id).join(", ");
  const done = (
    status: UnfittedStrength["status"],
    message: Text,
    covariates: readonly CovariateAt[] = [],
  ): SelectedBlocks => ({ used, covariates, batches, problem: { status, message } });

  const undefinedAt = used.find(
    ({ cementPct, strengthMpa }) =>
      (facts.contentScale === "logarithm" && !(cementPct > 0)) ||
      (facts.strengthScale === "logarithm" && !(strengthMpa > 0)),
  );
  if (undefinedAt) {
    const { id, cementPct, strengthMpa } = undefinedAt;
    return done(
      "not-defined",
      say`The ${wordFor(facts.form)} form takes logarithms; block ${id} has ${cementPct} % cement and ${strengthMpa} MPa. Choose another form, or exclude the block with the reason.`,
    );
  }
  const ages = used.map((block) => block.ageDays);
  const ageless = withAges ? used.find((block) => !(block.ageDays > 0)) : undefined;
  if (ageless) {
    return done(
      "not-defined",
      say`The regression takes the logarithm of the age; block ${ageless.id} was crushed at ${ageless.ageDays} days. Exclude it with that reason, or leave the age out.`,
    );
  }
  if (withAges && used.length > 0 && (ageDays < Math.min(...ages) || ageDays > Math.max(...ages))) {
    return done(
      "outside-tested",
      ageDays > Math.max(...ages)
        ? say`No block was crushed at ${ageDays} days or later, and nothing is extrapolated: the tested ages are ${Math.min(...ages)} to ${Math.max(...ages)} days. Keep blocks to crush at ${ageDays} days.`
        : say`No block was crushed at ${ageDays} days or earlier, and nothing is extrapolated: the tested ages are ${Math.min(...ages)} to ${Math.max(...ages)} days. Keep blocks to crush at ${ageDays} days.`,
    );
  }
  if (used.length < count + 1) {
    return done(
      "too-few-points",
      kinds.length + batches.length > 0
        ? say`The ${wordFor(facts.form)} form with its covariates and batches needs at least ${count + 1} blocks; there are ${used.length}.`
        : say`The ${wordFor(facts.form)} form needs at least ${count + 1} blocks of ${ageDays} days; there are ${used.length}.`,
    );
  }
  if (contents < facts.coefficientNames.length) {
    return done(
      "rank-deficient",
      say`The ${wordFor(facts.form)} form needs at least ${facts.coefficientNames.length} different cement contents; the blocks of ${ageDays} days have ${contents}.`,
    );
  }
  const lacking = kinds.map((kind) => ({
    kind,
    blocks: used.filter((block) => covariateValue(block, kind) === undefined),
  }));
  const gap = lacking.find(({ blocks }) => blocks.length > 0);
  if (gap) {
    return done(
      "missing-reading",
      say`These blocks have no ${wordFor(gap.kind)}: ${name(gap.blocks)}. Enter it, or leave ${wordFor(gap.kind)} out of the regression.`,
    );
  }
  if (options.batches && batches.includes("")) {
    const blocks = used.filter(({ batch }) => !batch);
    return done("missing-reading", say`These blocks have no batch: ${name(blocks)}. Enter it.`);
  }
  const covariates = kinds.map((kind): CovariateAt => {
    if (kind === "ln age") return { kind, at: Math.log(ageDays) };
    const values = used.map((block) => covariateValue(block, kind)!);
    const at = options.at[kind] ?? values.reduce((sum, value) => sum + value, 0) / values.length;
    return { kind, at };
  });
  const far = covariates.find(({ kind, at }) => {
    const values = used.map((block) => covariateValue(block, kind)!);
    return at < Math.min(...values) || at > Math.max(...values);
  });
  if (far && far.kind !== "ln age") {
    return done(
      "outside-tested",
      say`The ${wordFor(far.kind)} asked for, ${far.at}, lies outside that of the blocks, and nothing is extrapolated. Make blocks with it.`,
      covariates,
    );
  }
  return { used, covariates, batches, problem: null };
}

/** Groups things that have a cement content, in order of first appearance. */
export function groupByContent<T extends { readonly cementPct: number }>(
  items: readonly T[],
): Map<number, T[]> {
  const groups = new Map<number, T[]>();
  for (const item of items) {
    const group = groups.get(item.cementPct);
    if (group) group.push(item);
    else groups.set(item.cementPct, [item]);
  }
  return groups;
}
