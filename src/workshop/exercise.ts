import { formatNumber, formatPlain } from "../quantities/format.js";
import { say, type Text } from "../words/message.js";

/** A way of going wrong that leads to an answer which can be known again. */
export interface WrongTurn<Value> {
  /** What somebody answers who went this way: computed from the same data as the right answer. */
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

interface ExerciseText {
  /** Name in `tryAnswer`, kebab-case. */
  readonly id: string;
  readonly question: Text;
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
  readonly between?: { readonly low: number; readonly high: number };
  readonly tolerance: AnswerTolerance;
  readonly wrongTurns: readonly WrongTurn<number>[];
}

/** Asks for one of a few texts. */
export interface ChoiceExercise extends ExerciseText {
  readonly kind: "choice";
  readonly options: readonly string[];
  /** The right one of them. */
  readonly value: string;
  /** What to say to the other ones. */
  readonly wrongTurns: readonly WrongTurn<Text>[];
}

/** A question of a workshop with its answer, computed from the data of the class. */
export type Exercise = NumberExercise | ChoiceExercise;

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
export function acceptedRange(exercise: Pick<NumberExercise, "value" | "between" | "tolerance">): {
  readonly low: number;
  readonly high: number;
} {
  const { value, between = { low: value, high: value }, tolerance } = exercise;
  const { rel = 0, abs = 0 } = tolerance;
  if (!Number.isFinite(value)) {
    throw new RangeError(`invalid \`value\`: ${value}; expected a finite number`);
  }
  for (const [name, part] of Object.entries({ rel, abs })) {
    if (!(part >= 0 && part < Infinity)) {
      throw new RangeError(`invalid \`tolerance.${name}\`: ${part}; expected 0 or more`);
    }
  }
  const room = (end: number) => Math.max(rel * Math.abs(end), abs);
  return { low: between.low - room(between.low), high: between.high + room(between.high) };
}

/** A number with its unit, three significant digits. */
export function withUnit(value: number, unit: string): Text {
  return unit === "" ? formatPlain(value, 3) : say`${formatNumber(value, 3)} ${unit}`;
}
