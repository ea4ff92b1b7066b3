import { mean, median } from "simple-statistics";
import { type Finding, finding, hasErrors } from "../findings/finding.js";
import type { SpecimenRecord, SpecimenSheet } from "../lab/specimens.js";
import { tQuantile } from "../numerics/distributions.js";
import { formatFixed, measured } from "../quantities/format.js";
import { say, type Text, wordFor } from "../words/message.js";
import { type FitStrengthOptions, fitStrength, studentisedResidual } from "./regression/fit.js";
import { STRENGTH_MODELS } from "./regression/model.js";

export interface IncludedSpecimens {
  /** Null where no age was given and the blocks have several. */
  readonly ageDays: number | null;
  /** What the regression uses. */
  readonly included: readonly SpecimenRecord[];
  /** Left out by the user, each with its reason. */
  readonly excluded: readonly SpecimenRecord[];
  /** Not excluded, but of another age; none where age is a covariate. */
  readonly otherAges: readonly SpecimenRecord[];
  /** Of the included, those that lie far from the others; nothing is left out for it. */
  readonly far: readonly SpecimenRecord[];
  /** Of the findings: that more blocks or contents are needed for a curve. */
  readonly tooFew?: Finding;
  readonly findings: readonly Finding[];
}

/** What the regression is asked for, as far as it decides which blocks take part. */
export type IncludedSpecimensOptions = Partial<
  Pick<FitStrengthOptions, "ageDays" | "model" | "covariates" | "variance">
>;

/**
 * Splits a block sheet into what the regression uses and what it does not, and names what is amiss.
 *
 * Errors: repeated names, strengths not above zero, ages mixed without saying which counts, an age of 0
 * where ln age is a covariate, proportional spread with the power model. Warnings: fewer blocks than
 * coefficients + 1, fewer contents than the model has coefficients, a strength so far from the others that it may
 * stand in another unit, no scatter, a block far from its group (Bonferroni limit of the externally
 * studentised residual at 5 %), every content made as one batch. Notes: each exclusion with its reason,
 * and the blocks of other ages. Nothing is dropped that the user did not exclude.
 *
 * @param options.ageDays the age that counts; may be left out where all blocks have one age. With
 * `ln age` among the covariates blocks of all ages take part.
 * @param options.model default `linear`.
 * Source: the outlier limit after Cook & Weisberg 1982 (from memory); the rest is plain bookkeeping.
 *
 * @example
 * const block = (id, cementPct, strengthMpa, row) => ({ id, cementPct, strengthMpa, ageDays: 28, row });
 * const sheet = { file: "blocks.csv", specimens: [block("A", 4, 1.5, 2), block("B", 6, 2.4, 3), { ...block("C", 8, 0.9, 4), excluded: "dropped" }] };
 * const { included, excluded, findings } = includedSpecimens(sheet);
 * included.length // => 2
 * findings.map(({ code, row }) => [code, row]) // => [["excluded-block", 4], ["too-few-blocks", 2]]
 */
export function includedSpecimens(
  sheet: SpecimenSheet,
  options: IncludedSpecimensOptions = {},
): IncludedSpecimens {
  const { file, specimens } = sheet;
  const { model = "linear", covariates = [] } = options;
  const excluded = specimens.filter((block) => block.excluded);
  const rest = specimens.filter((block) => !block.excluded);
  const ages = [...new Set(rest.map((block) => block.ageDays))].sort((a, b) => a - b);
  const ageDays = options.ageDays ?? (ages.length === 1 ? ages[0] : null);
  const general = [...specimenFindings(sheet), ...choiceFindings(options)];
  if (ageDays === null) {
    const odd = rest.find((block) => block.ageDays !== rest[0].ageDays);
    const findings = [...general, odd ? mixedAges(file, odd, ages) : noBlocks(file)];
    return { ageDays, included: [], excluded, otherAges: [], far: [], findings };
  }
  const allAges = covariates.includes("ln age");
  const included = allAges ? rest : rest.filter((block) => block.ageDays === ageDays);
  const otherAges = allAges ? [] : rest.filter((block) => block.ageDays !== ageDays);
  const asked = { file, model, ageDays, covariates };
  const tooFew = tooFewBlocks(included, asked);
  const soFar = [
    ...general,
    ...otherAgesFindings(otherAges, asked),
    ...(tooFew ? [tooFew] : []),
    ...setFindings(included, asked),
  ];
  // A fit or a group makes sense only without errors, and with enough blocks.
  const outliers = tooFew || hasErrors(soFar) ? [] : outlyingBlocks(included, asked);
  return {
    ageDays,
    included,
    excluded,
    otherAges,
    far: outliers.map(({ block }) => block),
    ...(tooFew ? { tooFew } : {}),
    findings: [...soFar, ...outliers.map((outlier) => outlyingBlock(outlier, file))],
  };
}

