import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { ROOT, runCli, temporaryFolder } from "../support/runCli.js";

it("writes a working copy anywhere: notebooks without results, and the studies that they open", async () => {
  const desk = temporaryFolder();
  const run = await runCli(["notebooks", "course"], desk);
  expect(run.code, run.stderr).toBe(0);
  expect(run.stdout).toContain("  mix-design.ipynb\n");
  const copied = readdirSync(join(desk, "course")).filter((name) => name.endsWith(".ipynb"));
  const own = readdirSync(join(ROOT, "notebooks")).filter((name) => name.endsWith(".ipynb"));
  expect(copied.sort()).toEqual(own.sort());
  for (const name of copied) {
    const text = readFileSync(join(desk, "course", name), "utf8");
    expect(text).not.toContain("../");
    for (const cell of JSON.parse(text).cells) {
      if (cell.cell_type === "code") {
        expect([cell.outputs, cell.execution_count]).toEqual([[], null]);
      }
    }
    for (const [, study] of text.matchAll(/"(data-examples\/[\w-]+)/g)) {
      expect(existsSync(join(desk, "course", study, "study.yaml")), study).toBe(true);
    }
  }
  expect(readdirSync(desk)).toEqual(["course"]);
});

it("writes over nothing", async () => {
  const desk = temporaryFolder();
  mkdirSync(join(desk, "course"));
  writeFileSync(join(desk, "course", "mine.txt"), "mine");
  const run = await runCli(["notebooks", "course"], desk);
  expect(run.code).toBe(7);
  expect(readdirSync(join(desk, "course"))).toEqual(["mine.txt"]);
  expect((await runCli(["notebooks"], desk)).code).toBe(2);
});
