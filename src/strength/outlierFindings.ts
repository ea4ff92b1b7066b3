import type { Finding } from "../lab/finding.js";
import type { SpecimenRecord } from "../lab/specimenRecord.js";
import { tQuantile } from "../numerics/tQuantile.js";
import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import { fitStrength } from "./fitStrength.js";
import { groupByContent } from "./groupByContent.js";
import type { StrengthForm } from "./strengthForm.js";
import { studentisedResidual } from "./studentisedResidual.js";

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
export function outlierFindings(
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
      const far = Number.isFinite(studentised) ? ` (${formatFixed(studentised!, 1)})` : "";
      return {
        severity: "warning",
        code: "outlying-block",
        file: options.file,
        row: block.row,
        column: "strength",
        value: `${formatFixed(block.strengthMpa, 2)} MPa`,
        message: say`Block ${block.id} lies far from ${grouped ? say`the others of its cement content` : say`the fitted curve`}${far}.`,
        expected: say`about ${formatFixed(expectedMpa, 2)} MPa; studentised residual within ±${formatFixed(limit, 1)}`,
        wayOut: say`Look at this specimen and its sheet. Exclude it only for a reason you can write down; it takes part until then.`,
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
