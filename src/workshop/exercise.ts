import { checkThat } from "../quantities/checkNumber.js";
import { formatFixed, formatNumber, formatPlain } from "../quantities/format.js";
import type { Interval } from "../quantities/interval.js";
import { say, type Text, type WrittenNumber } from "../words/message.js";

/** How questions and workings write a number: with one decimal, without any, with three digits. */
export const one = (value: number) => formatFixed(value, 1);
export const whole = (value: number) => formatFixed(value, 0);
export const three = (value: number) => formatNumber(value, 3);

/** A way of going wrong that leads to an answer which can be known again. */
export interface Mistake<Value> {
  /** What somebody answers who made it: computed from the same data as the right answer. */
  readonly value: Value;
  /** What went wrong, one or two sentences that do not give the right answer away. */
  readonly text: Text;
}

/** How far off an answer may be: the larger of the two counts. */
export interface AnswerTolerance {
  /** Part of the value, for example 0.05. */
  readonly rel?: number;
  /** In the unit of the answer. */
  readonly abs?: number;
}

/** How a question is put to somebody who has worked another one before, on the same sheet. */
export interface Recalled {
  /** Of the other exercise. */
  readonly id: string;
  /** The value as the question tells it. */
  readonly told: WrittenNumber;
  /** The question without the value, which names the other one's number in its place. */
  readonly question: (number: Text) => Text;
}

interface ExerciseText {
  /** Name in `checkAnswer`, kebab-case. */
  readonly id: string;
  readonly question: Text;
  /** A value that the question tells and another exercise asks for: paper with both does not tell it. */
  readonly recalls?: Recalled;
  /** Said at the second wrong try. */
  readonly hint: Text;
  /** The formula and the sum with its numbers; said at the third wrong try. */
  readonly worked: Text;
  /** Why the answer is right, or what it means; said with a right answer. */
  readonly why: Text;
}

/** Asks for a number. */
export interface NumberExercise extends ExerciseText {
  readonly kind: "number";
  /** Empty for a pure number. */
  readonly unit: string;
  /** Computed from the data. */
  readonly value: number;
  /** Where anything between two values is right: both ends; the tolerance is added outside. */
  readonly between?: Interval;
  readonly tolerance: AnswerTolerance;
  readonly mistakes: readonly Mistake<number>[];
}

/** One of the answers to choose from. */
export interface ChoiceOption {
  /** The same in every language. */
  readonly key: string;
  /** What a person reads and types. */
  readonly text: Text;
}

/** Asks for one of a few texts. */
export interface ChoiceExercise extends ExerciseText {
  readonly kind: "choice";
  readonly options: readonly ChoiceOption[];
  /** Key of the right one. */
  readonly value: string;
  /** What to say to the other ones, by key. */
  readonly mistakes: readonly Mistake<string>[];
}

/** A question of a workshop with its answer, computed from the data of the class. */
export type Exercise = NumberExercise | ChoiceExercise;

/** Why what a class has does not serve a lesson. */
export interface NoLesson {
  readonly status: "none";
  readonly message: Text;
}

/** The options of a question that is answered by yes or no. */
export const YES_OR_NO: readonly ChoiceOption[] = [
  { key: "yes", text: say`yes` },
  { key: "no", text: say`no` },
];

/**
 * The rows of a lesson that the data of the class allow. A fact that is not known is not a number: an
 * exercise or a mistake that rests on one is left out, and so are what is said to a choice that is right and
 * a mistake that leads to the same value as one before it.
 */
export function answerable(rows: readonly Exercise[]): Exercise[] {
  return rows.flatMap((row): Exercise[] => {
    if (row.kind === "choice") {
      return [{ ...row, mistakes: row.mistakes.filter(({ value }) => value !== row.value) }];
    }
    if (!Number.isFinite(row.value)) return [];
    const told = row.mistakes.filter(
      ({ value }, index) =>
        Number.isFinite(value) &&
        row.mistakes.findIndex((other) => other.value === value) === index,
    );
    return [{ ...row, mistakes: told }];
  });
}

/**
 * The answers that an exercise accepts, both ends included.
 *
 * Formula: value ± max(rel |value|, abs); where an exercise accepts all between two values, each end is
 * widened so. Without a tolerance only the value itself is accepted.
 *
 * @throws RangeError for a value that is no finite number or a tolerance below 0. Source: own arithmetic.
 *
 * @example
 * acceptedRange({ value: 20, tolerance: { rel: 0.05, abs: 0.5 } }) // => { low: 19, high: 21 }
 * acceptedRange({ value: 20, between: { low: 18, high: 22 }, tolerance: { abs: 1 } }) // => { low: 17, high: 23 }
 */
export function acceptedRange(
  exercise: Pick<NumberExercise, "value" | "between" | "tolerance">,
): Interval {
  const { value, between = { low: value, high: value }, tolerance } = exercise;
  const { rel = 0, abs = 0 } = tolerance;
  checkThat(Number.isFinite(value), { value }, "a finite number");
  for (const [name, part] of Object.entries({ rel, abs })) {
    checkThat(part >= 0 && part < Infinity, { [`tolerance.${name}`]: part }, "0 or more");
  }
  const room = (end: number) => Math.max(rel * Math.abs(end), abs);
  return { low: between.low - room(between.low), high: between.high + room(between.high) };
}

/** A number with its unit, three significant digits. */
export function withUnit(value: number, unit: string): Text {
  return unit === "" ? formatPlain(value, 3) : say`${formatNumber(value, 3)} ${unit}`;
}
