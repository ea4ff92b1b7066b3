import type { StudyConfig } from "../entries/studyConfig.js";
import type { Finding } from "../findings/finding.js";
import { OPTIMUM_ABOVE_ZERO_AIR } from "../soil/compaction/compactionTest.js";
import { fewBlocksFindings } from "../strength/modelFindings.js";
import { say, type Text } from "../words/message.js";
import type { MixTesting, StudyResult, TrialStudy } from "./studyResult.js";
import { crushedOtherwise, disagreeFindings } from "./trials.js";

/** Findings that whoever builds from a mix must read beside its numbers. */
const DOUBTS: ReadonlySet<string> = new Set([
  OPTIMUM_ABOVE_ZERO_AIR,
  "screened-not-corrected",
  "much-screened-off",
  "mixed-units",
  "blocks-against-compaction",
  "blocks-smaller-than-stones",
  "blocks-very-strong",
  "blocks-of-another-size",
  "grading-step",
  "same-test-readings",
  "blocks-of-another-shape",
  "blocks-made-outside-window",
  "blocks-too-dry-for-soaked",
  "tested-blend-breaks-limits",
  "limit-not-judged",
  "chemistry-outside",
  "sulphates-to-ask",
  "lift-too-deep",
]);

/**
 * What speaks against building from a mix as it stands: blocks crushed in another state than the requirement
 * speaks of, or in a state that is not told; tests of one blend that disagree; too few blocks or cement
 * contents; blocks or a compaction curve that contradict each other or themselves; sheets in two systems of
 * units; limits that the blend breaks; lifts too deep to ram. Every card, sheet and page that gives the mix
 * prints them.
 *
 * @param trial whose compaction and blocks the mix follows.
 * @param findings of its sheets, of the blend, its materials and the element.
 */
export function mixDoubts(
  config: StudyConfig,
  trial: TrialStudy,
  trials: readonly TrialStudy[],
  findings: readonly Finding[],
): Text[] {
  const { strength } = trial;
  return [
    ...stateDoubts(config, trial),
    ...disagreeFindings(config, trial, trials).map(({ message }) => message),
    ...(strength ? fewBlocksFindings(strength.fit, "").map(({ message }) => message) : []),
    ...findings.filter(({ code }) => DOUBTS.has(code)).map(({ message }) => message),
  ];
}

function stateDoubts(config: StudyConfig, trial: TrialStudy): Text[] {
  const { requirement } = config.strength;
  if (!requirement) return [];
  const otherwise = crushedOtherwise(config, trial);
  if (otherwise) return [otherwise];
  if (trial.crushed !== undefined && requirement.crushed !== undefined) return [];
  return [
    trial.crushed === undefined
      ? say`The study does not tell how the blocks of ${trial.name} were crushed, dry, moist or soaked: the cement content rests on it.`
      : say`The study does not tell of which blocks the requirement speaks, dry, moist or soaked: the cement content rests on it.`,
  ];
}

/** As `crushedOtherwise`, of the trial that the mix of a result follows. */
export function requirementNotShown({
  config,
  trials,
  testing,
}: Pick<StudyResult, "config" | "trials"> & { readonly testing?: MixTesting }): Text | undefined {
  const trial = trials.find(({ id }) => id === testing?.trial);
  return trial && crushedOtherwise(config, trial);
}