type Asked = Required<Pick<FitStrengthOptions, "model" | "ageDays" | "covariates">> & {
  readonly file: string;
};

const days = (ages: readonly number[]) => ages.map((age) => `${age} d`).join(", ");

function mixedAges(file: string, { row }: SpecimenRecord, ages: readonly number[]): Finding {
  return finding({ file, row, column: "age", value: days(ages) }, "error", "mixed-ages", {
    message: say`The blocks were crushed at different ages, and no age was chosen.`,
    expected: say`one age for one curve`,
    remedy: say`Name the age of the requirement in the study (strength.requirement.age).`,
  });
}

function noBlocks(file: string): Finding {
  return finding({ file }, "error", "no-blocks", {
    message: say`No block is left for the regression.`,
    expected: say`blocks that are not excluded`,
    remedy: say`Add blocks, or take back an exclusion.`,
  });
}

function otherAgesFindings(blocks: readonly SpecimenRecord[], { file, ageDays }: Asked): Finding[] {
  if (blocks.length === 0) return [];
  const ages = [...new Set(blocks.map((block) => block.ageDays))].sort((a, b) => a - b);
  return [
    finding({ file, row: blocks[0].row, column: "age", value: days(ages) }, "note", "other-ages", {
      message: say`${blocks.length}{0, plural, one { block} other { blocks}} of another age {0, plural, one {takes} other {take}} no part in the curve at ${ageDays} days.`,
      expected: `${ageDays} d`,
      remedy: say`Nothing to do; they are shown beside the curve. To use blocks of all ages, set strength.covariates.age.`,
    }),
  ];
}

/** What was asked of the regression that does not go together. */
function choiceFindings({ model, variance }: IncludedSpecimensOptions): Finding[] {
  if (model !== "power" || variance !== "proportional") return [];
  return [
    finding(
      { file: "study.yaml", column: "strength.variance", value: variance },
      "error",
      "power-model-with-variance",
      {
        message: say`The power model is fitted to ln f, where a scatter in proportion to strength is already even: asked for twice it would be allowed for twice.`,
        expected: say`the power model with even spread, or another model with proportional spread`,
        remedy: say`Leave strength.variance out, or choose another model.`,
      },
    ),
  ];
}

/** What is amiss with single blocks: repeated names, strengths not above zero; and each exclusion. */
function specimenFindings({ file, specimens }: SpecimenSheet): Finding[] {
  const rowOfId = new Map<string, number>();
  const findings = specimens.flatMap((block): Finding[] => {
    const { id, row } = block;
    const earlier = rowOfId.get(id);
    if (earlier === undefined) rowOfId.set(id, row);
    const repeated = earlier === undefined ? [] : [repeatedBlock(file, block, earlier)];
    return [
      ...repeated,
      ...(block.excluded ? [excludedBlock(file, block)] : unusable(file, block)),
    ];
  });
  return [...findings, ...unitFindings(file, specimens), ...fractionFindings(file, specimens)];
}

function repeatedBlock(file: string, { id, row }: SpecimenRecord, earlier: number): Finding {
  return finding({ file, row, column: "block", value: id }, "error", "repeated-block", {
    message: say`This block's name is already used in row ${earlier}.`,
    expected: say`each block once`,
    remedy: say`Correct the name, or take the copy out.`,
  });
}

function excludedBlock(file: string, { id, row, excluded = "" }: SpecimenRecord): Finding {
  return finding({ file, row, column: "excluded", value: excluded }, "note", "excluded-block", {
    message: say`Block ${id} takes no part in the regression: ${excluded}.`,
    expected: say`a reason that will stand in the report`,
    remedy: say`Nothing to do.`,
  });
}

/** Strength not above zero, or cement below zero. A control without cement is sound. */
function unusable(file: string, { id, row, strengthMpa, cementPct }: SpecimenRecord): Finding[] {
  const findings: Finding[] = [];
  if (!(strengthMpa > 0)) {
    findings.push(
      finding(
        { file, row, column: "strength", value: String(strengthMpa) },
        "error",
        "strength-not-positive",
        {
          message: say`Block ${id} has a strength that is not above zero.`,
          expected: say`a strength above 0`,
          remedy: say`Correct the reading; if the block fell apart before crushing, exclude it with that reason and say so in the report.`,
        },
      ),
    );
  }
  if (!(cementPct >= 0)) {
    findings.push(
      finding(
        { file, row, column: "cement", value: String(cementPct) },
        "error",
        "cement-below-zero",
        {
          message: say`Block ${id} has a cement content below zero.`,
          expected: say`0 % or above`,
          remedy: say`Correct the cement content.`,
        },
      ),
    );
  }
  return findings;
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
 * that weak, so this is a warning. Excluded blocks are not judged.
 */
function unitFindings(file: string, specimens: readonly SpecimenRecord[]): Finding[] {
  const blocks = specimens.filter(
    ({ excluded, strengthMpa }) => !excluded && strengthMpa > 0 && Number.isFinite(strengthMpa),
  );
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
    return [mixedUnits(file, block, usual)];
  });
}

