import { carbonComparison } from "../batch/carbonComparison.js";
import { cementComparison } from "../batch/cementComparison.js";
import { elementFindings } from "../batch/elementFindings.js";
import { elementQuantities } from "../batch/elementQuantities.js";
import { recipe } from "../batch/recipe.js";
import { volumeParts } from "../batch/volumeParts.js";
import type { Finding } from "../lab/finding.js";
import type { CompactionAnalysis } from "../soil/compactionAnalysis.js";
import { say } from "../words/say.js";
import { compareFindings, compareMix } from "./compareMix.js";
import { mixDensity } from "./mixDensity.js";
import { CONCRETE_AGGREGATE, cementFactor, mixEmission, mixMoney } from "./mixSupply.js";
import { mixWater } from "./mixWater.js";
import { STUDY_FILE } from "./parseStudyYaml.js";
import type { StudyConfig } from "./studyConfig.js";
import type { BlendStudy, MixStudy, StrengthStudy } from "./studyResult.js";

/** The mix to specify, and what the element needs of it; or findings that say what is missing for it. */
export function computeMix(
  config: StudyConfig,
  blend: BlendStudy,
  strength: StrengthStudy,
  compaction: CompactionAnalysis | undefined,
  findings: Finding[],
): MixStudy | undefined {
  const entered = [...elementFindings(config.element, STUDY_FILE), ...compareFindings(config)];
  findings.push(...entered);
  if (entered.length > 0) return undefined;
  const density = mixDensity(strength, compaction);
  const { chosenCementPct } = strength;
  if (!compaction?.peak || !density || chosenCementPct === undefined) {
    findings.push({
      severity: "warning",
      code: "no-mix",
      file: STUDY_FILE,
      column: compaction?.peak ? "strength" : "compaction",
      message: say`No mix can be stated.`,
      expected: say`an optimum water content from a compaction test, and a least cement content`,
      wayOut: compaction?.peak
        ? say`See the finding on the least cement content.`
        : say`Add a compaction sheet whose points show a top.`,
    });
    return undefined;
  }
  const batch = recipe({
    materials: config.materials.map((material, index) => ({
      ...material,
      sharePct: blend.shares[index].sharePct,
    })),
    cementPct: chosenCementPct,
    cementBulkDensityKgM3: config.cement.looseBulkDensityKgM3,
    targetMoisturePct: compaction.peak.optimumWaterPct,
    batchDryMassKg: config.batchDryMassKg,
    file: STUDY_FILE,
  });
  findings.push(...batch.findings);
  const { amounts } = elementQuantities(config.element, {
    recipe: batch,
    density: { best: density.valueKgM3, low: density.lowKgM3, high: density.highKgM3 },
    bagMassKg: config.cement.bagMassKg,
    file: STUDY_FILE,
  });
  if (!amounts) return undefined;
  const cost = mixMoney(config, amounts.mix);
  if (cost) findings.push(...cost.findings);
  const carbon = mixEmission(config, amounts.mix);
  const { netVolumeM3, cementKgM3 } = amounts;
  const { concreteVolumeM3 = netVolumeM3, concreteCement } = config.carbon;
  const comparison = cementComparison({
    ...{ earthVolumeM3: netVolumeM3, earthCementKg: cementKgM3 * netVolumeM3 },
    ...{ concreteVolumeM3, concreteCement, carbonFactor: cementFactor(config) },
  });
  const mix = { recipe: batch, density, quantities: amounts, cost, carbon };
  return {
    ...mix,
    parts: volumeParts(batch),
    water: mixWater(batch, compaction, config.site.tolerancePct),
    comparison,
    carbonComparison: carbonComparison({
      ...{ carbon, wastePct: config.element.wastePct, concreteVolumeM3 },
      concreteCementCarbonKg: comparison.concreteCementCarbonKg,
      aggregate: CONCRETE_AGGREGATE,
    }),
    compared: compareMix(config, mix),
  };
}
