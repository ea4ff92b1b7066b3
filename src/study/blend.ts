import { bandFindings, checkBlend } from "../blend/check.js";
import type { BlendDesign } from "../blend/description.js";
import { type BlendInput, designBlend, MIN_SHARE_PCT } from "../blend/design.js";
import { type BlendMaterial, blendCurve } from "../blend/material.js";
import { type Robustness, robustness } from "../blend/robustness.js";
import type { BandTargetPoint } from "../blend/target.js";
import { relaxLimits } from "../blend/tradeoffs.js";
import type { MaterialConfig, StudyConfig } from "../entries/studyConfig.js";
import { trialShares } from "../entries/trials.js";
import { type Finding, finding, hasErrors, STUDY_FILE } from "../findings/finding.js";
import { characteristicSizes } from "../grading/characteristics.js";
import { fractions } from "../grading/fractions.js";
import type { BandPoint, GuidanceEntry } from "../guidance/entry.js";
import { formatFixed, formatNumber } from "../quantities/format.js";
import { say } from "../words/message.js";
import type { Study } from "./study.js";
import type { BlendStudy, MaterialResult, StudyResult } from "./studyResult.js";

/** More unmeasured fines than this make the fine end of the blend a guess; common practice, no source. */
const UNMEASURED_FINES_LIMIT_PCT = 5;
/** Enough for a probability to about one point. */
const ROBUSTNESS_DRAWS = 2000;

/**
 * The blend that the study proposes, and the one that is to be built: the same, or with `mix-from` that of
 * the trial. What stands in the way of a proposal does not stop a study that builds a tested blend.
 */
export function computeBlends(
  study: Pick<Study, "config" | "trials">,
  materials: readonly MaterialResult[],
  entries: readonly GuidanceEntry[],
  findings: Finding[],
): { readonly proposed?: BlendStudy; readonly blend?: BlendStudy } {
  const { config, trials } = study;
  const trial = trials.find(({ entry }) => entry.id === config.mixFrom);
  const sharesPct = trial && trialShares(config, trial.entry);
  if (!sharesPct) {
    const proposed = computeBlend(config, materials, entries, findings);
    return { proposed, blend: proposed };
  }
  const proposed = computeBlend(config, materials, entries, []);
  const fixed = fixedShares(config, sharesPct);
  const free = { ...fixed, limits: [], maxMaterials: undefined };
  const blend = computeBlend(free, materials, entries, findings);
  findings.push(...brokenLimits(config, sharesPct, blendInput(fixed, materials, entries)));
  return { proposed, blend };
}

/** The study with no choice left but the shares of a tested blend. */
function fixedShares(config: StudyConfig, sharesPct: readonly number[]): StudyConfig {
  return {
    ...config,
    materials: config.materials.map((material, index) => ({
      ...material,
      minSharePct: sharesPct[index],
      maxSharePct: sharesPct[index],
    })),
  };
}

/** Where a tested blend leaves what the study asks of a blend. */
function brokenLimits(
  { materials }: StudyConfig,
  sharesPct: readonly number[],
  input: BlendInput,
): Finding[] {
  const place = { file: STUDY_FILE, column: "mix-from" };
  const remedy = say`Build another blend, or loosen what the study asks for.`;
  const ofShares = materials.flatMap(({ name, minSharePct, maxSharePct }, index): Finding[] => {
    const share = sharesPct[index];
    if (share >= minSharePct - 1e-9 && share <= maxSharePct + 1e-9) return [];
    return [
      finding(place, "warning", "tested-blend-breaks-limits", {
        message: say`The tested blend has ${formatFixed(share, 1)} % of ${name}.`,
        expected: say`${formatNumber(minSharePct, 3)} to ${formatNumber(maxSharePct, 3)} %, as the study asks`,
        remedy,
      }),
    ];
  });
  if (!input.limits?.length || hasErrors(checkBlend(input, STUDY_FILE))) return ofShares;
  const { conflict } = designBlend(input);
  const broken = conflict?.minBreach ?? [];
  return [
    ...ofShares,
    ...broken.map(({ label, by, unit }) =>
      finding(place, "warning", "tested-blend-breaks-limits", {
        message: say`The tested blend breaks a limit of the study: ${label}, by ${formatNumber(by, 3)} ${unit}.`,
        expected: say`the limits of the study`,
        remedy,
      }),
    ),
  ];
}