function mixedUnits(file: string, block: SpecimenRecord, usualMpa: number): Finding {
  const ratio = block.strengthMpa / usualMpa;
  const off = Math.abs(Math.log(ratio));
  const [unit] = [...UNITS].sort(
    ([, a], [, b]) => Math.abs(Math.log(a) - off) - Math.abs(Math.log(b) - off),
  )[0];
  return finding(
    {
      file,
      row: block.row,
      column: "strength",
      value: say`${measured(block.strengthMpa, "stress")}`,
    },
    "warning",
    "mixed-units",
    {
      message:
        ratio > 1
          ? say`Block ${block.id} is ${formatFixed(ratio, 0)} times as strong as the others: it may be written in another unit, such as ${unit}.`
          : say`The others are ${formatFixed(1 / ratio, 0)} times as strong as block ${block.id}: it may be written in another unit, such as ${unit}.`,
      expected: say`about ${measured(usualMpa, "stress", 2)}; one unit for the whole column`,
      remedy: say`Look at the reading. Convert it if its unit is another; if it is true, such as that of a control without cement, leave it: the block takes part.`,
    },
  );
}

/** A cement content that looks like a fraction among percents. */
function fractionFindings(file: string, specimens: readonly SpecimenRecord[]): Finding[] {
  const blocks = specimens.filter(({ excluded }) => !excluded);
  const fraction = blocks.find(({ cementPct }) => cementPct > 0 && cementPct < 0.5);
  if (!fraction || median(blocks.map(({ cementPct }) => cementPct)) < 2) return [];
  return [
    finding(
      { file, row: fraction.row, column: "cement", value: `${fraction.cementPct} %` },
      "warning",
      "cement-as-fraction",
      {
        message: say`The cement content of block ${fraction.id} looks like a fraction, not a percentage.`,
        expected: say`percent, for example ${Number((100 * fraction.cementPct).toFixed(3))} %`,
        remedy: say`Write all contents in percent of the dry mass of soil and aggregate.`,
      },
    ),
  ];
}

/** What is amiss with the blocks as a set: no scatter, one batch a content. */
function setFindings(blocks: readonly SpecimenRecord[], asked: Asked): Finding[] {
  const groups = [...alikeBlocks(blocks).values()];
  return [
    ...agelessFindings(blocks, asked),
    ...scatterFindings(blocks, groups, asked.file),
    ...batchFindings(blocks, groups, asked.file),
  ];
}

/** Blocks of one content and age, in order of first appearance. */
function alikeBlocks(blocks: readonly SpecimenRecord[]): Map<string, SpecimenRecord[]> {
  const groups = new Map<string, SpecimenRecord[]>();
  for (const block of blocks) {
    const key = groupKey(block);
    const group = groups.get(key);
    if (group) group.push(block);
    else groups.set(key, [block]);
  }
  return groups;
}

const groupKey = ({ cementPct, ageDays }: SpecimenRecord) => `${cementPct} ${ageDays}`;

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
  return finding(
    { file, row, column: "cement", value: contents.map((content) => `${content} %`).join(", ") },
    "warning",
    contents.length === 1 ? "one-cement-content" : "too-few-contents",
    {
      message: say`The blocks have only ${contents.length}{0, plural, one { cement content} other { cement contents}}, too few for the ${wordFor(model)} model.`,
      expected: say`at least ${ofModel} contents, better one more to see whether the shape fits`,
      remedy: say`Make blocks with another cement content, or choose a simpler model.`,
    },
  );
}

/** Age enters as its logarithm, which a block crushed at age 0 does not have. */
function agelessFindings(
  blocks: readonly SpecimenRecord[],
  { file, covariates }: Asked,
): Finding[] {
  const block = covariates.includes("ln age")
    ? blocks.find(({ ageDays }) => !(ageDays > 0))
    : undefined;
  if (!block) return [];
  return [
    finding(
      { file, row: block.row, column: "age", value: `${block.ageDays} d` },
      "error",
      "age-without-logarithm",
      {
        message: say`Block ${block.id} was crushed at ${block.ageDays} days, and the regression takes the logarithm of the age.`,
        expected: say`ages above 0 where age is a covariate`,
        remedy: say`Exclude the block with that reason, or leave strength.covariates.age out.`,
      },
    ),
  ];
}

