import { bandFindings } from "../blend/band.js";
import { checkBlend } from "../blend/check.js";
import { difference, limitName } from "../blend/conflict.js";
import type { BlendDesign } from "../blend/description.js";
import { type BlendInput, designBlend, MIN_SHARE_PCT } from "../blend/design.js";
import { limitRows, limitValue } from "../blend/limits.js";
import {
  type BlendedCurve,
  type BlendMaterial,
  blendCurve,
  measuredTopMm,
} from "../blend/material.js";
import {
  type BucketChange,
  bucketSensitivity,
  type PracticalParts,
  practicalParts,
} from "../blend/parts.js";
import { type Robustness, robustness } from "../blend/robustness.js";
import type { BandTargetPoint, BlendTarget } from "../blend/target.js";
import { relaxLimits } from "../blend/tradeoffs.js";
import type { MaterialConfig, StudyConfig, TargetConfig } from "../entries/studyConfig.js";
import { trialShares } from "../entries/trials.js";
import { type Finding, finding, findingIf, hasErrors, STUDY_FILE } from "../findings/finding.js";
import { characteristicSizes } from "../grading/characteristics.js";
import { boundariesOf, fractions } from "../grading/fractions.js";
import type { BandPoint, GuidanceEntry } from "../guidance/entry.js";
import { formatFixed, formatNumber } from "../quantities/format.js";
import { joinTexts, say, type Text } from "../words/message.js";
import type { Study } from "./study.js";
import type { BlendStudy, MaterialResult, StudyResult } from "./studyResult.js";

/** More unmeasured fines than this make the fine end of the blend a guess; common practice, no source. */
const UNMEASURED_FINES_LIMIT_PCT = 5;
/** Enough for a probability to about one point. */
const ROBUSTNESS_DRAWS = 2000;

/**
 * The blend that the study proposes, and the one that is to be built: the same, or with `mix-from` that of
 * the trial. What stands in the way of a proposal does not stop a study that builds a tested blend. Without a
 * target the blend is the one whose shares are given: by `mix.shares`, by `mix-from`, or by a single material.
 */
export function computeBlends(
  study: Pick<Study, "config" | "trials">,
  materials: readonly MaterialResult[],
  entries: readonly GuidanceEntry[],
): ComputedBlend & { readonly proposed?: BlendStudy } {
  const { config, trials } = study;
  // The shares are of all materials, so that each must have a curve.
  if (materials.length < config.materials.length) return { findings: [] };
  const set = config.specified && trialShares(config, config.specified);
  const trial = trials.find(({ entry }) => entry.id === config.mixFrom);
  const tested = trial && trialShares(config, trial.entry);
  if (!hasTarget(config)) {
    const column = !set && tested ? "mix-from" : "mix.shares";
    const given = set ?? tested ?? wholeOf(config);
    if (!given) return { findings: [] };
    const { blend, findings } = unaimedBlend(config, given, materials, entries, column);
    return { proposed: blend, blend, findings };
  }
  const { blend: proposed, findings } = set
    ? fixedBlend(config, set, materials, entries, "mix.shares")
    : computeBlend(config, materials, entries);
  if (set || !tested) return { proposed, blend: proposed, findings };
  return { proposed, ...fixedBlend(config, tested, materials, entries, "mix-from") };
}

interface ComputedBlend {
  readonly blend?: BlendStudy;
  readonly findings: readonly Finding[];
}

/** The blend of shares that are set, whatever limits it breaks: those are told. */
function fixedBlend(
  config: AimedConfig,
  sharesPct: readonly number[],
  materials: readonly MaterialResult[],
  entries: readonly GuidanceEntry[],
  column: "mix-from" | "mix.shares",
): ComputedBlend {
  const fixed = {
    ...config,
    // No choice is left but these shares.
    materials: config.materials.map((material, index) => ({
      ...material,
      minSharePct: sharesPct[index],
      maxSharePct: sharesPct[index],
    })),
    limits: [],
    maxMaterials: undefined,
  };
  const { blend, findings } = computeBlend(fixed, materials, entries);
  if (!blend) return { findings };
  const input = blendInput(fixed, materials, entries);
  return { blend, findings: [...findings, ...brokenLimits(config, sharesPct, input, column)] };
}

