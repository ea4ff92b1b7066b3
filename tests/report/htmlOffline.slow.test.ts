import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";
import { describe, expect, test } from "vitest";
import { renderHtml } from "../../src/report/html/renderHtml.js";
import { notebookToDocument } from "../../src/report/notebookToDocument.js";
import { CHROMIUM, CHROMIUM_ARGUMENTS, chromiumOrSkip } from "./chromium.js";
import { META, sampleNotebook } from "./sampleNotebook.js";

describe("in a browser, offline", () => {
  for (const width of [1280, 390]) {
    test(`at ${width} px: no request, no error, no sideways scroll, the figure wakes up`, async (context) => {
      chromiumOrSkip(context);
      const folder = await mkdtemp(join(tmpdir(), "loambook-html-"));
      const browser = await chromium.launch({ executablePath: CHROMIUM, args: CHROMIUM_ARGUMENTS });
      try {
        const file = join(folder, "report.html");
        const html = renderHtml(notebookToDocument(await sampleNotebook(), META));
        await writeFile(file, html);
        const view = await browser.newPage({ viewport: { width, height: 844 }, offline: true });
        const requests: string[] = [];
        const complaints: string[] = [];
        view.on("request", (request) => requests.push(request.url()));
        view.on("console", (message) => complaints.push(message.text()));
        view.on("pageerror", (error) => complaints.push(String(error)));
        const address = pathToFileURL(file).href;
        await view.goto(address);
        const overflow =
          "document.documentElement.scrollWidth - document.documentElement.clientWidth";
        expect(await view.evaluate(overflow)).toBe(0);
        const button = view.getByRole("button", { name: "Make figure 1 interactive" });
        await button.focus();
        await view.keyboard.press("Enter");
        await view.waitForSelector("#figure-1 .live .scatterlayer .trace");
        expect(await view.locator("#figure-1 .drawing").isVisible()).toBe(false);
        expect(await view.locator("#figure-1 .modebar-btn[data-title*=cloud i]").count()).toBe(0);
        expect(await view.evaluate(overflow)).toBe(0);
        await view.keyboard.press("Enter");
        expect(await view.locator("#figure-1 .drawing").isVisible()).toBe(true);
        expect(requests).toEqual([address]);
        expect(complaints).toEqual([]);
      } finally {
        await browser.close();
        await rm(folder, { recursive: true });
      }
    });
  }
});
