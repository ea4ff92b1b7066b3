import { describe, expect, it } from "vitest";
import { formatFixed, formatNumber, formatPlain } from "../../src/quantities/format.js";
import { joinTexts, say, soilNamed, wordFor } from "../../src/words/message.js";
import { type Locale, languageOf, render, renderAll } from "../../src/words/render.js";
import { slug } from "../../src/words/slug.js";

describe("saying a message", () => {
  it("gives one sentence in each language", () => {
    const atLeast = say`at least ${1.5}`;
    expect(atLeast).toEqual({ text: "at least {0}", values: [1.5] });
    expect(render(atLeast)).toBe("at least 1.5");
    expect(render(atLeast, "es")).toBe("1,5 como mínimo");
    expect(render(say`liquid limit`, "es")).toBe("límite líquido");
  });

  it("chooses the plural, and repeats a value with the sign of the language", () => {
    const message = say`${1.5}{0, plural, one { error} other { errors}}, ${1}{1, plural, one { warning} other { warnings}}, ${2}{2, plural, one { note} other { notes}}`;
    expect(render(message)).toBe("1.5 errors, 1 warning, 2 notes");
    expect(render(message, "es")).toBe("1,5 errores, 1 advertencia, 2 notas");
    expect(render({ text: "{0, plural, one {# block} other {# blocks}}", values: [21] })).toBe(
      "21 blocks",
    );
  });

  it("writes numbers with the decimal sign of the country", () => {
    const numbers = [formatNumber(0.01234), formatFixed(-2.26, 1), formatPlain(12)];
    const said = (locale: Locale) => renderAll(numbers, locale);
    expect(said("en")).toEqual(["0.0123", "−2.3", "12"]);
    expect(said("es")).toEqual(["0,0123", "−2,3", "12"]);
    expect(said("es-AR")).toEqual(["0,0123", "−2,3", "12"]);
    expect(said("es-MX")).toEqual(["0.0123", "−2.3", "12"]);
    expect(render(say`at least ${1.5}`, "es-MX")).toBe("1.5 como mínimo");
  });

  it("says messages inside messages, and joined ones", () => {
    const joined = joinTexts([wordFor("sand"), "Pit 2", undefined, formatFixed(1.25, 2)]);
    expect(render(joined)).toBe("sand, Pit 2, 1.25");
    expect(render(joined, "es")).toBe("arena, Pit 2, 1,25");
    expect(joinTexts([])).toBe("");
  });

  it("leaves a user's own text as it is, whatever it looks like", () => {
    for (const text of ["Gravel", "sand {0}", "1.5 'x' <b>", "{0, plural, one {x}}"]) {
      expect(render(text, "es")).toBe(text);
      expect(render(say`at least ${text}`, "es")).toBe(`${text} como mínimo`);
    }
  });

  it("says the messages in a piece of data and leaves the rest", () => {
    const sizes = new Float64Array([1, 2]);
    const data = {
      caption: wordFor("sand"),
      rows: [[formatFixed(1.5, 1), "Pit 2"]],
      count: 3,
      none: null,
      sizes,
      // A record of the trade that only looks a little like a message.
      units: { number: "3", of: "blocks" },
    };
    expect(renderAll(data, "es")).toEqual({ ...data, caption: "arena", rows: [["1,5", "Pit 2"]] });
  });

  it("refuses a language that it does not speak", () => {
    expect(() => render(say`at least ${1}`, "fr" as "en")).toThrow(RangeError);
    expect(() => languageOf("fr-CA" as "en")).toThrow(/invalid `locale`: fr-CA/);
  });

  it("names soils with the noun first and in its gender", () => {
    const names = {
      "clayey sand with gravel": "arena arcillosa con grava",
      "sandy lean clay": "arcilla arenosa de baja plasticidad",
      "poorly graded gravel with silt and sand": "grava mal graduada con limo y arena",
      "silty, clayey sand": "arena limo-arcillosa",
      "elastic silt with sand": "limo elástico con arena",
      "clay of very high plasticity": "arcilla de plasticidad muy alta",
      "slightly silty sandy gravel": "grava arenosa ligeramente limosa",
      "very gravelly sandy clay loam": "franco arcillo-arenoso muy gravoso",
      "loamy sand": "arena franca",
      "not classified": "sin clasificar",
    };
    for (const [english, spanish] of Object.entries(names)) {
      expect(render(soilNamed(english), "es")).toBe(spanish);
      expect(render(soilNamed(english))).toBe(english);
    }
  });
});

describe("a slug", () => {
  it("is words in small Latin letters, cut at its length and never at a hyphen", () => {
    expect(slug("Tamiz nº 200: ≤ 0,075 mm")).toBe("tamiz-no-200-0-075-mm");
    expect(slug("ñandú ÅÉ")).toBe("nandu-ae");
    expect(slug("خاک")).toBe("");
    expect(slug("a".repeat(70))).toHaveLength(60);
    expect([slug("soil sand", 5), slug("soil sand", 4), slug("soil sand", 6)]).toEqual([
      "soil",
      "soil",
      "soil-s",
    ]);
  });
});
