import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, expect, it } from "vitest";
import { notebookText } from "../../src/notebook/notebookFile.js";
import { runNotebook } from "../../src/notebook/runNotebook.js";
import { chromiumOrSkip } from "../report/chromium.js";
import { endServers, openPage, serve } from "../support/notebookServer.js";
import { toolOrSkip } from "../support/requireTool.js";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const STUDY = join(ROOT, "data-examples", "reading-room");

/** What the notebook server puts into its page; only what is called here. */
declare const Jupyter: {
  notebook: {
    kernel?: { is_connected(): boolean; interrupt(): void };
    trusted: boolean;
    save_notebook(): Promise<void>;
    execute_cell_range(from: number, to: number): void;
    get_cell(index: number): {
      code_mirror: {
        setValue(text: string): void;
        setCursor(at: { line: number; ch: number }): void;
      };
      completer: { startCompletion(): void };
      focus_editor(): void;
    };
  };
};

const folders: string[] = [];
afterAll(async () => {
  await endServers();
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
}, 60_000);

/** A notebook of these cells in a folder of its own, where nothing is installed. */
function folderWith(cells: readonly string[]): string {
  const folder = mkdtempSync(join(tmpdir(), "loambook-browser-"));
  folders.push(folder);
  const notebook = {
    cells: cells.map((source, index) => ({
      cell_type: "code",
      id: `cell-${index}`,
      metadata: {},
      source: [source],
      execution_count: null,
      outputs: [],
    })),
    metadata: {
      kernelspec: {
        display_name: "TypeScript (loambook)",
        language: "typescript",
        name: "loambook",
      },
    },
    nbformat: 4,
    nbformat_minor: 5,
  };
  writeFileSync(join(folder, "tour.ipynb"), JSON.stringify(notebook));
  return folder;
}

it("shows figure, table, error and completions in a notebook in a real browser", {
  timeout: 180_000,
}, async (context) => {
  chromiumOrSkip(context);
  const jupyter = toolOrSkip(context, "jupyter-notebook");
  const folder = folderWith([
    `import * as loam from "loambook"; const result = await loam.openStudy(${JSON.stringify(STUDY)});`,
    `await loam.show(loam.gradingChart("Grading", result.materials));`,
    `await loam.show(loam.leastCementTable(result)); await loam.show({ kind: "findings", findings: result.findings });`,
    `loam.scalp(result.materials[0].curve, -4);`,
    `loam.grad`,
  ]);
  const page = await openPage(await serve(jupyter, folder), "tour.ipynb");

  await page.evaluate(() => Jupyter.notebook.execute_cell_range(0, 4));
  const figure = page.locator(".output_svg svg[role=img]").first();
  await figure.waitFor({ timeout: 60_000 });
  const box = await figure.boundingBox();
  expect(box?.width).toBeGreaterThan(300);
  expect(box?.height).toBeGreaterThan(200);

  const table = page.locator(".output_html table", { hasText: "Tested contents" });
  await table.waitFor({ timeout: 60_000 });
  expect(await table.locator("caption").textContent()).toContain("least cement");
  expect(await page.locator(".output_html", { hasText: "Expected:" }).count()).toBeGreaterThan(0);

  // An error is told in the library's words: what was wrong, and what was expected.
  const error = page.locator(".output_error").first();
  await error.waitFor({ timeout: 60_000 });
  expect(await error.textContent()).toMatch(/RangeError: invalid `.*`: -4; expected/);

  await page.evaluate(() => {
    const cell = Jupyter.notebook.get_cell(4);
    cell.focus_editor();
    cell.code_mirror.setCursor({ line: 0, ch: 9 });
    cell.completer.startCompletion();
  });
  const completions = page.locator("#complete");
  await completions.waitFor({ timeout: 30_000 });
  const offered = await completions.textContent();
  expect(offered).toContain("gradingChart");
  expect(offered).toContain("gradingResidualsChart");

  // Shift-Tab inside the brackets of a call tells its arguments, and what comes back and is thrown.
  await page.keyboard.press("Escape");
  await page.evaluate(() => {
    const cell = Jupyter.notebook.get_cell(4);
    const code = "loam.scalp(result.materials[0].curve, 4)";
    cell.code_mirror.setValue(code);
    cell.focus_editor();
    cell.code_mirror.setCursor({ line: 0, ch: code.length - 1 });
  });
  await page.keyboard.press("Shift+Tab");
  const tip = page.locator("#tooltip .tooltiptext");
  await tip.filter({ hasText: "scalp" }).waitFor({ timeout: 30_000 });
  expect(await tip.textContent()).toContain("screenMm");
  expect(await tip.textContent()).toContain("RangeError");
  if (process.env.LOAMBOOK_BROWSER_PICTURE) {
    await page.screenshot({ path: process.env.LOAMBOOK_BROWSER_PICTURE, fullPage: true });
  }
});

