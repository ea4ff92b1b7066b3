// Opens notebooks in JupyterLab or Notebook 7 in Chromium and does there what a person does; see run.sh.
//
//   node look.mjs <lab|notebook> <address> <folder that is served> <folder for pictures>
import { deepEqual, equal, match, ok } from "node:assert/strict";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { chromium } from "playwright-core";
import { notebookText } from "../../../dist/notebook/index.js";

const [, , application, address, served, pictures] = process.argv;
for (let tries = 0; ; tries += 1) {
  try {
    await fetch(address);
    break;
  } catch (problem) {
    if (tries === 60) throw problem;
    await wait(1000);
  }
}
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox"],
});
const say = (words) => process.stdout.write(`${application}: ${words}\n`);

/** What is stored of the cell that names nothing. */
const NOTHING =
  "Property 'grad' does not exist on type 'typeof import(\\\"loambook/dist/index\\\")'.";
/** The box of an error, and of what a cell writes to stderr. */
const ERROR = '[data-mime-type="application/vnd.jupyter.stderr"]';

/** Opens a notebook in a tab of its own, once its kernel answers. */
async function open(notebook) {
  const tab = await browser.newPage({ viewport: { width: 1280, height: 1200 } });
  const path = application === "lab" ? `lab/tree/${notebook}?reset` : `notebooks/${notebook}`;
  await tab.goto(`${address}/${path}`);
  await tab.locator(".jp-NotebookPanel .jp-Cell").first().waitFor({ timeout: 60_000 });
  await tab.waitForFunction(
    () => {
      const panel = globalThis.jupyterapp.shell.currentWidget;
      return panel?.context?.isReady && panel.sessionContext.session?.kernel?.status === "idle";
    },
    undefined,
    { timeout: 60_000 },
  );
  return tab;
}

const command = (tab, name) =>
  tab.evaluate((id) => globalThis.jupyterapp.commands.execute(id), name);
/** Runs all cells and waits for the last, also where one is allowed to fail. */
async function runAll(tab) {
  await command(tab, "notebook:run-all-cells");
  await tab.waitForFunction(
    () =>
      globalThis.jupyterapp.shell.currentWidget.content.widgets.every(
        ({ model }) => model.type !== "code" || model.executionCount > 0,
      ),
    undefined,
    { timeout: 120_000 },
  );
}
const save = (tab) => command(tab, "docmanager:save");
/** Chooses a cell, by its place among all, as a click does. */
const choose = (tab, index) =>
  tab.evaluate((at) => {
    const { content } = globalThis.jupyterapp.shell.currentWidget;
    content.activeCellIndex = at;
    content.deselectAll();
    content.mode = "edit";
    content.activeCell.editor.focus();
  }, index);
const cell = (tab, index) => tab.locator(".jp-Notebook .jp-Cell").nth(index);
/** Takes the place of what stands in the cell that was chosen. */
async function type(tab, code) {
  await tab.keyboard.press("Control+A");
  await tab.keyboard.insertText(code);
}

/** The pictures of each cell that shows figures, decoded, and what stands beside them as text. */
async function figuresOf(tab) {
  await tab.evaluate(async () => {
    for (const image of document.querySelectorAll(".jp-OutputArea-output img")) {
      image.scrollIntoView();
      await image.decode();
    }
  });
  return tab.evaluate(() =>
    [...document.querySelectorAll(".jp-OutputArea-output img")].map((image) => {
      const output = image.closest(".jp-OutputArea-output");
      const { width, height } = image.getBoundingClientRect();
      return {
        type: output.dataset.mimeType ?? output.className,
        source: image.src.slice(0, 20),
        width,
        height,
        drawn: image.naturalWidth,
        text: output.textContent,
      };
    }),
  );
}

/** Every figure is seen, and no number of a drawing stands as text. */
function check(figures, expected, kind) {
  equal(figures.length, expected);
  for (const figure of figures) {
    ok(figure.width > 300 && figure.height > 150 && figure.drawn > 300, JSON.stringify(figure));
    equal(figure.text.trim(), "");
    match(figure.source, kind);
  }
}

const figuresStored = (notebook) =>
  notebook.cells
    .flatMap(({ outputs = [] }) => outputs)
    .filter(({ data }) => data?.["image/svg+xml"] !== undefined).length;
const lines = (text) => text.split("\n").map((line) => line.trim());

