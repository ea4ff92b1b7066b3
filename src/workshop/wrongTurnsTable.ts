import type { TableBlock } from "../tables/reportBlock.js";
import { say } from "../words/say.js";
import { acceptedRange } from "./acceptedRange.js";
import type { Exercise } from "./exercise.js";
import { withUnit } from "./withUnit.js";

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