/** The blend of given shares where nothing was aimed at: nothing of it tells of a target. */
function unaimedBlend(
  config: StudyConfig,
  sharesPct: readonly number[],
  materials: readonly MaterialResult[],
  entries: readonly GuidanceEntry[],
  column: "mix-from" | "mix.shares",
): ComputedBlend {
  // It is what it is to be.
  const target = { kind: "curve", points: blendOf(materials, sharesPct).curve.points } as const;
  const aimed = { ...config, target };
  const { blend, findings } = fixedBlend(aimed, sharesPct, materials, entries, column);
  if (!blend) return { findings };
  const { target: _t, rmsDifferencePct: _r, worst: _w, ...given } = blend;
  return { blend: { ...given, points: [], score: [] }, findings };
}

/** What has shares of the materials, in their order. */
export interface Shared {
  readonly shares: readonly { readonly sharePct: number }[];
}

/** The shares of a blend, percent of the dry mass of soil and aggregate. */
export function sharesOf({ shares }: Shared): number[] {
  return shares.map(({ sharePct }) => sharePct);
}

/** Of a single material every blend is the whole. */
export function wholeOf({ materials }: Pick<StudyConfig, "materials">): number[] | undefined {
  return materials.length === 1 ? [100] : undefined;
}

/** The curve of the materials at some shares. */
export function blendOf(
  materials: readonly Pick<MaterialResult, "curve">[],
  sharesPct: readonly number[],
): BlendedCurve {
  return blendCurve(materials.map(({ curve }, index) => ({ curve, sharePct: sharesPct[index] })));
}

/** A study with what its blend is computed against. */
type AimedConfig = Omit<StudyConfig, "target"> & {
  readonly target: TargetConfig | Extract<BlendTarget, { readonly kind: "curve" }>;
};

/** A study that says what its blend aims at. */
export type TargetedConfig = StudyConfig & { readonly target: TargetConfig };

/** Whether a study says what its blend aims at. */
export function hasTarget(config: StudyConfig): config is TargetedConfig {
  return config.target !== undefined;
}

/** Where a blend that is set leaves what the study asks of a blend, or cannot be held against it. */
function brokenLimits(
  { materials, limits, maxMaterials = materials.length }: AimedConfig,
  sharesPct: readonly number[],
  input: BlendInput,
  column: "mix-from" | "mix.shares",
): Finding[] {
  const place = { file: STUDY_FILE, column };
  const told = (ofTested: Text, ofSet: Text) => (column === "mix-from" ? ofTested : ofSet);
  const breaks = (isSo: boolean, message: Text, expected: Text) =>
    findingIf(isSo, place, "warning", "tested-blend-breaks-limits", {
      message,
      expected,
      remedy: say`Build another blend, or loosen what the study asks for.`,
    });
  const used = sharesPct.filter((share) => share > 0);
  // A material that the blend has none of does not matter to its limits.
  const usedMaterials = input.materials.filter((_, index) => sharesPct[index] > 0);
  return [
    ...materials.flatMap(({ name, minSharePct, maxSharePct }, index) => {
      const share = sharesPct[index];
      return breaks(
        share < minSharePct - 1e-9 || share > maxSharePct + 1e-9,
        told(
          say`The tested blend has ${formatFixed(share, 1)} % of ${name}.`,
          say`The blend as it is set has ${formatFixed(share, 1)} % of ${name}.`,
        ),
        say`${formatNumber(minSharePct, 3)} to ${formatNumber(maxSharePct, 3)} %, as the study asks`,
      );
    }),
    ...breaks(
      used.length > maxMaterials,
      told(
        say`The tested blend has ${used.length} materials.`,
        say`The blend as it is set has ${used.length} materials.`,
      ),
      say`at most ${maxMaterials} materials, as the study asks`,
    ),
    // Each by itself: one that cannot be judged hides no other.
    ...limits.flatMap((limit): Finding[] => {
      const alone = { ...input, materials: usedMaterials, limits: [limit] };
      const blind = checkBlend(alone).filter(({ severity }) => severity === "error");
      if (blind.length > 0) {
        const why = joinTexts(
          blind.map(({ message }) => message),
          " ",
        );
        const words = {
          message: told(
            say`It is not known whether the tested blend keeps a limit of the study. ${why}`,
            say`It is not known whether the blend as it is set keeps a limit of the study. ${why}`,
          ),
          expected: say`what the limit needs of each material of the blend`,
          remedy: say`Have it tested and enter it, or take the limit off.`,
        };
        return [finding(place, "warning", "limit-not-judged", words)];
      }
      return limitRows(usedMaterials, [limit]).flatMap((row) => {
        const over = limitValue(row, used) - row.limit;
        const by = row.side === "max" ? over : -over;
        const [name, most] = [limitName(row), difference(by, row.unit)];
        return breaks(
          by > 1e-9 * Math.max(1, Math.abs(row.limit)),
          told(
            say`The tested blend breaks a limit of the study: ${name}, by ${most}.`,
            say`The blend as it is set breaks a limit of the study: ${name}, by ${most}.`,
          ),
          say`the limits of the study`,
        );
      });
    }),
  ];
}