// 1. A notebook with results, opened for the first time: not trusted.
const name = "executed.ipynb";
const file = join(served, name);
const before = readFileSync(file, "utf8");
const stored = figuresStored(JSON.parse(before));
const tab = await open(name);
equal(
  await tab.evaluate(
    () => globalThis.jupyterapp.shell.currentWidget.content.model.cells.get(7).trusted,
  ),
  false,
);
check(await figuresOf(tab), stored, /^data:image\/png/);
const told = await tab.locator(".jp-OutputArea-output").allTextContents();
ok(
  told.every((text) => !/@font-face|\{fill:|<svg/.test(text)),
  "a drawing's styles stand as text",
);
await tab.screenshot({ path: join(pictures, `${application}-first.png`) });
await save(tab);
equal(readFileSync(file, "utf8"), before);
say(`first open, not trusted: ${stored} figures seen as pictures; saving changes no byte`);

// 2. All its cells run.
await runAll(tab);
equal(await tab.locator(ERROR).count(), 0);
check(await figuresOf(tab), stored, /^data:image\/svg/);
await tab.screenshot({ path: join(pictures, `${application}-run.png`) });
await save(tab);
const changed = lines(readFileSync(file, "utf8")).filter((line) => !lines(before).includes(line));
equal(changed.length, 0, changed.slice(0, 5).join("\n"));
say("run all: no error, the figures are drawings; saving changes no line");
await tab.close();

// 3. Errors, interrupts, help.
const source = [
  'import * as loam from "loambook";\nimport { mean } from "simple-statistics";',
  "const limit = () => {\n  throw new RangeError('beyond it');\n};\nlimit();",
  "await 0;\nconsole.log('after the error', mean([1, 2]));",
  "1 + 1;",
  "loam.grad",
];
const tour = {
  cells: source.map((code, index) => ({
    cell_type: "code",
    execution_count: null,
    id: `cell-${index}`,
    outputs: [],
    metadata: index === 1 ? { tags: ["raises-exception"] } : {},
    source: code.split(/(?<=\n)/),
  })),
  metadata: JSON.parse(before).metadata,
  nbformat: 4,
  nbformat_minor: 5,
};
const written = notebookText(tour);
const tourFile = join(served, "tour.ipynb");
writeFileSync(tourFile, written);
const page = await open("tour.ipynb");
await runAll(page);
const box = cell(page, 1).locator(ERROR);
match(await box.textContent(), /RangeError: beyond it\s+at limit, line 2: throw new RangeError/);
match(await cell(page, 2).locator(".jp-OutputArea").textContent(), /after the error 1\.5/);
say("an allowed error has its box with the cell's own line; later cells ran");

await choose(page, 3);
await type(page, "await 0;\nwhile (true) {}");
await page.keyboard.press("Shift+Enter");
await page.waitForTimeout(3000);
await command(page, "notebook:interrupt-kernel");
const stop = cell(page, 3).locator(ERROR);
await stop.waitFor({ timeout: 30_000 });
match(await stop.textContent(), /Interrupted: the cell was stopped/);
await choose(page, 3);
await type(page, "2 + 2;");
await page.keyboard.press("Shift+Enter");
await cell(page, 3).locator(".jp-OutputArea", { hasText: "4" }).waitFor({ timeout: 30_000 });
say("a loop behind an await is interrupted; the next cell runs");

await choose(page, 4);
await page.keyboard.press("Control+End");
await page.keyboard.press("Tab");
const offered = page.locator(".jp-Completer");
await offered.filter({ hasText: "gradingChart" }).waitFor({ timeout: 30_000 });
await page.screenshot({ path: join(pictures, `${application}-completion.png`) });
await page.keyboard.press("Escape");
await type(page, "loam.scalp(1, 4)");
await page.keyboard.press("ArrowLeft");
await page.keyboard.press("Shift+Tab");
const tip = page.locator(".jp-Tooltip");
await tip.filter({ hasText: "screenMm" }).waitFor({ timeout: 30_000 });
match(await tip.textContent(), /RangeError/);
await page.screenshot({ path: join(pictures, `${application}-tooltip.png`) });
await page.keyboard.press("Escape");
say("Tab completes, Shift-Tab tells arguments and what is thrown, inside the brackets too");

await choose(page, 4);
await type(page, "loam.grad");
await save(page);
const added = lines(readFileSync(tourFile, "utf8")).filter(
  (line) => !lines(written).includes(line),
);
const words = added.filter((line) => !/^"(execution_count|output_type|name)"|[[{]$/.test(line));
deepEqual(words, [
  '"ename": "RangeError",',
  '"evalue": "beyond it",',
  '"RangeError: beyond it",',
  `"    at limit, line 2: throw new RangeError('beyond it');",`,
  '"    at line 4: limit();"',
  '"after the error 1.5\\n"',
  '"4\\n"',
  '"2 + 2;"',
  '"ename": "CompileError",',
  `"evalue": "${NOTHING}",`,
  `"1:6 - ${NOTHING}"`,
]);
say("saved: the file differs by what was typed and what the cells showed");
await browser.close();
