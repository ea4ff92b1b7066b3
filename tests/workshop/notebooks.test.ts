import { existsSync, readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import {
  asNotebook,
  joinText,
  type NotebookFile,
  tagsOf,
} from "../../src/notebook/notebookFile.js";
import { LESSONS } from "../../src/workshop/lesson.js";
import { ROOT } from "../support/runCli.js";

const { workshopNotebooks } = createRequire(import.meta.url)("../../bin/make-workshop.cjs") as {
  workshopNotebooks(): Record<string, NotebookFile>;
};

const FOLDER = join(ROOT, "notebooks");
const PATHS = Object.keys(workshopNotebooks());
const read = (path: string) => asNotebook(JSON.parse(readFileSync(join(FOLDER, path), "utf8")));
const sources = (notebook: NotebookFile, kind: "code" | "markdown") =>
  notebook.cells
    .filter(({ cell_type }) => cell_type === kind)
    .map(({ source }) => joinText(source));

it("are all there, in both languages, the teacher's apart from the class's", () => {
  const own = readdirSync(FOLDER).filter((name) => name.startsWith("workshop-"));
  const made = PATHS.filter((path) => !path.startsWith("teacher"));
  expect(own.sort()).toEqual(made.sort());
  expect(PATHS.filter((path) => path.includes(".es."))).toHaveLength(PATHS.length / 2);
  expect(readdirSync(join(FOLDER, "teacher")).sort()).toEqual([
    "workshop-teacher.es.ipynb",
    "workshop-teacher.ipynb",
  ]);
});

describe.each(PATHS)("notebooks/%s", (path) => {
  const notebook = read(path);

  it("is what its lesson says, with the same code in each language, and holds no result", () => {
    const made = workshopNotebooks()[path];
    const plain = ({ cells }: NotebookFile) =>
      cells.map((cell) => [cell.cell_type, cell.id, tagsOf(cell), joinText(cell.source)]);
    expect(plain(notebook)).toEqual(plain(made));
    for (const { cell_type, outputs, execution_count } of notebook.cells) {
      if (cell_type === "code") expect([outputs, execution_count]).toEqual([[], null]);
    }
    const english = sources(read(path.replace(".es.", ".")), "code");
    expect(sources(notebook, "code").map((code) => code.replace('"es"', '"en"'))).toEqual(english);
  });

  it("has cells that a builder can read", () => {
    for (const code of sources(notebook, "code")) {
      for (const line of code.split("\n")) expect(line.length, line).toBeLessThanOrEqual(88);
      expect(code.split("\n").length, code).toBeLessThanOrEqual(6);
      expect(code).not.toMatch(/flatMap|\?\.|=>.*=>|keable|walker|sazs/);
    }
    expect(sources(notebook, "markdown").join("\n")).not.toMatch(/keable-sazs|walker-2005/);
  });

  it("speaks of cells and of running them only to who has them before him, not on paper", () => {
    const onPaper = notebook.cells.filter(
      (cell) => cell.cell_type === "markdown" && !tagsOf(cell).includes("notebook-only"),
    );
    const text = onPaper.map(({ source }) => joinText(source)).join("\n");
    if (!/results|teacher/.test(path))
      expect(text).not.toMatch(/\bcell\b|\brun\b|celda|[Ee]jecut|undefined/);
  });

  it("leaves every answer open to whatever is typed", () => {
    const asked = sources(notebook, "code").filter((code) => /checkAnswer|predict\(/.test(code));
    for (const code of asked)
      expect(code).toMatch(/^let my[A-Z]\w* = undefined;\n.*\(.*my[A-Z]\w*\)\);$/);
    const names = asked.map((code) => /let (\w+)/.exec(code)?.[1]);
    expect(new Set(names).size).toBe(names.length);
  });
});

describe.each(LESSONS.map(({ id, core }) => [id, core] as const))("lesson %s", (id, core) => {
  const notebook = read(`workshop-${id}.ipynb`);
  const text = notebook.cells.map(({ source }) => joinText(source));
  const at = (part: string | RegExp) =>
    text.findIndex((source) =>
      typeof part === "string" ? source.includes(part) : part.test(source),
    );

  it("asks what everybody does first, and the rest under Further", () => {
    const further = at("## Further");
    const asked = [...text.join("\n").matchAll(/checkAnswer\("([\w-]+)"/g)].map(([, name]) => name);
    expect(asked.slice(0, core.length)).toEqual(core);
    for (const name of asked) {
      expect(at(`checkAnswer("${name}"`) < further, name).toBe(core.includes(name));
    }
  });

  it("lets predict before the tables and figures that answer", () => {
    const answered: Readonly<Record<string, RegExp>> = {
      clay: /classJarTable/,
      fines: /classSievingTable/,
      d60: /classCurveChart/,
      "sand-parts": /checkAnswer|classHandSteps/,
      "misfit-times": /classBlendsChart|classSharesTable/,
      "least-cement": /classLineTable|classLeastCementTable/,
      "no-answer": /classFewerBlocksTable|three-blocks/,
      saved: /checkAnswer|classSavingTable/,
      "by-mass": /cement-by-mass|classVolumeTable/,
    };
    const predicted = [...text.join("\n").matchAll(/predict\("([\w-]+)"/g)].map(([, name]) => name);
    expect(predicted.length).toBeGreaterThan(1);
    for (const name of predicted) {
      expect(at(`predict("${name}"`), name).toBeLessThan(at(answered[name]));
    }
  });

  it("shows no table that answers before its exercise", () => {
    const answers: Readonly<Record<string, string>> = {
      "jar-sand-share": "classJarTable",
      "jar-clay-by-mass": "classJarTable",
      "passing-2-mm": "classSievingTable",
      "passing-finest": "classSievingTable",
      "what-inside-proves": "classRecommendationsChart",
      "sand-share": "classSizesTable",
      "d60-of-the-soil": "classSizesTable",
      "sand-to-one-of-soil": "classHandSteps",
      "soil-share": "classHandSteps",
      "misfit-by-hand": "classBlendsTable",
      "worst-miscount": "classMiscountTable",
      "strength-of-a-block": "classBlocksTable",
      "cement-to-weigh-out": "classLeastCementTable",
      "three-blocks": "classFewerBlocksTable",
      "bound-of-one-block": "classBoundsTable",
      "cement-in-the-wall": "classSavingTable",
      "cement-saved": "classSavingTable",
      "cement-by-volume": "classVolumeTable",
      "cement-by-mass": "classVolumeTable",
      "carbon-follows-cement": "classCarbonTable",
    };
    const asked = [...text.join("\n").matchAll(/checkAnswer\("([\w-]+)"/g)].map(([, name]) => name);
    for (const name of asked.filter((one) => one in answers)) {
      expect(at(`checkAnswer("${name}"`), name).toBeLessThan(at(`${answers[name]}(`));
    }
  });

  it("tells the cautions of its work before the work", () => {
    if (id === "blending") return;
    const cautions = at("classCautions");
    expect(cautions).toBeGreaterThan(0);
    expect(cautions).toBeLessThan(at("undefined;"));
    const work = { grading: "dry-work", cement: "ramming", saving: "wet-mix" }[
      id as string
    ] as string;
    expect(text[cautions]).toContain(work);
  });
});

it("the class's folder in the clone holds the teacher's page nowhere", () => {
  expect(existsSync(join(FOLDER, "workshop-teacher.ipynb"))).toBe(false);
  for (const path of PATHS.filter((name) => !name.startsWith("teacher"))) {
    expect(readFileSync(join(FOLDER, path), "utf8")).not.toMatch(
      /answerPaper|answerKey|mistakesTable/,
    );
  }
});
