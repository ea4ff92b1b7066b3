import { mean, median } from "simple-statistics";
import { type Finding, finding, findingIf, hasErrors } from "../findings/finding.js";
import type { SpecimenRecord, SpecimenSheet } from "../lab/specimens.js";
import { tQuantile } from "../numerics/distributions.js";
import { formatFixed, measured } from "../quantities/format.js";
import { say, type Text, wordFor } from "../words/message.js";
import { groupBy } from "./groupBy.js";
import { type FitStrengthOptions, fitStrength, studentisedResidual } from "./regression/fit.js";
import { STRENGTH_MODELS } from "./regression/model.js";

export interface IncludedSpecimens {
  /** What the regression uses. */
  readonly included: readonly SpecimenRecord[];
  /** Of the included, those that lie far from the others; nothing is left out for it. */
  readonly far: readonly SpecimenRecord[];
  /** Of the findings: that more blocks or contents are needed for a curve. */
  readonly tooFew?: Finding;
  readonly findings: readonly Finding[];
}

/** What the regression is asked for, as far as it decides which blocks take part. */
export type IncludedSpecimensOptions = Pick<FitStrengthOptions, "ageDays" | "covariates"> &
  Partial<Pick<FitStrengthOptions, "model">>;

/**
 * Splits a block sheet into what the regression uses and what it does not, and names what is amiss.
 *
 * Error: an age of 0 where ln age is a covariate. Warnings: fewer blocks than coefficients + 1, fewer
 * contents than the model has coefficients, a strength so far from the others that it may stand in another
 * unit, no scatter, a block far from its group (Bonferroni limit of the externally studentised residual at
 * 5 %), every content made as one batch. Notes: each exclusion with its reason, and the blocks of other
 * ages. Nothing is dropped that the user did not exclude.
 *
 * @param options.ageDays the age that counts; with `ln age` among the covariates blocks of all ages take part.
 * @param options.model default `linear`.
 * Source: the outlier limit after Cook & Weisberg 1982 (from memory); the rest is plain bookkeeping.
 *
 * @example
 * const block = (id, cementPct, strengthMpa, row) => ({ id, cementPct, strengthMpa, ageDays: 28, row });
 * const sheet = { file: "blocks.csv", specimens: [block("A", 4, 1.5, 2), block("B", 6, 2.4, 3), { ...block("C", 8, 0.9, 4), excluded: "dropped" }] };
 * const { included, findings } = includedSpecimens(sheet, { ageDays: 28 });
 * included.length // => 2
 * findings.map(({ code, row }) => [code, row]) // => [["excluded-block", 4], ["too-few-blocks", 2]]
 */
export function includedSpecimens(
  { file, specimens }: SpecimenSheet,
  options: IncludedSpecimensOptions,
): IncludedSpecimens {
  const { ageDays, model = "linear", covariates = [] } = options;
  const excluded = specimens.filter((block) => block.excluded);
  const rest = specimens.filter((block) => !block.excluded);
  const allAges = covariates.includes("ln age");
  const included = allAges ? rest : rest.filter((block) => block.ageDays === ageDays);
  const otherAges = allAges ? [] : rest.filter((block) => block.ageDays !== ageDays);
  const asked = { file, model, ageDays, covariates };
  const groups = groupBy(included, alikeKey);
  const tooFew = tooFewBlocks(included, asked);
  const soFar = [
    ...excluded.map((block) => excludedBlock(block, file)),
    ...unitFindings(rest, file),
    ...fractionFindings(rest, file),
    ...otherAgesFindings(otherAges, asked),
    ...(tooFew ? [tooFew] : []),
    ...agelessFindings(included, asked),
    ...scatterFindings(included, groups, file),
    ...batchFindings(included, groups, file),
  ];
  // A fit or a group makes sense only without errors, and with enough blocks.
  const outliers = tooFew || hasErrors(soFar) ? [] : outlyingBlocks(included, groups, asked);
  return {
    included,
    far: outliers.map(({ block }) => block),
    ...(tooFew ? { tooFew } : {}),
    findings: [...soFar, ...outliers.map((outlier) => outlyingBlock(outlier, file))],
  };
}

/** Blocks of one content and age. */
type AlikeBlocks = ReadonlyMap<string, readonly SpecimenRecord[]>;

