import { formatNumber } from "../quantities/format.js";
import { say, type Text } from "../words/message.js";
import {
  acceptedRange,
  type Exercise,
  type NumberExercise,
  type WrongTurn,
  withUnit,
} from "./exercise.js";

export interface Judgement {
  readonly verdict: "right" | "wrong" | "blank" | "unreadable";
  /** Tries so far, this one counted where it was an answer. */
  readonly tries: number;
  /** For the person who answered. */
  readonly text: Text;
}

/** From this wrong try on, the worked answer is given. */
const WORKED_AT_TRY = 3;

/**
 * Judges an answer: right and why; or what is wrong with it, at the second try with a hint, from the
 * third on with the worked answer. A blank, and a value of the wrong sort, is no try.
 *
 * @param triesBefore default 0.
 * @throws RangeError for a tolerance below 0. Source: own choice of teaching.
 *
 * @example
 * const exercise = { kind: "number", id: "fines", question: "Fines?", unit: "%", value: 27, tolerance: { abs: 0.5 }, wrongTurns: [], hint: "Count what was washed out.", worked: "100 (1 − 876 / 1200) = 27 %.", why: "All that passes is fines." };
 * judgeAnswer(exercise, 27.2).text // => "Right. Computed: 27.0 %. All that passes is fines."
 * judgeAnswer(exercise, 0.27, 1).text // => "Not yet. This is a fraction, and percent are asked for: multiply by 100. A hint: Count what was washed out."
 * judgeAnswer(exercise, undefined, 1) // => { verdict: "blank", tries: 1, text: "No answer yet. Write it into the cell above in place of undefined and run the cell again." }
 */
export function judgeAnswer(exercise: Exercise, answer: unknown, triesBefore = 0): Judgement {
  const read = readAnswer(exercise, answer);
  if (read.kind === "blank") {
    return {
      verdict: "blank",
      tries: triesBefore,
      text: say`No answer yet. Write it into the cell above in place of undefined and run the cell again.`,
    };
  }
  if (read.kind === "unreadable") {
    return { verdict: "unreadable", tries: triesBefore, text: read.text };
  }
  const tries = triesBefore + 1;
  const wrong = wrongWords(exercise, read.value);
  if (wrong === undefined) {
    const { value, why } = exercise;
    const text =
      exercise.kind === "choice"
        ? say`Right. ${why}`
        : say`Right. Computed: ${withUnit(value as number, exercise.unit)}. ${why}`;
    return { verdict: "right", tries, text };
  }
  const text =
    tries >= WORKED_AT_TRY
      ? say`Not yet. ${wrong} Worked: ${exercise.worked}`
      : tries === WORKED_AT_TRY - 1
        ? say`Not yet. ${wrong} A hint: ${exercise.hint}`
        : say`Not yet. ${wrong}`;
  return { verdict: "wrong", tries, text };
}

/** What is wrong, or nothing where the answer is accepted. */
function wrongWords(exercise: Exercise, answer: number | string): Text | undefined {
  if (exercise.kind === "choice") {
    if (answer === exercise.value) return undefined;
    return (
      exercise.wrongTurns.find(({ value }) => value === answer)?.text ??
      say`That is not what the data say.`
    );
  }
  const { low, high } = acceptedRange(exercise);
  const given = answer as number;
  return given >= low && given <= high ? undefined : recogniseTurn(exercise, given);
}

/** What somebody wrote for an answer. */
export type AnswerReading =
  | { readonly kind: "blank" }
  | { readonly kind: "number"; readonly value: number }
  | { readonly kind: "choice"; readonly value: string }
  | { readonly kind: "unreadable"; readonly text: Text };

/**
 * Takes whatever stands in an answer cell: nothing, a number, one of the texts that the exercise offers,
 * or something that is none of these, with a friendly word on how to write it. A text that holds nothing
 * but a number is told to go without its quotation marks, not taken as the number.
 *
 * @example
 * readAnswer({ kind: "choice", options: ["yes", "no"] }, " Yes ") // => { kind: "choice", value: "yes" }
 * readAnswer({ kind: "number" }, undefined) // => { kind: "blank" }
 */
