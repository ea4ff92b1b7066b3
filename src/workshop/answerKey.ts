import type { TableBlock } from "../blocks/block.js";
import { formatNumber } from "../quantities/format.js";
import { BLANK, numberColumn } from "../tables/cell.js";
import { tableOf } from "../tables/tableOf.js";
import { say, type Text } from "../words/message.js";
import { acceptedRange, type ChoiceExercise, type Exercise, withUnit } from "./exercise.js";

/**
 * The answers of exercises for the teacher: what was asked, what is right, what is accepted, and how it is worked.
 *
 * @param numbers of the exercises on the worksheet; default 1, 2 and so on.
 *
 * @example
 * const exercise = { kind: "number", id: "fines", question: "Fines?", unit: "%", value: 27, tolerance: { abs: 0.5 }, mistakes: [], hint: "", worked: "100 (1 − 876 / 1200) = 27 %.", why: "" };
 * renderAll(answerKey("Grading", [exercise]).rows) // => [["1", "Fines?", "27.0 %", "26.5 to 27.5", "100 (1 − 876 / 1200) = 27 %."]]
 */
export function answerKey(
  name: Text,
  exercises: readonly Exercise[],
  numbers: readonly Text[] = exercises.map((_, index) => String(index + 1)),
): TableBlock {
  return tableOf(
    say`Answers: ${name}`,
    exercises,
    [
      [numberColumn(say`No.`), (_, index) => numbers[index]],
      [say`Question`, ({ question }) => question],
      [numberColumn(say`Answer`), rightAnswer],
      [numberColumn(say`Accepted`), acceptedAnswers],
      [say`How`, ({ worked }) => worked],
    ],
    numbers.includes(BLANK) ? [say`No number: asked only in the notebook.`] : undefined,
  );
}

function rightAnswer(exercise: Exercise): Text {
  return exercise.kind === "choice"
    ? optionText(exercise, exercise.value)
    : withUnit(exercise.value, exercise.unit);
}

function acceptedAnswers(exercise: Exercise): Text {
  if (exercise.kind === "choice") return rightAnswer(exercise);
  const { low, high } = acceptedRange(exercise);
  const [from, to] = [formatNumber(low), formatNumber(high)];
  return from.number === to.number ? withUnit(exercise.value, "") : say`${from} to ${to}`;
}

/**
 * The mistakes that each exercise knows, with the answer that they lead to: for the teacher. Left out
 * are those that these data cannot tell from the right answer.
 *
 * @example
 * const exercise = { kind: "number", id: "fines", question: "Fines?", unit: "%", value: 27, tolerance: { abs: 0.5 }, mistakes: [{ value: 1, text: "The wash was forgotten." }, { value: 27.3, text: "Rounded early." }], hint: "", worked: "", why: "" };
 * renderAll(mistakesTable("Grading", [exercise]).rows) // => [["1", "1.00 %", "The wash was forgotten."]]
 */
export function mistakesTable(
  name: Text,
  exercises: readonly Exercise[],
  numbers: readonly Text[] = exercises.map((_, index) => String(index + 1)),
): TableBlock {
  return {
    kind: "table",
    caption: say`Common mistakes: ${name}`,
    columns: [
      numberColumn(say`No.`),
      numberColumn(say`Leads to`),
      { header: say`What went wrong` },
    ],
    rows: exercises.flatMap((exercise, index) => {
      const number = numbers[index];
      if (exercise.kind === "choice") {
        return exercise.mistakes.map(({ value, text }) => [
          number,
          optionText(exercise, value),
          text,
        ]);
      }
      const { low, high } = acceptedRange(exercise);
      return exercise.mistakes
        .filter(({ value }) => value < low || value > high)
        .map(({ value, text }) => [number, withUnit(value, exercise.unit), text]);
    }),
    notes: [
      say`Beside these, slips of the decimal point, of the unit, of the sign, of a fraction for percent and of a quotient turned round are known in every exercise.`,
    ],
  };
}

function optionText({ options }: ChoiceExercise, wanted: string): Text {
  return options.find(({ key }) => key === wanted)?.text ?? wanted;
}
