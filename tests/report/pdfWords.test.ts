import { describe, expect, test } from "vitest";
import { startsRightToLeft } from "../../src/blocks/html.js";
import { smartQuotes } from "../../src/report/markdown.js";
import { exerciseLines, notebookTitle } from "../../src/report/notebookToDocument.js";
import { coverageOf, fontsForScripts, withoutMissingGlyphs } from "../../src/report/pdf/fonts.js";
import { markdownCell, notebookOf } from "./sampleNotebook.js";

describe("characters", () => {
  test("each script has its font", () => {
    expect(fontsForScripts("漢かカ한")).toEqual([
      "Noto Sans SC, TC, JP or KR",
      "Noto Sans KR",
      "Noto Sans JP",
    ]);
    expect(fontsForScripts("ไบ᠋བོད")).toEqual(["Noto Sans Thai", "Noto Serif Tibetan"]);
    expect(fontsForScripts("☃a")).toEqual([]);
  });

  test("joiners need no glyph, and keys stay", () => {
    const given = { 土: ["a\u200db", 1, null, "土"] };
    const { data, missing } = withoutMissingGlyphs(given, coverageOf());
    expect(data).toEqual({ 土: ["a\u200db", 1, null, "‹U+571F›"] });
    expect([...missing]).toEqual(["土"]);
  });

  test("the first letter decides the direction", () => {
    expect(startsRightToLeft("(12) דרך wall")).toBe(true);
    expect(startsRightToLeft("wall דרך")).toBe(false);
    expect(startsRightToLeft("12")).toBe(false);
  });
});

describe("words of a notebook", () => {
  test("quotation marks in prose, never in code, maths or after a number", () => {
    const text = (words: string, language: "en" | "es") =>
      smartQuotes([{ kind: "prose", inlines: [{ kind: "text", text: words }] }], language)[0];
    const said = (words: string) => ({ kind: "prose", inlines: [{ kind: "text", text: words }] });
    expect(text('the "red" soil\'s ("dry")', "en")).toEqual(said("the “red” soil’s (“dry”)"));
    expect(text('6" by 8" and 5\' 2"', "en")).toEqual(said('6" by 8" and 5\' 2"'));
    expect(text('a lone " mark', "es")).toEqual(said('a lone " mark'));
    const code = [{ kind: "prose", inlines: [{ kind: "code", text: '"a"' }] }] as const;
    expect(smartQuotes(code, "en")).toEqual(code);
  });

  test("exercises name their lines", () => {
    expect(exerciseLines(["x", "exercise"])).toBe(5);
    expect(exerciseLines(["exercise-12"])).toBe(12);
    for (const tag of ["exercise-0", "exercise-100", "exercises", "exercise-x"]) {
      expect(exerciseLines([tag]), tag).toBe(0);
    }
  });

  test("the title is the first heading of level 1", () => {
    expect(notebookTitle(notebookOf([markdownCell("## A"), markdownCell("# B *c*")]))).toBe("B c");
    expect(notebookTitle(notebookOf([markdownCell("## A")]))).toBeUndefined();
    expect(() => notebookTitle({})).toThrow(TypeError);
  });
});
