import type { Finding } from "../lab/finding.js";
import { compareForms } from "../strength/compareForms.js";
import { fitStrength } from "../strength/fitStrength.js";
import { includedSpecimens } from "../strength/includedSpecimens.js";
import { lackOfFit } from "../strength/lackOfFit.js";
import { leastCement } from "../strength/leastCement.js";
import { strengthBands } from "../strength/strengthBands.js";
import { STUDY_FILE } from "./parseStudyYaml.js";
import type { Study } from "./study.js";
import type { StrengthStudy } from "./studyResult.js";

/** The regression of strength on cement content and the least content that meets the requirement. */
export function computeStrength(study: Study, findings: Finding[]): StrengthStudy | undefined {
  const { form, requirement, roundUpToPct } = study.config.strength;
  const { ageDays, confidence } = requirement;
  const included = includedSpecimens(study.specimens, { ageDays, form });
  findings.push(...included.findings);
  if (included.findings.some(({ severity }) => severity === "error")) return undefined;

  const { specimens } = study.specimens;
  const fit = fitStrength(specimens, { form, ageDays });
  if (fit.status !== "ok") {
    findings.push({
      severity: "error",
      code: "no-regression",
      file: study.specimens.file,
      message: fit.message,
      expected: "blocks that a curve can be fitted to",
      wayOut: "Make the missing blocks, or choose another form in study.yaml.",
    });
    return undefined;
  }
  const least = leastCement(fit, requirement, { roundUpToPct, file: STUDY_FILE });
  findings.push(...least.findings);
  if (least.status !== "ok") {
    findings.push({
      severity: "warning",
      code: `least-cement-${least.status}`,
      file: STUDY_FILE,
      column: "strength.requirement",
      message: least.message,
      expected: "a requirement that is met between the lowest and the highest tested content",
      wayOut: "Make and crush the blocks that the message names, then compute again.",
    });
  }
  const chosen = least.batchablePct;
  const contents = new Set([...fit.contentsPct, ...(chosen === null ? [] : [chosen])]);
  return {
    specimens,
    fit,
    lackOfFit: lackOfFit(fit),
    forms: compareForms(specimens, { ageDays, form }),
    bands: strengthBands(fit, { confidence }),
    bandsAtContents: strengthBands(fit, {
      confidence,
      cementPct: [...contents].sort((a, b) => a - b),
    }),
    leastCement: least,
    chosenCementPct: chosen ?? undefined,
  };
}
