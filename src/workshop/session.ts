import type { NoteBlock, TableBlock } from "../blocks/block.js";
import { formatNumber, formatPlain } from "../quantities/format.js";
import { BLANK } from "../tables/cell.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { nearestName } from "../words/nearestName.js";
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
 * Makes exercises known to `checkAnswer` and lists their questions, with what kind of answer is asked for
 * and how near it must come. Opened again, an exercise begins again at its first try.
 *
 * @throws RangeError where two exercises have the same id.
 *
 * @example
 * const exercise = { kind: "number", id: "fines", question: "How much is finer than 0.063 mm?", unit: "%", value: 27, tolerance: { abs: 0.5 }, mistakes: [], hint: "", worked: "", why: "" };
 * renderAll(openExercises([exercise]).rows) // => [["fines", "How much is finer than 0.063 mm?", "a number, %, within 0.5"]]
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
    return say`one of ${joinTexts(exercise.options.map(({ text }) => say`"${text}"`))}`;
  }
  const { tolerance, unit } = exercise;
  const { rel = 0, abs = 0 } = tolerance;
  const number = unit === "" ? say`a number` : say`a number, ${unit}`;
  // A count, or a step of a scale.
  if (rel === 0 && abs <= 0.001) return say`${number}, exactly`;
  const room = rel > 0 ? say`${formatPlain(100 * rel)} %` : formatPlain(abs);
  return rel > 0 && abs > 0
    ? say`${number}, within ${room} or ${formatPlain(abs)}, whichever is more`
    : say`${number}, within ${room}`;
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
 * const exercise = { kind: "number", id: "sand", question: "Sand?", unit: "%", value: 43, tolerance: { abs: 1 }, mistakes: [], hint: "Subtract.", worked: "70 − 27 = 43 %.", why: "Sand lies between two boundaries." };
 * const opened = openExercises([exercise]);
 * render(checkAnswer("sand", 43.4).text) // => "sand. Right. Computed: 43.0 %. Sand lies between two boundaries."
 * render(checkAnswer("sands", 1).text) // => "There is no exercise “sands”. Is sand meant?"
 */
export function checkAnswer(id: string, answer: unknown): NoteBlock {
  const exercise = workshopMemory.exercises.get(id);
  if (!exercise) return note(noExercise(String(id), [...workshopMemory.exercises.keys()]));
  const { verdict, tries, text } = judgeAnswer(exercise, answer, workshopMemory.tries.get(id) ?? 0);
  workshopMemory.tries.set(id, tries);
  // The list of exercises may stand far above the cell.
  return note(verdict === "blank" ? say`${id}. ${exercise.question} ${text}` : say`${id}. ${text}`);
}

function note(text: Text): NoteBlock {
  return { kind: "note", tone: "note", text };
}

function noExercise(id: string, known: readonly string[]): Text {
  if (known.length === 0) {
    return say`No exercises are open yet. Run the cells above first, from the top.`;
  }
  const near = nearestName(id, known);
  return near === undefined
    ? say`There is no exercise “${id}”. Open are: ${known.join(", ")}.`
    : say`There is no exercise “${id}”. Is ${near} meant?`;
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
 * render(predict("parts of sand to one of soil", 0.5).text) // => "Predicted, parts of sand to one of soil: 0.5."
 * render(predict("gravel, %", undefined).text) // => "No prediction yet, gravel, %. A guess that misses teaches more than none."
 */
export function predict(name: string, value: unknown): NoteBlock {
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
  if (!revealed.has(name)) {
    predictions.set(name, { value: said, afterwards: false });
    return note(say`Predicted, ${name}: ${said}.`);
  }
  if (predictions.has(name)) {
    return note(
      say`The computed value was shown already, so the first prediction stands, ${name}.`,
    );
  }
  predictions.set(name, { value: said, afterwards: true });
  return note(
    say`The computed value was shown already: kept as an afterthought, ${name}: ${said}.`,
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
 * renderAll(comparePredictions({ "D60 of the soil, mm": 1.6 }).rows) // => [["D60 of the soil, mm", "2", "1.60", "+25 %"]]
 */
export function comparePredictions(
  computed: Readonly<Record<string, number | string | null | undefined>>,
): TableBlock {
  const rows = Object.entries(computed).map(([name, value]) => {
    const prediction = workshopMemory.predictions.get(name);
    workshopMemory.revealed.add(name);
    const predicted = prediction === undefined ? BLANK : asGiven(prediction.value);
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

/** As somebody wrote it, every digit. */
function asGiven(value: number | string): Text {
  return typeof value === "number" ? { number: String(value) } : value;
}

function difference(predicted: number | string | undefined, value: unknown): Text {
  if (typeof predicted !== "number" || typeof value !== "number") return BLANK;
  if (!Number.isFinite(value) || value === 0) return BLANK;
  const off = (100 * (predicted - value)) / Math.abs(value);
  const sign = Math.round(off) > 0 ? "+" : "";
  return say`${sign}${formatNumber(Math.round(off), 1)} %`;
}
