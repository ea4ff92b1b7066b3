import { isBuildable } from "../entries/buildable.js";
import { sheetsOfStudy } from "../entries/sheets.js";
import type { StudyConfig } from "../entries/studyConfig.js";
import { type Finding, finding, hasErrors, STUDY_FILE } from "../findings/finding.js";
import type { GradingCurve } from "../grading/curve.js";
import { readingSpread } from "../grading/uncertainty/intervals.js";
import { compareGuidance } from "../guidance/comparison.js";
import { GUIDANCE_ENTRIES } from "../guidance/published/recommendations.js";
import { inUsersWords } from "../lab/sheet/mapping.js";
import { inUnits } from "../quantities/format.js";
import { usdaFromCurve } from "../soil/classification/usdaTexture.js";
import { say } from "../words/message.js";
import { computeBlends, sharesOf } from "./blend.js";
import { mixDoubts } from "./doubts.js";
import { computeFirstMix } from "./firstMix.js";
import {
  computeGuidance,
  type HeldCurve,
  heldBlend,
  heldSoils,
  studyGuidance,
} from "./guidance.js";
import { MADE_WITH } from "./madeWith.js";
import { computeUngraded, type GradedMaterial, gradeMaterial } from "./material.js";
import { computeMix } from "./mix.js";
import { onceEach, plausibilityFindings, trialContradictions } from "./plausibility.js";
import { proposal } from "./proposal.js";
import { computeQuality } from "./quality.js";
import { reviewFindings } from "./review.js";
import { sampleBlend } from "./sampledCurves.js";
import { stagesOf } from "./stages.js";
import type { Study } from "./study.js";
import {
  type BlendStudy,
  type MaterialResult,
  type MixStudy,
  RESULT_FORMAT,
  type SoilGuidance,
  type StrengthStudy,
  type StudyResult,
  type TextureStudy,
} from "./studyResult.js";
import {
  computeTrials,
  mixTesting,
  testedAnotherBlend,
  trialEntryFindings,
  trialFindings,
} from "./trials.js";

/** Recommendations for the kinds of earth that a rammed mix is compared with. */
const EARTH_ENTRIES = GUIDANCE_ENTRIES.filter(({ material }) =>
  ["rammed-earth", "stabilised-rammed-earth"].includes(material),
);

export interface StudyComputation {
  /** Present where no finding is an error. */
  readonly result?: StudyResult;
  /** Those of reading, then those of computing. */
  readonly findings: readonly Finding[];
}

/**
 * Computes a study that was read, each stage as far as its sheets and entries are there: the same result for
 * the same study, with all findings. Only findings that are errors leave it without a result.
 */
export function computeStudy(study: Study, reading: readonly Finding[] = []): StudyComputation {
  // Sentences speak the units of the study; numbers of the result stay in base units.
  return inUnits(computeInSi(study, reading), study.config.units);
}

function computeInSi(study: Study, reading: readonly Finding[]): StudyComputation {
  const { config } = study;
  const wrongEntries = trialEntryFindings(config);
  if (hasErrors(wrongEntries)) return { findings: [...reading, ...wrongEntries] };
  const graded = study.materials.map((material) => gradeMaterial(material, config));
  const materials = graded.map(({ material }) => material);
  const ungraded = study.ungraded.map(computeUngraded);
  const rough = { materials, ungraded: ungraded.map(({ material }) => material) };
  const firstMix = computeFirstMix(config, rough);
  const guidance = studyGuidance(study);
  const blends = computeBlends(study, materials, guidance.entries);
  const { blend } = blends;
  const tests = computeTests(study, materials, blends);
  const { trials, testing, followed } = tests;
  const { compaction, strength, blocks } = followed ?? {};
  const plausibility = plausibilityFindings(study, materials);
  const build = mixOf(study, blend, tests, [
    ...reading,
    ...graded.flatMap(({ findings }) => findings),
    ...guidance.findings,
    ...blends.findings,
    ...plausibility,
  ]);
  const mix = build?.mix;
  const tested = testing?.state === "tested";
  const quality = qualityOf(study, strength, mix, tested);
  const told = [
    ...reading,
    ...inSheetWords(config, [
      ...wrongEntries,
      ...graded.flatMap(({ findings }) => findings),
      ...ungraded.flatMap(({ findings }) => findings),
      ...firstMix.findings,
      ...guidance.findings,
      ...blends.findings,
      ...tests.findings,
      ...plausibility,
      ...onceEach([...tests.contradictions.values()].flat()),
      ...(build?.findings ?? []),
      ...quality.findings,
      ...reviewFindings(config),
    ]),
  ];
  if (hasErrors(told)) return { findings: told };
  const allDrawn = graded.map(({ drawn }) => drawn);
  const blendDrawn = blend ? sampleBlend(allDrawn, sharesOf(blend)) : [];
  const held = [
    ...heldSoils(config, graded),
    ...(blend ? [heldBlend(blend, blendDrawn, mix?.density.valueKgM3)] : []),
  ];
  const known = {
    config,
    materials,
    compaction,
    blocks,
    blend,
    trials,
    testing,
    mix,
    ungraded: ungraded.length > 0 ? rough.ungraded : undefined,
    firstMix: firstMix.mix,
    strength: tested ? strength : withoutContent(strength),
  };
  return {
    findings: told,
    result: {
      format: RESULT_FORMAT,
      madeWith: MADE_WITH,
      findings: told,
      stages: stagesOf({
        ...known,
        refused: mix ? [] : build?.findings.map(({ message }) => message),
      }),
      ...known,
      ...(blend ? blendAtLarge(blend, blendDrawn) : {}),
      soilGuidance: blend?.target ? undefined : soilsAtLarge(graded),
      textures: computeTexture(held),
      guidance: computeGuidance(guidance.entries, held),
      proposal:
        blend && testing?.state === "proposed" ? proposal(config, blend, followed) : undefined,
      quality: quality.plan,
      inputs: study.inputs,
      sheets: study.sheets,
    },
  };
}

