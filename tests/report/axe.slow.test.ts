import { readFileSync } from "node:fs";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { renderHtml } from "../../src/report/html/renderHtml.js";
import { notebookToDocument } from "../../src/report/notebookToDocument.js";
import { CHROMIUM, CHROMIUM_ARGUMENTS, chromiumOrSkip } from "./chromium.js";
import { META, sampleNotebook } from "./sampleNotebook.js";

interface Violation {
  readonly id: string;
  readonly impact: string;
  readonly nodes: readonly { readonly html: string }[];
}

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const RUN = `axe.run(document, { resultTypes: ["violations"] }).then(({ violations, passes }) => ({ violations, passed: passes.length }))`;

let folder = "";
let browser: Browser | undefined;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "loambook-axe-"));
  const notebook = await sampleNotebook();
  for (const layout of ["permit", "handout"] as const) {
    const html = renderHtml(notebookToDocument(notebook, { ...META, layout }));
    await writeFile(join(folder, `${layout}.html`), html);
    const bad = html
      .replace("<main ", "<main><button></button><p style='color:#ddd'>pale</p><div ")
      .replace('lang="en"', "");
    await writeFile(join(folder, "bad.html"), bad);
  }
});
afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true });
});

const views = new Map<string, Page>();

/** A page, opened once, in a window of a width and in a light. */
async function look(name: string, width: number, colorScheme: "light" | "dark") {
  browser ??= await chromium.launch({ executablePath: CHROMIUM, args: CHROMIUM_ARGUMENTS });
  let view = views.get(name);
  if (view === undefined) {
    // the page's own policy forbids scripts that are not its own, so the checker is let in past it
    view = await browser.newPage({ bypassCSP: true, offline: true });
    views.set(name, view);
    await view.goto(pathToFileURL(join(folder, `${name}.html`)).href);
    await view.evaluate(axe);
  }
  await view.setViewportSize({ width, height: 844 });
  await view.emulateMedia({ colorScheme });
  return (await view.evaluate(RUN)) as { violations: Violation[]; passed: number };
}

const grave = (violations: readonly Violation[]) =>
  violations
    .filter(({ impact }) => impact === "serious" || impact === "critical")
    .map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 200)}`);

describe("the page under axe-core", () => {
  for (const layout of ["permit", "handout"]) {
    for (const width of [1280, 390]) {
      for (const scheme of ["light", "dark"] as const) {
        test(`${layout} at ${width} px, ${scheme}: nothing serious or critical`, async (context) => {
          chromiumOrSkip(context);
          const { violations, passed } = await look(layout, width, scheme);
          expect(grave(violations)).toEqual([]);
          expect(passed).toBeGreaterThan(20);
        });
      }
    }
  }

  test("a page with faults is found out", async (context) => {
    chromiumOrSkip(context);
    const { violations } = await look("bad", 1280, "light");
    const ids = violations.map(({ id }) => id);
    expect(ids).toEqual(expect.arrayContaining(["button-name", "color-contrast", "html-has-lang"]));
  });
});
