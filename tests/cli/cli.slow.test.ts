import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { ROOT, startCli, temporaryFolder } from "../support/runCli.js";

const FIXTURES = join(ROOT, "tests/notebook/fixtures");

it("starts, and says what it was asked for", async () => {
  const asked = await startCli(["--help"]);
  expect(asked).toMatchObject({ code: 0, stderr: "" });
  expect(asked.stdout).toContain("\n  appendix");
  expect(await startCli([])).toMatchObject({ code: 2, stdout: asked.stdout });
});

describe("run", () => {
  it.each([
    ["done", [], 0],
    ["compile-error", [], 4],
    ["exit", [], 5],
    ["endless", ["--cell-seconds", "1"], 6],
  ] as const)("%s ends with its own code", { timeout: 60_000 }, async (name, options, expected) => {
    const out = join(temporaryFolder(), "out.ipynb");
    const words = ["run", join(FIXTURES, `${name}.ipynb`), "--out", out, ...options];
    const { code, stdout, stderr } = await startCli(words);
    expect(code, stderr).toBe(expected);
    expect(existsSync(out)).toBe(expected === 0);
    if (expected === 0) expect(stdout).toContain("Every cell ran");
    else expect(stderr).toMatch(/cell/);
    // No progress in a pipe.
    expect(stdout + stderr).not.toContain("\r");
  });
});

describe("survey, on threads of its own", () => {
  it("fits and classifies every grading of a file, and says why it left one out", async () => {
    const folder = temporaryFolder();
    const rows = Array.from({ length: 600 }, (_, index) => {
      const size = 0.2 + (index % 50) / 10;
      const passing = [20, 8, 4, 2, 1, 0.5, 0.25, 0.125, 0.063].map((sizeMm) =>
        (100 * (1 - Math.exp(-((sizeMm / size) ** 0.7)))).toFixed(1),
      );
      return `pit-${index},100,${passing.join(",")}`;
    });
    rows[7] = "pit-7,100,90,80,seventy,60,50,40,30,20,10";
    const file = join(folder, "gradings.csv");
    writeFileSync(file, `id,63,20,8,4,2,1,0.5,0.25,0.125,0.063\n${rows.join("\n")}\n`);
    const out = join(folder, "fits.csv");
    const run = await startCli(["survey", file, "--out", out]);
    expect(run.code, run.stderr).toBe(0);
    expect(run.stdout).toContain("600 gradings, 1 of them left out");
    const lines = readFileSync(out, "utf8").trimEnd().split("\n");
    expect(lines).toHaveLength(601);
    expect(lines[0]).toContain("USCS");
    expect(lines[1]).toContain("pit-0");
    expect(lines[8]).toMatch(/^9,.*left out.*not-a-number/);
    // The curves were made with exponent 0.7: the fit finds it again from readings to a tenth.
    const column = lines[0].split(",").indexOf("exponent");
    expect(Number(lines[21].split(",")[column])).toBeCloseTo(0.7, 1);
    expect((await startCli(["survey", file, "--out", out])).code).toBe(7);
    expect(readdirSync(folder).sort()).toEqual(["fits.csv", "gradings.csv"]);
  });
});
