import { nearestName } from "../study/nearestName.js";
import type { NoteBlock } from "../tables/reportBlock.js";
import { say } from "../words/say.js";
import { judgeAnswer } from "./judgeAnswer.js";
import { workshopMemory } from "./workshopMemory.js";

/**
 * Checks an answer to an exercise that `openExercises` made known, and counts the try. What comes back is
 * shown by `show`: right and why, or what is wrong, then a hint, then the worked answer.
 *
 * Nothing that a cell can hold stops a notebook here: a blank answer, a text, NaN or a misspelt name of an
 * exercise is answered in words. Tries are kept in this process alone.
 *
 * @param answer `undefined`, `null` or an empty text for no answer.
 *
 * @example
 * const exercise = { kind: "number", id: "sand", question: "Sand?", unit: "%", value: 43, tolerance: { abs: 1 }, wrongTurns: [], hint: "Subtract.", worked: "70 − 27 = 43 %.", why: "Sand lies between two boundaries." };
 * const opened = openExercises([exercise]);
 * tryAnswer("sand", 43.4).text // => "sand. Right. Computed: 43.0 %. Sand lies between two boundaries."
 * tryAnswer("sands", 1).text // => "There is no exercise “sands”. Is sand meant?"
 */
export function tryAnswer(id: string, answer: unknown): NoteBlock {
  const note = (text: string): NoteBlock => ({ kind: "note", tone: "note", text });
  const exercise = workshopMemory.exercises.get(id);
  if (!exercise) {
    const known = [...workshopMemory.exercises.keys()];
    const near = nearestName(String(id), known);
    return note(
      known.length === 0
        ? say`No exercises are open yet. Run the cells above first, from the top.`
        : near === undefined
          ? say`There is no exercise “${String(id)}”. Open are: ${known.join(", ")}.`
          : say`There is no exercise “${String(id)}”. Is ${near} meant?`,
    );
  }
  const { verdict, tries, text } = judgeAnswer(exercise, answer, workshopMemory.tries.get(id) ?? 0);
  workshopMemory.tries.set(id, tries);
  // The list of exercises may stand far above the cell.
  return note(verdict === "blank" ? `${id}. ${exercise.question} ${text}` : `${id}. ${text}`);
}
