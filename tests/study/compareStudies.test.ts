import { describe, expect, it } from "vitest";
import { compareStudies, flatConfig } from "../../src/study/compareStudies.js";
import { openStudy } from "../../src/study/openStudy.js";
import type { StudyResult } from "../../src/study/studyResult.js";
import { studyComparisonTable } from "../../src/tables/studyComparison.js";
import { renderAll } from "../../src/words/render.js";
import { exampleResult, full } from "../support/exampleResult.js";
import { copyStudy } from "../support/studyCopy.js";

/** The part of a thing that a function looks at. */
const as = <T>(part: object) => part as T;

const before = await exampleResult("reading-room");

describe("compareStudies", () => {
  it("finds nothing between a study and itself", () => {
    const { entries, sheets, results, madeWith } = compareStudies(before, before);
    expect([entries, sheets, madeWith]).toEqual([[], [], undefined]);
    expect(results.some(({ changed }) => changed)).toBe(false);
    expect(results.length).toBeGreaterThan(20);
  });

  it("gives changed entries by their path, changed sheets, and what they did to the results", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "    strength: 1.5 MPa", "    strength: 1.3 MPa");
    copy.edit("study.yaml", "share: { max: 40 % }", "share: { max: 30 % }");
    copy.edit("sheets/site-blocks.csv", "S15,Lot 3,6,28,2.47", "S15,Lot 3,6,28,2.57");
    copy.edit("study.yaml", "  labels: 8\n", "");
    // The other blend was tested too, and not that of before.
    copy.edit(
      "study.yaml",
      "site-soil: 55 %, river-sand: 13 %, gravel: 32 %",
      "site-soil: 54 %, river-sand: 16 %, gravel: 30 %",
    );
    const other = full(await openStudy(copy.folder));
    const { entries, sheets, results } = compareStudies(before, other);
    expect(entries).toContainEqual({
      key: "strength.requirement.strengthMpa",
      before: 1.5,
      after: 1.3,
    });
    expect(entries).toContainEqual({ key: "materials.gravel.maxSharePct", before: 40, after: 30 });
    expect(entries).toContainEqual({ key: "site.labels", before: 8 });
    expect(entries.filter(({ key }) => !key.startsWith("tested."))).toHaveLength(3);
    expect(sheets).toEqual([{ file: "sheets/site-blocks.csv", change: "changed" }]);
    const cement = results.find(({ key }) => key === "least-cement");
    const [was, is] = [before, other].map(({ strength }) => strength.leastCement.cementPct!);
    expect(is).toBeLessThan(was);
    expect(cement).toMatchObject({ before: was, after: is, difference: is - was, changed: true });
    const gravel = results.find(({ key }) => key === "share.gravel");
    expect(gravel?.after).toBeCloseTo(30, 6);
    expect(results.find(({ key }) => key === "optimum")?.changed).toBe(false);
    // The other way round, all differences turn their sign.
    const back = compareStudies(other, before);
    back.results.forEach(({ key, difference }) => {
      const there = results.find((one) => one.key === key)?.difference ?? null;
      expect(difference === null ? null : -difference + 0).toEqual(
        there === null ? null : there + 0,
      );
    });
  });

  it("says that a changed blend was not tested, and calls nothing of it the same", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "  exponent: 0.25", "  exponent: 0.4");
    const other = full(await openStudy(copy.folder));
    const { results, states } = renderAll(compareStudies(before, other));
    expect(states.join(" ")).toContain("The blend changed and was not tested");
    const carried = [
      "optimum",
      "max-density",
      "density",
      "least-cement",
      "cement",
      "bound",
      "cost-low",
    ];
    for (const key of carried) {
      expect(
        results.find((one) => one.key === key),
        key,
      ).toMatchObject({ after: null, changed: true });
    }
    const [table] = renderAll(studyComparisonTable(before, other));
    expect(table.notes?.join(" ")).toContain("was not tested");
  });

  it("goes by the id of a material, not by its place", () => {
    const config = { ...before.config, materials: [...before.config.materials].reverse() };
    expect(compareStudies(before, { ...before, config }).entries).toEqual([]);
  });

  it("gives no difference of money in two currencies, and none where a side is missing", () => {
    const config = { ...before.config, currency: "USD" };
    const money = compareStudies(before, { ...before, config });
    expect(money.results.find(({ key }) => key === "cost-low")?.difference).toBeNull();
    const [table] = renderAll(studyComparisonTable(before, { ...before, config }));
    expect(table.notes?.join(" ")).toContain("EUR, USD");
    const without = compareStudies(before, { ...before, mix: undefined });
    expect(without.results.find(({ key }) => key === "made")).toMatchObject({
      after: null,
      difference: null,
      changed: true,
    });
  });

  it("leaves its inputs as they were", () => {
    const text = JSON.stringify(before);
    compareStudies(before, before);
    expect(JSON.stringify(before)).toBe(text);
  });
});

it("a mix set by hand is what is specified; what the blocks need stays as it was", async () => {
  const copy = copyStudy("reading-room");
  copy.edit("study.yaml", "\nbatch:\n", "\nmix: { cement: 8 % }\n\nbatch:\n");
  const { results } = compareStudies(before, await openStudy(copy.folder));
  const pair = (wanted: string) => results.find(({ key }) => key === wanted);
  expect(pair("cement")).toMatchObject({ before: 6, after: 8, difference: 2, changed: true });
  expect(pair("cement-mass")).toMatchObject({ changed: true });
  for (const key of ["least-cement", "bound", "line"]) {
    expect(pair(key), key).toMatchObject({ changed: false });
  }
});

