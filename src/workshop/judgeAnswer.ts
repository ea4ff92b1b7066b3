import { formatNumber } from "../quantities/format.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { type Language, render } from "../words/render.js";
import {
  acceptedRange,
  type ChoiceExercise,
  type Exercise,
  type Mistake,
  type NumberExercise,
  withUnit,
} from "./exercise.js";

export interface Judgement {
  readonly verdict: "right" | "wrong" | "blank" | "unreadable";
  /** Tries so far, this one counted where it was an answer. */
  readonly tries: number;
  /** For the person who answered. */
  readonly text: Text;
}

/** From this wrong try on, the worked answer is given; at the one before, the hint. */
export const WORKED_AT_TRY = 3;

/**
 * Judges an answer: right and why; or what is wrong with it, at the second try with a hint, from the
 * third on with the worked answer. A blank, and a value of the wrong sort, is no try.
 *
 * @param triesBefore default 0.
 * @throws RangeError for a tolerance below 0. Source: own choice of teaching.
 *
 * @example
 * const exercise = { kind: "number", id: "fines", question: "Fines?", unit: "%", value: 27, tolerance: { abs: 0.5 }, mistakes: [], hint: "Count what was washed out.", worked: "100 (1 − 876 / 1200) = 27 %.", why: "All that passes is fines." };
 * render(judgeAnswer(exercise, 27.2).text) // => "Right. Computed: 27.0 %. All that passes is fines."
 * render(judgeAnswer(exercise, 0.27, 1).text) // => "Not yet. This is a fraction, and percent are asked for: multiply by 100. A hint: Count what was washed out."
 * judgeAnswer(exercise, undefined, 1).verdict // => "blank"
 */
export function judgeAnswer(exercise: Exercise, answer: unknown, triesBefore = 0): Judgement {
  const read = readAnswer(exercise, answer);
  if (read.kind === "blank") {
    const text = say`No answer yet. Write it into the cell above in place of undefined and run the cell again.`;
    return { verdict: "blank", tries: triesBefore, text };
  }
  if (read.kind === "unreadable") {
    return { verdict: "unreadable", tries: triesBefore, text: read.text };
  }
  const tries = triesBefore + 1;
  const wrong = whatIsWrong(exercise, read.value);
  return wrong === undefined
    ? { verdict: "right", tries, text: rightWords(exercise) }
    : { verdict: "wrong", tries, text: wrongWords(exercise, wrong, tries) };
}

function rightWords(exercise: Exercise): Text {
  const { why } = exercise;
  if (exercise.kind === "choice") return say`Right. ${why}`;
  return say`Right. Computed: ${withUnit(exercise.value, exercise.unit)}. ${why}`;
}

function wrongWords({ hint, worked }: Exercise, wrong: Text, tries: number): Text {
  if (tries >= WORKED_AT_TRY) return say`Not yet. ${wrong} Worked: ${worked}`;
  if (tries === WORKED_AT_TRY - 1) return say`Not yet. ${wrong} A hint: ${hint}`;
  return say`Not yet. ${wrong}`;
}

/** What is wrong, or nothing where the answer is accepted. */
function whatIsWrong(exercise: Exercise, answer: number | string): Text | undefined {
  if (exercise.kind === "choice") {
    if (answer === exercise.value) return undefined;
    const mistake = exercise.mistakes.find(({ value }) => value === answer);
    return mistake?.text ?? say`That is not what the data say.`;
  }
  const { low, high } = acceptedRange(exercise);
  const given = answer as number;
  return given >= low && given <= high ? undefined : recogniseMistake(exercise, given);
}

/** What somebody wrote for an answer. */
export type AnswerReading =
  | { readonly kind: "blank" }
  | { readonly kind: "number"; readonly value: number }
  /** The key of the option. */
  | { readonly kind: "choice"; readonly value: string }
  | { readonly kind: "unreadable"; readonly text: Text };

/**
 * Takes whatever stands in an answer cell: nothing, a number, one of the texts that the exercise offers
 * in any of our languages, or something that is none of these, with a friendly word on how to write it. A
 * text that holds nothing but a number is told to go without its quotation marks, not taken as the number.
 *
 * @example
 * const options = [{ key: "yes", text: say`yes` }, { key: "no", text: say`no` }];
 * readAnswer({ kind: "choice", options }, " Yes ") // => { kind: "choice", value: "yes" }
 * readAnswer({ kind: "choice", options }, "sí") // => { kind: "choice", value: "yes" }
 * readAnswer({ kind: "number" }, undefined) // => { kind: "blank" }
 */
