import { say } from "../words/say.js";
import { acceptedRange } from "./acceptedRange.js";
import type { Exercise } from "./exercise.js";
import { readAnswer } from "./readAnswer.js";
import { recogniseTurn } from "./recogniseTurn.js";
import { withUnit } from "./withUnit.js";

export interface Judgement {
  readonly verdict: "right" | "wrong" | "blank" | "unreadable";
  /** Tries so far, this one counted where it was an answer. */
  readonly tries: number;
  /** For the person who answered. */
  readonly text: string;
}

/** From this wrong try on, the worked answer is given. */
const WORKED_AT_TRY = 3;

/**
 * Judges an answer: right and why; or what is wrong with it, at the second try with a hint, from the
 * third on with the worked answer. A blank, and a value of the wrong sort, is no try.
 *
 * @param triesBefore default 0.
 * @throws RangeError for a tolerance below 0. Source: own choice of teaching.
 *
 * @example
 * const exercise = { kind: "number", id: "fines", question: "Fines?", unit: "%", value: 27, tolerance: { abs: 0.5 }, wrongTurns: [], hint: "Count what was washed out.", worked: "100 (1 − 876 / 1200) = 27 %.", why: "All that passes is fines." };
 * judgeAnswer(exercise, 27.2).text // => "Right. Computed: 27.0 %. All that passes is fines."
 * judgeAnswer(exercise, 0.27, 1).text // => "Not yet. This is a fraction, and percent are asked for: multiply by 100. A hint: Count what was washed out."
 * judgeAnswer(exercise, undefined, 1) // => { verdict: "blank", tries: 1, text: "No answer yet. Write it into the cell above in place of undefined and run the cell again." }
 */
export function judgeAnswer(exercise: Exercise, answer: unknown, triesBefore = 0): Judgement {
  const read = readAnswer(exercise, answer);
  if (read.kind === "blank") {
    return {
      verdict: "blank",
      tries: triesBefore,
      text: say`No answer yet. Write it into the cell above in place of undefined and run the cell again.`,
    };
  }
  if (read.kind === "unreadable") {
    return { verdict: "unreadable", tries: triesBefore, text: read.text };
  }
  const tries = triesBefore + 1;
  const wrong = wrongWords(exercise, read.value);
  if (wrong === undefined) {
    const { value, why } = exercise;
    const text =
      exercise.kind === "choice"
        ? say`Right. ${why}`
        : say`Right. Computed: ${withUnit(value as number, exercise.unit)}. ${why}`;
    return { verdict: "right", tries, text };
  }
  const text =
    tries >= WORKED_AT_TRY
      ? say`Not yet. ${wrong} Worked: ${exercise.worked}`
      : tries === WORKED_AT_TRY - 1
        ? say`Not yet. ${wrong} A hint: ${exercise.hint}`
        : say`Not yet. ${wrong}`;
  return { verdict: "wrong", tries, text };
}

/** What is wrong, or nothing where the answer is accepted. */
function wrongWords(exercise: Exercise, answer: number | string): string | undefined {
  if (exercise.kind === "choice") {
    if (answer === exercise.value) return undefined;
    return (
      exercise.wrongTurns.find(({ value }) => value === answer)?.text ??
      say`That is not what the data say.`
    );
  }
  const { low, high } = acceptedRange(exercise);
  const given = answer as number;
  return given >= low && given <= high ? undefined : recogniseTurn(exercise, given);
}
