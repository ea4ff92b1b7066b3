import { mean } from "simple-statistics";
import { CEMENT_CARBON_FACTORS } from "../batch/carbonFactors.js";
import { cementComparison } from "../batch/cementComparison.js";
import { mixCost } from "../batch/mixCost.js";
import { recipe } from "../batch/recipe.js";
import { volumeParts } from "../batch/volumeParts.js";
import { wallQuantities } from "../batch/wallQuantities.js";
import type { Finding } from "../lab/finding.js";
import type { CompactionAnalysis } from "../soil/compactionAnalysis.js";
import { say } from "../words/say.js";
import { STUDY_FILE } from "./parseStudyYaml.js";
import type { StudyConfig } from "./studyConfig.js";
import type { BlendStudy, CompactedDensity, MixStudy, StrengthStudy } from "./studyResult.js";

/** The mix to specify, and what the element needs of it; or findings that say what is missing for it. */
export function computeMix(
  config: StudyConfig,
  blend: BlendStudy,
  strength: StrengthStudy,
  compaction: CompactionAnalysis | undefined,
  findings: Finding[],
): MixStudy | undefined {
  const density = compactedDensity(strength, compaction);
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
  const quantities = wallQuantities(config.element, {
    recipe: batch,
    compactedDryDensityKgM3: density.valueKgM3,
    bagMassKg: config.cement.bagMassKg,
    file: STUDY_FILE,
  });
  findings.push(...quantities.findings);
  const { amounts } = quantities;
  if (!amounts) return undefined;
  const priced = config.cement.price !== undefined || config.materials.some(({ price }) => price);
  const cost = priced
    ? mixCost(
        amounts.mix,
        {
          ...Object.fromEntries(config.materials.map(({ id, price }) => [id, price])),
          cement: config.cement.price,
        },
        { file: STUDY_FILE },
      )
    : undefined;
  if (cost) findings.push(...cost.findings);
  return {
    recipe: batch,
    parts: volumeParts(batch),
    density,
    quantities: amounts,
    cost,
    comparison: cementComparison({
      earthVolumeM3: amounts.netVolumeM3,
      earthCementKg: amounts.cementKgM3 * amounts.netVolumeM3,
      carbonFactor: CEMENT_CARBON_FACTORS[0],
    }),
  };
}

/** The blocks show what the rammed mix weighs; the compaction test stands in where none was weighed. */
function compactedDensity(
  { specimens, fit }: StrengthStudy,
  compaction: CompactionAnalysis | undefined,
): CompactedDensity | undefined {
  const used = new Set(fit.points.map(({ id }) => id));
  const densities = specimens.flatMap(({ id, dryDensityKgM3 }) =>
    used.has(id) && dryDensityKgM3 !== undefined ? [dryDensityKgM3] : [],
  );
  if (densities.length > 0) {
    return {
      valueKgM3: mean(densities),
      basis: say`mean dry density of ${densities.length} blocks of ${fit.ageDays} days`,
    };
  }
  return compaction?.peak
    ? {
        valueKgM3: compaction.peak.maximumDryDensityKgM3,
        basis: say`maximum dry density of the compaction test`,
      }
    : undefined;
}
