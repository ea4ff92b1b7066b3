import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { openStudy } from "../../src/study/openStudy.js";
import { ROOT, runCli, temporaryFolder } from "../support/runCli.js";

it("writes a working copy anywhere: notebooks without results, and the studies that they open", async () => {
  const desk = temporaryFolder();
  const run = await runCli(["notebooks", "course"], desk);
  expect(run.code, run.stderr).toBe(0);
  expect(run.stdout).toContain("  mix-design.ipynb\n");
  const copied = readdirSync(join(desk, "course")).filter((name) => name.endsWith(".ipynb"));
  const own = readdirSync(join(ROOT, "notebooks")).filter((name) => name.endsWith(".ipynb"));
  expect(copied.sort()).toEqual(own.sort());
  expect(readdirSync(join(desk, "course", "print")).sort()).toEqual([
    "class-sheets.pdf",
    "worksheet.pdf",
  ]);
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

const classFolder = (desk: string, folder: string) => join(desk, folder, "data-examples/class-day");

it("gives a class what it needs, and the teacher's page and key a folder of their own", async () => {
  const desk = temporaryFolder();
  const run = await runCli(["notebooks", "class", "--teacher"], desk);
  expect(run.code, run.stderr).toBe(0);
  expect(readdirSync(join(desk, "class")).sort()).toEqual([
    "data-examples",
    "print",
    ...["blending", "cement", "grading", "results", "saving"].map(
      (name) => `workshop-${name}.ipynb`,
    ),
  ]);
  expect(readdirSync(join(desk, "class/data-examples"))).toEqual(["class-day"]);
  expect(readdirSync(classFolder(desk, "class")).sort()).toEqual([
    "class.csv",
    "sheets",
    "study.yaml",
  ]);
  expect(readdirSync(join(desk, "class-teacher")).sort()).toEqual([
    "key.pdf",
    "workshop-teacher.ipynb",
  ]);
  const page = readFileSync(join(desk, "class-teacher/workshop-teacher.ipynb"), "utf8");
  const [, opened] = /let classFolder = \\"(.*?)\\"/.exec(page) ?? [];
  expect(existsSync(join(desk, "class-teacher", opened, "study.yaml"))).toBe(true);
});

it("leaves everything where the teacher's folder is taken", async () => {
  const desk = temporaryFolder();
  mkdirSync(join(desk, "class-teacher"));
  writeFileSync(join(desk, "class-teacher", "mine.txt"), "mine");
  const run = await runCli(["notebooks", "class", "--teacher"], desk);
  expect(run.code).toBe(7);
  expect(readdirSync(desk)).toEqual(["class-teacher"]);
  expect((await runCli(["notebooks", "class", "--language", "fr"], desk)).code).toBe(2);
  expect((await runCli(["notebooks", "class", "--units", "stone"], desk)).code).toBe(2);
});

it("speaks the class's language and units: the same numbers, other words", async () => {
  const desk = temporaryFolder();
  const run = await runCli(
    ["notebooks", "clase", "--class", "--language", "es", "--units", "US"],
    desk,
  );
  expect(run.code, run.stderr).toBe(0);
  expect(readdirSync(desk)).toEqual(["clase"]);
  const names = readdirSync(join(desk, "clase")).filter((name) => name.endsWith(".ipynb"));
  expect(names.every((name) => name.endsWith(".es.ipynb"))).toBe(true);
  const spanish = await openStudy(classFolder(desk, "clase"));
  const english = await openStudy(join(ROOT, "data-examples/class-day"));
  const { language, units, page, materials } = spanish.config;
  expect([language, units, page, materials[0].name]).toEqual([
    "es",
    "US",
    "us-letter",
    "Suelo de la clase",
  ]);
  expect(spanish.blend?.shares).toEqual(english.blend?.shares);
  expect(spanish.strength?.leastCement?.cementPct).toBe(english.strength?.leastCement?.cementPct);
  expect(spanish.mix?.record.batch.dryMassKg).toBe(english.mix?.record.batch.dryMassKg);
});

it("takes a class's own study, and says what is wrong with it before anything is written", async () => {
  const desk = temporaryFolder();
  const own = join(desk, "ours");
  cpSync(join(ROOT, "data-examples/class-day"), own, { recursive: true });
  const study = join(own, "study.yaml");
  const text = readFileSync(study, "utf8");
  writeFileSync(
    study,
    text.replace("title: Class day, a garden wall on paper", "title: Our own wall"),
  );
  const run = await runCli(["notebooks", "class", "--from", "ours", "--teacher"], desk);
  expect(run.code, run.stderr).toBe(0);
  expect(readFileSync(join(classFolder(desk, "class"), "study.yaml"), "utf8")).toContain(
    "Our own wall",
  );
  expect(readdirSync(join(desk, "class-teacher"))).toContain("key.pdf");

  writeFileSync(study, text.replace("format:", "formt:"));
  expect((await runCli(["notebooks", "broken", "--from", "ours"], desk)).code).toBe(3);
  expect((await runCli(["notebooks", "none", "--from", "nowhere"], desk)).code).toBe(3);
  expect(readdirSync(desk).sort()).toEqual(["class", "class-teacher", "ours"]);
});
