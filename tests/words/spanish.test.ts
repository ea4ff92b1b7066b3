import { afterEach, describe, expect, it } from "vitest";
import { formatFixed, formatNumber, formatPlain } from "../../src/quantities/format.js";
import { useLanguage } from "../../src/words/language.js";
import { say, sayOf } from "../../src/words/say.js";
import { soilName } from "../../src/words/soilName.js";
import { SPANISH } from "../../src/words/spanish/catalogue.js";
import { SPANISH_GLOSSARY } from "../../src/words/spanish/glossary.js";
import { sentences } from "../support/sentences.js";

afterEach(() => {
  useLanguage("en");
});

const said = sentences();
const placeholders = (text: string) => [...new Set(text.match(/\{\d+\}/g))].sort();

describe("the Spanish catalogue", () => {
  it("has every sentence that the sources say", () => {
    expect(said.length).toBeGreaterThan(1500);
    const missing = said.filter(({ key }) => SPANISH[key] === undefined);
    expect(missing).toEqual([]);
  });

  it("has no sentence that nobody says any more", () => {
    const keys = new Set(said.map(({ key }) => key));
    expect(Object.keys(SPANISH).filter((key) => !keys.has(key))).toEqual([]);
  });

  it("puts every value of a sentence into its translation", () => {
    const wrong = Object.entries(SPANISH).filter(
      ([english, spanish]) => `${placeholders(english)}` !== `${placeholders(spanish)}`,
    );
    expect(wrong).toEqual([]);
  });

  it("leaves no sentence empty, and spaces at its ends as they are", () => {
    const wrong = Object.entries(SPANISH).filter(
      ([english, spanish]) =>
        spanish.trim() === "" ||
        english.startsWith(" ") !== spanish.startsWith(" ") ||
        english.endsWith(" ") !== spanish.endsWith(" "),
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

describe("speaking Spanish", () => {
  it("says sentences and numbers the Spanish way", () => {
    useLanguage("es");
    expect(say`at least ${1.5}`).toBe("1,5 como mínimo");
    expect(sayOf("liquid limit")).toBe("límite líquido");
    expect([formatNumber(0.01234), formatFixed(-2.26, 1), formatPlain(12)]).toEqual([
      "0,0123",
      "−2,3",
      "12",
    ]);
    expect(formatPlain(2.5)).toBe("2,5");
  });

  it("takes the decimal sign from the country", () => {
    useLanguage("es-MX");
    expect(formatFixed(1.5, 1)).toBe("1.5");
    useLanguage("es-AR");
    expect(formatFixed(1.5, 1)).toBe("1,5");
  });

  it("leaves a user's own text as it is", () => {
    useLanguage("es");
    expect(sayOf("East wall of the reading room")).toBe("East wall of the reading room");
  });

  it("refuses a language that it does not speak", () => {
    expect(() => useLanguage("fr" as "en")).toThrow(RangeError);
  });

  it("names soils with the noun first and in its gender", () => {
    useLanguage("es");
    expect(
      [
        "clayey sand with gravel",
        "sandy lean clay",
        "poorly graded gravel with silt and sand",
        "silty, clayey sand",
        "elastic silt with sand",
        "clay of very high plasticity",
        "slightly silty sandy gravel",
        "very gravelly sandy clay loam",
        "loamy sand",
        "not classified",
      ].map(soilName),
    ).toEqual([
      "arena arcillosa con grava",
      "arcilla arenosa de baja plasticidad",
      "grava mal graduada con limo y arena",
      "arena limo-arcillosa",
      "limo elástico con arena",
      "arcilla de plasticidad muy alta",
      "grava arenosa ligeramente limosa",
      "franco arcillo-arenoso muy gravoso",
      "arena franca",
      "sin clasificar",
    ]);
  });
});
