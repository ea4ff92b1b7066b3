import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, expect, it } from "vitest";
import { chromiumOrSkip } from "../report/chromium.js";
import { endServers, openPage, serve } from "../support/notebookServer.js";
import { toolOrSkip } from "../support/requireTool.js";
import { runCli } from "../support/runCli.js";

/** What the notebook server puts into its page; only what is called here. */
declare const Jupyter: {
  notebook: {
    execute_all_cells(): void;
    execute_cell_range(from: number, to: number): void;
    get_cells(): {
      get_text(): string;
      set_text(text: string): void;
      cell_type: string;
      last_msg_id: string | null;
    }[];
    /** Whether a request has its reply, and all of its outputs. */
    kernel: { _msg_callbacks: Record<string, { shell_done: boolean; iopub_done: boolean }> };
  };
};

const folders: string[] = [];
afterAll(async () => {
  await endServers();
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
}, 60_000);

const OWN_CLASS = `reading;red;blue;green;white
jar: depth of water (mm);200;200;200;
jar: top of sand (mm);45;48;50;
jar: top of silt (mm);60;66;64;
jar: top of clay (mm);75;80;78;
dry mass before washing (g);1000,5;1100;980;1050
dry mass after washing (g);700,5;790,2;;745
on 16 mm (g);0;0;0;0
on 4 mm (g);150,5;170,1;160;
on 2 mm (g);120;130;125,5;300
on 0.6 mm (g);180;210;200,5;190
on 0.2 mm (g);140;155;150;
on 0.063 mm (g);105;120;110;250
pan (g);4,5;4,6;233,5;4,8
`;
/** What passes the finest sieve: all that stayed on none, of the dry mass before washing. */
const OWN_FINEST = {
  red: 100 * (1 - (150.5 + 120 + 180 + 140 + 105) / 1000.5),
  blue: 100 * (1 - (170.1 + 130 + 210 + 155 + 120) / 1100),
  green: 100 * (1 - (160 + 125.5 + 200.5 + 150 + 110) / 980),
  white: 100 * (1 - (300 + 190 + 250) / 1050),
};

/** The folder of a class, far from the clone. */
async function classFolder(...options: readonly string[]): Promise<string> {
  const desk = mkdtempSync(join(tmpdir(), "loambook-class-"));
  folders.push(desk);
  const run = await runCli(["notebooks", "class", "--teacher", ...options], desk);
  expect(run.code, run.stderr).toBe(0);
  return join(desk, "class");
}

/** Number of the cell that holds a text, among all cells. */
const cellWith = (page: Page, text: string) =>
  page.evaluate(
    (part) => Jupyter.notebook.get_cells().findIndex((cell) => cell.get_text().includes(part)),
    text,
  );

/** Waits until the cells have run: then the server waits for no reply to them, and for no output. */
async function hasRun(page: Page, from: number, to?: number): Promise<void> {
  await page.waitForFunction(
    ([first, end]) =>
      Jupyter.notebook
        .get_cells()
        .slice(first, end)
        .filter(({ cell_type }) => cell_type === "code")
        .map(({ last_msg_id }) => Jupyter.notebook.kernel._msg_callbacks[last_msg_id ?? ""])
        .every((request) => request?.shell_done && request.iopub_done),
    [from, to] as const,
    { polling: 50, timeout: 120_000 },
  );
}

/** What stands below a cell once it has run again. */
async function run(page: Page, index: number): Promise<string> {
  const cell = page.locator("#notebook-container > .cell").nth(index);
  await page.evaluate((at) => Jupyter.notebook.execute_cell_range(at, at + 1), index);
  await hasRun(page, index, index + 1);
  return (await cell.locator(".output_area").allInnerTexts()).join("\n");
}

/** Writes an answer into the cell of an exercise as a pupil does, and runs it. */
async function answer(page: Page, exercise: string, written: string): Promise<string> {
  const index = await cellWith(page, `"${exercise}"`);
  await page.evaluate(
    ([at, text]) => {
      const cell = Jupyter.notebook.get_cells()[Number(at)];
      const lines = cell.get_text().split("\n");
      cell.set_text([lines[0].replace(/=.*;/, `= ${text};`), ...lines.slice(1)].join("\n"));
    },
    [String(index), written],
  );
  return run(page, index);
}

async function runAll(page: Page): Promise<void> {
  await page.evaluate(() => Jupyter.notebook.execute_all_cells());
  await hasRun(page, 0);
}

