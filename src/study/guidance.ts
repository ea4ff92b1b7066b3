import { type Finding, STUDY_FILE } from "../findings/finding.js";
import { checkGuidance, guidanceFindings } from "../guidance/check.js";
import { envelopeEntry, type GuidanceEntry } from "../guidance/entry.js";
import { verdictProbability } from "../guidance/probability.js";
import { GUIDANCE_ENTRIES } from "../guidance/published/recommendations.js";
import { say } from "../words/message.js";
import { type DrawnCurves, drawLimits } from "./sampledCurves.js";
import type { Study } from "./study.js";
import type { BlendStudy, GuidanceStudy, MaterialResult } from "./studyResult.js";

/** The entries that a study is held against: its own envelope first, then the recommendation that it names. */
export function studyGuidance({ config, envelope }: Study, findings: Finding[]): GuidanceEntry[] {
  const entry = GUIDANCE_ENTRIES.find(({ id }) => id === config.guidance);
  if (!entry) {
    findings.push({
      severity: "error",
      code: "unknown-guidance",
      file: STUDY_FILE,
      column: "guidance",
      value: config.guidance,
      message: say`There is no guidance entry of this name.`,
      expected: say`one of ${GUIDANCE_ENTRIES.map(({ id }) => id).join(", ")}`,
      remedy: say`Correct the name in study.yaml.`,
    });
  } else {
    // The study's sheets hold no test of organic matter, sulphate or salts.
    findings.push(...guidanceFindings(entry, {}, { file: STUDY_FILE, column: "guidance" }));
  }
  return [...(envelope ? [envelopeEntry(envelope)] : []), ...(entry ? [entry] : [])];
}

/** Holds the soils and the blend against each entry, and says how sure each verdict is. */
export function computeGuidance(
  entries: readonly GuidanceEntry[],
  materials: readonly MaterialResult[],
  blend: BlendStudy,
  drawn: DrawnCurves,
  seed: number,
): GuidanceStudy[] {
  const soils = materials.flatMap(({ role, name, curve, limits }, index) => {
    if (role !== "soil") return [];
    const curves = drawn.materials[index];
    const drawnLimits = limits && drawLimits(limits, curves.length, seed);
    return [{ name, curve, curves, limits, drawnLimits }];
  });
  return entries.flatMap((entry) => [
    ...soils.map(({ name, curve, curves, limits, drawnLimits }) => ({
      name,
      check: checkGuidance(curve, entry, limits),
      probability: verdictProbability(curve, curves, entry, limits, drawnLimits),
    })),
    {
      name: say`Blend`,
      check: checkGuidance(blend.curve, entry),
      probability: verdictProbability(blend.curve, drawn.blend, entry),
    },
  ]);
}
