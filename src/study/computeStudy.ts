import { readingSpread } from "../grading/readingSpread.js";
import { compareGuidance } from "../guidance/compareGuidance.js";
import { GUIDANCE_ENTRIES } from "../guidance/guidanceEntries.js";
import type { Finding } from "../lab/finding.js";
import { analyseCompaction } from "../soil/analyseCompaction.js";
import { computeBlend } from "./computeBlend.js";
import { computeGuidance, studyGuidance } from "./computeGuidance.js";
import { computeMaterial } from "./computeMaterial.js";
import { computeMix } from "./computeMix.js";
import { computeQuality } from "./computeQuality.js";
import { computeStrength } from "./computeStrength.js";
import { computeTexture } from "./computeTexture.js";
import { drawCurves } from "./drawCurves.js";
import { MADE_WITH } from "./madeWith.js";
import { ownFindings } from "./ownFindings.js";
import { reviewFindings } from "./reviewFindings.js";
import type { Study } from "./study.js";
import { RESULT_FORMAT, type StudyResult } from "./studyResult.js";
import { toleranceFindings } from "./toleranceFindings.js";

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
  const findings: Finding[] = [];
  const materials = study.materials.map((material) => computeMaterial(material, config, findings));
  const entries = studyGuidance(study, findings);
  const blend = computeBlend(config, materials, entries, findings);
  const compaction =
    study.compaction &&
    analyseCompaction(study.compaction, { particleDensityKgM3: blend?.particleDensityKgM3 });
  if (compaction) findings.push(...compaction.findings);
  const strength = computeStrength(study, findings);
  const mix = blend && strength && computeMix(config, blend, strength, compaction, findings);
  const quality = strength && computeQuality(config, strength, mix, study.siteBlocks, findings);
  if (strength) findings.push(...toleranceFindings({ config, mix, compaction, strength }));
  findings.push(...reviewFindings(config));
  const told = [...reading, ...ownFindings(config, findings)];
  if (!blend || !strength || told.some(({ severity }) => severity === "error")) {
    return { findings: told };
  }
  const drawn = drawCurves(
    study,
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
      strength,
      mix,
      ...(quality ? { quality } : {}),
      inputs: study.inputs,
      sheets: study.sheets,
    },
  };
}
