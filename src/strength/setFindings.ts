import type { Finding } from "../lab/finding.js";
import type { SpecimenRecord } from "../lab/specimenRecord.js";
import { say, sayOf } from "../words/say.js";
import { groupByContent } from "./groupByContent.js";
import { STRENGTH_FORMS, type StrengthForm } from "./strengthForm.js";

/** What is amiss with the blocks as a set: too few, too few contents, no scatter, one batch a content. */
export function setFindings(
  blocks: readonly SpecimenRecord[],
  of: { readonly file: string; readonly form: StrengthForm; readonly ageDays: number },
): Finding[] {
  const { file, form, ageDays } = of;
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
      message: say`${blocks.length} blocks of ${ageDays} days are too few for the ${sayOf(form)} form.`,
      expected: say`at least ${coefficients + 1}; many more for a narrow band`,
      wayOut: say`Make and crush more blocks.`,
    });
  } else if (contents.length < coefficients) {
    findings.push({
      severity: "error",
      code: contents.length === 1 ? "one-cement-content" : "too-few-contents",
      file,
      row,
      column: "cement",
      value: contents.map((content) => `${content} %`).join(", "),
      message: say`The blocks have ${contents.length === 1 ? say`one cement content only` : say`only ${contents.length} cement contents`}, too few for the ${sayOf(form)} form.`,
      expected: say`at least ${coefficients} contents, better one more to see whether the shape fits`,
      wayOut: say`Make blocks with another cement content, or choose a simpler form.`,
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
      wayOut: say`Enter each block's own reading; a mean written many times hides the scatter.`,
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
      wayOut: say`Mix at least one content twice, on different days, and mould blocks from each batch.`,
    });
  }
  return findings;
}

function sameStrength(blocks: readonly SpecimenRecord[]): boolean {
  return (
    blocks.length > 1 && blocks.every(({ strengthMpa }) => strengthMpa === blocks[0].strengthMpa)
  );
}
