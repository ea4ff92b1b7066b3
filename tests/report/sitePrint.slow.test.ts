import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { describe, expect, onTestFinished, test } from "vitest";
import { renderSite } from "../../src/report/writeSite.js";
import { siteOrderList } from "../../src/tables/quantities.js";
import { siteSheets } from "../../src/tables/site/crewCards.js";
import { siteFieldTests } from "../../src/tables/site/fieldTestForms.js";
import { mixCard } from "../../src/tables/site/mixCard.js";
import { EXAMPLE_NAMES, exampleResult } from "../support/exampleResult.js";
import { CHROMIUM, CHROMIUM_ARGUMENTS, chromiumOrSkip } from "./chromium.js";

/** The print style asks for the same height of small letters: DejaVu Sans, the tallest, is set at 0.86. */
const LEAST_RATIO = 0.82;

interface Printed {
  readonly pages: number;
  /** Height of the type in points, by text. */
  readonly typePt: ReadonlyMap<string, number>;
  /** Text that leaves the page at the side. */
  readonly outside: readonly string[];
}

async function printed(pdf: Uint8Array): Promise<Printed> {
  // loaded late: it adds globals that other tests must not see
  const { getDocument } = await import("pdfjs-dist/legacy/build/pdf.mjs");
  const document = await getDocument({ data: pdf.slice(), verbosity: 0 }).promise;
  const typePt = new Map<string, number>();
  const outside: string[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const [, , width] = page.view;
    for (const item of (await page.getTextContent()).items) {
      if (!("str" in item) || item.str.trim() === "") continue;
      const left = item.transform[4] as number;
      if (left < 10 || left + item.width > width - 10) outside.push(item.str);
      // The PDF keeps a number and its unit together, which parts the text in two for who reads it.
      const text = item.str.split(/[\u00a0 ](?=%|days)/)[0];
      // a text that stands twice counts as it stands smaller
      typePt.set(text, Math.min(typePt.get(text) ?? Infinity, item.height));
    }
  }
  const pages = document.numPages;
  await document.destroy();
  return { pages, typePt, outside };
}

describe.each(EXAMPLE_NAMES)("the sheets of %s", (name) => {
  test("print from a browser as large and as short as the PDF", async (context) => {
    chromiumOrSkip(context);
    const result = await exampleResult(name);
    const folder = mkdtempSync(join(tmpdir(), "loambook-print-"));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    const sheets = [
      ...siteSheets(result),
      mixCard(result),
      siteOrderList(result),
      siteFieldTests(),
    ];
    const { files } = await renderSite(sheets, result);
    for (const { name: sheet } of sheets) {
      const page = join(folder, `${sheet}.html`);
      const print = join(folder, `${sheet}.pdf`);
      writeFileSync(page, files[`${sheet}.html`]);
      execFileSync(
        CHROMIUM,
        [
          ...CHROMIUM_ARGUMENTS,
          "--no-pdf-header-footer",
          `--print-to-pdf=${print}`,
          pathToFileURL(page).href,
        ],
        { stdio: "ignore", timeout: 60_000 },
      );
      const [browser, pdf] = await Promise.all([
        printed(new Uint8Array(readFileSync(print))),
        printed(files[`${sheet}.pdf`] as Uint8Array),
      ]);
      expect(browser.pages, sheet).toBe(pdf.pages);
      expect(browser.outside, sheet).toEqual([]);
      expect(pdf.outside, sheet).toEqual([]);
      const ratios = [...pdf.typePt].flatMap(([text, height]): [number, string][] => {
        const inBrowser = browser.typePt.get(text);
        return inBrowser === undefined ? [] : [[inBrowser / height, text]];
      });
      expect(ratios.length, sheet).toBeGreaterThan(10);
      // The page's own font is larger for its height than what a browser puts in its place.
      expect(
        ratios.filter(([ratio]) => ratio <= LEAST_RATIO),
        sheet,
      ).toEqual([]);
    }
  }, 120_000);
});
