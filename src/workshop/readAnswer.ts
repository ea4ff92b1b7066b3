import { say } from "../words/say.js";
import type { Exercise } from "./exercise.js";

/** What somebody wrote for an answer. */
export type AnswerReading =
  | { readonly kind: "blank" }
  | { readonly kind: "number"; readonly value: number }
  | { readonly kind: "choice"; readonly value: string }
  | { readonly kind: "unreadable"; readonly text: string };

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
  const unreadable = (text: string): AnswerReading => ({ kind: "unreadable", text });
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
