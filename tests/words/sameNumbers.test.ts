import { afterEach, describe, expect, it } from "vitest";
import { openStudy } from "../../src/study/openStudy.js";
import { useLanguage } from "../../src/words/language.js";
import { copyStudy } from "../support/studyCopy.js";

afterEach(() => {
  useLanguage("en");
});

interface Leaf {
  readonly path: string;
  readonly value: unknown;
}

/** Numbers, booleans and texts of a result with the path that leads to each. */
function leaves(value: unknown, path = ""): Leaf[] {
  if (typeof value !== "object" || value === null) return [{ path, value }];
  return Object.entries(value).flatMap(([key, inner]) => leaves(inner, `${path}.${key}`));
}

describe.each(["reading-room", "bus-shelter"] as const)("%s in Spanish", (name) => {
  it("has the same numbers and codes, and words where there were words", async () => {
    const english = leaves(await openStudy(copyStudy(name).folder));
    const spanish = copyStudy(name);
    spanish.edit("study.yaml", /^units: /m, "language: es\nunits: ");
    const theirs = leaves(await openStudy(spanish.folder));
    // The study file itself differs by its one line, and so does its checksum.
    const own = ({ path }: Leaf) => !/^\.(inputs|config\.language)/.test(path);
    const [a, b] = [english.filter(own), theirs.filter(own)];
    expect(b.map(({ path }) => path)).toEqual(a.map(({ path }) => path));
    const numbers = (all: Leaf[]) => all.filter(({ value }) => typeof value !== "string");
    expect(numbers(b)).toEqual(numbers(a));
    const texts = b.filter(({ value }) => typeof value === "string");
    expect(texts.filter(({ value }) => /undefined|\{\d+\}|NaN/.test(String(value)))).toEqual([]);
    const codes = /\.(code|severity|status|kind|id|verdict|role|symbol|form|method|mark)$/;
    const coded = (all: Leaf[]) => all.filter(({ path }) => codes.test(path));
    expect(coded(b).filter((leaf, index) => leaf.value !== coded(a)[index].value)).toEqual([]);
    const said = texts.filter(
      ({ value }, index) =>
        value !== a.filter((leaf) => typeof leaf.value === "string")[index].value,
    );
    expect(said.length).toBeGreaterThan(100);
  });
});
