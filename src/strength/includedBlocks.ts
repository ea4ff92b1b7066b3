import { median } from "simple-statistics";
import type { Finding } from "../findings/finding.js";
import type { SpecimenRecord, SpecimenSheet } from "../lab/specimens.js";
import { tQuantile } from "../numerics/distributions.js";
import { formatFixed } from "../quantities/format.js";
import { say, wordFor } from "../words/message.js";
import { groupByContent } from "./regression/blocks.js";
import { fitStrength, studentisedResidual } from "./regression/fit.js";
import { STRENGTH_FORMS, type StrengthForm } from "./regression/model.js";

export interface IncludedSpecimens {
  /** Null where no age was given and the blocks have several. */
  readonly ageDays: number | null;
  /** What the regression uses. */
  readonly included: readonly SpecimenRecord[];
  /** Left out by the user, each with its reason. */
  readonly excluded: readonly SpecimenRecord[];
  /** Not excluded, but of another age. */
  readonly otherAges: readonly SpecimenRecord[];
  readonly findings: readonly Finding[];
}

/**
 * Splits a block sheet into what the regression uses and what it does not, and names what is amiss.
 *
 * Errors: repeated names, strengths not above zero, ages mixed without saying which counts, fewer blocks
 * than coefficients + 1, fewer contents than coefficients. Warnings: no scatter, a block far from its
 * group (Bonferroni limit of the externally studentised residual at 5 %), every content made as one
 * batch. Notes: each exclusion with its reason, and the blocks of other ages. Nothing is dropped that
 * the user did not exclude.
 *
 * @param options.ageDays the age that counts; may be left out where all blocks have one age.
 * @param options.form default `linear`.
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
  options: { readonly ageDays?: number; readonly form?: StrengthForm } = {},
): IncludedSpecimens {
  const { file, specimens } = sheet;
  const { form = "linear" } = options;
  const excluded = specimens.filter((block) => block.excluded);
  const rest = specimens.filter((block) => !block.excluded);
  const ages = [...new Set(rest.map((block) => block.ageDays))].sort((a, b) => a - b);
  const ageDays = options.ageDays ?? (ages.length === 1 ? ages[0] : null);
  const included = rest.filter((block) => block.ageDays === ageDays);
  const otherAges = rest.filter((block) => block.ageDays !== ageDays);
  const findings = specimenFindings(sheet);
  if (ageDays === null) {
    const odd = rest.find((block) => block.ageDays !== rest[0].ageDays);
    findings.push({
      severity: "error",
      code: odd ? "mixed-ages" : "no-blocks",
      file,
      row: odd?.row,
      column: "age",
      value: ages.map((age) => `${age} d`).join(", "),
      message: odd
        ? say`The blocks were crushed at different ages, and no age was chosen.`
        : say`No block is left for the regression.`,
      expected: odd ? say`one age for one curve` : say`blocks that are not excluded`,
      remedy: odd
        ? say`Name the age of the requirement in the study (strength.requirement.age).`
        : say`Add blocks, or take back an exclusion.`,
    });
    return { ageDays, included: [], excluded, otherAges, findings };
  }
  if (otherAges.length > 0) {
    findings.push({
      severity: "note",
      code: "other-ages",
      file,
      row: otherAges[0].row,
      column: "age",
      value: ages
        .filter((age) => age !== ageDays)
        .map((age) => `${age} d`)
        .join(", "),
      message: say`${otherAges.length} blocks of another age take no part in the curve at ${ageDays} days.`,
      expected: `${ageDays} d`,
      remedy: say`Nothing to do; they are shown beside the curve.`,
    });
  }
  findings.push(...setFindings(included, { file, form, ageDays }));
  if (!findings.some(({ severity }) => severity === "error")) {
    findings.push(...outlierFindings(included, { file, form, ageDays }));
  }
  return { ageDays, included, excluded, otherAges, findings };
}

/** What is amiss with single blocks: repeated names, strengths not above zero; and each exclusion. */
function specimenFindings({ file, specimens }: SpecimenSheet): Finding[] {
  const findings: Finding[] = [];
  const rowOfId = new Map<string, number>();
  for (const { id, row, strengthMpa, cementPct, excluded } of specimens) {
    const earlier = rowOfId.get(id);
    if (earlier !== undefined) {
      findings.push({
        severity: "error",
        code: "repeated-block",
        file,
        row,
        column: "block",
        value: id,
        message: say`This block's name stands already in row ${earlier}.`,
        expected: say`each block once`,
        remedy: say`Correct the name, or take the copy out.`,
      });
    } else {
      rowOfId.set(id, row);
    }
    if (excluded) {
      findings.push({
        severity: "note",
        code: "excluded-block",
        file,
        row,
        column: "excluded",
        value: excluded,
        message: say`Block ${id} takes no part in the regression: ${excluded}.`,
        expected: say`a reason that will stand in the report`,
        remedy: say`Nothing to do.`,
      });
      continue;
    }
    if (!(strengthMpa > 0)) {
      findings.push({
        severity: "error",
        code: "strength-not-positive",
        file,
        row,
        column: "strength",
        value: String(strengthMpa),
        message: say`Block ${id} has a strength that is not above zero.`,
        expected: say`a strength above 0 MPa`,
        remedy: say`Correct the reading; if the block fell apart before crushing, exclude it with that reason and say so in the report.`,
      });
    }
    if (!(cementPct >= 0)) {
      findings.push({
        severity: "error",
        code: "cement-below-zero",
        file,
        row,
        column: "cement",
        value: String(cementPct),
        message: say`Block ${id} has a cement content below zero.`,
        expected: say`0 % or above`,
        remedy: say`Correct the cement content.`,
      });
    }
  }
  return [...findings, ...unitFindings(file, specimens)];
}

