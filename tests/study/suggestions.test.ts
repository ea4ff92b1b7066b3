import { mkdirSync, renameSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { STUDY } from "../../src/entries/study.js";
import { similarSheets } from "../../src/study/readStudy.js";
import { nearestName } from "../../src/words/nearestName.js";
import { temporaryFolder } from "../support/runCli.js";
import { readStudy } from "../support/saidStudy.js";
import { copyStudy } from "../support/studyCopy.js";

describe("the nearest name", () => {
  it("differs by a third of the letters at most, and is the first of the nearest", () => {
    expect(nearestName("abd", ["abc"])).toBe("abc");
    expect(nearestName("ad", ["ac"])).toBeUndefined();
    expect(nearestName("abcdef", ["abcdxy"])).toBe("abcdxy");
    expect(nearestName("abcdef", ["abcxyz", "abcdey"])).toBe("abcdey");
    expect(nearestName("abcd", ["abcx", "abcy"])).toBe("abcx");
    expect(nearestName("a", [])).toBeUndefined();
  });

  const keys = ["moisture", "price", "share", "loose-bulk-density", "particle-density"];
  it.each([
    ["moistuer", "moisture"],
    ["Price", "price"],
    ["loose_bulk_density", "loose-bulk-density"],
    ["loose-bulk-densty", "loose-bulk-density"],
    ["shares", "share"],
  ])("of %s is %s", (written, name) => expect(nearestName(written, keys)).toBe(name));

  it.each(["colour", "", "density-of-particles-and-more"])("is none for %j", (written) => {
    expect(nearestName(written, keys)).toBeUndefined();
  });
});

/** The problems of a group of keys read at the top of the table. */
function problemsOf(written: object) {
  const read = STUDY.read(written, []);
  return "problems" in read ? read.problems : [];
}

it("knows the keys of each place", () => {
  const known = (written: object) =>
    problemsOf(written).find(({ code }) => code === "unknown-key")?.known ?? [];
  expect(known({ x: 1 })).toContain("materials");
  expect(known({ materials: [{ x: 1 }] })).toContain("hydrometer");
  expect(known({ materials: [{ share: { x: 1 } }] })).toEqual(["min", "max"]);
  expect(known({ element: { x: 1 } })).toContain("thickness");
  expect(known({ element: { kind: "pier", diameter: "1 m", x: 1 } })).toContain("diameter");
  expect(known({ target: { band: "guidance", x: 1 } })).toEqual(["band", "objective"]);
});

describe("an unknown key", () => {
  it("is told with the nearest known one", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "moisture: 7.5 %", "moistuer: 7.5 %");
    const { findings } = await readStudy(copy.folder);
    const unknown = findings.find(({ code }) => code === "unknown-key");
    expect(unknown?.remedy).toContain("“moisture”");
    expect(unknown?.expected).toContain("loose-bulk-density");
  });

  it("is told without one where nothing is near", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "seed:", "weather: fair\nseed:");
    const { findings } = await readStudy(copy.folder);
    expect(findings.map(({ value, remedy }) => [value, remedy])).toEqual([
      ["weather", "Correct its spelling, or take it out."],
    ]);
  });
});

describe("a sheet that is not there", () => {
  it.each([
    ["sheets/Gravel-Sieve.csv", "sheets/gravel-sieve.csv"],
    ["sheets/gravel-seive.csv", "sheets/gravel-sieve.csv"],
    ["gravel-sieve.xlsx", "sheets/gravel-sieve.csv"],
  ])("named %s is told with %s", async (wrong, right) => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "sheets/gravel-sieve.csv", wrong);
    const { findings } = await readStudy(copy.folder);
    expect(findings).toEqual([
      expect.objectContaining({
        code: "missing-sheet",
        value: wrong,
        remedy: expect.stringContaining(right),
      }),
    ]);
  });

  it("is told with all there are where none is near, or with none", async () => {
    const folder = temporaryFolder();
    expect(await similarSheets(folder, "a.csv")).toEqual({ all: [] });
    mkdirSync(join(folder, "sheets"));
    writeFileSync(join(folder, "sheets/bags.csv"), "");
    writeFileSync(join(folder, "notes.txt"), "");
    expect(await similarSheets(folder, "hydrometer.csv")).toEqual({ all: ["sheets/bags.csv"] });
  });

  it("is looked for three folders deep and among five hundred, and no further", async () => {
    const folder = temporaryFolder();
    mkdirSync(join(folder, "a/b/c/d"), { recursive: true });
    writeFileSync(join(folder, "a/b/c/sieve.csv"), "");
    writeFileSync(join(folder, "a/b/c/d/sieves.csv"), "");
    mkdirSync(join(folder, "node_modules"));
    writeFileSync(join(folder, "node_modules/sieve.csv"), "");
    expect(await similarSheets(folder, "sieve.xlsx")).toEqual({
      nearest: "a/b/c/sieve.csv",
      all: ["a/b/c/sieve.csv"],
    });
    for (let number = 0; number < 501; number++) writeFileSync(join(folder, `z${number}.csv`), "");
    const { all } = await similarSheets(folder, "sieve.xlsx");
    expect([all.length, all[0], all[1]]).toEqual([500, "a/b/c/sieve.csv", "z0.csv"]);
  });

  it("follows no link out of the folder", async () => {
    const [folder, elsewhere] = [temporaryFolder(), temporaryFolder()];
    writeFileSync(join(elsewhere, "secret.csv"), "");
    symlinkSync(elsewhere, join(folder, "link"));
    symlinkSync(join(elsewhere, "secret.csv"), join(folder, "secret.csv"));
    expect(await similarSheets(folder, "secret.csv")).toEqual({ all: [] });
  });

  it("is told by the reader with the other files there are", async () => {
    const copy = copyStudy("reading-room");
    renameSync(join(copy.folder, "sheets/compaction.csv"), join(copy.folder, "sheets/xyz.csv"));
    const { findings } = await readStudy(copy.folder);
    expect(findings[0].remedy).toMatch(
      /^Add the sheet, or name one that is there: sheets\/blocks\.csv, /,
    );
  });
});
