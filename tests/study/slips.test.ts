import { execFileSync } from "node:child_process";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readGrid } from "../../src/lab/sheet/grid.js";
import { computeStudy, readStudy } from "../support/saidStudy.js";
import { copyStudy, type StudyCopy } from "../support/studyCopy.js";

const SIEVE = "sheets/site-soil-sieve.csv";
const HYDROMETER = "sheets/site-soil-hydrometer.csv";
const BLOCKS = "sheets/blocks.csv";

/** All findings; where none is an error there must be a result without a number that is none. */
async function outcome({ folder }: StudyCopy) {
  const { study, findings } = await readStudy(folder);
  const computed = study ? computeStudy(study, findings) : { findings, result: undefined };
  const errors = computed.findings.filter(({ severity }) => severity === "error");
  expect(computed.result === undefined).toBe(errors.length > 0);
  expect(JSON.stringify(computed.result ?? {})).not.toMatch(/\bNaN\b|Infinity/);
  return { codes: errors.map(({ code }) => code), all: computed.findings };
}

describe("an ordinary slip is told, and is no fault of ours", () => {
  it.each<[string, string, string | RegExp, string, readonly string[]]>([
    [
      "a needed line without a value",
      SIEVE,
      "dry mass (g),5240",
      "dry mass (g),",
      ["missing-value"],
    ],
    [
      "rounding up to nothing",
      "study.yaml",
      "round-up-to: 0.5 %",
      "round-up-to: 0 %",
      ["wrong-value"],
    ],
    [
      "exchanged hydrometer headers",
      HYDROMETER,
      "time (min),reading,control",
      "time (min),control,reading",
      [],
    ],
    [
      "an error of the balance as large as the sample",
      "study.yaml",
      "seed: 20260518",
      "seed: 1\nreading-errors: { balance: 100 g }",
      ["wrong-value"],
    ],
    [
      "an error of the balance of a third of the sample",
      "study.yaml",
      "seed: 20260518",
      "seed: 1\nreading-errors: { balance: 20 g }",
      [],
    ],
    ["a carbon factor from nothing", "study.yaml", "factor: 0.58 to 0.66", "factor: 0 to 0.66", []],
    ["a quote that never closes", BLOCKS, "L01,A1", '"L01,A1', ["not-a-csv"]],
  ])("%s", async (_, file, from, to, codes) => {
    const study = copyStudy("reading-room");
    study.edit(file, from, to);
    const found = await outcome(study);
    if (codes.length > 0) expect(found.codes).toEqual(expect.arrayContaining([...codes]));
  });

  it("aliases of aliases", async () => {
    const study = copyStudy("reading-room");
    const lines = ["a0: &a0 [x, x, x, x, x, x, x, x, x]"];
    for (let depth = 1; depth < 9; depth++) {
      const alias = `*a${depth - 1}`;
      lines.push(`a${depth}: &a${depth} [${Array.from({ length: 9 }, () => alias).join(", ")}]`);
    }
    study.edit("study.yaml", /$/, `${lines.join("\n")}\n`);
    expect((await outcome(study)).codes).toEqual(["yaml-error"]);
  });

  it("groups in groups without end", async () => {
    const study = copyStudy("reading-room");
    study.write("study.yaml", "[".repeat(100_000));
    expect((await outcome(study)).codes).toContain("yaml-error");
  });

  it.each([
    ["a pipe", (folder: string) => execFileSync("mkfifo", [folder]), "The study file is no file."],
    ["a folder", (folder: string) => execFileSync("mkdir", [folder]), "The study file is no file."],
    [
      "three million lines",
      (file: string) => execFileSync("truncate", ["-s", "300M", file]),
      "The study file has 314572800 bytes.",
    ],
    [
      "a device",
      (file: string) => execFileSync("ln", ["-s", "/dev/zero", file]),
      "The study file is no file.",
    ],
    [
      "a link out of the folder",
      (file: string) => execFileSync("ln", ["-s", "/etc/hostname", file]),
      "The study file is a link that leads out of the study folder.",
    ],
  ])("%s in place of study.yaml", async (_, make, message) => {
    const study = copyStudy("reading-room");
    study.remove("study.yaml");
    make(join(study.folder, "study.yaml"));
    expect((await outcome(study)).all).toMatchObject([{ code: "missing-study", message }]);
  });
});

describe("in place of a sheet", () => {
  const MAKE: Readonly<Record<string, (file: string) => unknown>> = {
    pipe: (file) => execFileSync("mkfifo", [file]),
    device: (file) => execFileSync("ln", ["-s", "/dev/zero", file]),
    "300 MB": (file) => execFileSync("truncate", ["-s", "300M", file]),
  };

  it.each(["pipe", "300 MB"])("a %s that a study names is refused at once", async (what) => {
    const study = copyStudy("reading-room");
    study.remove(SIEVE);
    MAKE[what](join(study.folder, SIEVE));
    const start = performance.now();
    const { codes } = await outcome(study);
    expect(codes.filter((code) => /missing-sheet|sheet-too-large/.test(code))).toHaveLength(1);
    expect(performance.now() - start).toBeLessThan(5000);
  });

  it.each(Object.keys(MAKE))("a %s that is given alone is refused at once", async (what) => {
    const study = copyStudy("reading-room");
    const file = join(study.folder, "alone.csv");
    MAKE[what](file);
    const { findings, study: read } = await readStudy(file);
    expect(read).toBeUndefined();
    expect(findings.map(({ code }) => code)).toEqual(["missing-sheet"]);
  });
});

describe("what no lab sheet is", () => {
  const read = async (text: string) =>
    (await readGrid("a.csv", new TextEncoder().encode(text))).findings.map(({ code }) => code);

  it.each([
    ["too many bytes", "a,b\n".repeat(1_100_000), "sheet-too-large"],
    ["too many lines", "a,b\n".repeat(30_000), "not-a-csv"],
    ["too many rows", "a,b\n".repeat(6000), "sheet-too-large"],
    ["too many cells in a row", "a,".repeat(600), "sheet-too-large"],
    ["a whole text in a cell", `a,${"x".repeat(11_000)}`, "sheet-too-large"],
  ])("%s is refused at once", async (_, text, code) => {
    const start = performance.now();
    expect(await read(text)).toEqual([code]);
    expect(performance.now() - start).toBeLessThan(2000);
  });

  it("thousands of faults of a kind are fifty and a count", async () => {
    const study = copyStudy("reading-room");
    study.edit(SIEVE, "31.5,0", `31.5,0\n${"big,1\n".repeat(4000)}`);
    const { all } = await outcome(study);
    const sieves = all.filter(({ code }) => code === "unknown-sieve");
    expect(sieves).toHaveLength(51);
    expect(sieves[50].message).toBe("3950 more findings of this kind are not listed.");
  });
});
