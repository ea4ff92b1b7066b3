import { IntlMessageFormat } from "intl-messageformat";
import { describe, expect, it } from "vitest";
import SPANISH_JSON from "../../src/words/es.json" with { type: "json" };
import { SHOWN_CODES } from "../../src/words/shownCodes.js";
import { SPANISH_GLOSSARY } from "../../src/words/spanishGlossary.js";
import { sentences } from "../support/sentences.js";

const SPANISH: Readonly<Record<string, string>> = SPANISH_JSON;

type Element = ReturnType<IntlMessageFormat["getAst"]>[number];

const LITERAL = 0;
const PLURAL = 6;

const parsed = new Map<string, Element[]>();

/** Each message is asked for many times. */
function elementsOf(message: string): Element[] {
  const elements =
    parsed.get(message) ??
    new IntlMessageFormat(message, "en", undefined, { ignoreTag: true }).getAst();
  parsed.set(message, elements);
  return elements;
}

/** Every part of a message, those inside the choices of its plurals as well. */
function allElements(message: string): Element[] {
  const inside = (element: Element): Element[] =>
    "options" in element
      ? [element, ...Object.values(element.options).flatMap(({ value }) => value.flatMap(inside))]
      : [element];
  return elementsOf(message).flatMap(inside);
}

const literals = (message: string) =>
  allElements(message).flatMap((element) =>
    element.type === LITERAL && "value" in element ? [element.value] : [],
  );

/** Symbols of units are the same in every language. */
const SYMBOLS = new Set("mm cm m km g kg lb kN N MPa kPa psi min h d C F".split(" "));

const wordsOf = (message: string) =>
  literals(message)
    .flatMap((text) => text.match(/\p{L}+/gu) ?? [])
    .filter((word) => !SYMBOLS.has(word));

/** A message of signs, units and values alone is the same in every language. */
const hasWords = (message: string) => wordsOf(message).length > 0;

/** The arguments of a message, each once, and those that choose a plural. */
function argumentsOf(message: string): string[] {
  const names = allElements(message).flatMap((element) => {
    if (!("value" in element) || element.type === LITERAL) return [];
    return [element.type === PLURAL ? `plural ${element.value}` : element.value];
  });
  return [...new Set(names)].sort();
}

const parses = (message: string) => {
  try {
    elementsOf(message);
    return true;
  } catch {
    return false;
  }
};

const codes = SHOWN_CODES.map((key) => ({ key: key as string, file: "words/shownCodes.ts" }));
const said = [...sentences(), ...codes];
const readable = said.filter(({ key }) => parses(key));
const catalogue = Object.entries(SPANISH).filter((pair) => pair.every(parses));

describe("the Spanish catalogue", () => {
  it("holds messages of ICU syntax, as the sources do", () => {
    expect(said.filter(({ key }) => !parses(key))).toEqual([]);
    expect(Object.entries(SPANISH).filter((pair) => !pair.every(parses))).toEqual([]);
  });

  it("has every sentence that the sources say", () => {
    expect(said.length).toBeGreaterThan(1500);
    const missing = readable.filter(({ key }) => hasWords(key) && SPANISH[key] === undefined);
    expect(missing).toEqual([]);
  });

  it("has no sentence that nobody says any more, and none without words", () => {
    const keys = new Set(said.map(({ key }) => key));
    expect(Object.keys(SPANISH).filter((key) => !keys.has(key))).toEqual([]);
    expect(catalogue.filter(([english]) => !hasWords(english)).map(([key]) => key)).toEqual([]);
  });

  it("has the same values and plurals in a translation as in its sentence", () => {
    const wrong = catalogue.filter(
      ([english, spanish]) => `${argumentsOf(english)}` !== `${argumentsOf(spanish)}`,
    );
    expect(wrong).toEqual([]);
  });

  it("leaves no sentence empty, and spaces at its ends as they are", () => {
    const ends = (text: string) => [/^\s/.test(text), /\s$/.test(text)];
    const wrong = catalogue.filter(
      ([english, spanish]) => spanish.trim() === "" || `${ends(english)}` !== `${ends(spanish)}`,
    );
    expect(wrong).toEqual([]);
  });

  it("leaves no sentence in English", () => {
    // Symbols, names of people and standards, and words that Spanish writes in the same way.
    const same = new Set(
      (
        "f c Cu Cc D ln BS ISO USDA SHA Munsell Weibull Rosin Rammler " +
        "Fredlund Skaggs Haverkamp Parlange Shapiro Wilk Lognormal unimodal " +
        "Error error Factor Material Total no"
      ).split(" "),
    );
    const wrong = catalogue.filter(
      ([english, spanish]) =>
        english === spanish && !wordsOf(english).every((word) => same.has(word)),
    );
    expect(wrong).toEqual([]);
  });

  it("uses the words of the glossary", () => {
    // The stem: a term may stand in the plural or as an adjective.
    const stem = (word: string) => word.toLowerCase().slice(0, Math.max(4, word.length - 2));
    const wrong = SPANISH_GLOSSARY.flatMap(({ english, spanish, alsoSaid }) => {
      if (!/ (limit|index|shrinkage|density)$/.test(english)) return [];
      const asked = new RegExp(`\\b${english}\\b`, "i");
      return Object.entries(SPANISH).filter(
        ([key, text]) =>
          asked.test(key) &&
          ![spanish, ...(alsoSaid?.split(", ") ?? [])].some((one) =>
            one.split(" ").every((word) => text.toLowerCase().includes(stem(word))),
          ),
      );
    });
    expect(wrong).toEqual([]);
  });
});
