import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { expect, it } from "vitest";
import type { NotebookFile } from "../../src/notebook/notebookFile.js";
import { runNotebook } from "../../src/notebook/runNotebook.js";
import { ROOT, temporaryFolder } from "../support/runCli.js";

const { expectedPath, shownText, workshopNotebooks } = createRequire(import.meta.url)(
  "../../bin/make-workshop.cjs",
) as {
  expectedPath(path: string): string;
  shownText(notebook: NotebookFile): string;
  workshopNotebooks(): Record<string, NotebookFile>;
};

/** Lessons by the path of their English notebook, which has the same code as the Spanish one. */
const NOTEBOOKS = workshopNotebooks();
const LESSONS = Object.keys(NOTEBOOKS).filter((path) => !path.endsWith(".es.ipynb"));

// A kernel reads the library's types for some seconds: the two languages of a lesson share one.
it.each(LESSONS)(
  "notebooks/%s runs through and shows what is expected, in both languages",
  async (path) => {
    const paths = [path, path.replace(".ipynb", ".es.ipynb")];
    const parent = temporaryFolder();
    symlinkSync(join(ROOT, "data-examples"), join(parent, "data-examples"));
    const notebookPath = join(parent, "notebooks", path);
    mkdirSync(dirname(notebookPath), { recursive: true });
    const [english, spanish] = paths.map((each) => NOTEBOOKS[each].cells);
    const cells = [...english, ...spanish.map((cell) => ({ ...cell, id: `${cell.id}-es` }))];
    writeFileSync(notebookPath, JSON.stringify({ ...NOTEBOOKS[path], cells }));
    const { status, notebook } = await runNotebook({ notebookPath });
    expect(status).toBe("done");
    const shown = [notebook.cells.slice(0, english.length), notebook.cells.slice(english.length)];
    expect(shown.map((own) => shownText({ ...notebook, cells: own }))).toEqual(
      paths.map((each) => readFileSync(expectedPath(each), "utf8")),
    );
  },
  120_000,
);
