import type { Finding } from "../lab/finding.js";
import { say } from "../words/say.js";
import { APPENDIX_SECTIONS } from "./appendixSections.js";
import { nearestName } from "./nearestName.js";
import { STUDY_FILE } from "./parseStudyYaml.js";
import type { StudyConfig } from "./studyConfig.js";

/** What is wrong with the keys and ids that `checklist` and `sampling` name. */
export function reviewFindings({ checklist = [], sampling = [], materials }: StudyConfig) {
  const findings: Finding[] = [];
  const keys = APPENDIX_SECTIONS.map(({ key }) => key);
  checklist.forEach(({ answeredBy }, index) => {
    if (answeredBy === undefined || keys.includes(answeredBy)) return;
    const near = nearestName(answeredBy, keys);
    findings.push({
      ...{ severity: "warning", code: "unknown-section", file: STUDY_FILE },
      ...{ column: `checklist.${index}.answered-by`, value: answeredBy },
      message: near
        ? say`No section of the appendix has this key; “${near}” may be meant.`
        : say`No section of the appendix has this key.`,
      expected: say`one of ${keys.join(", ")}`,
      wayOut: say`Correct the key, or give a section of your own notebook the tag section-${answeredBy}.`,
    });
  });
  const ids = materials.map(({ id }) => id);
  sampling.forEach(({ material }, index) => {
    if (ids.includes(material)) return;
    findings.push({
      ...{ severity: "error", code: "unknown-material", file: STUDY_FILE },
      ...{ column: `sampling.${index}.material`, value: material },
      message: say`No material has this id.`,
      expected: say`one of ${ids.join(", ")}`,
      wayOut: say`Correct the id in study.yaml.`,
    });
  });
  return findings;
}
