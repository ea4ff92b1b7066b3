import { ANNEX_KEYS, type AnnexKey } from "../entries/report.js";
import type { StudyConfig } from "../entries/studyConfig.js";
import { type Finding, findingIf, STUDY_FILE } from "../findings/finding.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { nearestName } from "../words/nearestName.js";
import type { StudyResult } from "./studyResult.js";

/** A section of the technical appendix, by the key that a study names it with. */
export interface AppendixSection {
  readonly key: string;
  readonly title: Text;
}

/**
 * What the annexes of the technical appendix are called.
 *
 * Source: the project's own appendix.
 */
export const ANNEX_TITLES: Readonly<Record<AnnexKey, Text>> = {
  calculations: say`Worked calculations`,
  findings: say`Findings of the checks`,
  analyses: say`Analyses of the sheets`,
  readings: say`Readings as given`,
  regression: say`Checks of the regression`,
  trials: say`Trial blocks as they were seen`,
  guidance: say`Published guidance compared`,
  resampling: say`Uncertainty of the curve, and the soil's classes`,
  models: say`Models of the grading`,
  alternatives: say`Other blends and mixes`,
  quantities: say`Quantities`,
  cost: say`Cost and carbon`,
  inputs: say`Inputs and versions`,
  code: say`The computation`,
};

/**
 * The sections of the technical appendix that a clause may be answered by. In the notebook a section
 * carries its key as the tag `section-<key>` of the cell with its heading, in whatever language.
 *
 * Source: the project's own appendix.
 *
 * @example
 * APPENDIX_SECTIONS[0].key // => "answer"
 */
export const APPENDIX_SECTIONS: readonly AppendixSection[] = [
  { key: "answer", title: say`The mix at a glance` },
  { key: "purpose", title: say`Purpose and scope` },
  { key: "materials", title: say`Materials and sampling` },
  { key: "methods", title: say`Methods` },
  { key: "grading", title: say`Grading of the materials` },
  { key: "consistency", title: say`Consistency and shrinkage` },
  { key: "blend", title: say`Blend` },
  { key: "compaction", title: say`Compaction` },
  { key: "strength", title: say`Strength and cement` },
  { key: "mix", title: say`Mix and tolerances` },
  { key: "tolerances", title: say`Tolerances` },
  { key: "quality", title: say`Quality control` },
  { key: "validity", title: say`Limits of validity` },
  { key: "cautions", title: say`Cautions` },
  { key: "checklist", title: say`Clause checklist` },
  { key: "decisions", title: say`Decisions` },
  { key: "references", title: say`References` },
  { key: "review", title: say`Review` },
  ...ANNEX_KEYS.map((key) => ({ key, title: ANNEX_TITLES[key] })),
];

/** What is wrong with the keys and ids that `checklist` and `sampling` name. */
export function reviewFindings({
  checklist = [],
  sampling = [],
  materials,
}: StudyConfig): Finding[] {
  const keys = APPENDIX_SECTIONS.map(({ key }) => key);
  const ids = materials.map(({ id }) => id);
  return [
    ...checklist.flatMap(({ answeredBy }, index) => {
      if (answeredBy === undefined) return [];
      const near = nearestName(answeredBy, keys);
      const column = `checklist.${index}.answered-by`;
      const place = { file: STUDY_FILE, column, value: answeredBy };
      return findingIf(!keys.includes(answeredBy), place, "warning", "unknown-section", {
        message: near
          ? say`No section of the appendix has this key; “${near}” may be meant.`
          : say`No section of the appendix has this key.`,
        expected: say`one of ${keys.join(", ")}`,
        remedy: say`Correct the key, or give a section of your own notebook the tag section-${answeredBy}.`,
      });
    }),
    ...sampling.flatMap(({ material }, index) => {
      const place = { file: STUDY_FILE, column: `sampling.${index}.material`, value: material };
      return findingIf(!ids.includes(material), place, "error", "unknown-material", {
        message: say`No material has this id.`,
        expected: say`one of ${ids.join(", ")}`,
        remedy: say`Correct the id in study.yaml.`,
      });
    }),
  ];
}

/**
 * What whoever reads an appendix for a permit would look for and not find, each with the entry that tells it.
 * Whether it is needed the local code and the licensed professional say.
 *
 * Source: own; common practice, no source.
 */
export function permitGaps({
  config,
  trials,
  blend,
}: Pick<StudyResult, "config" | "trials" | "blend">): Text[] {
  const { methods, sampling = [], strength, tolerances, quality, checklist = [] } = config;
  // What the blend does without need not be sampled.
  const unsampled = config.materials.filter(
    ({ id }) =>
      !blend?.shares.some((share) => share.id === id && share.sharePct === 0) &&
      !sampling.some(({ material }) => material === id),
  );
  const untold = trials.some(
    ({ strength: blocks, crushed, curing, shape }) =>
      blocks && (crushed === undefined || curing === undefined || shape === undefined),
  );
  const gaps: readonly (readonly [isOpen: boolean, words: Text])[] = [
    [config.place === undefined, say`where the element will stand: “place”`],
    [config.date === undefined, say`the date of the study: “date”`],
    [methods.length === 0, say`by which methods and standards the tests were made: “methods”`],
    [
      unsampled.length > 0,
      say`how and where samples were taken of ${joinTexts(unsampled.map(({ name }) => name))}: “sampling”`,
    ],
    [
      untold || strength.requirement?.crushed === undefined,
      say`in which state blocks were crushed, how they were cured, their shape, and the state that the requirement speaks of: “tested”, “strength.requirement”`,
    ],
    [tolerances === undefined, say`how far the work may deviate from the mix: “tolerances”`],
    [quality === undefined, say`how the work is watched and lots are judged: “quality”`],
    [checklist.length === 0, say`which clause of the code is answered where: “checklist”`],
  ];
  return gaps.flatMap(([isOpen, words]) => (isOpen ? [words] : []));
}
