import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, expect, type TestContext, test } from "vitest";
import { renderHtml } from "../../src/report/html/renderHtml.js";
import { notebookToDocument } from "../../src/report/notebookToDocument.js";
import { CHROMIUM, CHROMIUM_ARGUMENTS, chromiumOrSkip } from "./chromium.js";
import { readPdf } from "./readPdf.js";
import { META, sampleNotebook } from "./sampleNotebook.js";

let folder = "";
let browser: Browser | undefined;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "loambook-print-"));
  const notebook = await sampleNotebook();
  for (const page of ["A4", "us-letter"] as const) {
    await writeFile(
      join(folder, `${page}.html`),
      renderHtml(notebookToDocument(notebook, { ...META, page })),
    );
  }
});
afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true });
});

async function open(context: TestContext, name: string, javaScriptEnabled = true): Promise<Page> {
  chromiumOrSkip(context);
  browser ??= await chromium.launch({ executablePath: CHROMIUM, args: CHROMIUM_ARGUMENTS });
  const view = await browser.newPage({ offline: true, javaScriptEnabled });
  await view.goto(pathToFileURL(join(folder, name)).href);
  return view;
}

test("printed, the page keeps its paper, repeats heads, and leaves out what only a screen can use", async (context) => {
  for (const [page, size] of [
    ["A4", [594.96, 841.92]],
    ["us-letter", [612, 792]],
  ] as const) {
    const view = await open(context, `${page}.html`);
    const seen = await readPdf(new Uint8Array(await view.pdf({ preferCSSPageSize: true })));
    await view.close();
    expect(Math.abs(seen.size[2]! - size[0])).toBeLessThan(1);
    expect(Math.abs(seen.size[3]! - size[1])).toBeLessThan(1);
    const text = seen.pages.join(" ");
    for (const words of ["Figure 1", "Table 3", "add up to 1.3 % less", "SHA-256 digest"]) {
      expect(text).toContain(words);
    }
    for (const words of [
      "interactive",
      "Code of cell",
      "Skip to",
      "gradingFigure(",
      "the computation",
    ]) {
      expect(text).not.toContain(words);
    }
    const withRows = seen.pages.filter((words) => /\bB\d+ \d+ 1[89]\d\d\b/.test(words));
    expect(withRows.length).toBeGreaterThan(1);
    for (const words of withRows) expect(words).toContain("Dry density");
    // three rows of a short table stand together
    const recipe = seen.pages.filter((words) => /62 kg|7\.0 % of dry mass/.test(words));
    expect(recipe).toHaveLength(1);
  }
});

test("without script everything can be read and no button waits in vain", async (context) => {
  const view = await open(context, "A4.html", false);
  expect(await view.locator("figure svg").count()).toBe(2);
  expect(await view.locator("#figure-1 svg").isVisible()).toBe(true);
  expect(await view.locator("button:visible").count()).toBe(0);
  const code = view.locator("details.code pre").first();
  expect(await code.isVisible()).toBe(false);
  await view.locator("details.code summary").first().click();
  expect(await code.isVisible()).toBe(true);
  await view.locator('nav a[href="#s-strength"]').click();
  expect(view.url()).toMatch(/#s-strength$/);
  await view.close();
});