/** Mean density of the grains by volume: 100 / Σ (share / density). */
export function particleDensity(
  { materials }: Pick<StudyConfig, "materials">,
  sharesPct: readonly number[],
): number {
  const volume = materials.reduce(
    (sum, { particleDensityKgM3 }, index) => sum + sharesPct[index] / 100 / particleDensityKgM3,
    0,
  );
  return 1 / volume;
}

/** The blend nearest to the study's target within its limits, or findings that say why there is none. */
export function computeBlend(
  config: StudyConfig,
  materials: readonly MaterialResult[],
  entries: readonly GuidanceEntry[],
  findings: Finding[],
): BlendStudy | undefined {
  const band = guidanceBandPoints(entries);
  if (config.target.kind === "band" && band.length === 0) {
    findings.push({
      severity: "error",
      code: "no-band",
      file: STUDY_FILE,
      column: "target.band",
      value: "guidance",
      message: say`The guidance that the study names limits no passing, so there is no band.`,
      expected: say`a guidance entry with limits of passing, or an envelope sheet`,
      remedy: say`Name another entry, bring an envelope, or give an exponent and a top size.`,
    });
    return undefined;
  }
  const input = blendInput(config, materials, entries);
  const checked = [...checkBlend(input, STUDY_FILE), ...endFindings(materials)];
  findings.push(...checked);
  if (checked.some(({ severity }) => severity === "error")) return undefined;
  const blend = designBlend(input);
  if (blend.status !== "ok") {
    findings.push({
      severity: "error",
      code: "no-blend",
      file: STUDY_FILE,
      column: "limits",
      message: blend.message,
      expected: say`limits that some blend of these materials can keep`,
      remedy: say`Loosen a limit, or add a material with what is missing.`,
    });
    return undefined;
  }
  findings.push(...traceFindings(config, blend), ...bandFindings(input, blend, STUDY_FILE));
  const blended = blendCurve(
    materials.map(({ curve }, index) => ({ curve, sharePct: blend.shares[index].sharePct })),
  );
  if (blended.unmeasuredFinesPct > UNMEASURED_FINES_LIMIT_PCT) {
    findings.push({
      severity: "warning",
      code: "unmeasured-fines",
      file: STUDY_FILE,
      column: "materials",
      value: say`${formatFixed(blended.unmeasuredFinesPct, 1)} %`,
      message: say`Much of the blend's fines comes from materials without a hydrometer test.`,
      expected: say`at most ${UNMEASURED_FINES_LIMIT_PCT} % of the blend`,
      remedy: say`Test the fines of the material that brings most of them.`,
    });
  }
  return {
    ...blend,
    ...blended,
    relaxed: relaxLimits(input, blend),
    robustness: blendRobustness(config, input, blend, band),
    sizes: characteristicSizes(blended.curve),
    fractions: fractions(blended.curve),
    particleDensityKgM3: particleDensity(
      config,
      blend.shares.map(({ sharePct }) => sharePct),
    ),
  };
}

/** Materials that the blend leaves out, and those of which it has hardly any. */
function traceFindings({ materials }: StudyConfig, blend: BlendDesign): Finding[] {
  const expected = say`a share of at least ${MIN_SHARE_PCT} % of the dry mass: less cannot be weighed on site`;
  return materials.flatMap(({ id, name, minSharePct, maxSharePct }, index): Finding[] => {
    const { sharePct } = blend.shares[index];
    const at = { file: STUDY_FILE, column: `materials.${index}.share`, expected };
    const value = say`${formatNumber(sharePct, 3)} %`;
    if (blend.notUsed.includes(id) && maxSharePct > 0) {
      return [
        {
          severity: "note",
          code: "material-not-used",
          ...at,
          value: name,
          message: say`${name} is not used: the best blend has none of it, or less than can be weighed.`,
          remedy: say`Leave it out of the study, or give it a smallest share if it is to be used.`,
        },
      ];
    }
    if (!blend.hardlyUsed.includes(id)) return [];
    return [
      {
        severity: "warning",
        code: "material-hardly-used",
        ...at,
        value,
        message:
          minSharePct > 0
            ? say`The study asks for hardly any ${name}.`
            : say`The limits or the band cannot do without ${name}, though hardly any of it is needed.`,
        remedy: say`Loosen what asks for it, or give it a larger smallest share.`,
      },
    ];
  });
}

