import { mean } from "simple-statistics";
import type { RequirementConfig, StudyConfig } from "../entries/studyConfig.js";
import {
  type Finding,
  type FindingWords,
  finding,
  findingIf,
  hasErrors,
  STUDY_FILE,
} from "../findings/finding.js";
import type { SpecimenRecord, SpecimenSheet } from "../lab/specimens.js";
import { correctAspectRatio } from "../strength/aspectRatio.js";
import { batchMeans, batchScatter } from "../strength/batches.js";
import { characteristicStrength } from "../strength/characteristicStrength.js";
import { groupBy } from "../strength/groupBy.js";
import { includedSpecimens } from "../strength/includedBlocks.js";
import { leastCement } from "../strength/leastCement.js";
import { fewBlocksFindings, modelFindings } from "../strength/modelFindings.js";
import { type LeastCementOfOthers, leastCementOfOthers } from "../strength/otherBlocks.js";
import { strengthBands } from "../strength/regression/bounds.js";
import type { FittedStrength } from "../strength/regression/curve.js";
import { type FitStrengthOptions, fitStrength } from "../strength/regression/fit.js";
import { lackOfFit } from "../strength/regression/lackOfFit.js";
import { compareModels } from "../strength/regression/modelComparison.js";
import { residualChecks } from "../strength/regression/residuals.js";
import { robustStrength } from "../strength/regression/robustFit.js";
import { strengthByAge } from "../strength/strengthByAge.js";
import { say, type Text } from "../words/message.js";
import type {
  BlockMean,
  BlockMeans,
  ContentCharacteristics,
  StrengthStudy,
} from "./studyResult.js";

/** Rules that need nothing but the strengths. */
const RULES = ["en1990-normal", "tolerance-75", "tolerance-95"] as const;

/** Confidence of the bands that are drawn where no requirement states one. */
const BAND_CONFIDENCE = 0.95;

/**
 * The regression of strength on cement content, and the least content that meets the requirement where the
 * study states one. Without a requirement blocks of several ages give no curve: which age counts is not told.
 *
 * @returns `blocks` in place of `strength` where no curve can be fitted, with a warning that says why.
 */
export function computeStrength(
  { strength: asked }: Pick<StudyConfig, "strength">,
  sheet: SpecimenSheet,
): {
  readonly strength?: StrengthStudy;
  readonly blocks?: BlockMeans;
  readonly findings: readonly Finding[];
} {
  const { requirement, covariates } = asked;
  const { specimens, file } = sheet;
  const ageDays = requirement?.ageDays ?? onlyAge(specimens);
  if (ageDays === undefined) {
    const untold = ageNotTold(sheet);
    return withoutCurve(sheet, [untold], untold.message);
  }
  const options = fitOptions(asked, ageDays);
  const included = includedSpecimens(sheet, options);
  if (hasErrors(included.findings)) return { findings: included.findings };
  if (included.tooFew) return withoutCurve(sheet, included.findings, included.tooFew.message);
  // Means of batches are readings of their own; the sheet's blocks stay in sight.
  const readings = asked.batches === "means" ? batchMeans : undefined;
  const fitted = readings ? readings(specimens) : specimens;
  const fit = fitStrength(fitted, options);
  if (fit.status !== "ok") {
    const { message } = fit;
    return withoutCurve(sheet, [...included.findings, noCurve(file, message)], message);
  }
  const answer = answerOf(fit, asked, (rule) =>
    leastCementOfOthers(
      specimens,
      included.far.map(({ id }) => id),
      { requirement: rule, readings, fit: options, roundUpToPct: asked.roundUpToPct },
    ),
  );
  const { chosenCementPct: chosenPct } = answer;
  const evidence = {
    fit,
    lackOfFit: lackOfFit(fit),
    models: compareModels(fitted, options),
    checks: residualChecks(fit),
  };
  const middleContent = fit.contentsPct[fit.contentsPct.length >> 1];
  const allAges = covariates.some(({ kind }) => kind === "ln age");
  // Where batches or ages are terms of the regression, their scatter is allowed for.
  const alike = asked.batches === "ignore" && !allAges;
  const scatter = alike ? batchScatter(included.included, { ageDays }) : undefined;
  return {
    strength: {
      specimens,
      ...evidence,
      ...bandsOf(fit, requirement?.confidence, chosenPct),
      robust: robustStrength(fit),
      ...(allAges
        ? {
            byAge: strengthByAge(fitted, options, chosenPct ?? middleContent),
          }
        : {}),
      characteristic: characteristicByContent(
        included.included.filter((block) => block.ageDays === ageDays),
      ),
      aspect: asked.aspectTable === undefined ? [] : correctedBlocks(specimens, asked.aspectTable),
      ...answer.known,
      chosenCementPct: chosenPct,
    },
    findings: [
      ...included.findings,
      ...answer.findings,
      ...fewBlocksFindings(fit, file),
      ...modelFindings({ ...evidence, scatter, requirement, cementPct: chosenPct ?? null }, file),
    ],
  };
}

/** The blocks as they are, and what stands in the way of a curve. */
function withoutCurve(
  { specimens }: SpecimenSheet,
  findings: readonly Finding[],
  message: Text,
): { readonly blocks: BlockMeans; readonly findings: readonly Finding[] } {
  return { blocks: { means: blockMeans(specimens), message }, findings };
}

