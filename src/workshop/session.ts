import type { NoteBlock, TableBlock } from "../blocks/block.js";
import { checkThat } from "../quantities/checkNumber.js";
import { formatNumber, formatPlain } from "../quantities/format.js";
import { BLANK, numberColumn } from "../tables/cell.js";
import { note, tableOf } from "../tables/tableOf.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { nearestName } from "../words/nearestName.js";
import type { Exercise } from "./exercise.js";
import { judgeAnswer, WORKED_AT_TRY } from "./judgeAnswer.js";

/** Typed in place of an answer by somebody who gives up. */
const GIVEN_UP = "?";

/** Something to be expected before it is computed. */
export interface AskedPrediction {
  /** Name in `predict`, kebab-case. */
  readonly id: string;
  /** For the reader, with its unit. */
  readonly label: Text;
  /** A text where the computed value is one; undefined where there is none. */
  readonly value: number | string | undefined;
  /** Id of an exercise that asks for the same value, or rests on it: until it is settled, nothing is compared. */
  readonly exercise?: string;
}

/**
 * What this process knows of the workshop: it lasts as long as the notebook's kernel and is written
 * nowhere. Of this process, because one kernel serves one notebook of one group.
 */
const workshopMemory = {
  exercises: new Map<string, Exercise>(),
  tries: new Map<string, number>(),
  /** Ids of exercises that were answered rightly, worked at the third try or given up. */
  settled: new Set<string>(),
  asked: new Map<string, AskedPrediction>(),
  /** Numbers or short texts. */
  predictions: new Map<string, number | string>(),
  /** Ids whose computed value was shown. */
  revealed: new Set<string>(),
};

/**
 * Makes exercises known to `checkAnswer` and lists their questions, with what kind of answer is asked for
 * and how near it must come. They take the place of those that were open before; each begins at its first try.
 *
 * @throws RangeError where two exercises have the same id.
 *
 * @example
 * const exercise = { kind: "number", id: "fines", question: "How much is finer than 0.063 mm?", unit: "%", value: 27, tolerance: { abs: 0.5 }, mistakes: [], hint: "", worked: "", why: "" };
 * renderAll(openExercises([exercise]).rows) // => [["fines", "How much is finer than 0.063 mm?", "a number, %, within 0.5"]]
 */
export function openExercises(exercises: readonly Exercise[]): TableBlock {
  checkIdsOnce("exercises", exercises);
  // what was open before speaks of other data
  workshopMemory.exercises.clear();
  workshopMemory.tries.clear();
  workshopMemory.settled.clear();
  for (const exercise of exercises) workshopMemory.exercises.set(exercise.id, exercise);
  return tableOf(
    say`Exercises`,
    exercises,
    [
      [say`Exercise`, (exercise) => exercise.id],
      [say`Question`, (exercise) => exercise.question],
      [say`Answer`, (exercise) => answerSort(exercise)],
    ],
    [
      say`First try: what is wrong. Second: a hint. Third: the worked answer. Nothing is recorded outside of this notebook.`,
    ],
  );
}

