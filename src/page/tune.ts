import { type BlendDesign, type LimitState, limitState } from "../blend/description.js";
import { type BlendInput, designBlend } from "../blend/design.js";
import { limitRows, limitValue } from "../blend/limits.js";
import { type BlendMaterial, blendCurve } from "../blend/material.js";
import { isBuildable } from "../entries/buildable.js";
import type { CompareConfig, StudyConfig } from "../entries/studyConfig.js";
import { trialShares } from "../entries/trials.js";
import type { Finding } from "../findings/finding.js";
import { characteristicSizes } from "../grading/characteristics.js";
import type { GradingCurve } from "../grading/curve.js";
import { boundariesOf, fractions } from "../grading/fractions.js";
import { readingSpread } from "../grading/uncertainty/intervals.js";
import type { GuidanceEntry } from "../guidance/entry.js";
import { formatPlain, inUnits } from "../quantities/format.js";
import { curveInDoubt } from "../strength/modelFindings.js";
import { type StrengthBand, strengthBands } from "../strength/regression/bounds.js";
import { blendInput, computeBlend, particleDensity, type TargetedConfig } from "../study/blend.js";
import { computeStudy } from "../study/computeStudy.js";
import { mixDoubts } from "../study/doubts.js";
import { computeGuidance, heldBlend, studyGuidance } from "../study/guidance.js";
import { gradeMaterial } from "../study/material.js";
import { computeMix } from "../study/mix.js";
import { moistureFindings } from "../study/mixGuard.js";
import { proposal } from "../study/proposal.js";
import { sampleBlend } from "../study/sampledCurves.js";
import type { Study } from "../study/study.js";
import type {
  BlendStudy,
  GuidanceStudy,
  MixStudy,
  StudyResult,
  TrialStudy,
} from "../study/studyResult.js";
import { compareBlends, testedBlendFindings } from "../study/testedBlend.js";
import { crushedOtherwise, mixTesting } from "../study/trials.js";
import { say, type Text } from "../words/message.js";
import { type BenchMix, isSameMix, startingMix } from "./bench.js";

/** A study laid on the bench: computed once, with all that no slider changes. */
export interface OpenStudy {
  readonly study: Study;
  readonly result: StudyResult;
  /** Those of reading and computing. */
  readonly findings: readonly Finding[];
  /** Those of reading alone, to compute it anew in other units. */
  readonly reading: readonly Finding[];
  /** Curves of each material as they could have come out within the reading errors. */
  readonly drawn: readonly (readonly GradingCurve[])[];
  /** What the blend is held against. */
  readonly entries: readonly GuidanceEntry[];
  /** The study's own mix, where the bench starts. */
  readonly start: BenchMix;
  /** Why its materials cannot be blended; empty where they can. */
  readonly obstacles: readonly Finding[];
}

/** Lays a study on the bench, or says what stands in the way. */
export function openOnBench(
  study: Study,
  reading: readonly Finding[],
): { readonly open?: OpenStudy; readonly findings: readonly Finding[] } {
  const { result, findings } = computeStudy(study, reading);
  if (!result) return { findings };
  const { config, materials, blend, mix, compaction } = result;
  const graded = { ...config, materials: gradedConfigs(result) };
  const start = startingMix(graded, {
    sharesPct: blend?.shares.map(({ sharePct }) => sharePct),
    cementPct: mix?.recipe.cementPct ?? middleContent(result),
    moisturePct: mix?.recipe.targetMoisturePct ?? compaction?.peak?.optimumWaterPct,
  });
  const { entries } = studyGuidance(study);
  const tried = { ...graded, limits: [], target: start.target };
  const obstacles = blend ? [] : computeBlend(tried, materials, entries).findings;
  return {
    open: {
      study,
      result,
      findings,
      reading,
      start,
      entries,
      drawn: study.materials.map((material) => gradeMaterial(material, study.config).drawn),
      obstacles: obstacles.filter(
        ({ severity, code }) => severity === "error" || code === "no-blend",
      ),
    },
    findings,
  };
}

