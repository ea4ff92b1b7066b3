import { describe, expect, it } from "vitest";
import { inventedFindings, isMarkedInvented } from "../../src/entries/inventedData.js";
import { parseStudyYaml } from "../../src/entries/parseStudyYaml.js";
import type { StudyConfig } from "../../src/entries/studyConfig.js";
import type { SheetGrid } from "../../src/lab/sheet/grid.js";
import { renderAll } from "../../src/words/render.js";

const TEXT = [
  "format: loambook-study/1",
  "title: A study to start from",
  "place: Example Town # invented",
  'purpose: "# invented is a word here"',
  "cement:",
  "  # Invented: the brand",
  "  name: Hill",
  "",
].join("\n");
const CONFIG = {
  invented: false,
  title: "A study to start from",
  place: "Example Town",
  cement: { name: "Hill" },
  strength: {},
};
const SHEETS = [
  { file: "sheets/sieve.csv", rows: [["sieve"], ["", "# invented: replace", "", "this"], ["2"]] },
  { file: "sheets/limits.csv", rows: [["limits", "# invented"]] },
];

const told = (config: object = CONFIG, text = TEXT, sheets: readonly object[] = SHEETS) =>
  renderAll(
    inventedFindings(
      text,
      config as unknown as StudyConfig,
      sheets as unknown as SheetGrid[],
      parseStudyYaml(text).rowOf,
    ),
  );

describe("what still says that a study is invented", () => {
  it("is told in its sheet and row, at its key, and behind its entry", () => {
    expect(
      told().map(({ severity, code, file, row, column, value }) => [
        severity,
        code,
        file,
        row,
        column,
        value,
      ]),
    ).toEqual([
      // A spreadsheet counts from 1; the mark is the first filled cell of its row.
      ["error", "invented-data", "sheets/sieve.csv", 2, undefined, "# invented: replace, this"],
      ["error", "invented-data", "study.yaml", 2, "title", "A study to start from"],
      ["error", "invented-data", "study.yaml", 3, "place", "Example Town"],
      ["error", "invented-data", "study.yaml", 6, undefined, "# Invented: the brand"],
    ]);
  });

  it("is no matter where the study says so itself, nor in a text of the user's own", () => {
    expect(told({ ...CONFIG, invented: true })).toEqual([]);
    const own = 'format: loambook-study/1\npurpose: "# invented is a word here"\n';
    expect(told({ ...CONFIG, title: "Ours" }, own, [])).toEqual([]);
  });

  it("is told of a placeholder however it is spaced and written", () => {
    const title = "  a study  TO start from ";
    const [found] = told({ ...CONFIG, title }, `title: "${title}"\n`, []);
    expect(found).toMatchObject({ row: 1, column: "title", value: title });
  });

  it("begins its remark with the word", () => {
    expect(
      [
        ["# invented"],
        ["", "#Invented: x"],
        ["# not invented"],
        ["invented"],
        ["# inventedness"],
        [],
      ].map(isMarkedInvented),
    ).toEqual([true, true, false, false, false, false]);
  });
});
