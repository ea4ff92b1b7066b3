import type { Finding } from "../lab/finding.js";
import type { SpecimenSheet } from "../lab/specimenRecord.js";
import { say } from "../words/say.js";
import { unitFindings } from "./unitFindings.js";

/** What is amiss with single blocks: repeated names, strengths not above zero; and each exclusion. */
export function specimenFindings({ file, specimens }: SpecimenSheet): Finding[] {
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
        wayOut: say`Correct the name, or take the copy out.`,
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
        wayOut: say`Nothing to do.`,
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
        wayOut: say`Correct the reading; if the block fell apart before crushing, exclude it with that reason and say so in the report.`,
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
        wayOut: say`Correct the cement content.`,
      });
    }
  }
  return [...findings, ...unitFindings(file, specimens)];
}
