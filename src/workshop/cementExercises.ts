import type { StudyResult } from "../study/studyResult.js";
import { blockExercises } from "./blockExercises.js";
import { boundExercises } from "./boundExercises.js";
import type { Exercise } from "./exercise.js";
import { fewerBlocks } from "./fewerBlocks.js";
import { fewerBlocksExercise } from "./fewerBlocksExercise.js";

/**
 * The exercises on cement and strength: load to strength, the line, the bound, the least cement rounded
 * up, and what three blocks would have said.
 *
 * @param study a computed study whose curve is the linear form.
 * @throws RangeError where the curve is not linear, or fewer than three contents were tested.
 */
export function cementExercises(study: Pick<StudyResult, "config" | "strength">): Exercise[] {
  const { config, strength } = study;
  const { requirement } = config.strength;
  return [
    ...blockExercises(study),
    ...boundExercises(study),
    fewerBlocksExercise(
      strength.leastCement,
      fewerBlocks(strength.specimens, requirement),
      requirement,
    ),
  ];
}