/** Mean density of the grains by volume: 100 / Σ (share / density); undefined where one is not told. */
export function particleDensity(
  { materials }: Pick<StudyConfig, "materials">,
  sharesPct: readonly number[],
): number | undefined {
  let volume = 0;
  for (const [index, { particleDensityKgM3 }] of materials.entries()) {
    if (sharesPct[index] === 0) continue;
    if (particleDensityKgM3 === undefined) return undefined;
    volume += sharesPct[index] / 100 / particleDensityKgM3;
  }
  return 1 / volume;
}

/** The blend nearest to the study's target within its limits, or findings that say why there is none. */
export function computeBlend(
  config: AimedConfig,
  materials: readonly MaterialResult[],
  entries: readonly GuidanceEntry[],
): ComputedBlend {
  const band = guidanceBandPoints(entries);
  if (config.target.kind === "band" && band.length === 0) return { findings: [noBand(config)] };
  const input = blendInput(config, materials, entries);
  const checked = checkBlend(input);
  if (hasErrors(checked)) return { findings: checked };
  const blend = designBlend(input);
  if (blend.status !== "ok") {
    const words = {
      message: blend.message,
      expected: say`limits that some blend of these materials can keep`,
      remedy: say`Loosen a limit, or add a material with what is missing.`,
    };
    const place = { file: STUDY_FILE, column: "limits" };
    return { findings: [...checked, finding(place, "warning", "no-blend", words)] };
  }
  const sharesPct = sharesOf(blend);
  const blended = blendOf(materials, sharesPct);
  return {
    blend: {
      ...blend,
      ...blended,
      relaxed: relaxLimits(input, blend),
      robustness: blendRobustness(config, input, blend, band),
      sizes: characteristicSizes(blended.curve, config.sizeReading),
      fractions: fractions(blended.curve, boundariesOf(config.units)),
      particleDensityKgM3: particleDensity(config, sharesPct),
    },
    findings: [
      ...checked,
      ...farFromTarget(blend),
      ...traceFindings(config, blend),
      ...bandFindings(input, blend),
      ...unmeasuredFines(blended),
    ],
  };
}

function unmeasuredFines({ unmeasuredFinesPct: pct }: BlendedCurve): Finding[] {
  const place = { file: STUDY_FILE, column: "materials", value: say`${formatFixed(pct, 1)} %` };
  return findingIf(pct > UNMEASURED_FINES_LIMIT_PCT, place, "warning", "unmeasured-fines", {
    message: say`Much of the blend's fines comes from materials without a hydrometer test.`,
    expected: say`at most ${UNMEASURED_FINES_LIMIT_PCT} % of the blend`,
    remedy: say`Test the fines of the material that brings most of them.`,
  });
}

function noBand({ guidance }: Pick<StudyConfig, "guidance">): Finding {
  const place = { file: STUDY_FILE, column: "target.band", value: "guidance" };
  return finding(place, "error", "no-band", {
    message:
      guidance === undefined
        ? say`The study names no guidance and no envelope, so there is no band.`
        : say`The guidance that the study names limits no passing, so there is no band.`,
    expected: say`a guidance entry with limits of passing, or an envelope sheet`,
    remedy: say`Name another entry, bring an envelope, or give an exponent and a top size.`,
  });
}

