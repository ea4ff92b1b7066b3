import { formatNumber } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import { acceptedRange } from "./acceptedRange.js";
import { commonTurns } from "./commonTurns.js";
import type { NumberExercise } from "./exercise.js";

/** Answers are written to three digits or so. */
const ROUNDED = 0.005;

/**
 * Says what is wrong with a number that is not accepted: the nearest of the exercise's own wrong turns
 * whose value it has within the tolerance of the exercise, else of the common ones, else only whether it
 * is too large or too small, and by about how much.
 *
 * A turn whose own value would be accepted is never named, as such data cannot tell the two ways apart.
 *
 * @example
 * const exercise = { value: 20, unit: "%", tolerance: { rel: 0.05 }, wrongTurns: [{ value: 35, text: "The sand was left out." }] };
 * recogniseTurn(exercise, 34.9) // => "The sand was left out."
 * recogniseTurn(exercise, 80) // => "This is the rest to 100 %. Ask whether the part passes or is kept back, is meant or is left."
 * recogniseTurn(exercise, 26) // => "This is too large, by about 30 %."
 */
export function recogniseTurn(
  exercise: Pick<NumberExercise, "value" | "unit" | "between" | "tolerance" | "wrongTurns">,
  answer: number,
): string {
  const { value, tolerance, wrongTurns } = exercise;
  const accepted = acceptedRange(exercise);
  const differs = (turn: number) => turn < accepted.low || turn > accepted.high;
  // A unit mistake is off by the rounding of the answer, not by the absolute room of the right one.
  const near = (turn: number, room: number) => Math.abs(answer - turn) <= room;
  const { rel = 0, abs = 0 } = tolerance;
  const nearest = (
    turns: readonly { readonly value: number; readonly text: string }[],
    roomOf: (turn: number) => number,
  ) =>
    turns
      .filter((turn) => Number.isFinite(turn.value) && differs(turn.value))
      .filter((turn) => near(turn.value, roomOf(turn.value)))
      .sort((a, b) => Math.abs(answer - a.value) - Math.abs(answer - b.value))[0];
  const part = value === 0 ? rel : Math.max(rel, abs / Math.abs(value));
  const found =
    nearest(wrongTurns, (turn) => Math.max(rel * Math.abs(turn), abs, ROUNDED * Math.abs(turn))) ??
    nearest(commonTurns(exercise), (turn) => Math.min(0.2, part) * Math.abs(turn));
  if (found) return found.text;
  const high = answer > value;
  const off = value === 0 ? Number.NaN : Math.abs(answer / value - 1);
  if (!(off < 1)) {
    return high ? say`This is far too large.` : say`This is far too small.`;
  }
  const about = formatNumber(100 * off, 1);
  return high
    ? say`This is too large, by about ${about} %.`
    : say`This is too small, by about ${about} %.`;
}
