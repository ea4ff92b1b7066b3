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
  const key = sentenceKey(strings);
  const sentence = currentLanguage() === "es" ? (SPANISH[key] ?? key) : key;
  return sentence.replace(/\{(\d+)\}/g, (_, index) => {
    const value = values[Number(index)];
    return typeof value === "number" ? localNumber(String(value)) : String(value);
  });
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
