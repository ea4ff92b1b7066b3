import { blockExercises } from "./blockExercises.js";
import { boundExercises } from "./boundExercises.js";
import type { ClassStrength } from "./classStrength.js";
import type { Exercise } from "./exercise.js";
import { fewerBlocks } from "./fewerBlocks.js";
import { fewerBlocksExercise } from "./fewerBlocksExercise.js";

/**
 * The exercises on cement and strength: load to strength, the line, the bound, the least cement rounded
 * up, and what three blocks would have said.
 *
 * @param study a computed study whose curve is the linear form.
 * @throws RangeError where the curve is not linear, or fewer than three contents were tested.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const specimens = [block("A", 4, 1.5), block("B", 4, 1.7), block("C", 6, 2.4), block("D", 8, 2.9), block("E", 8, 3.1)];
 * const requirement = { strengthMpa: 2, ageDays: 28, statistic: "mean", confidence: 0.95, basis: "" };
 * const fit = fitStrength(specimens, { form: "linear", ageDays: 28 });
 * const study = { config: { strength: { requirement } }, strength: { specimens, fit, leastCement: leastCement(fit, requirement) } };
 * cementExercises(study).map(({ id }) => id) // => ["strength-on-the-line", "cement-by-the-line", "bound-of-one-block", "cement-to-weigh-out", "three-blocks"]
 */
export function cementExercises(study: ClassStrength): Exercise[] {
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
