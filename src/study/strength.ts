import { STUDY_FILE } from "../entries/parseStudyYaml.js";
import type { Finding } from "../findings/finding.js";
import type { SpecimenRecord } from "../lab/specimens.js";
import { correctAspectRatio } from "../strength/aspectRatio.js";
import { batchScatter } from "../strength/batches.js";
import { characteristicStrength } from "../strength/characteristicStrength.js";
import { includedSpecimens } from "../strength/includedBlocks.js";
import { leastCement } from "../strength/leastCement.js";
import { strengthBands } from "../strength/regression/bounds.js";
import { fitStrength } from "../strength/regression/fit.js";
import { compareForms } from "../strength/regression/formComparison.js";
import { lackOfFit } from "../strength/regression/lackOfFit.js";
import { residualChecks } from "../strength/regression/residuals.js";
import { robustStrength } from "../strength/regression/robustFit.js";
import { say } from "../words/message.js";
import type { Study } from "./study.js";
import type { ContentCharacteristics, StrengthStudy } from "./studyResult.js";

/** Rules that need nothing but the strengths. */
const RULES = ["en1990-normal", "tolerance-75", "tolerance-95"] as const;

/** The regression of strength on cement content and the least content that meets the requirement. */
export function computeStrength(study: Study, findings: Finding[]): StrengthStudy | undefined {
  const { form, requirement, roundUpToPct, batches, spread, aspectTable } = study.config.strength;
  const { covariates } = study.config.strength;
  const { ageDays, confidence } = requirement;
  const included = includedSpecimens(study.specimens, { ageDays, form });
  findings.push(...included.findings);
  if (included.findings.some(({ severity }) => severity === "error")) return undefined;

  const { specimens } = study.specimens;
  const options = {
    ...{ form, ageDays, batches, spread },
    covariates: covariates.map(({ kind }) => kind),
    at: Object.fromEntries(
      covariates.flatMap(({ kind, at }) => (at === undefined ? [] : [[kind, at]])),
    ),
  };
  const fit = fitStrength(specimens, options);
  if (fit.status !== "ok") {
    findings.push({
      severity: "error",
      code: "no-regression",
      file: study.specimens.file,
      message: fit.message,
      expected: say`blocks that a curve can be fitted to`,
      remedy: say`Make the missing blocks, or choose another form in study.yaml.`,
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
      expected: say`a requirement that is met between the lowest and the highest tested content`,
      remedy: say`Make and crush the blocks that the message names, then compute again.`,
    });
  }
  findings.push(...batchFindings(study, included.included));
  const chosen = least.batchablePct;
  const contents = new Set([...fit.contentsPct, ...(chosen === null ? [] : [chosen])]);
  return {
    specimens,
    fit,
    lackOfFit: lackOfFit(fit),
    forms: compareForms(specimens, options),
    bands: strengthBands(fit, { confidence }),
    bandsAtContents: strengthBands(fit, {
      confidence,
      cementPct: [...contents].sort((a, b) => a - b),
    }),
    checks: residualChecks(fit),
    robust: robustStrength(fit),
    characteristic: characteristicByContent(included.included),
    aspect: aspectTable === undefined ? [] : correctedBlocks(specimens, aspectTable),
    leastCement: least,
    chosenCementPct: chosen ?? undefined,
  };
}

/** The characteristic value of the blocks of each content, by every rule that needs no further entry. */
function characteristicByContent(blocks: readonly SpecimenRecord[]): ContentCharacteristics[] {
  const contents = [...new Set(blocks.map(({ cementPct }) => cementPct))].sort((a, b) => a - b);
  return contents.map((cementPct) => ({
    cementPct,
    values: RULES.map((rule) =>
      characteristicStrength(
        blocks.filter((block) => block.cementPct === cementPct).map((block) => block.strengthMpa),
        rule,
      ),
    ),
  }));
}

/** Each measured block beside its strength corrected for its proportions. */
function correctedBlocks(
  specimens: readonly SpecimenRecord[],
  tableId: string,
): StrengthStudy["aspect"] {
  return specimens.flatMap((block) => {
    const { strengthMpa, heightMm, lengthMm, widthMm } = block;
    if (heightMm === undefined || lengthMm === undefined || widthMm === undefined) return [];
    const thicknessMm = Math.min(lengthMm, widthMm);
    return [
      { block, corrected: correctAspectRatio({ strengthMpa, heightMm, thicknessMm }, tableId) },
    ];
  });
}

/** A warning where batches of one content differ by more than their blocks do. */
function batchFindings({ config, specimens }: Study, blocks: readonly SpecimenRecord[]): Finding[] {
  const scatter = batchScatter(blocks, {
    ageDays: config.strength.requirement.ageDays,
  });
  if (scatter.pValue === null || scatter.pValue >= 0.05) return [];
  return [
    {
      severity: "warning",
      code: "batches-differ",
      file: specimens.file,
      column: "batch",
      message: scatter.message,
      expected: say`batches of one content that differ no more than their blocks`,
      remedy: say`Look for what changed between the batches; set strength.batches: block, or mix more batches.`,
    },
  ];
}