const alikeKey = ({ cementPct, ageDays }: SpecimenRecord) => `${cementPct} ${ageDays}`;

type Asked = Required<Pick<FitStrengthOptions, "model" | "ageDays" | "covariates">> & {
  readonly file: string;
};

function excludedBlock({ id, row, excluded = "" }: SpecimenRecord, file: string): Finding {
  return finding({ file, row, column: "excluded", value: excluded }, "note", "excluded-block", {
    message: say`Block ${id} takes no part in the regression: ${excluded}.`,
    expected: say`a reason that will stand in the report`,
    remedy: say`Nothing to do.`,
  });
}

function otherAgesFindings(blocks: readonly SpecimenRecord[], { file, ageDays }: Asked): Finding[] {
  const ages = [...new Set(blocks.map((block) => block.ageDays))].sort((a, b) => a - b);
  const value = ages.map((age) => `${age} d`).join(", ");
  const place = { file, row: blocks[0]?.row, column: "age", value };
  return findingIf(blocks.length > 0, place, "note", "other-ages", {
    message: say`${blocks.length}{0, plural, one { block} other { blocks}} of another age {0, plural, one {takes} other {take}} no part in the curve at ${ageDays} days.`,
    expected: `${ageDays} d`,
    remedy: say`Nothing to do; they are shown beside the curve. To use blocks of all ages, set strength.covariates.age.`,
  });
}

/** kgf/cm², psi and kPa (or kN/m²) in one MPa: what a strength written in another unit is off by. */
const UNITS = [
  ["kgf/cm²", 10.197],
  ["psi", 145.04],
  ["kPa", 1000],
] as const;
/** Blocks of one content and age hardly ever differ by so much, nor those of a whole sheet by the other. */
const [AMONG_LIKE, IN_SHEET] = [6, 30];

/**
 * Names blocks whose strength may stand in another unit than the others'. The units are the header's for
 * a whole column, so one row of another unit shows only by its size. A control without cement may truly be
 * that weak, so this is a warning.
 */
function unitFindings(blocks: readonly SpecimenRecord[], file: string): Finding[] {
  return blocks.flatMap((block): Finding[] => {
    const others = blocks.filter((other) => other !== block);
    const like = others.filter(
      ({ cementPct, ageDays }) => cementPct === block.cementPct && ageDays === block.ageDays,
    );
    const group = like.length >= 2 ? like : others;
    if (group.length < 2) return [];
    const usual = median(group.map(({ strengthMpa }) => strengthMpa));
    const ratio = block.strengthMpa / usual;
    if (Math.max(ratio, 1 / ratio) < (group === like ? AMONG_LIKE : IN_SHEET)) return [];
    return [mixedUnits(block, usual, file)];
  });
}

/** Where the strength of a block stands in the sheet. */
function strengthPlace({ row, strengthMpa }: SpecimenRecord, file: string, digits?: number) {
  return { file, row, column: "strength", value: say`${measured(strengthMpa, "stress", digits)}` };
}

function mixedUnits(block: SpecimenRecord, usualMpa: number, file: string): Finding {
  const ratio = block.strengthMpa / usualMpa;
  const off = Math.abs(Math.log(ratio));
  const [unit] = [...UNITS].sort(
    ([, a], [, b]) => Math.abs(Math.log(a) - off) - Math.abs(Math.log(b) - off),
  )[0];
  return finding(strengthPlace(block, file), "warning", "mixed-units", {
    message:
      ratio > 1
        ? say`Block ${block.id} is ${formatFixed(ratio, 0)} times as strong as the others: it may be written in another unit, such as ${unit}.`
        : say`The others are ${formatFixed(1 / ratio, 0)} times as strong as block ${block.id}: it may be written in another unit, such as ${unit}.`,
    expected: say`about ${measured(usualMpa, "stress", 2)}; one unit for the whole column`,
    remedy: say`Look at the reading. Convert it if its unit is another; if it is true, such as that of a control without cement, leave it: the block takes part.`,
  });
}