function checkIdsOnce(name: string, listed: readonly { readonly id: string }[]): void {
  listed.forEach(({ id }, index) => {
    const isFirst = listed.findIndex((other) => other.id === id) === index;
    checkThat(isFirst, { [`${name}[${index}].id`]: `${id} twice` }, "once");
  });
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
 * @param answer `undefined`, `null` or an empty text for no answer; `"?"` gives up and is told the working.
 *
 * @example
 * const exercise = { kind: "number", id: "sand", question: "Sand?", unit: "%", value: 43, tolerance: { abs: 1 }, mistakes: [], hint: "Subtract.", worked: "70 − 27 = 43 %.", why: "Sand lies between two boundaries." };
 * const opened = openExercises([exercise]);
 * render(checkAnswer("sand", 43.4).text) // => "Right. Computed: 43.0 %. Sand lies between two boundaries."
 * render(checkAnswer("sands", 1).text) // => "There is no exercise “sands”. Is sand meant?"
 */
export function checkAnswer(id: string, answer: unknown): NoteBlock {
  const exercise = workshopMemory.exercises.get(id);
  if (!exercise) return note(noExercise(String(id), [...workshopMemory.exercises.keys()]));
  if (typeof answer === "string" && answer.trim() === GIVEN_UP) {
    workshopMemory.settled.add(id);
    return note(say`Given up. Worked: ${exercise.worked}`);
  }
  const { verdict, tries, text } = judgeAnswer(exercise, answer, workshopMemory.tries.get(id) ?? 0);
  workshopMemory.tries.set(id, tries);
  if (verdict === "right" || tries >= WORKED_AT_TRY) workshopMemory.settled.add(id);
  return note(
    verdict === "blank" ? say`${exercise.question} (${answerSort(exercise)}) ${text}` : text,
  );
}

/**
 * A table, figure or note that tells an answer: itself once every exercise named was answered rightly, tried
 * three times or given up, and every prediction named was made; until then a note that says what it waits for.
 * A name that is not open, because the class has not the data for it, keeps nothing waiting.
 *
 * @example
 * const exercise = { kind: "number", id: "silt", question: "Silt?", unit: "%", value: 16, tolerance: { abs: 1 }, mistakes: [], hint: "", worked: "27 − 11 = 16 %.", why: "" };
 * const opened = openExercises([exercise]);
 * const solution = { kind: "paragraph", text: "16 % of silt" };
 * render(afterAnswer(["silt"], solution).text) // => "The solution waits for an answer above: silt. Three tries or \"?\" in place of the answer show the working. Then run this cell again."
 * const answered = checkAnswer("silt", 16);
 * render(afterAnswer(["silt"], solution).text) // => "16 % of silt"
 */
export function afterAnswer<Solution>(
  ids: readonly string[],
  solution: Solution,
): Solution | NoteBlock {
  const { exercises, asked, predictions } = workshopMemory;
  const open = ids.filter((id) =>
    exercises.has(id) ? isOpen(id) : asked.has(id) && !predictions.has(id),
  );
  if (open.length === 0) return solution;
  return note(
    open.some((id) => exercises.has(id))
      ? say`The solution waits for an answer above: ${open.join(", ")}. Three tries or "?" in place of the answer show the working. Then run this cell again.`
      : say`The solution waits for a prediction above: ${open.join(", ")}. Predict, then run this cell again.`,
  );
}

/** Whether an exercise still waits for its answer. */
function isOpen(id: string): boolean {
  return workshopMemory.exercises.has(id) && !workshopMemory.settled.has(id);
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
 * Makes known what `predict` and `comparePredictions` are about, in place of what was asked before. Where the
 * same is asked again, the first predictions stand.
 *
 * @throws RangeError where two have the same id.
 */
export function openPredictions(asked: readonly AskedPrediction[]): void {
  checkIdsOnce("asked", asked);
  const known = workshopMemory;
  for (const id of known.asked.keys()) {
    if (asked.some((one) => one.id === id)) continue;
    known.predictions.delete(id);
    known.revealed.delete(id);
  }
  known.asked.clear();
  for (const one of asked) known.asked.set(one.id, one);
}

/**
 * Records what somebody expects before a value is computed. Once `comparePredictions` showed the computed
 * value, the prediction stands.
 *
 * @param id as `openPredictions` was given it; a name that it was not given is taken as the label.
 * @param value a number or a short text; `undefined`, `null`, an empty text or NaN is no prediction.
 *
 * @example
 * openPredictions([{ id: "sand-by-volume", label: "parts of sand to one of soil", value: 0.5 }]);
 * render(predict("sand-by-volume", 0.4).text) // => "Predicted, parts of sand to one of soil: 0.4."
 * render(predict("sand-by-volume", undefined).text) // => "No prediction yet: parts of sand to one of soil? A guess that misses teaches more than none."
 */
export function predict(id: string, value: unknown): NoteBlock {
  const { asked, predictions, revealed } = workshopMemory;
  const label = asked.get(id)?.label ?? id;
  const given = typeof value === "string" ? typedNumber(value) : value;
  const usable =
    (typeof given === "number" && Number.isFinite(given)) ||
    (typeof given === "string" && given.trim() !== "");
  if (!usable) {
    return given === undefined || given === null || given === ""
      ? note(say`No prediction yet: ${label}? A guess that misses teaches more than none.`)
      : note(
          say`No prediction yet, ${label}: write one number, or a few words in quotation marks.`,
        );
  }
  const said = typeof given === "number" ? given : String(given).trim();
  if (revealed.has(id)) {
    return note(
      say`The computed value was shown already, so the first prediction stands, ${label}.`,
    );
  }
  predictions.set(id, said);
  return note(say`Predicted, ${label}: ${said}.`);
}

/** A guess needs no form: `12,5 %` is as good as 12.5. */
function typedNumber(text: string): number | string {
  const [, number] = /^\s*(-?\d+(?:[.,]\d+)?)\s*\S{0,4}\s*$/.exec(text) ?? [];
  return number === undefined ? text : Number(number.replace(",", "."));
}

/**
 * Sets predictions beside the computed values, with the difference in percent of the computed one. Without a
 * prediction no computed value is shown, nor while an exercise that asks for it is open.
 *
 * @param ids which of those that `openPredictions` was given; default all.
 *
 * @example
 * openPredictions([{ id: "median-size", label: "D50 of the soil, mm", value: 1.6 }]);
 * const before = predict("median-size", 2);
 * renderAll(comparePredictions(["median-size"]).rows) // => [["D50 of the soil, mm", "2", "1.60", "+25 %"]]
 */
export function comparePredictions(
  ids: readonly string[] = [...workshopMemory.asked.keys()],
): TableBlock {
  const rows = ids.map((id) => {
    const { label, value, exercise = "" } = workshopMemory.asked.get(id) ?? unasked(id);
    const predicted = workshopMemory.predictions.get(id);
    if (predicted === undefined) return [label, BLANK, BLANK, BLANK];
    if (isOpen(exercise)) return [label, asGiven(predicted), BLANK, BLANK];
    workshopMemory.revealed.add(id);
    const computed = typeof value === "number" ? formatNumber(value) : (value ?? BLANK);
    return [label, asGiven(predicted), computed, difference(predicted, value)];
  });
  return {
    kind: "table",
    caption: say`Predicted and computed`,
    columns: [
      { header: say`What` },
      numberColumn(say`Predicted`),
      numberColumn(say`Computed`),
      numberColumn(say`Off by`),
    ],
    rows,
    notes: [
      say`A computed value stands here once it was predicted and the question about it answered. A dash: no prediction, no answer yet, or nothing to compare.`,
    ],
  };
}

function unasked(id: string): AskedPrediction {
  return { id, label: id, value: undefined };
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
