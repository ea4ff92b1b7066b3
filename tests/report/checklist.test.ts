import { JSDOM } from "jsdom";
import { describe, expect, it } from "vitest";
import { readBlock } from "../../src/blocks/kinds.js";
import type { ReportDocument } from "../../src/report/document.js";
import { renderHtml } from "../../src/report/html/renderHtml.js";
import { notebookToDocument } from "../../src/report/notebookToDocument.js";
import { renderPdf } from "../../src/report/pdf/renderPdf.js";
import { checklistBlock } from "../../src/tables/studyEntries.js";
import { render } from "../../src/words/render.js";
import { HOSTILE, META } from "./sampleNotebook.js";

const markdown = (source: string, tags: string[] = []) => ({
  cell_type: "markdown",
  source,
  metadata: { tags },
});
const MIME = "application/vnd.loambook.node+json";
const shown = (block: object) => ({
  cell_type: "code",
  source: "",
  metadata: { tags: ["hide-code"] },
  execution_count: 1,
  outputs: [{ output_type: "display_data", data: { [MIME]: block }, metadata: {} }],
});

const CHECKLIST = [
  { clause: "3.2", requirement: HOSTILE, answeredBy: "mix" },
  { clause: "3.3", requirement: "Strength is shown.", answeredBy: "strength", remark: HOSTILE },
  { clause: "4.1", requirement: "Driving rain.", remark: "Not part of this study." },
  { clause: "5", requirement: "Own section.", answeredBy: "own-words-here" },
];

function reportOf(checklist: typeof CHECKLIST | object[]): ReportDocument {
  const cells = [
    markdown("# Title"),
    markdown("## Resumen de la mezcla", ["section-mix"]),
    markdown("text"),
    shown({ kind: "pageBreak" }),
    markdown("## Strength\n\nBlocks.\n\n### Below it", ["hide-code", "section-strength"]),
    shown({ kind: "pageBreak" }),
    markdown("## Own words, here"),
    shown(checklistBlock({ checklist: checklist as typeof CHECKLIST })),
  ];
  return notebookToDocument({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells }, META);
}

describe("a clause checklist in a report", () => {
  it("finds sections by their tag in any language, or by the words of the heading", () => {
    const report = reportOf(CHECKLIST);
    const node = report.nodes.find(({ kind }) => kind === "checklist");
    expect(node).toMatchObject({
      number: 1,
      sections: [
        { id: "s-resumen-de-la-mezcla", number: "1", title: "Resumen de la mezcla" },
        { id: "s-strength", number: "2", title: "Strength" },
        null,
        { id: "s-own-words-here", number: "3" },
      ],
    });
    expect(report.findings).toEqual([]);
  });

  it("links each answered clause in HTML, marks the open one, and obeys no markup", () => {
    const html = renderHtml(reportOf(CHECKLIST), { interactive: false });
    const { document } = new JSDOM(html).window;
    const rows = [...document.querySelectorAll("#table-1 tbody tr")];
    const hrefs = rows.map((row) => row.querySelector("a")?.getAttribute("href"));
    expect(hrefs).toEqual([
      "#s-resumen-de-la-mezcla",
      "#s-strength",
      undefined,
      "#s-own-words-here",
    ]);
    for (const href of hrefs) if (href) expect(document.querySelector(href)?.tagName).toBe("H2");
    expect(rows[2].textContent).toContain("open");
    expect(rows[0].children[1].textContent).toBe(HOSTILE);
    expect(document.querySelectorAll("main script")).toHaveLength(0);
  });

  it("prints the page of each section in the PDF, and links to it", async () => {
    const { pdf, findings } = await renderPdf(reportOf(CHECKLIST));
    expect(findings).toEqual([]);
    // Loaded late: it adds globals that jsdom must not see when it starts.
    const { getDocument } = await import("pdfjs-dist/legacy/build/pdf.mjs");
    const read = await getDocument({ data: pdf.slice(), verbosity: 0 }).promise;
    const texts: string[] = [];
    for (let number = 1; number <= read.numPages; number += 1) {
      const { items } = await (await read.getPage(number)).getTextContent();
      texts.push(items.map((item) => ("str" in item ? item.str : "")).join(" "));
    }
    const pageOf = (words: RegExp) => texts.findIndex((text, at) => at > 0 && words.test(text)) + 1;
    const [mix, strength] = [pageOf(/Resumen de la mezcla\s+text/), pageOf(/Strength\s+Blocks/)];
    expect([mix, strength]).toEqual([2, 3]);
    const list = (texts.at(-1) ?? "").replace(/\s+/g, " ");
    expect(list).toContain(`1 Resumen de la mezcla ${mix}`);
    expect(list).toContain(`2 Strength ${strength}`);
    expect(list).toContain("open");
    const links = await (await read.getPage(read.numPages)).getAnnotations();
    expect(links.filter(({ subtype, dest }) => subtype === "Link" && dest)).not.toHaveLength(0);
    await read.destroy();
  });

  it("tells a section that the report does not have, with those it has", async () => {
    const report = reportOf([{ clause: "9", requirement: "Fire.", answeredBy: "fire" }]);
    expect(report.findings).toHaveLength(1);
    expect(report.findings[0]).toMatchObject({
      severity: "warning",
      code: "section-not-in-report",
      value: "fire",
    });
    expect(render(report.findings[0].expected)).toBe(
      "one of mix, strength, below-it, own-words-here",
    );
    expect(renderHtml(report, { interactive: false })).toContain("fire: not in this report");
    const { pdf } = await renderPdf(report);
    expect(pdf.length).toBeGreaterThan(1000);
  });

  it("refuses a block that somebody broke in the notebook's file", () => {
    const item = { clause: "1", requirement: "x", remark: "" };
    const block = { kind: "checklist", caption: "c", items: [item] };
    expect(readBlock(block)).toEqual(block);
    expect(() => readBlock({ ...block, items: [{ clause: "1", remark: "" }] })).toThrow(
      "invalid `checklist.items[0].requirement`: undefined; expected a text",
    );
    expect(() => readBlock({ ...block, items: "none" })).toThrow("invalid `checklist.items`");
  });
});
