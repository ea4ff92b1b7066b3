import { currentLanguage, localNumber } from "./language.js";
import { SPANISH } from "./spanish/catalogue.js";

/** The key of a sentence: its English text with `{0}`, `{1}` … where values go. */
export function sentenceKey(strings: readonly string[]): string {
  return strings.reduce((key, part, index) => `${key}{${index - 1}}${part}`);
}

/** What may stand in a sentence; bare numbers get the language's decimal sign. */
export type SaidValue = string | number | bigint | null | undefined;

/**
 * Says a sentence in the language of the study. The English text stands where it is said and is the key
 * into the catalogue of every other language; a test finds each one that a catalogue lacks.
 *
 * Values go in as they are, except that bare numbers get the language's decimal sign; numbers that were
 * written by `formatNumber` have it already.
 *
 * @example
 * say`A loss of ${1.5} %.` // => "A loss of 1.5 %."
 */
export function say(strings: TemplateStringsArray, ...values: readonly SaidValue[]): string {
  // Thousands of sentences are said while curves are drawn again and again: no search in the text here.
  if (currentLanguage() === "en") {
    let said = strings[0];
    for (let index = 1; index < strings.length; index += 1) {
      said += valueText(values[index - 1]) + strings[index];
    }
    return said;
  }
  return spanishParts(strings)
    .map((part, index) => (index % 2 === 0 ? part : valueText(values[Number(part)])))
    .join("");
}

function valueText(value: SaidValue): string {
  return typeof value === "number" ? localNumber(String(value)) : String(value);
}

/** Each sentence of the sources is one object for as long as the program runs. */
const SPLIT = new WeakMap<TemplateStringsArray, readonly string[]>();

/** Text and the numbers of values in turn. */
function spanishParts(strings: TemplateStringsArray): readonly string[] {
  const known = SPLIT.get(strings);
  if (known) return known;
  const key = sentenceKey(strings);
  const parts = (SPANISH[key] ?? key).split(/\{(\d+)\}/);
  SPLIT.set(strings, parts);
  return parts;
}

/**
 * Marks a sentence in data, to be said later by `sayOf`: what stands at the top of a file is made before
 * any language is chosen.
 *
 * @example
 * phrase`wet cement burns` // => "wet cement burns"
 */
export function phrase(strings: TemplateStringsArray): string {
  return sentenceKey(strings);
}

/**
 * Says a sentence that data carry. A text that is no phrase of ours, for example a user's, stays as it is.
 *
 * @example
 * sayOf("Gate wall") // => "Gate wall"
 */
export function sayOf(text: string): string {
  return currentLanguage() === "es" ? (SPANISH[text] ?? text) : text;
}
