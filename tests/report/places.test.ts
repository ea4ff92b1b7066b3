import { JSDOM } from "jsdom";
import { describe, expect, it } from "vitest";
import { acrossThePage, cited } from "../../src/report/appendix/parts.js";
import { pairedFigures } from "../../src/report/document.js";
import { renderHtml } from "../../src/report/html/renderHtml.js";
import { notebookToDocument } from "../../src/report/notebookToDocument.js";
import { renderPdf } from "../../src/report/pdf/renderPdf.js";
import { render } from "../../src/words/render.js";
import { readPdf } from "./readPdf.js";
import { META } from "./sampleNotebook.js";

const MIME = "application/vnd.loambook.node+json";
const shown = (block: object) => ({
  cell_type: "code",
  source: "",
  metadata: { tags: ["hide-code"] },
  execution_count: 1,
  outputs: [{ output_type: "display_data", data: { [MIME]: block }, metadata: {} }],
});

/** A report of blocks, as a notebook shows them. */
function reportOf(blocks: readonly object[]) {
  const heading = { cell_type: "markdown", source: "# Title", metadata: {} };
  const cells = [heading, ...blocks.map(shown)];
  return notebookToDocument({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells }, META);
}

const table = (more: object) => ({
  kind: "table",
  caption: "Blocks",
  columns: [{ header: "Block" }, { header: "Shown in" }],
  rows: [["L1", ""]],
  ...more,
});

const BLOCKS = [
  { kind: "section", level: 1, title: "Strength", key: "strength" },
  { kind: "paragraph", text: "Blocks were crushed.", cites: ["blocks", "nowhere"] },
  table({
    key: "blocks",
    links: [
      { row: 0, column: 0, to: "sheet row 7" },
      { row: 0, column: 1, to: "strength" },
    ],
  }),
  { kind: "keyValues", caption: "Bound", items: [{ label: "Bound", value: "2", to: "gone" }] },
  { kind: "section", level: 1, title: "Readings", key: "readings", annex: true },
  table({ key: "sheet", rowKeys: ["sheet row 7"] }),
  { kind: "section", level: 2, title: "More", annex: true },
  { kind: "section", level: 1, title: "Code", annex: true },
];

describe("places of a report", () => {
  it("are found by key: sections, tables and rows; what is not there is not linked", () => {
    const html = renderHtml(reportOf(BLOCKS), { interactive: false });
    const { document } = new JSDOM(html).window;
    const links = [...document.querySelectorAll("main a")].map((link) => [
      link.textContent,
      link.getAttribute("href"),
    ]);
    expect(links).toEqual([
      ["Table 1", "#table-1"],
      ["L1", "#row-sheet-row-7"],
      ["section 1", "#s-strength"],
    ]);
    expect(document.querySelector("main > p")?.textContent).toBe("Blocks were crushed (Table 1).");
    expect(document.getElementById("row-sheet-row-7")?.closest("table")?.id).toBe("table-3");
  });

  it("letter annexes and what stands below them", () => {
    const numbers = reportOf(BLOCKS).nodes.flatMap((node) =>
      node.kind === "heading" ? [node.number] : [],
    );
    expect(numbers).toEqual(["1", "Annex A", "A.1", "Annex B"]);
  });

  it("has its list of contents where it is asked for, behind the answer; else before all", () => {
    const first = { kind: "paragraph", text: "The answer." };
    const orderOf = (blocks: readonly object[]) => {
      const page = new JSDOM(renderHtml(reportOf(blocks))).window.document;
      const seen = page.querySelectorAll("nav.contents, p, h2[id^=s-]");
      const shown = [...seen].map(({ tagName, textContent }) =>
        tagName === "NAV" ? "contents" : textContent,
      );
      expect(shown.filter((one) => one === "contents")).toHaveLength(1);
      return shown.filter((one) => ["contents", "The answer.", "1 Strength"].includes(one ?? ""));
    };
    expect(orderOf([first, { kind: "contents" }, ...BLOCKS])).toEqual([
      "The answer.",
      "contents",
      "1 Strength",
    ]);
    expect(orderOf([first, ...BLOCKS])).toEqual(["contents", "The answer.", "1 Strength"]);
  });

  it("are set in the PDF, whose list of contents stands where it is asked for", async () => {
    const first = { kind: "paragraph", text: "The answer." };
    const blocks = [first, { kind: "pageBreak" }, { kind: "contents" }, ...BLOCKS];
    const { pdf, findings } = await renderPdf(reportOf(blocks));
    expect(findings).toEqual([]);
    const { pages, outline } = await readPdf(pdf);
    expect(pages[0]).toContain("The answer.");
    expect(pages[0]).not.toContain("Contents");
    expect(pages[1]).toContain("Contents");
    expect(pages[1]).toContain("Blocks were crushed ( Table 1 ).");
    expect(outline).toEqual([
      "1 Strength",
      "Annex A Readings",
      "Annex B Code",
      "Annex: files read",
    ]);
  });
});

it("two figures of half width stand side by side, a third alone", () => {
  const figure = (number: number, half?: boolean) => ({
    kind: "figure" as const,
    svg: "",
    alt: "",
    caption: "",
    number,
    half,
  });
  const nodes = [figure(1, true), figure(2, true), figure(3, true), figure(4)];
  expect(pairedFigures(nodes).map(({ kind }) => kind)).toEqual(["pair", "figure", "figure"]);
});

it("a cited table has no column without a word, and links keep their columns", () => {
  const [sentence, part] = cited("Blocks.", [
    {
      kind: "table",
      key: "blocks",
      caption: "Blocks",
      columns: ["a", "b", "c"].map((header) => ({ header })),
      rows: [
        ["1", "", ""],
        ["2", "", ""],
      ],
      links: [{ row: 1, column: 2, to: "x" }],
    },
  ]);
  expect(sentence).toMatchObject({ kind: "paragraph", cites: ["blocks"] });
  expect(part).toMatchObject({
    columns: [{ header: "a" }, { header: "c" }],
    rows: [
      ["1", ""],
      ["2", ""],
    ],
    links: [{ row: 1, column: 1, to: "x" }],
  });
  expect(cited("Nothing.", [{ kind: "table", caption: "", columns: [], rows: [] }])).toEqual([]);
});

it("a table with more columns than a page has room for goes on below, each part with the first column", () => {
  const headers = ["row", ..."ABCDEFGHIJKLMNOP"];
  const wide = {
    kind: "table" as const,
    caption: "Readings",
    columns: headers.map((header) => ({ header })),
    rows: [headers.map((header) => (header === "row" ? "2" : `drying-${header}`))],
    notes: ["Row 1: a remark"],
  };
  const parts = acrossThePage(wide);
  // 1 + 16 × 8 letters and two between columns, in lines of 92
  expect(parts.map(({ rows: [row] }) => row.length)).toEqual([9, 9]);
  expect(parts.map(({ rows: [row] }) => [row[0], row[1]])).toEqual([
    ["2", "drying-A"],
    ["2", "drying-I"],
  ]);
  expect(parts.map(({ caption }) => render(caption))).toEqual([
    "Readings, columns A to H",
    "Readings, columns I to P",
  ]);
  expect(parts.map(({ notes }) => notes)).toEqual([undefined, wide.notes]);
  const narrow = { ...wide, columns: wide.columns.slice(0, 9), rows: [wide.rows[0].slice(0, 9)] };
  expect(acrossThePage(narrow)).toEqual([narrow]);
});
