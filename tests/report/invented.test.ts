import { JSDOM } from "jsdom";
import { describe, expect, test } from "vitest";
import { renderHtml } from "../../src/report/html/renderHtml.js";
import { notebookToDocument } from "../../src/report/notebookToDocument.js";
import { renderPdf } from "../../src/report/pdf/renderPdf.js";
import { readPdf } from "./readPdf.js";
import { blockOutput, codeCell, META, markdownCell, notebookOf } from "./sampleNotebook.js";

const BANNER = "The laboratory data in this report are invented for demonstration.";
const NOTICE = "Invented demonstration data: do not build from this report.";

const rows = Array.from({ length: 60 }, (_, row) => [`B${row}`, "2.1"]);
const columns = [{ header: "Block" }, { header: "Strength", unit: "MPa" }];
const table = blockOutput({ kind: "table", caption: "Blocks", columns, rows, notes: [] });
/** Of several pages, with a box and a block. */
const notebook = notebookOf([
  markdownCell("## Blocks\n\n> A quotation.\n"),
  codeCell("show(blocks);", [table]),
]);

const htmlWith = (css: string, invented = true) =>
  renderHtml(notebookToDocument(notebook, { ...META, invented, style: { css } }), {
    interactive: false,
  });

test("the banner in HTML is guarded by a layer that comes first and has no name", () => {
  const { document } = new JSDOM(htmlWith("h2{color:red}")).window;
  expect(document.querySelector(".banner")?.textContent).toContain(BANNER);
  const css = document.querySelector("style")?.textContent ?? "";
  expect(css.startsWith("@layer{")).toBe(true);
  expect(htmlWith("h2{color:red}", false)).not.toContain("@layer");
});

/** Ways in which Typst code of one's own could take the notice away. */
const DROPPING = [
  "#let styling(body) = { set page(header: none, foreground: none); body }",
  "#let styling(body) = { show text: none; body }",
  '#let styling(body) = { show regex("Invented.*"): none; body }',
  "#let warn = white",
  "#let running-head(doc, page) = place(top + left, dx: -5cm, dy: -5cm, rect(width: 30cm, height: 20cm, fill: white))",
  "#let styling(body) = { set page(header: none, foreground: rect(width: 100%, height: 100%, fill: white)); body }",
  "#let styling(body) = { set text(fill: white, size: 0.1pt); body }",
  "#let styling(body) = { show block: none; body }",
  "#let styling(body) = { show box: none; body }",
  "#let styling(body) = hide(body)",
];

describe("the notice of invented data in the PDF", () => {
  test.each(DROPPING)("stands on each page in spite of %s", async (typst) => {
    const report = notebookToDocument(notebook, { ...META, style: { typst } });
    const { pdf } = await renderPdf(report);
    const { pages } = await readPdf(pdf);
    expect(pages.length).toBeGreaterThan(1);
    for (const page of pages) expect(page).toContain(NOTICE);
  });
});