/** kgf/cm², psi and kPa (or kN/m²) in one MPa: what a strength written in another unit is off by. */
const UNITS = [
  ["kgf/cm²", 10.197],
  ["psi", 145.04],
  ["kPa", 1000],
] as const;
/** Blocks of one content and age never differ by so much, nor those of a whole sheet by the other. */
const [AMONG_LIKE, IN_SHEET] = [6, 30];

/**
 * Names blocks whose strength stands in another unit than the others', and cement contents that look like
 * fractions among percents. The units are the header's for a whole column, so one row of another unit
 * shows only by its size. Excluded blocks are not judged.
 */
function unitFindings(file: string, specimens: readonly SpecimenRecord[]): Finding[] {
  const blocks = specimens.filter(
    ({ excluded, strengthMpa }) => !excluded && strengthMpa > 0 && Number.isFinite(strengthMpa),
  );
  const findings: Finding[] = [];
  for (const block of blocks) {
    const others = blocks.filter((other) => other !== block);
    const like = others.filter(
      ({ cementPct, ageDays }) => cementPct === block.cementPct && ageDays === block.ageDays,
    );
    const group = like.length >= 2 ? like : others;
    if (group.length < 2) continue;
    const usual = median(group.map(({ strengthMpa }) => strengthMpa));
    const ratio = block.strengthMpa / usual;
    if (Math.max(ratio, 1 / ratio) < (group === like ? AMONG_LIKE : IN_SHEET)) continue;
    const off = Math.abs(Math.log(ratio));
    const [unit] = [...UNITS].sort(
      ([, a], [, b]) => Math.abs(Math.log(a) - off) - Math.abs(Math.log(b) - off),
    )[0];
    findings.push({
      severity: "error",
      code: "mixed-units",
      file,
      row: block.row,
      column: "strength",
      value: `${block.strengthMpa} MPa`,
      message: say`Block ${block.id} is ${ratio > 1 ? say`${formatFixed(ratio, 0)} times as strong as` : say`a ${formatFixed(1 / ratio, 0)}th as strong as`} the others: it may be written in another unit, such as ${unit}.`,
      expected: say`about ${formatFixed(usual, 2)} MPa; one unit for the whole column`,
      remedy: say`Convert the reading; if it is true, exclude the block with its reason.`,
    });
  }
  const contents = blocks.map(({ cementPct }) => cementPct);
  const fraction = blocks.find(({ cementPct }) => cementPct > 0 && cementPct < 0.5);
  if (fraction && median(contents) >= 2) {
    findings.push({
      severity: "warning",
      code: "cement-as-fraction",
      file,
      row: fraction.row,
      column: "cement",
      value: `${fraction.cementPct} %`,
      message: say`The cement content of block ${fraction.id} looks like a fraction, not a percentage.`,
      expected: say`percent, for example ${Number((100 * fraction.cementPct).toFixed(3))} %`,
      remedy: say`Write all contents in percent of the dry mass of soil and aggregate.`,
    });
  }
  return findings;
}