function scatterFindings(
  blocks: readonly SpecimenRecord[],
  groups: readonly (readonly SpecimenRecord[])[],
  file: string,
): Finding[] {
  const identical = groups.every((group) =>
    group.every(({ strengthMpa }) => strengthMpa === group[0].strengthMpa),
  );
  if (!identical || !(blocks.length > groups.length || sameStrength(blocks))) return [];
  return [
    finding(
      {
        file,
        row: blocks[0].row,
        column: "strength",
        value: say`${measured(blocks[0].strengthMpa, "stress")}`,
      },
      "warning",
      "no-scatter",
      {
        message: say`The blocks of each cement content have exactly the same strength.`,
        expected: say`readings that scatter, as all readings do`,
        remedy: say`Enter each block's own reading; a mean written many times hides the scatter.`,
      },
    ),
  ];
}

function sameStrength(blocks: readonly SpecimenRecord[]): boolean {
  return (
    blocks.length > 1 && blocks.every(({ strengthMpa }) => strengthMpa === blocks[0].strengthMpa)
  );
}

function batchFindings(
  blocks: readonly SpecimenRecord[],
  groups: readonly (readonly SpecimenRecord[])[],
  file: string,
): Finding[] {
  const known = blocks.length > groups.length && blocks.every(({ batch }) => batch);
  const single = groups.every((group) => new Set(group.map(({ batch }) => batch)).size === 1);
  if (!known || !single) return [];
  const value = [...new Set(blocks.map(({ batch }) => batch))].join(", ");
  return [
    finding(
      { file, row: blocks[0].row, column: "batch", value },
      "warning",
      "one-batch-a-content",
      {
        message: say`All blocks of a cement content come from one batch, so the scatter from batch to batch is not in the bands: they are narrower than the truth.`,
        expected: say`two or more batches at a content`,
        remedy: say`Mix at least one content twice, on different days, and mould blocks from each batch.`,
      },
    ),
  ];
}

/** Chance of naming any block of a set without outliers. */
const FALSE_ALARM = 0.05;

interface Deviation {
  readonly block: SpecimenRecord;
  readonly expectedMpa: number;
  readonly studentised: number | null;
}

/**
 * Names blocks far from the others of their content and age: externally studentised residual beyond the
 * t limit at 5 % shared among all blocks (Bonferroni). Where there are replicates the block is held against
 * its group's mean, so that a curve of the wrong shape accuses nobody; otherwise against the curve.
 * It never leaves a block out: that is for a person with a reason.
 */
function outlyingBlocks(blocks: readonly SpecimenRecord[], asked: Asked): Outlier[] {
  const groups = alikeBlocks(blocks);
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

interface Outlier extends Deviation {
  /** Held against its group's mean, not against the curve. */
  readonly grouped: boolean;
  readonly limit: number;
}

function outlyingBlock(
  { block, expectedMpa, studentised, grouped, limit }: Outlier,
  file: string,
): Finding {
  const far = Number.isFinite(studentised) ? formatFixed(studentised!, 1) : undefined;
  const ofOthers = far && say` (studentised residual about their mean ${far})`;
  const ofCurve = far && say` (studentised residual about the curve ${far})`;
  return finding(
    {
      file,
      row: block.row,
      column: "strength",
      value: say`${measured(block.strengthMpa, "stress", 2)}`,
    },
    "warning",
    "outlying-block",
    {
      message: grouped
        ? say`Block ${block.id} lies far from the others of its cement content${ofOthers ?? ""}.`
        : say`Block ${block.id} lies far from the fitted curve${ofCurve ?? ""}.`,
      expected: say`about ${measured(expectedMpa, "stress", 2)}; studentised residual within ±${formatFixed(limit, 1)}`,
      remedy: say`Look at this specimen and its sheet. Exclude it only for a reason you can write down; it takes part until then.`,
    },
  );
}

function fromGroups(
  blocks: readonly SpecimenRecord[],
  groups: ReadonlyMap<string, readonly SpecimenRecord[]>,
  degreesOfFreedom: number,
) {
  const parts = blocks.map((block) => {
    const group = groups.get(groupKey(block))!;
    const ofGroup = mean(group.map(({ strengthMpa }) => strengthMpa));
    const residual = block.strengthMpa - ofGroup;
    return { block, ofGroup, residual, leverage: 1 / group.length };
  });
  const residualSumOfSquares = parts.reduce((sum, { residual }) => sum + residual ** 2, 0);
  const deviations = parts.map(
    ({ block, ofGroup, residual, leverage }): Deviation => ({
      block,
      // The mean of the others: a block must not vouch for itself.
      expectedMpa: leverage < 1 ? ofGroup - (residual * leverage) / (1 - leverage) : ofGroup,
      studentised: studentisedResidual({
        residual,
        leverage,
        residualSumOfSquares,
        degreesOfFreedom,
      }),
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
