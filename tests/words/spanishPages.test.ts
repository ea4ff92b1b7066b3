import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import * as loam from "../../src/index.js";
import { EXAMPLE_NAMES, exampleResult } from "../support/exampleResult.js";

const AsyncFunction = Object.getPrototypeOf(async () => {}).constructor as FunctionConstructor;

/** The code of the Spanish appendix, its cells one after the other. */
const CODE = (
  JSON.parse(
    readFileSync(new URL("../../notebooks/permit-appendix.es.ipynb", import.meta.url), "utf8"),
  ) as { cells: { cell_type: string; source: string | string[] }[] }
).cells
  .filter((cell) => cell.cell_type === "code")
  .map(({ source }) => [source].flat().join(""))
  .join("\n")
  .replace(/^import .*$/m, "")
  .replace('let annexes = "";', 'let annexes = "all";');

/** Everything that the appendix of an example shows, its messages not yet said. */
async function shownBy(name: (typeof EXAMPLE_NAMES)[number]): Promise<unknown[]> {
  const shown: unknown[] = [];
  const showIn = () => (value: unknown) => {
    shown.push(value);
    return Promise.resolve();
  };
  const run = new AsyncFunction("loam", CODE);
  await run({ ...loam, openStudy: () => exampleResult(name), showIn });
  return shown;
}

/** A message in Spanish, with a dot for every text that is not ours: names, remarks, units. */
function ownWords(message: loam.Message): string {
  const blank = (text: loam.Message): loam.Message =>
    "values" in text ? { text: text.text, values: text.values.map(blankValue) } : text;
  const blankValue = (value: loam.MessageValue): loam.MessageValue => {
    if (typeof value === "string") return "·";
    return typeof value === "number" ? value : blank(value);
  };
  return loam.render(blank(message), "es");
}

function visit(data: unknown, see: (text: loam.Text, key: string) => void, key = ""): void {
  if (typeof data === "string" || loam.isMessage(data)) see(data, key);
  else if (Array.isArray(data)) for (const item of data) visit(item, see, key);
  else if (typeof data === "object" && data !== null) {
    for (const [name, value] of Object.entries(data)) visit(value, see, name);
  }
}

/** Names of works and institutions are cited as they are called. */
const CITED =
  /University of Waterloo|(Encyclopedia|Journal) of [\p{Lu}\p{Ll} ]+|International Critical Tables|Construction and Building Materials|Cement stabilised rammed earth, Part A|Compressive strength and elastic properties of stabilised rammed earth and masonry|Portland Cement Association|Bureau of Indian Standards/gu;

/** Telltale words; keys such as `strength.covariates` and codes such as `moisture-check` are none. */
const ENGLISH =
  /(?<![\p{L}.-])(the|and|of|with|by|to|for|is|are|not|than|from|at|one|was|were|its|each|excluded|mass|cost|means|water|sand|soil|limits?|blocks?|cement|strength|batch(es)?|lifts?|share|bound|moisture|density)(?![\p{L}-]|\.\p{L})/iu;

/** Where a figure or a block holds words; other strings of theirs are codes, colours and numbers. */
const WORD_KEYS = new Set(
  [
    "caption",
    "header",
    "label",
    "text",
    "notes",
    "alt",
    "name",
    "ticktext",
    "hovertemplate",
  ].concat(["message", "expected", "remedy", "title", "rows", "lines"]),
);

describe.each(EXAMPLE_NAMES)("the Spanish pages of %s", (name) => {
  let shown: unknown[];
  beforeAll(async () => {
    shown = await shownBy(name);
    const result = await exampleResult(name);
    shown.push(loam.siteSheets(result), result.findings);
  });

  it("have no English words", () => {
    const found = new Set<string>();
    visit(shown, (text) => {
      if (typeof text === "string") return;
      const said = ownWords(text);
      if (ENGLISH.test(said.replace(CITED, ""))) found.add(said);
    });
    expect([...found]).toEqual([]);
  });

  it("have no words besides ours that are not the user's, or the same in every language", async () => {
    const { config, sheets, inputs, madeWith } = await exampleResult(name);
    const theirs = new Set<string>();
    visit([config, sheets, inputs, madeWith], (text) => theirs.add(loam.render(text)));
    const names = config.materials.map((material) => material.name);
    const found = new Set<string>();
    visit(shown, (text, key) => {
      if (typeof text !== "string" || !WORD_KEYS.has(key) || theirs.has(text)) return;
      const rest = names.reduce((left, own) => left.replace(own, ""), text).replace(CITED, "");
      if (ENGLISH.test(rest)) found.add(text);
    });
    expect([...found]).toEqual([]);
  });
});
