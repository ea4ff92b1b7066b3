import { describe, expect, test } from "vitest";
import { readBlock } from "../../src/blocks/kinds.js";
import { gridSides, type Side } from "../../src/blocks/part.js";
import { cleanSvg } from "../../src/report/cleanSvg.js";
import { renderHtml } from "../../src/report/html/renderHtml.js";
import { markdownToNodes } from "../../src/report/markdown.js";
import { notebookToDocument } from "../../src/report/notebookToDocument.js";
import { longDate } from "../../src/report/reportMeta.js";
import {
  blockOutput,
  codeCell,
  META,
  markdownCell,
  notebookOf,
  sampleNotebook,
} from "./sampleNotebook.js";

describe("notebookToDocument", () => {
  test("numbers sections, figures and tables in reading order", async () => {
    const report = notebookToDocument(await sampleNotebook(), META);
    const numbers = report.nodes.flatMap((node) => {
      if (node.kind === "heading") return [`section ${node.number}`];
      if (node.kind === "figure") return [`figure ${node.number}`];
      return node.kind === "table" || node.kind === "keyValues" ? [`table ${node.number}`] : [];
    });
    expect(numbers).toEqual([
      "section 1",
      "figure 1",
      "section 1.1",
      "table 1",
      "section 2",
      "figure 2",
      "table 2",
      "section 3",
      "section 3.1",
      "table 3",
      "section 4",
      "section 5",
    ]);
  });

  test("keeps hidden code in the annex only", async () => {
    const report = notebookToDocument(await sampleNotebook(), META);
    const shown = report.nodes.flatMap((node) => (node.kind === "code" ? [node.cell] : []));
    expect(shown).toEqual([2, 4, 5, 6, 7]);
    // the first holds parameters: where the study lies is nobody's business
    expect(report.annex.map((code) => code.cell)).toEqual([2, 3, 4, 5, 6, 7]);
  });

  test("holds no code where none was asked for", async () => {
    const { code: _, ...meta } = META;
    const report = notebookToDocument(await sampleNotebook(), meta);
    expect(report.annex).toEqual([]);
    expect(renderHtml(report, { interactive: false })).not.toContain("Code of cell");
  });

  test("tells about stderr, failed cells and outputs it cannot hold, and shows each", () => {
    const failed = { output_type: "error", ename: "Error", evalue: "no", traceback: [] };
    const html = { output_type: "display_data", data: { "text/html": "<b>x</b>" }, metadata: {} };
    const stderr = { output_type: "stream", name: "stderr", text: "careful" };
    const report = notebookToDocument(notebookOf([codeCell("x", [stderr, failed, html])]), META);
    expect(report.findings.map((finding) => finding.code)).toEqual([
      "cell-stderr",
      "cell-failed",
      "output-left-out",
    ]);
    expect(report.nodes.map((node) => node.kind)).toEqual(["code", "stream", "note", "note"]);
  });

  test("refuses what is no notebook, naming the place", () => {
    expect(() =>
      notebookToDocument({ nbformat: 4, cells: [{ cell_type: "other" }] }, META),
    ).toThrow("invalid `notebook.cells[0].cell_type`");
  });

  test("a block that was damaged becomes a finding, not a crash", () => {
    const bad = blockOutput({
      kind: "table",
      caption: "c",
      columns: [{ header: "a" }],
      rows: [["1", "2"]],
    });
    const report = notebookToDocument(notebookOf([codeCell("x", [bad])]), META);
    expect(report.findings[0]!.code).toBe("block-unreadable");
    expect(readBlock({ kind: "nothing" })).toBeUndefined();
    const stranger = { kind: "nothing" } as unknown as Parameters<typeof blockOutput>[0];
    const { findings } = notebookToDocument(
      notebookOf([codeCell("x", [blockOutput(stranger)])]),
      META,
    );
    expect(findings[0]!.code).toBe("block-unreadable");
  });

  test("raises a heading that skips a level and keeps ids apart", () => {
    const cell = markdownCell("# T\n\n## A\n\n##### Deep\n\n## A\n");
    const { nodes } = notebookToDocument(notebookOf([cell]), META);
    expect(nodes).toMatchObject([
      { level: 1, id: "s-a", number: "1" },
      { level: 2, id: "s-deep", number: "1.1" },
      { level: 1, id: "s-a--2", number: "2" },
    ]);
  });
});

