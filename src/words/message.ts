import type { ShownCode } from "./shownCodes.js";

/**
 * A sentence as data: `text` is its English form and the key into the catalogues of other languages, with
 * `{0}`, `{1}` … where `values` go. It follows ICU message syntax, so plurals stand in the text itself:
 * `{0, plural, one {# block} other {# blocks}}`.
 */
export interface Sentence {
  readonly text: string;
  readonly values: readonly MessageValue[];
}

/** A number written for a person, with a decimal point; a language may put its own sign in place of it. */
export interface WrittenNumber {
  readonly number: string;
}

/** A value with its unit, written for a person in SI; `of` says what it is, for readers of other units. */
export interface WrittenQuantity extends WrittenNumber {
  readonly unit: string;
  readonly of: { readonly value: number; readonly kind: string };
}

/** The English name of a soil class; other languages order its words in their own way. */
export interface SoilName {
  readonly soilName: string;
}

/** What is still to be said in a reader's language. */
export type Message = Sentence | WrittenNumber | WrittenQuantity | SoilName;

/** What a person reads: a message of ours, or a text that is the same in every language, such as a user's own. */
export type Text = string | Message;

/** What may stand in a sentence; bare numbers get the language's decimal sign. */
export type MessageValue = Text | number;

/**
 * Makes a sentence that a person will read. Nothing is said yet: a result that holds it is the same in
 * every language, and `render` says it where HTML, a PDF, a terminal line or a cell is made.
 *
 * @example
 * say`A loss of ${1.5} %.` // => { text: "A loss of {0} %.", values: [1.5] }
 * say`${2}{0, plural, one { block} other { blocks}}`.values // => [2]
 */
export function say(strings: TemplateStringsArray, ...values: readonly MessageValue[]): Sentence {
  return { text: keyOf(strings), values };
}

/** Each sentence of the sources is one object for as long as the program runs: its key is made once. */
const KEYS = new WeakMap<TemplateStringsArray, string>();

function keyOf(strings: TemplateStringsArray): string {
  let key = KEYS.get(strings);
  if (key === undefined) {
    key = strings.reduce((text, part, index) => `${text}{${index - 1}}${part}`);
    KEYS.set(strings, key);
  }
  return key;
}

/**
 * The word that a person reads for a code of a result, such as `inside` or `linear`: codes stay English so
 * that programs can compare them.
 *
 * @example
 * wordFor("inside") // => { text: "inside", values: [] }
 */
export function wordFor(code: ShownCode): Sentence {
  return { text: code, values: [] };
}

/**
 * The name of a soil class as a message. The classifications give it in English, as their standards do,
 * so that results compare; symbols such as SC or A-2-4 are the same in every language.
 *
 * @example
 * soilNamed("clayey sand with gravel") // => { soilName: "clayey sand with gravel" }
 */
export function soilNamed(english: string): SoilName {
  return { soilName: english };
}

/**
 * Joins texts, leaving out those that are not there.
 *
 * @param separator default `, `.
 *
 * @example
 * joinTexts([say`sand`, undefined, "Pit 2"]) // => { text: "{0}, {1}", values: [{ text: "sand", values: [] }, "Pit 2"] }
 */
export function joinTexts(texts: readonly (Text | undefined)[], separator = ", "): Text {
  const there = texts.filter((text): text is Text => text !== undefined && text !== "");
  if (there.length <= 1) return there[0] ?? "";
  return { text: there.map((_, index) => `{${index}}`).join(separator), values: there };
}

/**
 * Whether a value is a message of ours that is still to be said.
 *
 * @example
 * isMessage(say`sand`) // => true
 * isMessage("sand") // => false
 */
export function isMessage(value: unknown): value is Message {
  if (typeof value !== "object" || value === null) return false;
  const { text, values, number, unit, of, soilName } = value as Record<string, unknown>;
  if (Object.keys(value).length === 1) {
    return typeof number === "string" || typeof soilName === "string";
  }
  if (typeof number === "string") return typeof unit === "string" && typeof of === "object";
  return Object.keys(value).length === 2 && typeof text === "string" && Array.isArray(values);
}