export function readAnswer(
  exercise: { readonly kind: "number" } | Pick<ChoiceExercise, "kind" | "options">,
  answer: unknown,
): AnswerReading {
  if (answer === undefined || answer === null) return { kind: "blank" };
  if (typeof answer === "string" && answer.trim() === "") return { kind: "blank" };
  if (typeof answer === "object" && "then" in answer) {
    return unreadable(say`This is a promise of a value, not the value. Write await before it.`);
  }
  if (typeof answer === "function") {
    return unreadable(
      say`This is a function, not its result. Call it: write brackets after its name.`,
    );
  }
  return exercise.kind === "choice" ? readChoice(exercise.options, answer) : readNumber(answer);
}

function unreadable(text: Text): AnswerReading {
  return { kind: "unreadable", text };
}

function readNumber(answer: unknown): AnswerReading {
  if (typeof answer === "bigint") return { kind: "number", value: Number(answer) };
  if (typeof answer === "number") {
    if (Number.isFinite(answer)) return { kind: "number", value: answer };
    return unreadable(
      Number.isNaN(answer)
        ? say`This came out as NaN, “not a number”: something in the sum was missing, or 0 was divided by 0. Look at each number in it.`
        : say`This came out as infinity: the sum divides by 0. Look at what stands below.`,
    );
  }
  if (typeof answer === "string") {
    const number = numberIn(answer);
    return unreadable(
      number === undefined
        ? say`This is a text, and a number is asked for. Write it without quotation marks.`
        : say`This is a text. Write the number alone, without quotation marks and without its unit, with a point before the decimals: ${number}`,
    );
  }
  return unreadable(
    Array.isArray(answer)
      ? say`This is a list, and one number is asked for. Choose one of it, for example with [0].`
      : say`This is no number. Write one, for example 12.5.`,
  );
}

/** The number in a text such as `59,1 %`, as it is to be written. */
function numberIn(text: string): string | undefined {
  const [found] = /^-?\d+(?:[.,]\d+)?/.exec(text.trim().replace("−", "-")) ?? [];
  return found?.replace(",", ".");
}

const LANGUAGES: readonly Language[] = ["en", "es"];

/**
 * Without capitals, accents, spaces, points and the printer's minus, which are no part of an answer; “minus
 * one”, “one less” and the like as a sign and a digit.
 */
function bare(text: string): string {
  const words = text
    .toLowerCase()
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/[−–—]/g, "-")
    .replace(/\b(one|uno|una|un)\b/g, "1")
    .replace(/\b(?:minus|menos)\s*(?=1)/g, "-")
    .replace(/\b(?:plus|mas)\s*(?=1)/g, "+")
    .replace(/^\s*1 (.+) (?:less|fewer|menos)\s*$/, "$1 -1")
    .replace(/^\s*1 (.+) (?:more|mas)\s*$/, "$1 +1")
    .replace(/\b1 (?:less|fewer|menos)\b/, "-1")
    .replace(/\b1 (?:more|mas)\b/, "+1");
  const plain = words.replace(/[\s.,:;()]/g, "");
  // “-1 gravel” is “gravel -1”
  return plain.replace(/^([+-]\d)(.+)$/, "$2$1");
}

/** The option that a text names: by the whole of it, or by a part that no other option has. */
function readChoice(options: ChoiceExercise["options"], answer: unknown): AnswerReading {
  const typed = typeof answer === "string" ? bare(answer) : yesOrNo(answer);
  const names = options.map(({ key, text }) => ({
    key,
    written: [key, ...LANGUAGES.map((language) => render(text, language))].map(bare),
  }));
  const exact = names.filter(({ written }) => written.includes(typed));
  const sign = /[+-]\d$/.exec(typed)?.[0] ?? "";
  const start = typed.slice(0, typed.length - sign.length);
  const begun =
    start.length < 3
      ? []
      : names.filter(({ written }) =>
          written.some((name) => name.includes(start) && name.endsWith(sign)),
        );
  const [chosen, second] = exact.length > 0 ? exact : begun;
  if (chosen !== undefined && (exact.length > 0 || second === undefined)) {
    return { kind: "choice", value: chosen.key };
  }
  const list = joinTexts(options.map(({ text }) => say`"${text}"`));
  return unreadable(say`One of these texts is asked for, in quotation marks: ${list}.`);
}

/** A comparison that somebody wrote in place of the word that it stands for. */
function yesOrNo(answer: unknown): string {
  if (typeof answer !== "boolean") return "";
  return answer ? "yes" : "no";
}

/** Answers are written to three digits or so. */
const ROUNDED = 0.005;

/**
 * Says what is wrong with a number that is not accepted: the nearest of the exercise's own mistakes
 * whose value it has within the tolerance of the exercise, else of the common ones, else only whether it
 * is too large or too small, and by about how much.
 *
 * A mistake whose own value would be accepted is never named, as such data cannot tell the two ways apart.
 *
 * @example
 * const exercise = { value: 20, unit: "%", tolerance: { rel: 0.05 }, mistakes: [{ value: 35, text: "The sand was left out." }] };
 * recogniseMistake(exercise, 34.9) // => "The sand was left out."
 * render(recogniseMistake(exercise, 80)) // => "This is the rest to 100 %. Ask whether the part passes or is kept back, is meant or is left."
 * render(recogniseMistake(exercise, 26)) // => "This is too large, by about 30 %."
 */
