import { STUDY_FILE } from "../entries/parseStudyYaml.js";
import type { StudyConfig } from "../entries/studyConfig.js";
import type { Finding } from "../findings/finding.js";
import { nearestName } from "../words/nearestName.js";
import { phrase, say } from "../words/say.js";

/** A section of the technical appendix, by the key that a study names it with. */
export interface AppendixSection {
  readonly key: string;
  readonly title: string;
}

/**
 * The sections of the technical appendix that a clause may be answered by. In the notebook a section
 * carries its key as the tag `section-<key>` of the cell with its heading, in whatever language.
 *
 * Source: the project's own appendix.
 *
 * @example
 * APPENDIX_SECTIONS[0].key // => "purpose"
 */
export const APPENDIX_SECTIONS: readonly AppendixSection[] = [
  { key: "purpose", title: phrase`Purpose and scope` },
  { key: "materials", title: phrase`Materials and sampling` },
  { key: "methods", title: phrase`Methods` },
  { key: "findings", title: phrase`Findings of the checks` },
  { key: "grading", title: phrase`Grading of the materials` },
  { key: "grading-model", title: phrase`A model of the soil's grading` },
  { key: "classes", title: phrase`How sure the curve is, and the soil's classes` },
  { key: "consistency", title: phrase`Consistency and shrinkage` },
  { key: "compaction", title: phrase`Compaction` },
  { key: "guidance", title: phrase`Against published guidance` },
  { key: "blend", title: phrase`Blend` },
  { key: "strength", title: phrase`Strength and cement` },
  { key: "mix", title: phrase`Specified mix` },
  { key: "tolerances", title: phrase`Tolerances` },
  { key: "quality", title: phrase`Quality control` },
  { key: "comparison", title: phrase`Cement beside an all-concrete element` },
  { key: "validity", title: phrase`Limits of validity` },
  { key: "cautions", title: phrase`Cautions` },
  { key: "decisions", title: phrase`Decisions` },
  { key: "checklist", title: phrase`Clause checklist` },
  { key: "references", title: phrase`References` },
  { key: "review", title: phrase`Review` },
  { key: "analyses", title: phrase`Annex: analyses of the sheets` },
  { key: "readings", title: phrase`Annex: readings as given` },
  { key: "inputs", title: phrase`Annex: inputs and versions` },
];

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