/** What the study says of its materials with a grading, in the order of the result. */
function gradedConfigs({ config, materials }: StudyResult): StudyConfig["materials"] {
  return config.materials.filter(({ id }) => materials.some((material) => material.id === id));
}

/** Where no content follows from the tests the slider starts in the middle of those that were tested. */
function middleContent({ trials }: StudyResult): number | undefined {
  const contents = trials.find(({ strength }) => strength)?.strength?.fit.contentsPct;
  return contents?.[contents.length >> 1];
}

/** An estimate of the blend from its materials' tests, by the share passing 0.425 mm. */
export interface BlendEstimate {
  readonly kind: "plasticity-index" | "linear-shrinkage";
  /** Percent; absent where a material of the blend was not tested for it. */
  readonly valuePct?: number;
  /** Names of those materials. */
  readonly untested: readonly string[];
}

/** What the strength tests say of the mix on the bench. */
export interface BenchStrength {
  /** Absent where the tests say nothing of this mix; see `reasons`. */
  readonly band?: StrengthBand;
  /** Of the band. */
  readonly confidence?: number;
  /** The bound that the requirement speaks of, and whether it reaches it; absent without a requirement. */
  readonly boundMpa?: number;
  readonly meets?: boolean;
  /** False where the blocks were crushed in another state than the requirement speaks of. */
  readonly shown?: boolean;
  /** Whether a finding speaks against the curve and its bounds. */
  readonly inDoubt?: boolean;
  /** Why nothing is shown, or what a reader must know beside it. */
  readonly reasons: readonly Text[];
}

/** The blend on the bench, without its recipe: cheap enough for every move of a slider. */
export interface TunedBlend {
  readonly mix: BenchMix;
  /**
   * The study's result with the blend of the bench in place of its own, so that every figure and table of
   * the study can be made of it. It has no mix yet: see `tuneMix`.
   */
  readonly result: StudyResult;
  /** Against the bench's target: a bench always has one. */
  readonly blend: BlendStudy & BlendDesign;
  /** The blend's curve as it could have come out within the reading errors. */
  readonly curves: readonly GradingCurve[];
  /** Where the blend stands against the limits that were asked for. */
  readonly limits: readonly LimitState[];
  readonly estimates: readonly BlendEstimate[];
  readonly strength: BenchStrength;
  /** The tested blend that lies close to it; absent where none does. */
  readonly trial?: TrialStudy;
}

/** The study as the bench has it: its materials with a grading, the bench's aim, limits, cement and moisture. */
function benchConfig(result: StudyResult, mix: BenchMix): TargetedConfig {
  const { mixFrom: _, ...config } = result.config;
  const { target, limits, cementPct, moisturePct } = mix;
  const shares = result.materials.map(({ id }, index) => [id, mix.sharesPct[index]]);
  const specified = { sharesPct: Object.fromEntries(shares), cementPct, moisturePct };
  return { ...config, materials: gradedConfigs(result), target, limits, specified };
}

/** The blending problem on the bench: the study's materials, the bench's target and limits. */
export function benchInput({ result, entries }: OpenStudy, mix: BenchMix): BlendInput {
  return blendInput(benchConfig(result, mix), result.materials, entries);
}

/**
 * Works out the blend on the bench: grading, fractions, verdicts, limits, estimates, strength. Every number
 * comes from the module that the study's own comes from.
 */