/** Root-mean-square distance from which a blend is hardly the target that was asked for; common practice, no source. */
const FAR_FROM_TARGET_PCT = 10;

function farFromTarget({ rmsDifferencePct: rmsPct }: BlendDesign): Finding[] {
  const value = say`${formatFixed(rmsPct, 1)} points`;
  const place = { file: STUDY_FILE, column: "target", value };
  return findingIf(rmsPct > FAR_FROM_TARGET_PCT, place, "warning", "blend-far-from-target", {
    message: say`The blend misses the target by ${formatFixed(rmsPct, 1)} percentage points in the root mean square.`,
    expected: say`at most ${FAR_FROM_TARGET_PCT} points (common practice, no source)`,
    remedy: say`Add a material with the sizes that are missing, loosen a limit, or choose another target.`,
  });
}

/** Materials that the blend leaves out, and those of which it has hardly any. */
function traceFindings(
  { materials }: Pick<StudyConfig, "materials">,
  blend: BlendDesign,
): Finding[] {
  const expected = say`a share of at least ${MIN_SHARE_PCT} % of the dry mass: less cannot be weighed on site`;
  return materials.flatMap(({ id, name, minSharePct, maxSharePct }, index): Finding[] => {
    const value = say`${formatNumber(blend.shares[index].sharePct, 3)} %`;
    const at = { file: STUDY_FILE, column: `materials.${index}.share` };
    const isLeftOut = blend.notUsed.includes(id) && maxSharePct > 0;
    const isTrace = !isLeftOut && blend.hardlyUsed.includes(id);
    return [
      ...findingIf(isLeftOut, { ...at, value: name }, "note", "material-not-used", {
        message: say`${name} is not used: the best blend has none of it, or less than can be weighed.`,
        expected,
        remedy: say`Leave it out of the study, or give it a smallest share if it is to be used.`,
      }),
      ...findingIf(isTrace, { ...at, value }, "warning", "material-hardly-used", {
        message:
          minSharePct > 0
            ? say`The study asks for hardly any ${name}.`
            : say`The limits or the band cannot do without ${name}, though hardly any of it is needed.`,
        expected,
        remedy: say`Loosen what asks for it, or give it a larger smallest share.`,
      }),
    ];
  });
}

/** How often the blend keeps to the band, where the study says how its materials vary. */
function blendRobustness(
  config: Pick<StudyConfig, "materials" | "seed">,
  input: BlendInput,
  blend: BlendDesign,
  band: readonly BandTargetPoint[],
): Robustness | undefined {
  const variation = config.materials.flatMap(({ id, finesPlusMinusPct, batchingPlusMinusPct }) =>
    finesPlusMinusPct === undefined && batchingPlusMinusPct === undefined
      ? []
      : [{ id, finesPlusMinusPct, batchingPlusMinusPct }],
  );
  if (variation.length === 0 || band.length === 0) return undefined;
  const varied = input.materials.filter(
    ({ id }) => !blend.notUsed.includes(id) && variation.some((entry) => entry.id === id),
  );
  const finest = Math.max(0, ...varied.map(({ curve }) => curve.points[0].sizeMm));
  const coarsest = measuredTopMm(input.materials.map(({ curve }) => curve));
  const measured = band.filter(({ sizeMm }) => sizeMm >= finest && sizeMm <= coarsest);
  if (measured.length === 0) return undefined;
  return robustness({
    materials: input.materials,
    sharesPct: sharesOf(blend),
    band: measured,
    variation,
    draws: ROBUSTNESS_DRAWS,
    seed: config.seed,
  });
}

/** The band of the first entry that limits the passing of the whole; limits of a part of it are no band. */
export function guidanceBandPoints(entries: readonly GuidanceEntry[]): readonly BandPoint[] {
  const bands = entries.filter(({ ofPassingMm }) => ofPassingMm === undefined);
  return bands.find(({ points }) => points.length > 0)?.points ?? [];
}

