import type { StudyConfig } from "../entries/studyConfig.js";
import { type Finding, finding, hasErrors, STUDY_FILE } from "../findings/finding.js";
import type { SpecimenRecord, SpecimenSheet } from "../lab/specimens.js";
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
import type { ContentCharacteristics, StrengthStudy } from "./studyResult.js";

/** Rules that need nothing but the strengths. */
const RULES = ["en1990-normal", "tolerance-75", "tolerance-95"] as const;

/** Confidence of the bands that are drawn where no requirement states one. */
const BAND_CONFIDENCE = 0.95;

/**
 * The regression of strength on cement content, and the least content that meets the requirement where the
 * study states one. Without a requirement blocks of several ages give no curve: which age counts is not told.
 */
export function computeStrength(
  { strength: asked }: Pick<StudyConfig, "strength">,
  sheet: SpecimenSheet,
): { readonly strength?: StrengthStudy; readonly findings: readonly Finding[] } {
  const { model, variance, requirement, roundUpToPct, batches, covariates, aspectTable } = asked;
  const { specimens, file } = sheet;
  const ageDays = requirement?.ageDays ?? onlyAge(specimens);
  if (ageDays === undefined) return { findings: [ageNotTold(sheet)] };
  const confidence = requirement?.confidence ?? BAND_CONFIDENCE;
  const kinds = covariates.map(({ kind }) => kind);
  const included = includedSpecimens(sheet, {
    ageDays,
    model,
    covariates: kinds,
    variance,
  });
  const findings: Finding[] = [...included.findings];
  if (hasErrors(findings)) return { findings };

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
    const words = {
      message: fit.message,
      expected: say`blocks that a curve can be fitted to`,
      remedy: say`Make the missing blocks, or choose another model in study.yaml.`,
    };
    return { findings: [...findings, finding({ file }, "error", "no-regression", words)] };
  }
  const least = requirement && leastCement(fit, requirement, { roundUpToPct, file: STUDY_FILE });
  findings.push(...(least?.findings ?? []));
  if (least && least.status !== "ok") {
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
  const chosen = least?.batchablePct ?? null;
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
      { blocks: file, study: STUDY_FILE },
    ),
  );
  const contents = new Set([...fit.contentsPct, ...(chosen === null ? [] : [chosen])]);
  const strength: StrengthStudy = {
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
    ...(least ? { leastCement: least } : {}),
    chosenCementPct: chosen ?? undefined,
  };
  return { strength, findings };
}

/** The age of the blocks that count, where all have the same. */
function onlyAge(specimens: readonly SpecimenRecord[]): number | undefined {
  const counted = specimens.filter(({ excluded }) => excluded === undefined);
  const ages = new Set(counted.map(({ ageDays }) => ageDays));
  return ages.size === 1 ? [...ages][0] : undefined;
}

function ageNotTold({ file, specimens }: SpecimenSheet): Finding {
  const ages = [...new Set(specimens.map(({ ageDays }) => ageDays))].sort((a, b) => a - b);
  const place = { file, column: "age", value: ages.join(", ") };
  return finding(place, "warning", "age-not-told", {
    message: say`The sheet holds blocks of several ages, and the study does not tell which age counts: no curve is fitted.`,
    expected: say`the age of the requirement, under “strength.requirement”`,
    remedy: say`Enter the strength that is required, its age and where it comes from.`,
  });
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
