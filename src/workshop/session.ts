import type { NoteBlock, TableBlock } from "../blocks/block.js";
import { formatNumber, formatPlain } from "../quantities/format.js";
import { BLANK } from "../tables/cell.js";
import { say, type Text } from "../words/message.js";
import { nearestName } from "../words/nearestName.js";
import { localNumber } from "../words/render.js";
import type { Exercise } from "./exercise.js";
import { judgeAnswer } from "./judgeAnswer.js";

interface Prediction {
  /** A number, or a short text. */
  readonly value: number | string;
  /** Said after the computed value had been shown. */
  readonly afterwards: boolean;
}

/**
 * What this process knows of the workshop: it lasts as long as the notebook's kernel and is written
 * nowhere. Of this process, because one kernel serves one notebook of one group.
 */
const workshopMemory = {
  exercises: new Map<string, Exercise>(),
  tries: new Map<string, number>(),
  predictions: new Map<string, Prediction>(),
  /** Names whose computed value was shown. */
  revealed: new Set<string>(),
};

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
function answerSort(exercise: Exercise): Text {
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
  const room = rel > 0 ? say`${formatPlain(100 * rel)} %` : formatPlain(abs);
  const near =
    rel > 0 && abs > 0
      ? say`within ${room} or ${formatPlain(abs)}, whichever is more`
      : say`within ${room}`;
  return unit === "" ? say`a number, ${near}` : say`a number, ${unit}, ${near}`;
}

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
  const note = (text: Text): NoteBlock => ({ kind: "note", tone: "note", text });
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
  return note(verdict === "blank" ? say`${id}. ${exercise.question} ${text}` : say`${id}. ${text}`);
}

/**
 * Records what somebody expects before a value is computed. The first prediction stands: one that is made
 * after the computed value was shown by `comparePredictions` is kept as an afterthought only where there
 * was none before.
 *
 * @param name as `comparePredictions` names the value.
 * @param value a number or a short text; `undefined`, `null`, an empty text or NaN is no prediction.
 *
 * @example
 * predict("parts of sand to one of soil", 0.5).text // => "Predicted, parts of sand to one of soil: 0.5."
 * predict("gravel, %", undefined).text // => "No prediction yet, gravel, %. A guess that misses teaches more than none."
 */
export function predict(name: string, value: unknown): NoteBlock {
  const note = (text: Text): NoteBlock => ({ kind: "note", tone: "note", text });
  const { predictions, revealed } = workshopMemory;
  const usable =
    (typeof value === "number" && Number.isFinite(value)) ||
    (typeof value === "string" && value.trim() !== "");
  if (!usable) {
    return value === undefined || value === null || value === ""
      ? note(say`No prediction yet, ${name}. A guess that misses teaches more than none.`)
      : note(say`No prediction yet, ${name}: write one number, or a few words in quotation marks.`);
  }
  const said = typeof value === "number" ? value : String(value).trim();
  const shown = typeof said === "number" ? localNumber(String(said)) : said;
  if (!revealed.has(name)) {
    predictions.set(name, { value: said, afterwards: false });
    return note(say`Predicted, ${name}: ${shown}.`);
  }
  if (predictions.has(name)) {
    return note(
      say`The computed value was shown already, so the first prediction stands, ${name}.`,
    );
  }
  predictions.set(name, { value: said, afterwards: true });
  return note(
    say`The computed value was shown already: kept as an afterthought, ${name}: ${shown}.`,
  );
}

/**
 * Sets predictions beside the computed values, with the difference in percent of the computed one.
 *
 * @param computed by the names that `predict` was given; a text where the computed value is one, `null`
 * or `undefined` where there is none.
 *
 * @example
 * const before = predict("D60 of the soil, mm", 2);
 * comparePredictions({ "D60 of the soil, mm": 1.6 }).rows // => [["D60 of the soil, mm", "2", "1.60", "+25 %"]]
 */
export function comparePredictions(
  computed: Readonly<Record<string, number | string | null | undefined>>,
): TableBlock {
  const rows = Object.entries(computed).map(([name, value]) => {
    const prediction = workshopMemory.predictions.get(name);
    workshopMemory.revealed.add(name);
    const predicted =
      prediction === undefined
        ? BLANK
        : typeof prediction.value === "number"
          ? localNumber(String(prediction.value))
          : prediction.value;
    return [
      name,
      prediction?.afterwards ? say`${predicted} (afterwards)` : predicted,
      typeof value === "number" ? formatNumber(value) : (value ?? BLANK),
      difference(prediction?.value, value),
    ];
  });
  return {
    kind: "table",
    caption: say`Predicted and computed`,
    columns: [
      { header: say`What` },
      { header: say`Predicted`, align: "right" },
      { header: say`Computed`, align: "right" },
      { header: say`Off by`, align: "right" },
    ],
    rows,
    notes: [say`A dash: no prediction, or nothing to compare.`],
  };
}

function difference(predicted: number | string | undefined, value: unknown): Text {
  if (typeof predicted !== "number" || typeof value !== "number") return BLANK;
  if (!Number.isFinite(value) || value === 0) return BLANK;
  const off = (100 * (predicted - value)) / Math.abs(value);
  const sign = Math.round(off) > 0 ? "+" : "";
  return say`${sign}${formatNumber(Math.round(off), 1)} %`;
}