/** What is amiss with the blocks as a set: too few, too few contents, no scatter, one batch a content. */
function setFindings(
  blocks: readonly SpecimenRecord[],
  options: { readonly file: string; readonly form: StrengthForm; readonly ageDays: number },
): Finding[] {
  const { file, form, ageDays } = options;
  const row = blocks[0]?.row;
  const coefficients = STRENGTH_FORMS[form].coefficientNames.length;
  const groups = groupByContent(blocks);
  const contents = [...groups.keys()].sort((a, b) => a - b);
  const findings: Finding[] = [];
  if (blocks.length < coefficients + 1) {
    findings.push({
      severity: "error",
      code: "too-few-blocks",
      file,
      row,
      value: String(blocks.length),
      message: say`${blocks.length} blocks of ${ageDays} days are too few for the ${wordFor(form)} form.`,
      expected: say`at least ${coefficients + 1}; many more for a narrow band`,
      remedy: say`Make and crush more blocks.`,
    });
  } else if (contents.length < coefficients) {
    findings.push({
      severity: "error",
      code: contents.length === 1 ? "one-cement-content" : "too-few-contents",
      file,
      row,
      column: "cement",
      value: contents.map((content) => `${content} %`).join(", "),
      message: say`The blocks have ${contents.length === 1 ? say`one cement content only` : say`only ${contents.length} cement contents`}, too few for the ${wordFor(form)} form.`,
      expected: say`at least ${coefficients} contents, better one more to see whether the shape fits`,
      remedy: say`Make blocks with another cement content, or choose a simpler form.`,
    });
  }
  const identical = [...groups.values()].every((group) =>
    group.every(({ strengthMpa }) => strengthMpa === group[0].strengthMpa),
  );
  if (identical && (blocks.length > contents.length || sameStrength(blocks))) {
    findings.push({
      severity: "warning",
      code: "no-scatter",
      file,
      row,
      column: "strength",
      value: `${blocks[0].strengthMpa} MPa`,
      message: say`The blocks of each cement content have exactly the same strength.`,
      expected: say`readings that scatter, as all readings do`,
      remedy: say`Enter each block's own reading; a mean written many times hides the scatter.`,
    });
  }
  const batches = [...groups.values()].map((group) => new Set(group.map(({ batch }) => batch)));
  const known = blocks.length > contents.length && blocks.every(({ batch }) => batch);
  if (known && batches.every(({ size }) => size === 1)) {
    findings.push({
      severity: "warning",
      code: "one-batch-a-content",
      file,
      row,
      column: "batch",
      value: [...new Set(blocks.map(({ batch }) => batch))].join(", "),
      message: say`All blocks of a cement content come from one batch, so the scatter from batch to batch is not in the bands: they are narrower than the truth.`,
      expected: say`two or more batches at a content`,
      remedy: say`Mix at least one content twice, on different days, and mould blocks from each batch.`,
    });
  }
  return findings;
}

function sameStrength(blocks: readonly SpecimenRecord[]): boolean {
  return (
    blocks.length > 1 && blocks.every(({ strengthMpa }) => strengthMpa === blocks[0].strengthMpa)
  );
}

/** Chance of naming any block of a set without outliers. */
const FALSE_ALARM = 0.05;

interface Deviation {
  readonly block: SpecimenRecord;
  readonly expectedMpa: number;
  readonly studentised: number | null;
}

/**
 * Names blocks far from the others of their content: externally studentised residual beyond the t limit
 * at 5 % shared among all blocks (Bonferroni). Where contents have replicates the block is held against
 * its content's mean, so that a curve of the wrong shape accuses nobody; otherwise against the curve.
 * It never leaves a block out: that is for a person with a reason.
 */
function outlierFindings(
  blocks: readonly SpecimenRecord[],
  options: { readonly file: string; readonly form: StrengthForm; readonly ageDays: number },
): Finding[] {
  const contents = new Set(blocks.map(({ cementPct }) => cementPct)).size;
  const grouped = blocks.length - contents >= 3;
  const { deviations, degreesOfFreedom } = grouped
    ? fromGroups(blocks, blocks.length - contents)
    : fromCurve(blocks, options.form, options.ageDays);
  if (degreesOfFreedom < 2) return [];
  const limit = tQuantile(1 - FALSE_ALARM / (2 * blocks.length), degreesOfFreedom - 1);
  return deviations
    .filter(({ studentised }) => studentised !== null && Math.abs(studentised) > limit)
    .map(({ block, expectedMpa, studentised }): Finding => {
      const far = Number.isFinite(studentised) ? say` (${formatFixed(studentised!, 1)})` : "";
      return {
        severity: "warning",
        code: "outlying-block",
        file: options.file,
        row: block.row,
        column: "strength",
        value: `${formatFixed(block.strengthMpa, 2).number} MPa`,
        message: say`Block ${block.id} lies far from ${grouped ? say`the others of its cement content` : say`the fitted curve`}${far}.`,
        expected: say`about ${formatFixed(expectedMpa, 2)} MPa; studentised residual within ±${formatFixed(limit, 1)}`,
        remedy: say`Look at this specimen and its sheet. Exclude it only for a reason you can write down; it takes part until then.`,
      };
    });
}

function fromGroups(blocks: readonly SpecimenRecord[], degreesOfFreedom: number) {
  const groups = groupByContent(blocks);
  const parts = blocks.map((block) => {
    const group = groups.get(block.cementPct)!;
    const mean = group.reduce((sum, { strengthMpa }) => sum + strengthMpa, 0) / group.length;
    return { block, mean, residual: block.strengthMpa - mean, leverage: 1 / group.length };
  });
  const residualSumOfSquares = parts.reduce((sum, { residual }) => sum + residual ** 2, 0);
  const deviations = parts.map(
    ({ block, mean, residual, leverage }): Deviation => ({
      block,
      // The mean of the others: a block must not vouch for itself.
      expectedMpa: leverage < 1 ? mean - (residual * leverage) / (1 - leverage) : mean,
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

function fromCurve(blocks: readonly SpecimenRecord[], form: StrengthForm, ageDays: number) {
  const fit = fitStrength(blocks, { form, ageDays });
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