export function recogniseMistake(
  exercise: Pick<NumberExercise, "value" | "unit" | "between" | "tolerance" | "mistakes">,
  answer: number,
): Text {
  const { value, tolerance, mistakes } = exercise;
  const accepted = acceptedRange(exercise);
  const nearest = (known: readonly Mistake<number>[], roomOf: (wrong: number) => number) =>
    known
      .filter((wrong) => wrong.value < accepted.low || wrong.value > accepted.high)
      .filter((wrong) => Math.abs(answer - wrong.value) <= roomOf(wrong.value))
      .sort((a, b) => Math.abs(answer - a.value) - Math.abs(answer - b.value))[0];
  const { rel = 0, abs = 0 } = tolerance;
  // A unit mistake is off by the rounding of the answer, not by the absolute room of the right one.
  const part = value === 0 ? rel : Math.max(rel, abs / Math.abs(value));
  const found =
    nearest(mistakes, (wrong) => Math.max(rel * Math.abs(wrong), abs, ROUNDED * Math.abs(wrong))) ??
    nearest(commonMistakes(exercise), (wrong) => Math.min(0.2, part) * Math.abs(wrong));
  return found?.text ?? howFarOff(value, answer);
}

function howFarOff(value: number, answer: number): Text {
  const high = answer > value;
  const off = value === 0 ? Number.NaN : Math.abs(answer / value - 1);
  if (!(off < 1)) return high ? say`This is far too large.` : say`This is far too small.`;
  const about = formatNumber(100 * off, 1);
  return high
    ? say`This is too large, by about ${about} %.`
    : say`This is too small, by about ${about} %.`;
}

/** Units that a value may have been given in by mistake, by what the value is then multiplied with. */
const OTHER_UNITS: Readonly<Record<string, Readonly<Record<string, Text>>>> = {
  mm: {
    "1000": say`micrometres`,
    "0.1": say`centimetres`,
    "0.001": say`metres`,
    "0.03937": say`inches`,
  },
  MPa: {
    "1000": say`kilopascals`,
    "0.001": say`gigapascals (or kN/mm²)`,
    "0.1": say`kN/cm²`,
    "145.04": "psi",
  },
  psi: { "0.0068948": "MPa", "144": say`pounds on a square foot` },
  kg: { "1000": say`grams`, "0.001": say`tonnes`, "2.2046": say`pounds` },
  lb: { "0.45359": say`kilograms`, "16": say`ounces` },
  "kg/m³": { "0.001": say`g/cm³` },
};

/**
 * The mistakes that may have been made with any number: a slipped decimal point or decade of the axis,
 * another unit, a fraction for percent, the rest to a hundred, a sign, a quotient upside down. Source:
 * common practice of teaching, no source.
 *
 * @example
 * commonMistakes({ value: 20, unit: "%" }).map(({ value }) => value) // => [0.2, 80, 2000, 200, 2, 20000, 0.02, -20, 0.05]
 */
export function commonMistakes({
  value,
  unit,
}: Pick<NumberExercise, "value" | "unit">): Mistake<number>[] {
  if (value === 0) return [];
  const percent = unit === "%";
  const own = Object.keys(OTHER_UNITS[unit] ?? {}).map(Number);
  const factors = [...new Set([10, 0.1, 100, 0.01, 1000, 0.001, ...own])];
  return [
    ...(percent ? percentMistakes(value) : []),
    ...factors
      .filter((factor) => !(percent && (factor === 100 || factor === 0.01)))
      .map((factor) => ({ value: value * factor, text: factorWords(factor, unit) })),
    {
      value: -value,
      text: say`The size is right and the sign is wrong: turn the difference round.`,
    },
    {
      value: 1 / value,
      text: say`The quotient stands upside down: exchange what is divided and what divides.`,
    },
  ];
}

function percentMistakes(value: number): Mistake<number>[] {
  return [
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
  ];
}

function factorWords(factor: number, unit: string): Text {
  const other = OTHER_UNITS[unit]?.[String(factor)];
  if (other !== undefined) return say`This looks like ${other}, and ${unit} are asked for.`;
  const times = Math.round(Math.max(factor, 1 / factor));
  return factor > 1
    ? say`This is too large by a factor of ${times}. Look at the decimal point, at the unit, and on a chart at the decade of the axis.`
    : say`This is too small by a factor of ${times}. Look at the decimal point, at the unit, and on a chart at the decade of the axis.`;
}