export function tuneBlend(open: OpenStudy, mix: BenchMix): TunedBlend {
  const { result, drawn } = open;
  const { materials } = result;
  const config = benchConfig(result, mix);
  const input = benchInput(open, mix);
  // As a study folder with this mix is read: shares that sum to 100 but for a last digit are scaled.
  const design = designBlend(
    fixed(input, trialShares(config, config.specified ?? {}) ?? mix.sharesPct),
  );
  const sharesPct = design.shares.map(({ sharePct }) => sharePct);
  const blended = blendCurve(
    materials.map(({ curve }, index) => ({ curve, sharePct: sharesPct[index] })),
  );
  const rows = limitRows(input.materials, input.limits ?? []);
  const shares = sharesPct.map((pct) => pct / 100);
  const limits = rows.map((row) => limitState(row, shares));
  const blend: BlendStudy & BlendDesign = {
    ...design,
    limits,
    relaxed: [],
    ...blended,
    sizes: characteristicSizes(blended.curve, config.sizeReading),
    fractions: fractions(blended.curve, boundariesOf(config.units)),
    particleDensityKgM3: particleDensity(config, sharesPct),
  };
  const curves = sampleBlend(drawn, sharesPct);
  const sizes = blended.curve.points.map(({ sizeMm }) => sizeMm);
  const spread = readingSpread(curves, sizes);
  const guidance = blendGuidance(open, blended, curves);
  // A trial's shares are of all materials of the study.
  const whole = materials.length === result.config.materials.length;
  const trials = (whole ? result.trials : []).map((trial) =>
    trial.sharesPct
      ? { ...trial, difference: compareBlends(materials, sharesPct, trial.sharesPct) }
      : trial,
  );
  const testing = mixTesting(config, trials);
  const trial =
    testing.state === "tested" ? trials.find(({ id }) => id === testing.trial) : undefined;
  const { mix: _, proposal: __, quality: ___, strength: tests, ...rest } = result;
  const strength = trial?.strength ?? tests;
  return {
    mix,
    blend,
    curves,
    limits,
    estimates: estimatesOf(input.materials, shares),
    strength: inUnits(strengthOf(open, config, sharesPct, trials, trial), config.units),
    ...(trial ? { trial } : {}),
    result: {
      ...rest,
      config,
      blend,
      guidance,
      trials,
      testing,
      blendSpread: sizes.map((sizeMm, index) => ({ sizeMm, sdPct: spread[index] })),
      ...(trial ? { compaction: trial.compaction } : {}),
      ...(strength ? { strength } : {}),
      ...(trial ? {} : { proposal: inUnits(proposal(config, blend, trials[0]), config.units) }),
    },
  };
}

/** The blend against what the study names, with the density that its tests tell. */
function blendGuidance(
  { result, entries }: OpenStudy,
  blend: { readonly curve: GradingCurve; readonly dryDensityKgM3?: number },
  curves: readonly GradingCurve[],
): GuidanceStudy[] {
  const held = [heldBlend(blend, curves, blend.dryDensityKgM3)];
  return inUnits(computeGuidance(entries, held), result.config.units);
}

/** The problem with no choice left but these shares, and no limit that could stand in their way. */
function fixed(input: BlendInput, sharesPct: readonly number[]): BlendInput {
  const materials = input.materials.map((material, index) => ({
    ...material,
    minSharePct: sharesPct[index],
    maxSharePct: sharesPct[index],
  }));
  return { ...input, materials, limits: [], maxMaterials: undefined };
}

/** Rounding is no breach of a limit. */
const SLACK = 1e-6;

/** Whether a limit is kept, rounding aside. */
export function keepsLimit({ side, value, limit }: LimitState): boolean {
  return side === "max" ? value <= limit + SLACK : value >= limit - SLACK;
}

const ESTIMATED = [
  ["plasticity-index", "plasticityIndexPct"],
  ["linear-shrinkage", "linearShrinkagePct"],
] as const;

function estimatesOf(
  materials: readonly BlendMaterial[],
  shares: readonly number[],
): BlendEstimate[] {
  return ESTIMATED.map(([kind, key]) => {
    const untested = materials
      .filter((material, index) => shares[index] > 0 && material[key] === undefined)
      .map(({ id, name = id }) => name);
    if (untested.length > 0) return { kind, untested };
    // What is not in the blend need not be known.
    const known = materials.map((material) => ({ ...material, [key]: material[key] ?? 0 }));
    const [row] = limitRows(known, [{ kind, minPct: 0 }]);
    return { kind, untested, valuePct: limitValue(row, shares) };
  });
}

