import type { TableBlock } from "../blocks/block.js";
import { formatNumber } from "../quantities/format.js";
import { say } from "../words/message.js";
import { acceptedRange, type Exercise, withUnit } from "./exercise.js";

/**
 * The answers of exercises for the teacher: what is right, what is accepted, and how it is worked.
 *
 * @example
 * const exercise = { kind: "number", id: "fines", question: "Fines?", unit: "%", value: 27, tolerance: { abs: 0.5 }, wrongTurns: [], hint: "", worked: "100 (1 − 876 / 1200) = 27 %.", why: "" };
 * answerKey("Grading", [exercise]).rows // => [["fines", "27.0 %", "26.5 to 27.5", "100 (1 − 876 / 1200) = 27 %."]]
 */
export function answerKey(name: string, exercises: readonly Exercise[]): TableBlock {
  return {
    kind: "table",
    caption: say`Answers: ${name}`,
    columns: [
      { header: say`Exercise` },
      { header: say`Answer`, align: "right" },
      { header: say`Accepted`, align: "right" },
      { header: say`How` },
    ],
    rows: exercises.map((exercise) => {
      const { id, worked } = exercise;
      if (exercise.kind === "choice") return [id, exercise.value, exercise.value, worked];
      const { low, high } = acceptedRange(exercise);
      const [from, to] = [low, high].map((end) => formatNumber(end));
      const accepted = from === to ? withUnit(exercise.value, "") : say`${from} to ${to}`;
      return [id, withUnit(exercise.value, exercise.unit), accepted, worked];
    }),
  };
}

/**
 * The wrong turns that each exercise knows, with the answer that they lead to: for the teacher. Left out
 * are those that these data cannot tell from the right answer.
 *
 * @example
 * const exercise = { kind: "number", id: "fines", question: "Fines?", unit: "%", value: 27, tolerance: { abs: 0.5 }, wrongTurns: [{ value: 1, text: "The wash was forgotten." }, { value: 27.3, text: "Rounded early." }], hint: "", worked: "", why: "" };
 * wrongTurnsTable("Grading", [exercise]).rows // => [["fines", "1.00 %", "The wash was forgotten."]]
 */
export function wrongTurnsTable(name: string, exercises: readonly Exercise[]): TableBlock {
  return {
    kind: "table",
    caption: say`Common wrong turns: ${name}`,
    columns: [
      { header: say`Exercise` },
      { header: say`Leads to`, align: "right" },
      { header: say`What went wrong` },
    ],
    rows: exercises.flatMap((exercise) => {
      if (exercise.kind === "choice") {
        return exercise.wrongTurns.map(({ value, text }) => [exercise.id, value, text]);
      }
      const { low, high } = acceptedRange(exercise);
      return exercise.wrongTurns
        .filter(({ value }) => Number.isFinite(value) && (value < low || value > high))
        .map(({ value, text }) => [exercise.id, withUnit(value, exercise.unit), text]);
    }),
    notes: [
      say`Beside these, slips of the decimal point, of the unit, of the sign, of a fraction for percent and of a quotient turned round are known in every exercise.`,
    ],
  };
}
