import { checkGuidance } from "../guidance/checkGuidance.js";
import { GUIDANCE_ENTRIES } from "../guidance/guidanceEntries.js";
import type { Finding } from "../lab/finding.js";
import { STUDY_FILE } from "./parseStudyYaml.js";
import type { StudyConfig } from "./studyConfig.js";
import type { BlendStudy, GuidanceStudy, MaterialResult } from "./studyResult.js";

/** Holds the soils and the blend against the recommendation that the study names. */
export function computeGuidance(
  config: StudyConfig,
  materials: readonly MaterialResult[],
  blend: BlendStudy,
  findings: Finding[],
): GuidanceStudy[] | undefined {
  const entry = GUIDANCE_ENTRIES.find(({ id }) => id === config.guidance);
  if (!entry) {
    findings.push({
      severity: "error",
      code: "unknown-guidance",
      file: STUDY_FILE,
      column: "guidance",
      value: config.guidance,
      message: "There is no guidance entry of this name.",
      expected: `one of ${GUIDANCE_ENTRIES.map(({ id }) => id).join(", ")}`,
      wayOut: "Correct the name in study.yaml.",
    });
    return undefined;
  }
  return [
    ...materials
      .filter(({ role }) => role === "soil")
      .map(({ name, curve, limits }) => ({ name, check: checkGuidance(curve, entry, limits) })),
    { name: "Blend", check: checkGuidance(blend.curve, entry) },
  ];
}