describe("markdownToNodes", () => {
  test("takes raw HTML and pictures as words", () => {
    expect(markdownToNodes("<script>x</script>")).toEqual([
      { kind: "prose", inlines: [{ kind: "text", text: "<script>x</script>" }] },
    ]);
    expect(markdownToNodes("![alt](https://example.org/a.png)")).toEqual([
      {
        kind: "prose",
        inlines: [
          {
            kind: "link",
            address: "https://example.org/a.png",
            children: [{ kind: "text", text: "alt" }],
          },
        ],
      },
    ]);
  });

  test("shows `$$…$$` on one line as a displayed formula", () => {
    expect(markdownToNodes("before\n$$a^2$$\nafter").map((node) => node.kind)).toEqual([
      "prose",
      "mathBlock",
      "prose",
    ]);
    expect(markdownToNodes("so $a^2$ is").map((node) => node.kind)).toEqual(["prose"]);
  });
});

test("cleanSvg takes out all that could run or be fetched", () => {
  const svg =
    '<svg xmlns="http://www.w3.org/2000/svg" onload="x()"><script>1</script><style>@import url(//a)</style><foreignObject/>' +
    '<a href="https://a"><text>in a</text></a><clipPath id="k"><rect/></clipPath><g clip-path="url(#k)" style="fill:url(https://a)"><text onclick="y()">t</text></g>' +
    '<image href="https://a/b.png"/><use href="#k"/></svg>';
  const { svg: clean, removed } = cleanSvg(svg, "p-", "alt")!;
  expect(removed).toContain("script");
  expect(clean).not.toMatch(/script|style|foreign|https?:\/\/a|on(load|click)/i);
  expect(clean).toContain('clip-path="url(#p-k)"');
  expect(clean).toContain('href="#p-k"');
  expect(clean).toContain('id="p-k"');
  expect(clean).toContain('aria-label="alt"');
  expect(cleanSvg("<svg><g></svg>", "p-", "alt")).toBeUndefined();
  expect(cleanSvg("<html/>", "p-", "alt")).toBeUndefined();
  const deep = `<svg>${"<g>".repeat(100_000)}${"</g>".repeat(100_000)}</svg>`;
  expect(cleanSvg(deep, "p-", "alt")).toBeUndefined();
});

test("cleanSvg writes namespaces as a browser asks for them, and leaves out what programs note for themselves", () => {
  const svg =
    '<s:svg xmlns:s="http://www.w3.org/2000/svg" xmlns:l="http://www.w3.org/1999/xlink" xmlns:i="urn:i" i:version="1">' +
    '<s:title>a &lt; b</s:title><!-- c --><s:use l:href="#k"/><s:use l:href="https://a"/><s:g><![CDATA[x & y]]></s:g><i:view><s:g/></i:view></s:svg>';
  const { svg: clean, removed } = cleanSvg(svg, "p-", "alt")!;
  expect(clean).toBe(
    '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" role="img" aria-label="alt">' +
      '<title>a &lt; b</title><use xlink:href="#p-k"/><use/><g>x &amp; y</g></svg>',
  );
  expect([...removed]).toEqual(["l:href", "i:view"]);
  expect(cleanSvg("<svg><g/></svg>", "p-", "alt")!.svg).toContain(
    '<svg xmlns="http://www.w3.org/2000/svg"',
  );
});

test("numbers stand right, words left, and an empty cell decides nothing", () => {
  const sideOf = (cells: readonly string[], align?: Side) =>
    gridSides({ columns: [{ header: "", align }], rows: cells.map((cell) => [cell]) })[0];
  expect(sideOf(["1.2", "–", "< 3 %", "5–20 %"])).toBe("right");
  expect(sideOf(["1.2", "B 2"])).toBe("left");
  expect(sideOf(["", "–"])).toBe("left");
  expect(sideOf(["1"], "left")).toBe("left");
});

test("a date is written out, and a day that is none is refused", () => {
  expect(longDate("2024-02-29")).toBe("29 February 2024");
  expect(longDate("2026-05-18", "es")).toBe("18 de mayo de 2026");
  expect(() => longDate("2023-02-29")).toThrow(RangeError);
  expect(() => longDate("May 2")).toThrow("invalid `meta.date`: May 2");
});
