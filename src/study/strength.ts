import { type Finding, STUDY_FILE } from "../findings/finding.js";
import type { SpecimenRecord } from "../lab/specimens.js";
import { correctAspectRatio } from "../strength/aspectRatio.js";
import { batchScatter } from "../strength/batches.js";
import { characteristicStrength } from "../strength/characteristicStrength.js";
import { includedSpecimens } from "../strength/includedBlocks.js";
import { leastCement } from "../strength/leastCement.js";
import { modelFindings } from "../strength/modelFindings.js";
import { strengthBands } from "../strength/regression/bounds.js";
import { fitStrength } from "../strength/regression/fit.js";
import { lackOfFit } from "../strength/regression/lackOfFit.js";
import { compareModels } from "../strength/regression/modelComparison.js";
import { residualChecks } from "../strength/regression/residuals.js";
import { robustStrength } from "../strength/regression/robustFit.js";
import { strengthByAge } from "../strength/strengthByAge.js";
import { say } from "../words/message.js";
import type { Study, StudyTrial } from "./study.js";
import type { ContentCharacteristics, StrengthStudy } from "./studyResult.js";

/** Rules that need nothing but the strengths. */
const RULES = ["en1990-normal", "tolerance-75", "tolerance-95"] as const;

/** The regression of strength on cement content and the least content that meets the requirement. */
export function computeStrength(
  study: Pick<Study, "config"> & Pick<StudyTrial, "specimens">,
  findings: Finding[],
): StrengthStudy | undefined {
  const { model, variance, ...asked } = study.config.strength;
  const { requirement, roundUpToPct, batches, covariates, aspectTable } = asked;
  const { ageDays, confidence } = requirement;
  const kinds = covariates.map(({ kind }) => kind);
  const included = includedSpecimens(study.specimens, {
    ageDays,
    model,
    covariates: kinds,
    variance,
  });
  findings.push(...included.findings);
  if (included.findings.some(({ severity }) => severity === "error")) return undefined;

  const { specimens } = study.specimens;
  const options = {
    model,
    ageDays,
    batches,
    variance,
    covariates: kinds,
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
      remedy: say`Make the missing blocks, or choose another model in study.yaml.`,
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
  const chosen = least.batchablePct;
  const evidence = {
    fit,
    lackOfFit: lackOfFit(fit),
    models: compareModels(specimens, options),
    checks: residualChecks(fit),
  };
  // Where batches or ages are terms of the regression, their scatter is allowed for.
  const scatter =
    batches === "block" || kinds.includes("ln age")
      ? undefined
      : batchScatter(included.included, { ageDays });
  findings.push(
    ...modelFindings(
      { ...evidence, scatter, requirement, cementPct: chosen },
      { blocks: study.specimens.file, study: STUDY_FILE },
    ),
  );
  const contents = new Set([...fit.contentsPct, ...(chosen === null ? [] : [chosen])]);
  return {
    specimens,
    ...evidence,
    bands: strengthBands(fit, { confidence }),
    bandsAtContents: strengthBands(fit, {
      confidence,
      cementPct: [...contents].sort((a, b) => a - b),
    }),
    robust: robustStrength(fit),
    ...(kinds.includes("ln age")
      ? { byAge: strengthByAge(specimens, options, chosen ?? middleContent(fit.contentsPct)) }
      : {}),
    characteristic: characteristicByContent(
      included.included.filter((block) => block.ageDays === ageDays),
    ),
    aspect: aspectTable === undefined ? [] : correctedBlocks(specimens, aspectTable),
    leastCement: least,
    chosenCementPct: chosen ?? undefined,
  };
}

/** The content that stands in for the chosen one where none was found. */
function middleContent(contentsPct: readonly number[]): number {
  return contentsPct[contentsPct.length >> 1];
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
    const { strengthMpa, heightMm, lengthMm, widthMm, diameterMm } = block;
    const sides = [lengthMm, widthMm, diameterMm].filter((side) => side !== undefined);
    if (heightMm === undefined || (diameterMm === undefined && sides.length < 2)) return [];
    const thicknessMm = Math.min(...sides);
    return [
      { block, corrected: correctAspectRatio({ strengthMpa, heightMm, thicknessMm }, tableId) },
    ];
  });
}
