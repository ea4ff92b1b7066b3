import { formatPlain } from "../quantities/formatNumber.js";
import type { TableBlock } from "../tables/reportBlock.js";
import { say } from "../words/say.js";
import type { Exercise } from "./exercise.js";
import { workshopMemory } from "./workshopMemory.js";

/**
 * Makes exercises known to `tryAnswer` and lists their questions, with what kind of answer is asked for
 * and how near it must come. Opened again, an exercise begins again at its first try.
 *
 * @throws RangeError where two exercises have the same id.
 *
 * @example
 * const exercise = { kind: "number", id: "fines", question: "How much is finer than 0.063 mm?", unit: "%", value: 27, tolerance: { abs: 0.5 }, wrongTurns: [], hint: "", worked: "", why: "" };
 * openExercises([exercise]).rows // => [["fines", "How much is finer than 0.063 mm?", "a number, %, within 0.5"]]
 */
export function openExercises(exercises: readonly Exercise[]): TableBlock {
  exercises.forEach(({ id }, index) => {
    if (exercises.findIndex((other) => other.id === id) !== index) {
      throw new RangeError(`invalid \`exercises[${index}].id\`: ${id} twice; expected once`);
    }
  });
  for (const exercise of exercises) {
    workshopMemory.exercises.set(exercise.id, exercise);
    workshopMemory.tries.delete(exercise.id);
  }
  return {
    kind: "table",
    caption: say`Exercises`,
    columns: [{ header: say`Exercise` }, { header: say`Question` }, { header: say`Answer` }],
    rows: exercises.map((exercise) => [exercise.id, exercise.question, answerSort(exercise)]),
    notes: [
      say`First try: what is wrong. Second: a hint. Third: the worked answer. Nothing is recorded outside of this notebook.`,
    ],
  };
}

/** The sort of answer that is asked for, in words. */
function answerSort(exercise: Exercise): string {
  if (exercise.kind === "choice") {
    const list = exercise.options.map((option) => `"${option}"`).join(", ");
    return say`one of ${list}`;
  }
  const { tolerance, unit } = exercise;
  const { rel = 0, abs = 0 } = tolerance;
  // A count, or a step of a scale.
  if (rel === 0 && abs <= 0.001) {
    return unit === "" ? say`a number, exactly` : say`a number, ${unit}, exactly`;
  }
  const room = rel > 0 ? `${formatPlain(100 * rel)} %` : formatPlain(abs);
  const near =
    rel > 0 && abs > 0
      ? say`within ${room} or ${formatPlain(abs)}, whichever is more`
      : say`within ${room}`;
  return unit === "" ? say`a number, ${near}` : say`a number, ${unit}, ${near}`;
}