/** The blending problem that a study states. */
export function blendInput(
  config: AimedConfig,
  materials: readonly MaterialResult[],
  entries: readonly GuidanceEntry[],
): BlendInput {
  return {
    materials: materials.map((material, index) => blendMaterial(config.materials[index], material)),
    target:
      config.target.kind === "band"
        ? { kind: "band", aim: config.target.objective, points: guidanceBandPoints(entries) }
        : config.target,
    limits: config.limits,
    maxMaterials: config.maxMaterials,
  };
}

/**
 * Whether the blend of a study was sought for a target: then it has how far it lies from that target,
 * and whole parts or buckets can be sought for it. Shares set by hand without a target have neither.
 *
 * @example
 * const setByHand = { shares: [{ id: "soil", sharePct: 100 }] };
 * isAimed(setByHand) // => false
 */
export function isAimed(blend: BlendStudy): blend is BlendStudy & BlendDesign {
  return blend.target !== undefined;
}

/**
 * The blending problem of a computed study, for a notebook that goes on with it: other targets and
 * limits, a frontier, a map of three materials.
 *
 * @throws TypeError where the study has no target, or a material without a curve.
 */
export function blendInputOf({ config, materials, guidance }: StudyResult): BlendInput {
  if (!hasTarget(config) || materials.length < config.materials.length) {
    throw new TypeError(
      "invalid study: it states no blending problem; expected a target, and a sieve sheet of each material",
    );
  }
  return blendInput(
    config,
    materials,
    guidance.map(({ check }) => check.entry),
  );
}

/** A blend in whole parts. */
export interface BlendInParts {
  readonly parts: PracticalParts;
  /** What one part more or less of each material does; empty where no whole parts were found. */
  readonly miscounted: readonly BucketChange[];
}

/**
 * The blend of a study in whole parts, and what a miscount does to it: parts are buckets where the loose density
 * of every material was entered, else equal masses. Undefined where the blend was sought for no target.
 */
export function blendInParts(result: StudyResult): BlendInParts | undefined {
  const { blend } = result;
  if (!blend || !isAimed(blend)) return undefined;
  const input = blendInputOf(result);
  const loose = result.config.materials.map(
    ({ looseBulkDensityKgM3 = 0, bulkingPct = 0 }) => looseBulkDensityKgM3 / (1 + bulkingPct / 100),
  );
  const byBucket = loose.every((density) => density > 0);
  const parts = practicalParts(
    input,
    blend,
    byBucket ? { looseDryDensityKgM3: loose } : { by: "mass" },
  );
  const counts = parts.materials.map(({ parts: count }) => count);
  const massOfPart = byBucket ? loose : loose.map(() => 1);
  const miscounted =
    parts.status === "ok" ? bucketSensitivity(input, blend, counts, massOfPart) : [];
  return { parts, miscounted };
}

/** A material as blending needs it; without a limits sheet sand and gravel count as non-plastic. */
function blendMaterial(config: MaterialConfig, { curve, limits }: MaterialResult): BlendMaterial {
  const { id, name, role, minSharePct, maxSharePct } = config;
  const plain = role === "soil" || limits ? undefined : 0;
  return {
    id,
    name,
    curve,
    minSharePct,
    maxSharePct,
    siteSoil: role === "soil",
    costPerT: costPerDryTonne(config),
    plasticityIndexPct: limits?.nonPlastic ? 0 : (limits?.plasticityIndexPct ?? plain),
    linearShrinkagePct: limits?.nonPlastic ? 0 : (limits?.linearShrinkagePct ?? plain),
  };
}

/** Price of the dry mass; undefined where it has none, or what turns its unit into dry mass is not told. */
function costPerDryTonne({
  price,
  moisturePct,
  bulkingPct = 0,
  looseBulkDensityKgM3,
}: MaterialConfig): number | undefined {
  if (!price) return undefined;
  if (price.per === "t") {
    return moisturePct === undefined ? undefined : price.amount * (1 + moisturePct / 100);
  }
  if (looseBulkDensityKgM3 === undefined) return undefined;
  return (price.amount * 1000 * (1 + bulkingPct / 100)) / looseBulkDensityKgM3;
}