/** A cement content that looks like a fraction among percents. */
function fractionFindings(blocks: readonly SpecimenRecord[], file: string): Finding[] {
  const fraction = blocks.find(({ cementPct }) => cementPct > 0 && cementPct < 0.5);
  if (!fraction || median(blocks.map(({ cementPct }) => cementPct)) < 2) return [];
  const { id, row, cementPct } = fraction;
  const place = { file, row, column: "cement", value: `${cementPct} %` };
  return [
    finding(place, "warning", "cement-as-fraction", {
      message: say`The cement content of block ${id} looks like a fraction, not a percentage.`,
      expected: say`percent, for example ${Number((100 * cementPct).toFixed(3))} %`,
      remedy: say`Write all contents in percent of the dry mass of soil and aggregate.`,
    }),
  ];
}

/** That blocks or contents are too few for a curve. */
function tooFewBlocks(
  blocks: readonly SpecimenRecord[],
  { file, model, ageDays, covariates }: Asked,
): Finding | undefined {
  const contents = [...new Set(blocks.map(({ cementPct }) => cementPct))].sort((a, b) => a - b);
  const row = blocks[0]?.row;
  const ofModel = STRENGTH_MODELS[model].coefficientNames.length;
  const coefficients = ofModel + covariates.length;
  if (blocks.length < coefficients + 1) {
    const few: Text = covariates.includes("ln age")
      ? say`${blocks.length}{0, plural, one { block is} other { blocks are}} too few for the ${wordFor(model)} model with its covariates.`
      : say`${blocks.length}{0, plural, one { block} other { blocks}} of ${ageDays} days {0, plural, one {is} other {are}} too few for the ${wordFor(model)} model.`;
    return finding({ file, row, value: String(blocks.length) }, "warning", "too-few-blocks", {
      message: few,
      expected: say`at least ${coefficients + 1}; many more for a narrow band`,
      remedy: say`Make and crush more blocks.`,
    });
  }
  if (contents.length >= ofModel) return undefined;
  const value = contents.map((content) => `${content} %`).join(", ");
  const code = contents.length === 1 ? "one-cement-content" : "too-few-contents";
  return finding({ file, row, column: "cement", value }, "warning", code, {
    message: say`The blocks have only ${contents.length}{0, plural, one { cement content} other { cement contents}}, too few for the ${wordFor(model)} model.`,
    expected: say`at least ${ofModel} contents, better one more to see whether the shape fits`,
    remedy: say`Make blocks with another cement content, or choose a simpler model.`,
  });
}

/** Age enters as its logarithm, which a block crushed at age 0 does not have. */
function agelessFindings(
  blocks: readonly SpecimenRecord[],
  { file, covariates }: Asked,
): Finding[] {
  const ageless = blocks.find(({ ageDays }) => !(ageDays > 0));
  if (!ageless || !covariates.includes("ln age")) return [];
  const { id, row, ageDays } = ageless;
  const place = { file, row, column: "age", value: `${ageDays} d` };
  return [
    finding(place, "error", "age-without-logarithm", {
      message: say`Block ${id} was crushed at ${ageDays} days, and the regression takes the logarithm of the age.`,
      expected: say`ages above 0 where age is a covariate`,
      remedy: say`Exclude the block with that reason, or leave strength.covariates.age out.`,
    }),
  ];
}

function scatterFindings(
  blocks: readonly SpecimenRecord[],
  groups: AlikeBlocks,
  file: string,
): Finding[] {
  const same = (some: readonly SpecimenRecord[]) =>
    some.every(({ strengthMpa }) => strengthMpa === some[0].strengthMpa);
  const replicated = blocks.length > groups.size;
  if (!(replicated ? [...groups.values()].every(same) : blocks.length > 1 && same(blocks))) {
    return [];
  }
  return [
    finding(strengthPlace(blocks[0], file), "warning", "no-scatter", {
      message: say`The blocks of each cement content have exactly the same strength.`,
      expected: say`readings that scatter, as all readings do`,
      remedy: say`Enter each block's own reading; a mean written many times hides the scatter.`,
    }),
  ];
}

function batchFindings(
  blocks: readonly SpecimenRecord[],
  groups: AlikeBlocks,
  file: string,
): Finding[] {
  const known = blocks.length > groups.size && blocks.every(({ batch }) => batch);
  const batchesOf = (some: readonly SpecimenRecord[]) => new Set(some.map(({ batch }) => batch));
  const single = [...groups.values()].every((group) => batchesOf(group).size === 1);
  const value = [...batchesOf(blocks)].join(", ");
  const place = { file, row: blocks[0]?.row, column: "batch", value };
  return findingIf(known && single, place, "warning", "one-batch-a-content", {
    message: say`All blocks of a cement content come from one batch, so the scatter from batch to batch is not in the bands: they are narrower than the truth.`,
    expected: say`two or more batches at a content`,
    remedy: say`Mix at least one content twice, on different days, and mould blocks from each batch.`,
  });
}

