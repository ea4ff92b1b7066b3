import { formatNumber } from "../quantities/formatNumber.js";
import type { TableBlock } from "../tables/reportBlock.js";
import { say } from "../words/say.js";
import { acceptedRange } from "./acceptedRange.js";
import type { Exercise } from "./exercise.js";
import { withUnit } from "./withUnit.js";

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