it("survives a first open without trust, an interrupt, and saving", {
  timeout: 180_000,
}, async (context) => {
  chromiumOrSkip(context);
  const jupyter = toolOrSkip(context, "jupyter-notebook");
  const folder = folderWith([
    `import * as loam from "loambook"; const result = await loam.openStudy(${JSON.stringify(STUDY)});`,
    `await loam.show(loam.gradingChart("Grading", result.materials));`,
    `await loam.show(loam.materialsTable(result.config));`,
    `1 + 1;`,
  ]);
  const file = join(folder, "tour.ipynb");
  const { notebook, status } = await runNotebook({ notebookPath: file });
  expect(status).toBe("done");
  const written = notebookText(notebook);
  writeFileSync(file, written);
  const page = await openPage(await serve(jupyter, folder), "tour.ipynb");

  // This Jupyter has never seen the notebook: it shows the picture, and no number of the drawing as text.
  expect(await page.evaluate(() => Jupyter.notebook.trusted)).toBe(false);
  const picture = page.locator(".output_png img").first();
  await picture.waitFor({ timeout: 30_000 });
  expect((await picture.boundingBox())?.width).toBeGreaterThan(300);
  const figure = page.locator(".code_cell").nth(1).locator(".output_subarea");
  expect((await figure.allTextContents()).join("").trim()).toBe("");
  expect(await page.locator(".output_html table caption").count()).toBe(1);
  if (process.env.LOAMBOOK_BROWSER_PICTURE) {
    await page.screenshot({ path: `${process.env.LOAMBOOK_BROWSER_PICTURE}.first.png` });
  }

  await page.evaluate(() => Jupyter.notebook.save_notebook());
  expect(readFileSync(file, "utf8")).toBe(written);

  await page.evaluate(() => {
    const code = 'await 0;\nconsole.log("in the loop");\nwhile (true) {}';
    Jupyter.notebook.get_cell(3).code_mirror.setValue(code);
    Jupyter.notebook.execute_cell_range(3, 4);
  });
  await page.locator(".output_stdout", { hasText: "in the loop" }).waitFor({ timeout: 30_000 });
  await page.evaluate(() => Jupyter.notebook.kernel?.interrupt());
  const error = page.locator(".output_error").first();
  await error.waitFor({ timeout: 30_000 });
  expect(await error.textContent()).toContain("Interrupted");
  await page.evaluate(() => {
    Jupyter.notebook.get_cell(3).code_mirror.setValue("2 + 2;");
    Jupyter.notebook.execute_cell_range(3, 4);
  });
  await page.locator(".output_stdout", { hasText: "4" }).waitFor({ timeout: 30_000 });

  await page.evaluate(() => Jupyter.notebook.save_notebook());
  const [before, after] = [written, readFileSync(file, "utf8")].map((text) => text.split("\n"));
  expect(after.filter((line) => !before.includes(line)).map((line) => line.trim())).toEqual([
    '"4\\n"',
    '"2 + 2;"',
  ]);
});