/** Chance of naming any block of a set without outliers. */
const FALSE_ALARM = 0.05;

interface Deviation {
  readonly block: SpecimenRecord;
  readonly expectedMpa: number;
  readonly studentised: number | null;
}

interface Outlier extends Deviation {
  /** Held against its group's mean, not against the curve. */
  readonly grouped: boolean;
  readonly limit: number;
}

/**
 * Names blocks far from the others of their content and age: externally studentised residual beyond the
 * t limit at 5 % shared among all blocks (Bonferroni). Where there are replicates the block is held against
 * its group's mean, so that a curve of the wrong shape accuses nobody; otherwise against the curve.
 * It never leaves a block out: that is for a person with a reason.
 */
function outlyingBlocks(
  blocks: readonly SpecimenRecord[],
  groups: AlikeBlocks,
  asked: Asked,
): Outlier[] {
  const spare = blocks.length - groups.size;
  const grouped = spare >= 3;
  const { deviations, degreesOfFreedom } = grouped
    ? fromGroups(blocks, groups, spare)
    : fromCurve(blocks, asked);
  if (degreesOfFreedom < 2) return [];
  const limit = tQuantile(1 - FALSE_ALARM / (2 * blocks.length), degreesOfFreedom - 1);
  return deviations
    .filter(({ studentised }) => studentised !== null && Math.abs(studentised) > limit)
    .map((deviation) => ({ ...deviation, grouped, limit }));
}

function outlyingBlock(outlier: Outlier, file: string): Finding {
  const { block, expectedMpa, studentised, grouped, limit } = outlier;
  const far = Number.isFinite(studentised) ? formatFixed(studentised!, 1) : undefined;
  const ofOthers = far && say` (studentised residual about their mean ${far})`;
  const ofCurve = far && say` (studentised residual about the curve ${far})`;
  return finding(strengthPlace(block, file, 2), "warning", "outlying-block", {
    message: grouped
      ? say`Block ${block.id} lies far from the others of its cement content${ofOthers ?? ""}.`
      : say`Block ${block.id} lies far from the fitted curve${ofCurve ?? ""}.`,
    expected: say`about ${measured(expectedMpa, "stress", 2)}; studentised residual within ±${formatFixed(limit, 1)}`,
    remedy: say`Look at this specimen and its sheet. Exclude it only for a reason you can write down; it takes part until then.`,
  });
}

function fromGroups(
  blocks: readonly SpecimenRecord[],
  groups: AlikeBlocks,
  degreesOfFreedom: number,
) {
  const parts = blocks.map((block) => {
    const group = groups.get(alikeKey(block))!;
    const ofGroup = mean(group.map(({ strengthMpa }) => strengthMpa));
    const residual = block.strengthMpa - ofGroup;
    return { block, ofGroup, residual, leverage: 1 / group.length };
  });
  const residualSumOfSquares = parts.reduce((sum, { residual }) => sum + residual ** 2, 0);
  const scatter = { residualSumOfSquares, degreesOfFreedom };
  const deviations = parts.map(
    ({ block, ofGroup, residual, leverage }): Deviation => ({
      block,
      // The mean of the others: a block must not vouch for itself.
      expectedMpa: leverage < 1 ? ofGroup - (residual * leverage) / (1 - leverage) : ofGroup,
      studentised: studentisedResidual({ residual, leverage, ...scatter }),
    }),
  );
  return { deviations, degreesOfFreedom };
}

function fromCurve(blocks: readonly SpecimenRecord[], { model, ageDays, covariates }: Asked) {
  const fit = fitStrength(blocks, { model, ageDays, covariates });
  if (fit.status !== "ok") return { deviations: [], degreesOfFreedom: 0 };
  const deviations = fit.points.map(
    ({ fittedMpa, studentised }, index): Deviation => ({
      block: blocks[index],
      expectedMpa: fittedMpa,
      studentised,
    }),
  );
  return { deviations, degreesOfFreedom: fit.degreesOfFreedom };
}