/** The mean of the blocks of each content and age that count. */
export function blockMeans(specimens: readonly SpecimenRecord[]): BlockMean[] {
  const counted = specimens.filter(({ excluded }) => excluded === undefined);
  const alike = groupBy(counted, ({ cementPct, ageDays }) => `${cementPct} ${ageDays}`);
  const means = [...alike.values()].map((blocks): BlockMean => {
    const strengths = blocks.map(({ strengthMpa }) => strengthMpa);
    const [{ cementPct, ageDays }] = blocks;
    return {
      cementPct,
      ageDays,
      blocks: blocks.length,
      meanMpa: mean(strengths),
      lowestMpa: Math.min(...strengths),
      highestMpa: Math.max(...strengths),
    };
  });
  return means.sort((a, b) => a.cementPct - b.cementPct || a.ageDays - b.ageDays);
}

function noCurve(file: string, message: Text): Finding {
  return finding({ file }, "warning", "no-regression", {
    message,
    expected: say`blocks that a curve can be fitted to`,
    remedy: say`Make the missing blocks, or choose another model in study.yaml.`,
  });
}

/** What the study asks of the regression. */
function fitOptions(
  { model, variance, batches, covariates }: StudyConfig["strength"],
  ageDays: number,
): FitStrengthOptions {
  return {
    model,
    ageDays,
    batches: batches === "means" ? "ignore" : batches,
    variance,
    covariates: covariates.map(({ kind }) => kind),
    at: Object.fromEntries(
      covariates.flatMap(({ kind, at }) => (at === undefined ? [] : [[kind, at]])),
    ),
  };
}

/** The curve with its bounds across the tested contents, and at each of them and the chosen one. */
function bandsOf(
  fit: FittedStrength,
  confidence = BAND_CONFIDENCE,
  chosenPct?: number,
): Pick<StrengthStudy, "bands" | "bandsAtContents"> {
  const contents = new Set([...fit.contentsPct, chosenPct ?? fit.contentsPct[0]]);
  const cementPct = [...contents].sort((a, b) => a - b);
  return {
    bands: strengthBands(fit, { confidence }),
    bandsAtContents: strengthBands(fit, { confidence, cementPct }),
  };
}

/** The least content that meets the requirement of a study, with what is to be known of it. */
function answerOf(
  fit: FittedStrength,
  { requirement, roundUpToPct, batches }: StudyConfig["strength"],
  others: (requirement: RequirementConfig) => LeastCementOfOthers[],
): {
  readonly known: Pick<StrengthStudy, "leastCement" | "leastCementOfOthers">;
  readonly chosenCementPct?: number;
  readonly findings: readonly Finding[];
} {
  if (!requirement) return { known: {}, findings: [] };
  const least = leastCement(fit, requirement, { roundUpToPct });
  let remedy = say`Nothing to do for the strength: no blocks of less cement were asked for.`;
  if (least.nextBlocks?.cementPct === null) {
    remedy = say`Improve the grading, the compaction or the evenness of the mix, and test that blend.`;
  } else if (least.nextBlocks) {
    remedy = say`Make and crush blocks as the message says, then compute again.`;
  } else if (least.status === "falls") {
    remedy = say`Look for what went wrong with the blocks of more cement, and make and crush them again.`;
  }
  const told = (isSo: boolean, column: string, code: string, words: FindingWords) =>
    findingIf(isSo, { file: STUDY_FILE, column }, "warning", code, words);
  const ofBatches = batches === "means" && requirement.statistic !== "mean";
  return {
    known: { leastCement: least, leastCementOfOthers: others(requirement) },
    chosenCementPct: least.batchablePct ?? undefined,
    findings: [
      ...least.findings,
      ...told(least.status !== "ok", "strength.requirement", `least-cement-${least.status}`, {
        message: least.message,
        expected: say`a requirement that is met between the lowest and the highest tested content`,
        remedy,
      }),
      ...told(ofBatches, "strength.batches", "bound-of-batch-means", {
        message: say`The curve is fitted to the means of batches, so its bound applies to batch means: single blocks scatter more.`,
        expected: say`a requirement on the mean, or single blocks in the regression`,
        remedy: say`Ask what the requirement refers to; with “batches: block” single blocks are fitted, each batch with a level of its own.`,
      }),
    ],
  };
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
    message: say`The sheet holds blocks of several ages, and the study does not say which age applies: no curve is fitted.`,
    expected: say`the age of the requirement, under “strength.requirement”`,
    remedy: say`Enter the strength that is required, its age and where it comes from.`,
  });
}

/** The characteristic value of the blocks of each content, by every rule that needs no further entry. */
function characteristicByContent(blocks: readonly SpecimenRecord[]): ContentCharacteristics[] {
  const byContent = [...groupBy(blocks, ({ cementPct }) => cementPct)].sort(([a], [b]) => a - b);
  return byContent.map(([cementPct, alike]) => {
    const strengths = alike.map(({ strengthMpa }) => strengthMpa);
    return { cementPct, values: RULES.map((rule) => characteristicStrength(strengths, rule)) };
  });
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
