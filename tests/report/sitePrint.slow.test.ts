import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { type Browser, chromium } from "playwright-core";
import { afterAll, describe, expect, test } from "vitest";
import { renderSite } from "../../src/report/writeSite.js";
import { siteOrderList } from "../../src/tables/quantities.js";
import { siteSheets } from "../../src/tables/site/crewCards.js";
import { siteFieldTests } from "../../src/tables/site/fieldTestForms.js";
import { mixCard } from "../../src/tables/site/mixCard.js";
import { EXAMPLE_NAMES, exampleResult } from "../support/exampleResult.js";
import { temporaryFolder } from "../support/runCli.js";
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

let browser: Browser | undefined;
afterAll(() => browser?.close());

describe.each(EXAMPLE_NAMES)("the sheets of %s", (name) => {
  test("print from a browser as large and as short as the PDF", async (context) => {
    chromiumOrSkip(context);
    const result = await exampleResult(name);
    const folder = temporaryFolder();
    const sheets = [
      ...siteSheets(result),
      mixCard(result),
      siteOrderList(result),
      siteFieldTests(),
    ];
    const { files } = await renderSite(sheets, result);
    browser ??= await chromium.launch({ executablePath: CHROMIUM, args: CHROMIUM_ARGUMENTS });
    const view = await browser.newPage({ offline: true });
    for (const { name: sheet } of sheets) {
      const page = join(folder, `${sheet}.html`);
      writeFileSync(page, files[`${sheet}.html`]);
      await view.goto(pathToFileURL(page).href);
      const [onPaper, pdf] = await Promise.all([
        view
          .pdf({ preferCSSPageSize: true, printBackground: true })
          .then((bytes) => printed(new Uint8Array(bytes))),
        printed(files[`${sheet}.pdf`] as Uint8Array),
      ]);
      expect(onPaper.pages, sheet).toBe(pdf.pages);
      expect(onPaper.outside, sheet).toEqual([]);
      expect(pdf.outside, sheet).toEqual([]);
      const ratios = [...pdf.typePt].flatMap(([text, height]): [number, string][] => {
        const inBrowser = onPaper.typePt.get(text);
        return inBrowser === undefined ? [] : [[inBrowser / height, text]];
      });
      expect(ratios.length, sheet).toBeGreaterThan(10);
      // The page's own font is larger for its height than what a browser puts in its place.
      expect(
        ratios.filter(([ratio]) => ratio <= LEAST_RATIO),
        sheet,
      ).toEqual([]);
    }
    await view.close();
  }, 120_000);
});
