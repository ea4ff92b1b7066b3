import type { BlendMaterial } from "../blend/blendMaterial.js";
import type { BlendInput } from "../blend/designBlend.js";
import type { BandPoint, GuidanceEntry } from "../guidance/guidanceEntry.js";
import type { MaterialConfig, StudyConfig } from "./studyConfig.js";
import type { MaterialResult, StudyResult } from "./studyResult.js";

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
        : { kind: "band", aim: config.target.aim, points: guidanceBandPoints(entries) },
    limits: config.limits,
    mostMaterials: config.mostMaterials,
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
