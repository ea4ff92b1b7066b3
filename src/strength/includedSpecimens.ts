import type { Finding } from "../lab/finding.js";
import type { SpecimenRecord, SpecimenSheet } from "../lab/specimenRecord.js";
import { say } from "../words/say.js";
import { outlierFindings } from "./outlierFindings.js";
import { setFindings } from "./setFindings.js";
import { specimenFindings } from "./specimenFindings.js";
import type { StrengthForm } from "./strengthForm.js";

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
      wayOut: odd
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
      wayOut: say`Nothing to do; they are shown beside the curve.`,
    });
  }
  findings.push(...setFindings(included, { file, form, ageDays }));
  if (!findings.some(({ severity }) => severity === "error")) {
    findings.push(...outlierFindings(included, { file, form, ageDays }));
  }
  return { ageDays, included, excluded, otherAges, findings };
}