describe("two versions as small as can be", () => {
  const curve = { points: [0.063, 2].map((sizeMm) => ({ sizeMm, passingPct: 50 * sizeMm })) };
  const version = (more: object = {}, currency = "EUR") =>
    as<StudyResult>({
      config: { materials: [{ id: "soil", name: "Soil" }], currency },
      materials: [{ id: "soil", name: "Soil", curve }],
      inputs: [],
      findings: [],
      madeWith: "one",
      ...more,
    });
  const blend = { shares: [{ id: "soil", sharePct: 100 }], fractions: { clayPct: 10 } };
  const mix = (low: number) => ({
    density: { valueKgM3: 1900 },
    recipe: { cementPct: 8 },
    quantities: { madeVolumeM3: 2, mix: { cement: { dryMassKg: 250 } }, cementBags: { high: 11 } },
    cost: { total: { low, high: 900 } },
    carbon: { total: { low: 100, high: 120 } },
  });
  const numbersOf = (a: StudyResult, b: StudyResult) =>
    Object.fromEntries(
      compareStudies(a, b).results.map(({ key, before: was, after, difference, changed }) => [
        key,
        [was, after, difference, changed],
      ]),
    );

  it("say which of them has no blend", () => {
    const words = (a: object, b: object) =>
      renderAll(compareStudies(version(a), version(b)).states);
    expect(words({}, { blend })).toEqual(["The first version has no blend."]);
    expect(words({ blend }, {})).toEqual(["The second version has no blend."]);
    expect(words({}, {})).toHaveLength(2);
  });

  it("are compared in base units, and a number of one alone is a change without a difference", () => {
    const numbers = numbersOf(version({ blend }), version({ blend, mix: mix(700) }));
    expect(numbers["share.soil"]).toEqual([100, 100, 0, false]);
    expect(numbers.clay).toEqual([10, 10, 0, false]);
    expect(numbers.silt).toEqual([null, null, null, false]);
    expect(numbers.made).toEqual([null, 2e6, null, true]);
    expect(numbers["cement-mass"]).toEqual([null, 250_000, null, true]);
    expect(numbers.bags[1]).toBe(11);
    expect([numbers["carbon-low"][1], numbers["carbon-high"][1]]).toEqual([100_000, 120_000]);
  });

  it("have no difference of money in two currencies, nor one of a last digit", () => {
    const of = (low: number, currency?: string) => version({ blend, mix: mix(low) }, currency);
    expect(numbersOf(of(700), of(750))["cost-low"]).toEqual([700, 750, 50, true]);
    expect(numbersOf(of(700), of(750, "USD"))["cost-low"]).toEqual([700, 750, null, true]);
    expect(numbersOf(of(700), of(700, "USD"))["cost-low"]).toEqual([700, 700, null, false]);
    expect(numbersOf(of(1e9), of(1e9 + 0.5))["cost-low"][3]).toBe(false);
    expect(numbersOf(of(1e9), of(1e9 + 2))["cost-low"][3]).toBe(true);
  });

  it("count warnings alone, and tell sheets that came, went or changed", () => {
    const [one, two, three] = ["note", "warning", "warning"].map((severity) => ({ severity }));
    const numbers = numbersOf(
      version({ findings: [one, two] }),
      version({ findings: [two, three] }),
    );
    expect(numbers.warnings).toEqual([1, 2, 1, true]);
    const inputs = (...files: readonly string[]) =>
      files.map((file) => ({ file: file[0], sha256: file }));
    const { sheets } = compareStudies(
      version({ inputs: [...inputs("a1", "b1", "c1"), { file: "study.yaml", sha256: "1" }] }),
      version({ inputs: [...inputs("a1", "b2", "d1"), { file: "study.yaml", sha256: "2" }] }),
    );
    expect(sheets.map(({ file, change }) => [file, change])).toEqual([
      ["b", "changed"],
      ["c", "removed"],
      ["d", "added"],
    ]);
    expect(compareStudies(version(), version({ madeWith: "two" })).madeWith).toEqual([
      "one",
      "two",
    ]);
  });
});

describe("flatConfig", () => {
  it("names things by id, other lists by position, and leaves out what is not there", () => {
    const config = { a: undefined, b: null, list: [{ id: "x", v: 1 }, 2], deep: { c: true } };
    expect(Object.fromEntries(flatConfig(config))).toEqual({
      b: null,
      "list.x.id": "x",
      "list.x.v": 1,
      "list.2": 2,
      "deep.c": true,
    });
  });
});

describe("studyComparisonTable", () => {
  it("shows both versions with their differences, and says what did not change", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "    strength: 1.5 MPa", "    strength: 1.3 MPa");
    const other = full(await openStudy(copy.folder));
    const [results, entries] = renderAll(studyComparisonTable(before, other, ["May", "June"]));
    expect(results.columns.map(({ header }) => header).slice(1, 3)).toEqual(["May", "June"]);
    const row = results.rows.find(([name]) => name.startsWith("Cement, as specified"));
    const chosen = [before, other].map(({ strength }) => strength.chosenCementPct!);
    expect(row?.[1]).toBe(chosen[0].toFixed(2));
    expect(row?.[2]).toBe(chosen[1].toFixed(2));
    expect(row?.[3]).toBe(`−${(chosen[0] - chosen[1]).toFixed(2)}`);
    expect(results.rows.find(([name]) => name.startsWith("Optimum"))?.[3]).toBe("same");
    expect(entries.rows).toEqual([["strength / requirement / strength mpa", "1.5", "1.3"]]);
    const same = renderAll(studyComparisonTable(before, before)[1]);
    expect(same.rows).toEqual([]);
    expect(same.notes?.[0]).toContain("No entry");
  });
});