export function readAnswer(
  exercise: { readonly kind: "number" } | Pick<Exercise & { kind: "choice" }, "kind" | "options">,
  answer: unknown,
): AnswerReading {
  if (answer === undefined || answer === null) return { kind: "blank" };
  if (typeof answer === "string" && answer.trim() === "") return { kind: "blank" };
  const unreadable = (text: Text): AnswerReading => ({ kind: "unreadable", text });
  if (typeof answer === "object" && "then" in answer) {
    return unreadable(say`This is a promise of a value, not the value. Write await before it.`);
  }
  if (typeof answer === "function") {
    return unreadable(
      say`This is a function, not its result. Call it: write brackets after its name.`,
    );
  }
  if (exercise.kind === "choice") return readChoice(exercise.options, answer);
  if (typeof answer === "bigint") return { kind: "number", value: Number(answer) };
  if (typeof answer === "number") {
    if (Number.isNaN(answer)) {
      return unreadable(
        say`This came out as NaN, “not a number”: something in the sum was missing, or 0 was divided by 0. Look at each number in it.`,
      );
    }
    if (!Number.isFinite(answer)) {
      return unreadable(
        say`This came out as infinity: the sum divides by 0. Look at what stands below.`,
      );
    }
    return { kind: "number", value: answer };
  }
  if (typeof answer === "string") {
    return Number.isFinite(Number.parseFloat(answer))
      ? unreadable(
          say`This is a text. Write the number without quotation marks and without its unit, with a point before the decimals.`,
        )
      : unreadable(
          say`This is a text, and a number is asked for. Write it without quotation marks.`,
        );
  }
  if (Array.isArray(answer)) {
    return unreadable(
      say`This is a list, and one number is asked for. Choose one of it, for example with [0].`,
    );
  }
  return unreadable(say`This is no number. Write one, for example 12.5.`);
}

function readChoice(options: readonly string[], answer: unknown): AnswerReading {
  const named =
    answer === true ? "yes" : answer === false ? "no" : typeof answer === "string" ? answer : "";
  const bare = (text: string) => text.trim().toLowerCase().replace(/\s+/g, " ");
  const value = options.find((option) => bare(option) === bare(named));
  if (value !== undefined) return { kind: "choice", value };
  const list = options.map((option) => `"${option}"`).join(", ");
  return {
    kind: "unreadable",
    text: say`One of these texts is asked for, in quotation marks: ${list}.`,
  };
}

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
): Text {
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

/** Units that a value may have been given in by mistake, by what the value is then multiplied with. */
function otherUnits(unit: string): Readonly<Record<string, string>> {
  const units: Readonly<Record<string, Readonly<Record<string, string>>>> = {
    mm: { "1000": say`micrometres`, "0.1": say`centimetres`, "0.001": say`metres` },
    MPa: { "1000": say`kilopascals`, "0.001": say`gigapascals (or kN/mm²)`, "0.1": say`kN/cm²` },
    kg: { "1000": say`grams`, "0.001": say`tonnes` },
    "kg/m³": { "0.001": say`g/cm³` },
  };
  return units[unit] ?? {};
}

/**
 * The wrong turns that any number may have taken: a slipped decimal point or decade of the axis, another
 * unit, a fraction for percent, the rest to a hundred, a sign, a quotient upside down. Source: common
 * practice of teaching, no source.
 *
 * @example
 * commonTurns({ value: 20, unit: "%" }).map(({ value }) => value) // => [0.2, 80, 2000, 200, 2, 20000, 0.02, -20, 0.05]
 */
export function commonTurns({
  value,
  unit,
}: Pick<NumberExercise, "value" | "unit">): WrongTurn<number>[] {
  if (value === 0) return [];
  const named = otherUnits(unit);
  const percent = unit === "%";
  const turns: WrongTurn<number>[] = percent
    ? [
        {
          value: value / 100,
          text: say`This is a fraction, and percent are asked for: multiply by 100.`,
        },
        {
          value: 100 - value,
          text: say`This is the rest to 100 %. Ask whether the part passes or is kept back, is meant or is left.`,
        },
        {
          value: 100 * value,
          text: say`This was multiplied by 100 once too often: it was in percent already.`,
        },
      ]
    : [];
  for (const factor of [10, 0.1, 100, 0.01, 1000, 0.001]) {
    if (percent && (factor === 100 || factor === 0.01)) continue;
    const other = named[String(factor)];
    const times = Math.round(Math.max(factor, 1 / factor));
    turns.push({
      value: value * factor,
      text: other
        ? say`This looks like ${other}, and ${unit} are asked for.`
        : factor > 1
          ? say`This is too large by a factor of ${times}. Look at the decimal point, at the unit, and on a chart at the decade of the axis.`
          : say`This is too small by a factor of ${times}. Look at the decimal point, at the unit, and on a chart at the decade of the axis.`,
    });
  }
  turns.push({
    value: -value,
    text: say`The size is right and the sign is wrong: turn the difference round.`,
  });
  turns.push({
    value: 1 / value,
    text: say`The quotient stands upside down: exchange what is divided and what divides.`,
  });
  return turns;
}
