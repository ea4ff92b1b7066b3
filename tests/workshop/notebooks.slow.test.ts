import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { expect, it } from "vitest";
import type { NotebookFile } from "../../src/notebook/notebookFile.js";
import { runNotebook } from "../../src/notebook/runNotebook.js";
import { ROOT } from "../support/runCli.js";

const { expectedPath, shownText, workshopNotebooks } = createRequire(import.meta.url)(
  "../../bin/make-workshop.cjs",
) as {
  expectedPath(path: string): string;
  shownText(notebook: NotebookFile): string;
  workshopNotebooks(): Record<string, NotebookFile>;
};

it.each(Object.keys(workshopNotebooks()))(
  "notebooks/%s runs through and shows what is expected",
  async (path) => {
    const { status, notebook } = await runNotebook({ notebookPath: join(ROOT, "notebooks", path) });
    expect(status).toBe("done");
    expect(shownText(notebook)).toBe(readFileSync(expectedPath(path), "utf8"));
  },
  120_000,
);
