import { type Finding, finding, STUDY_FILE } from "../findings/finding.js";
import { checkGuidance, guidanceFindings } from "../guidance/check.js";
import { envelopeEntry, type GuidanceEntry } from "../guidance/entry.js";
import { verdictProbability } from "../guidance/probability.js";
import { GUIDANCE_ENTRIES } from "../guidance/published/recommendations.js";
import { say } from "../words/message.js";
import { type DrawnCurves, drawLimits } from "./sampledCurves.js";
import type { Study } from "./study.js";
import type { BlendStudy, GuidanceStudy, MaterialResult } from "./studyResult.js";

/** The entries that a study is held against: its own envelope first, then the recommendation that it names. */
export function studyGuidance({ config, envelope }: Pick<Study, "config" | "envelope">): {
  readonly entries: readonly GuidanceEntry[];
  readonly findings: readonly Finding[];
} {
  const own = envelope ? [envelopeEntry(envelope)] : [];
  if (config.guidance === undefined) return { entries: own, findings: [] };
  const place = { file: STUDY_FILE, column: "guidance" };
  const entry = GUIDANCE_ENTRIES.find(({ id }) => id === config.guidance);
  if (entry) {
    // The study's sheets hold no test of organic matter, sulphate or salts.
    return { entries: [...own, entry], findings: guidanceFindings(entry, {}, place) };
  }
  return {
    entries: own,
    findings: [
      finding({ ...place, value: config.guidance }, "error", "unknown-guidance", {
        message: say`There is no guidance entry of this name.`,
        expected: say`one of ${GUIDANCE_ENTRIES.map(({ id }) => id).join(", ")}`,
        remedy: say`Correct the name in study.yaml.`,
      }),
    ],
  };
}

/** Holds the soils, and the blend where there is one, against each entry, and says how sure each verdict is. */
export function computeGuidance(
  entries: readonly GuidanceEntry[],
  materials: readonly MaterialResult[],
  blend: BlendStudy | undefined,
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
    ...(blend
      ? [
          {
            name: say`Blend`,
            check: checkGuidance(blend.curve, entry),
            probability: verdictProbability(blend.curve, drawn.blend, entry),
          },
        ]
      : []),
  ]);
}
