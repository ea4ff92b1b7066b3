import { mean } from "simple-statistics";
import type { CompactionAnalysis } from "../soil/compactionAnalysis.js";
import { say } from "../words/say.js";
import type { CompactedDensity, StrengthStudy } from "./studyResult.js";

/** The blocks show what the rammed mix weighs; the compaction test stands in where none was weighed. */
export function mixDensity(
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
      lowKgM3: Math.min(...densities),
      highKgM3: Math.max(...densities),
      basis: say`mean dry density of ${densities.length} blocks of ${fit.ageDays} days`,
    };
  }
  if (!compaction?.peak) return undefined;
  const valueKgM3 = compaction.peak.maximumDryDensityKgM3;
  return {
    ...{ valueKgM3, lowKgM3: valueKgM3, highKgM3: valueKgM3 },
    basis: say`maximum dry density of the compaction test`,
  };
}
