import type { NumberExercise } from "./exercise.js";

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
