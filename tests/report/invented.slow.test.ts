import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { type Browser, chromium } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { renderHtml } from "../../src/report/html/renderHtml.js";
import { notebookToDocument } from "../../src/report/notebookToDocument.js";
import { checkCss } from "../../src/report/style/ownCode.js";
import { CHROMIUM, CHROMIUM_ARGUMENTS, chromiumOrSkip } from "./chromium.js";
import { readPdf } from "./readPdf.js";
import { META, sampleNotebook } from "./sampleNotebook.js";

const BANNER = "The laboratory data in this report are invented for demonstration.";

let notebook: object;
let folder = "";
let browser: Browser | undefined;
beforeAll(async () => {
  notebook = await sampleNotebook();
  folder = await mkdtemp(join(tmpdir(), "loambook-invented-"));
});
afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true });
});

const htmlWith = (css: string) =>
  renderHtml(notebookToDocument(notebook, { ...META, style: { css } }), {
    interactive: false,
  });

/** Ways in which a style sheet of one's own could take the banner away; each passes its check. */
const HIDING = [
  ".banner{display:none!important}",
  "@layer{.banner{display:none!important}}",
  "@layer a,b;@layer a{p.banner[role=note]{visibility:hidden!important;opacity:0!important}}",
  "body>p{position:absolute!important;left:-999rem!important}",
  ".banner{font-size:0!important;color:transparent!important;background:none!important}",
  ".banner{height:0!important;overflow:hidden!important;padding:0!important;border:0!important}",
  ".banner::first-line{font-size:0;color:transparent}.banner::first-letter{font-size:0}",
  ".banner{clip-path:circle(0)!important;transform:scale(0)!important;zoom:0.01!important}",
  ".banner{animation:gone 1s infinite!important}@keyframes gone{from,to{opacity:0;display:none}}",
  "body{margin-top:-400px!important}",
  "body{transform:translateY(-400px)!important}html{margin-top:-200px!important}",
  "body::before{content:'';position:fixed;inset:0;background:#fff;z-index:2147483647}",
  "html::after{content:'';position:fixed;inset:0;background:#fff;z-index:2147483647}",
  ".banner::after{content:'';position:fixed;inset:0;background:#fff;z-index:2147483647}",
  ".frame{position:fixed!important;inset:0!important;background:#fff;z-index:2147483647!important}",
  ".frame{margin-top:-300px!important;position:relative;z-index:2147483647}",
  "header.title{position:fixed!important;inset:0;background:#fff;z-index:2147483647!important}",
  "head,script{display:block!important;position:fixed;inset:0;background:#fff;z-index:2147483647}",
  ".skip{position:fixed!important;left:0!important;inset:0;background:#fff;z-index:2147483647}",
  "body{display:grid!important;grid-template-columns:0 1fr!important}",
  "body{visibility:hidden!important}.frame{visibility:visible!important}",
];

describe("the banner of invented data in HTML", () => {
  test.each(HIDING)("stands in spite of %s", async (css) => {
    expect(checkCss("own.css", css)).toEqual([]);
  });

  test("is seen in a browser, whatever the style sheet tries", async (context) => {
    chromiumOrSkip(context);
    browser ??= await chromium.launch({ executablePath: CHROMIUM, args: CHROMIUM_ARGUMENTS });
    const view = await browser.newPage({ viewport: { width: 900, height: 700 }, offline: true });
    for (const css of HIDING) {
      const file = join(folder, "report.html");
      await writeFile(file, htmlWith(css));
      await view.goto(pathToFileURL(file).href);
      const seen = await view.evaluate(`(() => {
        const banner = document.querySelector(".banner");
        const text = document.createRange();
        text.selectNodeContents(banner);
        const box = text.getBoundingClientRect();
        const at = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
        const { opacity, visibility, color, backgroundColor, fontSize } = getComputedStyle(banner);
        return { onTop: at === banner, wide: box.width > 300, high: box.height > 14, top: box.top >= 0 && box.top < 60,
          opacity, visibility, color, backgroundColor, fontSize };
      })()`);
      expect(seen, css).toEqual({
        onTop: true,
        wide: true,
        high: true,
        top: true,
        opacity: "1",
        visibility: "visible",
        color: "rgb(138, 59, 18)",
        backgroundColor: "rgb(251, 238, 228)",
        fontSize: "15px",
      });
      const printed = await readPdf(new Uint8Array(await view.pdf({ pageRanges: "1" })));
      expect(printed.pages[0], css).toContain(BANNER.slice(0, 40));
    }
  }, 120_000);

  test("leaves the rest to the maker, printed over several pages", async (context) => {
    chromiumOrSkip(context);
    browser ??= await chromium.launch({ executablePath: CHROMIUM, args: CHROMIUM_ARGUMENTS });
    const view = await browser.newPage({ offline: true });
    const file = join(folder, "own.html");
    await writeFile(file, htmlWith("h2{color:rgb(1, 2, 3)}"));
    await view.goto(pathToFileURL(file).href);
    const colour = "getComputedStyle(document.querySelector('main h2')).color";
    expect(await view.evaluate(colour)).toBe("rgb(1, 2, 3)");
    const { pages } = await readPdf(new Uint8Array(await view.pdf()));
    expect(pages.length).toBeGreaterThan(3);
  });
});
