import { sheetsOfStudy } from "../entries/sheets.js";
import type { StudyConfig } from "../entries/studyConfig.js";
import { type Finding, hasErrors, STUDY_FILE } from "../findings/finding.js";
import type { GradingCurve } from "../grading/curve.js";
import { readingSpread } from "../grading/uncertainty/intervals.js";
import { compareGuidance } from "../guidance/comparison.js";
import { GUIDANCE_ENTRIES } from "../guidance/published/recommendations.js";
import { inUsersWords } from "../lab/sheet/mapping.js";
import { usdaFromCurve } from "../soil/classification/usdaTexture.js";
import { say, type Text } from "../words/message.js";
import { computeBlends } from "./blend.js";
import { computeGuidance, studyGuidance } from "./guidance.js";
import { MADE_WITH } from "./madeWith.js";
import { computeMaterial } from "./material.js";
import { computeMix } from "./mix.js";
import { plausibilityFindings } from "./plausibility.js";
import { proposal } from "./proposal.js";
import { computeQuality } from "./quality.js";
import { reviewFindings } from "./review.js";
import { type DrawnCurves, sampleCurves, sampleMaterial } from "./sampledCurves.js";
import { toleranceFindings } from "./specifiedMix.js";
import type { Study } from "./study.js";
import {
  type BlendStudy,
  type MaterialResult,
  RESULT_FORMAT,
  type StrengthStudy,
  type StudyResult,
  type TextureStudy,
} from "./studyResult.js";
import { computeTrials, mixLife, trialEntryFindings, trialFindings } from "./trials.js";

/** Kinds of earth whose recommendations a rammed mix is compared with. */
const EARTH = new Set(["rammed-earth", "stabilised-rammed-earth"]);

export interface StudyComputation {
  /** Present where no finding is an error. */
  readonly result?: StudyResult;
  /** Those of reading, then those of computing. */
  readonly findings: readonly Finding[];
}

/** Computes a study that was read: the same result for the same study, with all findings. */
export function computeStudy(study: Study, reading: readonly Finding[] = []): StudyComputation {
  const { config } = study;
  const findings: Finding[] = trialEntryFindings(config);
  if (hasErrors(findings)) return { findings: [...reading, ...findings] };
  const drawnCurves = study.materials.map((material) => sampleMaterial(material, config));
  const materials = study.materials.map((material, index) =>
    computeMaterial(material, config, findings, drawnCurves[index]),
  );
  const entries = studyGuidance(study, findings);
  const { proposed, blend } = computeBlends(study, materials, entries, findings);
  const proposedPct = proposed?.shares.map(({ sharePct }) => sharePct);
  const tests = computeTrials(study, materials, proposedPct);
  const { trials } = tests;
  const life = mixLife(config, trials);
  const followed = trials.find(({ id }) => id === life.trial);
  findings.push(...tests.findings, ...trialFindings(config, trials, life));
  findings.push(...plausibilityFindings(study, materials, trials));
  const { compaction, strength } = followed ?? {};
  // What was tested is carried over to the blend that was tested, and to no other.
  const tested = life.state === "tested" && blend && strength;
  const mix = tested
    ? computeMix(config, blend, strength, compaction, findings, [life.message])
    : undefined;
  const quality = strength && computeQuality(config, strength, mix, study.siteBlocks, findings);
  if (strength) findings.push(...toleranceFindings({ config, mix, compaction, strength }));
  findings.push(...reviewFindings(config));
  const told = [...reading, ...inSheetWords(config, findings)];
  if (!blend || !strength || hasErrors(told)) {
    return { findings: told };
  }
  const drawn = sampleCurves(
    drawnCurves,
    blend.shares.map(({ sharePct }) => sharePct),
  );
  const blendSizes = blend.curve.points.map(({ sizeMm }) => sizeMm);
  const blendSpread = readingSpread(drawn.blend, blendSizes);
  return {
    findings: told,
    result: {
      format: RESULT_FORMAT,
      madeWith: MADE_WITH,
      config,
      findings: told,
      materials,
      compaction,
      blend,
      blendSpread: blendSizes.map((sizeMm, index) => ({ sizeMm, sdPct: blendSpread[index] })),
      textures: computeTexture(materials, blend, drawn),
      guidance: computeGuidance(entries, materials, blend, drawn, config.seed),
      guidanceComparison: compareGuidance(
        blend.curve,
        GUIDANCE_ENTRIES.filter(({ material }) => EARTH.has(material)),
        {},
        drawn.blend,
      ),
      // A blend that was not tested has no cement content.
      strength: tested ? strength : withoutContent(strength),
      trials,
      life,
      ...(life.state === "proposed" ? { proposal: proposal(config, blend, followed) } : {}),
      mix,
      ...(quality ? { quality } : {}),
      inputs: study.inputs,
      sheets: study.sheets,
    },
  };
}

function withoutContent({ chosenCementPct: _, ...tests }: StrengthStudy): StrengthStudy {
  return tests;
}

/** The soils and the blend on the texture triangle; those whose curve does not reach 0.002 mm are left out. */
function computeTexture(
  materials: readonly MaterialResult[],
  blend: BlendStudy,
  drawn: DrawnCurves,
): TextureStudy[] {
  const study = (
    name: Text,
    curve: GradingCurve,
    curves: readonly GradingCurve[],
  ): TextureStudy[] => {
    const parts = usdaFromCurve(curve);
    if (!parts) return [];
    return [{ name, parts, resampled: curves.flatMap((each) => usdaFromCurve(each) ?? []) }];
  };
  return [
    ...materials.flatMap(({ name, role, curve }, index) =>
      role === "soil" ? study(name, curve, drawn.materials[index]) : [],
    ),
    ...study(say`Blend`, blend.curve, drawn.blend),
  ];
}

/** Findings of computing, with the user's own header cells where a sheet has a layout of its own. */
export function inSheetWords(config: StudyConfig, findings: readonly Finding[]): Finding[] {
  const mapped = sheetsOfStudy(config)
    .map(({ source }) => source)
    .filter((source) => typeof source === "object");
  return findings.map((found) => {
    const source = mapped.find(({ sheet }) => sheet === found.file);
    return source ? inUsersWords(found, source, { file: STUDY_FILE, key: source.sheet }) : found;
  });
}