type Tests = ReturnType<typeof computeTests>;

/** The tested blends, whether the blend of the study is one of them, and the one that its mix follows. */
function computeTests(
  study: Study,
  materials: readonly MaterialResult[],
  { proposed, blend }: Pick<ReturnType<typeof computeBlends>, "proposed" | "blend">,
) {
  const { config } = study;
  const { trials, findings } = computeTrials(study, materials, proposed && sharesOf(proposed));
  const testing = blend && mixTesting(config, trials);
  const followed = testing ? trials.find(({ id }) => id === testing.trial) : trials[0];
  return {
    trials,
    testing,
    followed,
    contradictions: new Map(
      trials.map((trial) => [trial.id, trialContradictions(study.trials, trial)]),
    ),
    findings: [
      // What the nearest blocks say of a content says nothing of a blend that they were not made of.
      ...(testedAnotherBlend({ trials, testing })
        ? findings.filter(({ code }) => code !== "nearest-blocks-agree")
        : findings),
      ...trialFindings(config, trials, testing),
    ],
  };
}

/** The mix of a blend that was tested, where the study tells what is to be built. */
function mixOf(
  study: Study,
  blend: BlendStudy | undefined,
  { trials, testing, followed, contradictions }: Tests,
  findings: readonly Finding[],
) {
  const { config } = study;
  const { compaction, strength } = followed ?? {};
  const sheets = (own: boolean) =>
    study.trials
      .filter(({ entry }) => (entry.id === followed?.id) === own)
      .flatMap((trial) => [trial.compaction?.file, trial.specimens?.file]);
  const used = sheets(true);
  const foreign = sheets(false).filter((file) => !used.includes(file));
  if (!blend || testing?.state !== "tested" || !followed || !strength || !isBuildable(config)) {
    return undefined;
  }
  return computeMix(config, blend, strength, compaction, {
    trialKey: followed.key,
    reasons: [testing.message],
    doubts: mixDoubts(config, followed, trials, [
      ...(compaction?.findings ?? []),
      ...(contradictions.get(followed.id) ?? []),
      ...findings.filter(({ file }) => !foreign.includes(file)),
    ]),
  });
}

/** What reading errors do to a blend, and where it stands against all recommendations for its kind of earth. */
function blendAtLarge({ curve }: BlendStudy, drawn: readonly GradingCurve[]) {
  const sizes = curve.points.map(({ sizeMm }) => sizeMm);
  const sdPct = readingSpread(drawn, sizes);
  return {
    blendSpread: sizes.map((sizeMm, index) => ({ sizeMm, sdPct: sdPct[index] })),
    guidanceComparison: compareGuidance(curve, EARTH_ENTRIES, {}, drawn),
  };
}

/** Where each soil stands by itself, before a blend is sought. */
function soilsAtLarge(graded: readonly GradedMaterial[]): SoilGuidance[] {
  return graded.flatMap(({ material: { id, name, role, curve, limits }, drawn }) =>
    role === "soil"
      ? [{ id, name, comparison: compareGuidance(curve, EARTH_ENTRIES, limits, drawn) }]
      : [],
  );
}

/**
 * The tests without a content to build, where the blend of the study is not the one that was tested: what its
 * blocks would need stands with their trial, beside its name and shares.
 */
function withoutContent(strength: StrengthStudy | undefined): StrengthStudy | undefined {
  if (strength === undefined) return undefined;
  const { chosenCementPct: _c, leastCement: _l, leastCementOfOthers: _o, ...tests } = strength;
  const tested = new Set(tests.fit.contentsPct);
  const bandsAtContents = tests.bandsAtContents.filter(({ cementPct }) => tested.has(cementPct));
  return { ...tests, bandsAtContents };
}

/** Lots of the work are lots of a tested mix, or of none that this study knows. */
function qualityOf(
  { config, siteBlocks }: Study,
  strength: StrengthStudy | undefined,
  mix: MixStudy | undefined,
  tested: boolean,
): ReturnType<typeof computeQuality> {
  if (!strength) return { findings: [] };
  if (tested || !siteBlocks) return computeQuality(config, strength, mix, siteBlocks);
  const { plan, findings } = computeQuality(config, strength, mix, undefined);
  const ofOther = finding({ file: siteBlocks.file }, "warning", "site-blocks-without-mix", {
    message: say`The sheet of site blocks is not judged: the blend of the study was not tested, so these lots are of another mix.`,
    expected: say`site blocks of a tested mix`,
    remedy: say`Name the tested blend that was built (“mix-from”), or leave the sheet out.`,
  });
  return { plan, findings: [...findings, ofOther] };
}

/** Curves on the texture triangle; those that do not reach 0.002 mm are left out. */
function computeTexture(held: readonly HeldCurve[]): TextureStudy[] {
  return held.flatMap(({ name, curve, drawn }) => {
    const parts = usdaFromCurve(curve);
    if (!parts) return [];
    return [{ name, parts, resampled: drawn.flatMap((each) => usdaFromCurve(each) ?? []) }];
  });
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
