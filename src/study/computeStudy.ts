import { compareGuidance } from "../guidance/compareGuidance.js";
import { GUIDANCE_ENTRIES } from "../guidance/guidanceEntries.js";
import type { Finding } from "../lab/finding.js";
import { analyseCompaction } from "../soil/analyseCompaction.js";
import { computeBlend } from "./computeBlend.js";
import { computeGuidance, studyGuidance } from "./computeGuidance.js";
import { computeMaterial } from "./computeMaterial.js";
import { computeMix } from "./computeMix.js";
import { computeStrength } from "./computeStrength.js";
import { MADE_WITH } from "./madeWith.js";
import type { Study } from "./study.js";
import { RESULT_FORMAT, type StudyResult } from "./studyResult.js";

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
  const findings: Finding[] = [...reading];
  const materials = study.materials.map((material) => computeMaterial(material, config, findings));
  const entries = studyGuidance(study, findings);
  const blend = computeBlend(config, materials, entries, findings);
  const compaction =
    study.compaction &&
    analyseCompaction(study.compaction, { particleDensityKgM3: blend?.particleDensityKgM3 });
  if (compaction) findings.push(...compaction.findings);
  const strength = computeStrength(study, findings);
  const mix = blend && strength && computeMix(config, blend, strength, compaction, findings);
  const guidance = blend && computeGuidance(entries, materials, blend);
  if (!blend || !guidance || !strength || findings.some(({ severity }) => severity === "error")) {
    return { findings };
  }
  return {
    findings,
    result: {
      format: RESULT_FORMAT,
      madeWith: MADE_WITH,
      config,
      findings,
      materials,
      compaction,
      blend,
      guidance,
      guidanceComparison: compareGuidance(
        blend.curve,
        GUIDANCE_ENTRIES.filter(({ material }) => EARTH.has(material)),
      ),
      strength,
      mix,
      inputs: study.inputs,
      sheets: study.sheets,
    },
  };
}