/** A curve that ends below 100 % says nothing of the sizes at which the others still go on. */
function endFindings(materials: readonly MaterialResult[]): Finding[] {
  const ends = materials.map(({ curve }) => curve.points[curve.points.length - 1]);
  const coarsest = Math.max(...ends.map(({ sizeMm }) => sizeMm));
  return materials.flatMap(({ name, sieve }, index): Finding[] => {
    const { sizeMm, passingPct } = ends[index];
    if (passingPct >= 100 - 1e-9 || sizeMm >= coarsest) return [];
    return [
      {
        severity: "error",
        code: "curve-ends-early",
        file: STUDY_FILE,
        column: "materials",
        value: name,
        message: say`The coarsest sieve, ${sieve.rows[0].label}, passes only ${formatFixed(passingPct, 1)} %: what is coarser was not measured.`,
        expected: say`a coarsest sieve that everything passes`,
        remedy: say`Add the next coarser sieve to the sheet, with 0 g retained.`,
      },
    ];
  });
}

/** How often the blend keeps to the band, where the study says how its materials vary. */
function blendRobustness(
  config: StudyConfig,
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
  const finest = Math.max(
    ...input.materials.map(({ curve, id }) =>
      !blend.notUsed.includes(id) && variation.some((entry) => entry.id === id)
        ? curve.points[0].sizeMm
        : 0,
    ),
  );
  const measured = band.filter(({ sizeMm }) => sizeMm >= finest);
  if (measured.length === 0) return undefined;
  return robustness({
    materials: input.materials,
    sharesPct: blend.shares.map(({ sharePct }) => sharePct),
    band: measured,
    variation,
    draws: ROBUSTNESS_DRAWS,
    seed: config.seed,
  });
}

/** The band of the first entry that limits passing. */
export function guidanceBandPoints(entries: readonly GuidanceEntry[]): readonly BandPoint[] {
  return entries.find(({ points }) => points.length > 0)?.points ?? [];
}

/** The blending problem that a study states. */
export function blendInput(
  config: StudyConfig,
  materials: readonly MaterialResult[],
  entries: readonly GuidanceEntry[],
): BlendInput {
  return {
    materials: materials.map((material, index) => blendMaterial(config.materials[index], material)),
    target:
      config.target.kind === "power"
        ? config.target
        : { kind: "band", aim: config.target.objective, points: guidanceBandPoints(entries) },
    limits: config.limits,
    maxMaterials: config.maxMaterials,
  };
}

/**
 * The blending problem of a computed study, for a notebook that goes on with it: other targets and
 * limits, a frontier, a map of three materials.
 */
export function blendInputOf({ config, materials, guidance }: StudyResult): BlendInput {
  return blendInput(
    config,
    materials,
    guidance.map(({ check }) => check.entry),
  );
}

/** A material as blending needs it; without a limits sheet sand and gravel count as non-plastic. */
function blendMaterial(config: MaterialConfig, { curve, limits }: MaterialResult): BlendMaterial {
  const { id, name, role, minSharePct, maxSharePct, price } = config;
  const plain = role === "soil" || limits ? undefined : 0;
  const perDryTonne =
    price &&
    (price.per === "t"
      ? price.amount * (1 + config.moisturePct / 100)
      : (price.amount * 1000 * (1 + (config.bulkingPct ?? 0) / 100)) / config.looseBulkDensityKgM3);
  return {
    id,
    name,
    curve,
    minSharePct,
    maxSharePct,
    siteSoil: role === "soil",
    costPerT: perDryTonne,
    plasticityIndexPct: limits?.nonPlastic ? 0 : (limits?.plasticityIndexPct ?? plain),
    linearShrinkagePct: limits?.nonPlastic ? 0 : (limits?.linearShrinkagePct ?? plain),
  };
}