it("a pupil works through the lesson on grading: blank, garbage, wrong, right, wrong again", {
  timeout: 600_000,
}, async (context) => {
  chromiumOrSkip(context);
  const jupyter = toolOrSkip(context, "jupyter-notebook");
  const folder = await classFolder();
  const page = await openPage(await serve(jupyter, folder), "workshop-grading.ipynb");
  expect(await page.locator(".output_area *").count()).toBe(0);
  await runAll(page);
  expect(await page.locator(".output_error, .output_stderr").count()).toBe(0);
  const blank = await run(page, await cellWith(page, '"passing-finest"'));
  expect(blank).toContain("Of 1200 g dry before washing, 876.3 g stayed on all sieves together");

  const finest = (written: string) => answer(page, "passing-finest", written);
  expect(await finest("27,0")).toContain("with a point before the decimals: 27.0");
  expect(await finest('"27 %"')).toContain("with a point before the decimals: 27");
  expect(await finest("lots")).toContain("a number is asked for");
  expect(await finest("100 / 0")).toContain("divides by 0");
  expect(await finest("100 * (1 - 876.3 / 885)")).toContain("of the mass after washing");
  expect(await finest("0.27")).toContain("A hint:");
  expect(await finest("100 * (1 - 876.3 / 1200)")).toContain("Right.");
  expect(await finest("26")).toContain("Not yet.");

  expect(await answer(page, "jar-clay-by-mass", "more")).toContain("fresh layer of clay");
  expect(await answer(page, "jar-clay-by-mass", "less")).toContain("Right.");
  expect(await answer(page, "is-d10-known", "“No”")).toContain("Right.");
  expect(await answer(page, "clay", "15 %")).toContain("Predicted, clay, % of the mass: 15.");
  const compared = await run(page, await cellWith(page, "comparePredictions"));
  expect(compared).toMatch(/clay, % of the mass\s+15\s+11\.7/);
  expect(await page.locator(".output_error, .output_stderr").count()).toBe(0);
  // the figure is drawn, with lines fine enough to read a size off it
  const figure = page.locator(".output_svg svg[role=img]").first();
  expect((await figure.boundingBox())?.width).toBeGreaterThan(300);
  expect(await figure.locator('path[style*="0.7px"]').count()).toBeGreaterThan(35);

  // Group 2 types its jar upside down, then right, and its own finest share.
  const sheet = join(folder, "data-examples/class-day/class.csv");
  const shipped = readFileSync(sheet, "utf8");
  writeFileSync(
    sheet,
    shipped.replace(/^jar: top of silt.*$/m, "jar: top of silt (mm),71,40,70,69"),
  );
  const parameters = await cellWith(page, "let myGroup");
  const choose = (group: string) =>
    page.evaluate(
      ([at, text]) => {
        const cell = Jupyter.notebook.get_cells()[Number(at)];
        cell.set_text(cell.get_text().replace(/myGroup = .*;/, `myGroup = "${text}";`));
      },
      [String(parameters), group],
    );
  await choose("2");
  await runAll(page);
  const opened = await run(page, await cellWith(page, "openLesson"));
  expect(opened).toContain("The settled soil stands lower than at the reading before.");
  expect(opened).toMatch(/class\.csv, row 7, group 2/);
  expect(opened).not.toMatch(/\bat \w+ \(|Error:|jar\.csv/);
  expect(await page.locator(".output_error, .output_stderr").count()).toBe(0);
  expect(await run(page, await cellWith(page, "classCurveChart"))).toContain(
    "There is no curve of this group yet",
  );

  // Four groups type their own class: decimal commas, one sample not washed, one without a jar and with fewer sieves.
  writeFileSync(sheet, OWN_CLASS);
  for (const [group, passing] of Object.entries(OWN_FINEST)) {
    await choose(group);
    await runAll(page);
    const ready = await run(page, await cellWith(page, "openLesson"));
    expect(ready).toContain(
      `Ready, with the numbers of ${group}. Exercises: ${group === "white" ? 5 : 7}`,
    );
    expect(await finest(passing.toFixed(1)), group).toContain("Right.");
    expect(await finest(String(passing + 1)), group).toContain("Not yet.");
    expect(await page.locator(".output_error, .output_stderr").count()).toBe(0);
  }
  const jars = await run(page, await cellWith(page, "classJarsTable"));
  expect(jars).toMatch(/red\s+60\s+20\s+20[\s\S]*blue\s+60[\s\S]*green[\s\S]*lowest to highest/);
  expect(jars).not.toContain("white");
  if (process.env.LOAMBOOK_BROWSER_PICTURE) {
    await page.screenshot({
      path: `${process.env.LOAMBOOK_BROWSER_PICTURE}.pupil.png`,
      fullPage: true,
    });
  }
});

it("every lesson opens and runs in Spanish and in United States units, without an error", {
  timeout: 600_000,
}, async (context) => {
  chromiumOrSkip(context);
  const jupyter = toolOrSkip(context, "jupyter-notebook");
  const address = await serve(jupyter, await classFolder("--language", "es", "--units", "US"));
  for (const lesson of ["grading", "blending", "cement", "saving"]) {
    const page = await openPage(address, `workshop-${lesson}.es.ipynb`);
    await runAll(page);
    expect(await page.locator(".output_error, .output_stderr").count(), lesson).toBe(0);
    const shown = (await page.locator(".output_area").allInnerTexts()).join("\n");
    expect(shown).toContain("Listo, con los números de");
    if (lesson === "blending") {
      expect(await answer(page, "worst-miscount", "grava -1")).toMatch(/Correcto|Bien/);
      expect(await answer(page, "sand-by-mass", "30,5")).toContain("30.5");
    }
    if (lesson === "cement") {
      expect(await answer(page, "strength-of-a-block", "199")).toMatch(/Correcto|Bien/);
      expect(shown).toMatch(/261 psi/);
      expect(shown).not.toMatch(/\d MPa/);
    }
    if (lesson === "saving")
      expect(await answer(page, "cement-in-the-wall", "912")).toMatch(/Correcto|Bien/);
    await page.close();
  }
});