/** The strength at the bench's cement content, where a tested blend lies close and the content was tested. */
function strengthOf(
  { findings }: OpenStudy,
  config: TargetedConfig,
  sharesPct: readonly number[],
  trials: readonly TrialStudy[],
  trial: TrialStudy | undefined,
): BenchStrength {
  const { requirement } = config.strength;
  const cementPct = config.specified?.cementPct;
  const nothing = (...reasons: readonly Text[]) => ({ reasons });
  if (trials.every(({ strength }) => !strength)) {
    return nothing(say`No blocks have been crushed yet, so the strength is not known.`);
  }
  if (!trial?.strength) return nothing(...testedBlendFindings(trials).map(messageOf));
  if (cementPct === undefined) return nothing(say`No cement content is chosen.`);
  const untested = moistureFindings(config, sharesPct, trial.strength, trial.compaction);
  if (untested.length > 0) return nothing(...untested.map(messageOf));
  const { fit } = trial.strength;
  const confidence = requirement?.confidence ?? 0.95;
  const [band] = strengthBands(fit, { confidence, cementPct: [cementPct] });
  if (band.extrapolated) {
    const [first, last] = [fit.contentsPct[0], fit.contentsPct[fit.contentsPct.length - 1]];
    return nothing(
      say`No blocks were made with ${formatPlain(cementPct, 3)} % cement: ${formatPlain(first, 3)} to ${formatPlain(last, 3)} % were tested, and nothing is read off the curve beyond them.`,
    );
  }
  if (!requirement) return { band, confidence, reasons: [] };
  const boundMpa = band.lowerBoundMpa[requirement.statistic];
  const otherwise = crushedOtherwise(config, trial);
  return {
    band,
    confidence,
    boundMpa,
    meets: boundMpa >= requirement.strengthMpa,
    shown: otherwise === undefined,
    inDoubt: curveInDoubt(findings),
    reasons: otherwise === undefined ? [] : [otherwise],
  };
}

const messageOf = ({ message }: Finding) => message;

/** The recipe of the mix on the bench with all that follows from it. */
export interface TunedMix {
  /** As in `TunedBlend`, now with its mix where there is one. */
  readonly result: StudyResult;
  readonly mix?: MixStudy;
  /** Why there is none, or what a crew must know. */
  readonly findings: readonly Finding[];
}

/**
 * Works out batch, buckets, quantities, cost and carbon of the mix on the bench, and what they are against
 * the study's own mix. It searches whole ratios, so that it follows a slider when it comes to rest.
 *
 * @param names how the study's own mix is called, and what it rests on, in the reader's language.
 */
export function tuneMix(
  open: OpenStudy,
  tuned: TunedBlend,
  names: { readonly name: string; readonly basis: string },
): TunedMix {
  const { result: own, start } = open;
  const { blend, trial } = tuned;
  // A mix is not compared with itself.
  const compareMix = isSameMix(tuned.mix, start) ? undefined : comparedMix(own, names);
  const config = { ...tuned.result.config, compareMix };
  const result = { ...tuned.result, config };
  if (!trial?.strength || !result.testing) {
    // Where nothing was tested yet, the stages of the study say what comes next.
    return {
      result,
      findings:
        result.trials.length === 0 ? [] : inUnits(testedBlendFindings(result.trials), config.units),
    };
  }
  if (!isBuildable(config)) return { result, findings: [] };
  const computed = computeMix(config, blend, trial.strength, trial.compaction, {
    reasons: [result.testing.message],
    // The bench shows the limits of its own blend.
    doubts: mixDoubts(
      config,
      trial,
      result.trials,
      own.findings.filter(({ code }) => code !== "tested-blend-breaks-limits"),
    ),
  });
  const { mix, findings } = inUnits(computed, config.units);
  if (!mix) return { result, findings };
  const rammed = { curve: blend.curve, dryDensityKgM3: mix.density.valueKgM3 };
  const guidance = blendGuidance(open, rammed, tuned.curves);
  return { result: { ...result, guidance, mix }, mix, findings };
}

/** The study's own mix as the one to compare with. */
function comparedMix(
  { mix, blend }: StudyResult,
  names: { readonly name: string; readonly basis: string },
): CompareConfig | undefined {
  if (!mix || !blend) return undefined;
  return {
    ...names,
    sharesPct: Object.fromEntries(blend.shares.map(({ id, sharePct }) => [id, sharePct])),
    cementPct: mix.recipe.cementPct,
    densityKgM3: mix.density.valueKgM3,
    moisturePct: mix.recipe.targetMoisturePct,
  };
}
