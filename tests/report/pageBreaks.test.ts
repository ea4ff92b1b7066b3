import { expect, it } from "vitest";
import type { DocumentNode } from "../../src/report/document.js";
import { renderPdf } from "../../src/report/pdf/renderPdf.js";
import { readPdf } from "./readPdf.js";
import { META } from "./sampleNotebook.js";

const ROWS = Array.from({ length: 14 }, (_, at) => `row${String(at + 1).padStart(2, "0")}`);

const words = (text: string): DocumentNode => ({
  kind: "prose",
  inlines: [{ kind: "text", text }],
});

/** A report whose table begins the lower the more lines stand before it. */
const reportOf = (lines: number): readonly DocumentNode[] => [
  { kind: "contents" },
  ...Array.from({ length: lines }, (_, at) => words(`Line ${at}.`)),
  {
    kind: "heading",
    level: 1,
    id: "strength",
    number: "8",
    inlines: [{ kind: "text", text: "Wholestrength" }],
  },
  {
    kind: "paragraph",
    text: "Leadsentence.",
    cites: ["blocks"],
    places: { blocks: { id: "table-1", label: "Table 1" } },
  },
  {
    kind: "table",
    key: "blocks",
    number: 1,
    caption: "Captionwords",
    columns: [{ header: "Headword" }, { header: "Remark" }],
    rows: ROWS.map((row) => [row, "A remark that is long enough to part the table. ".repeat(2)]),
  },
];

it("part a table so that neither its head, nor its first row, nor its last row stands alone", async () => {
  const parted = new Set<number>();
  for (let lines = 4; lines <= 34; lines += 1) {
    const nodes = reportOf(lines);
    const { pdf } = await renderPdf({ meta: META, nodes, annex: [], findings: [] });
    const { pages } = await readPdf(pdf);
    const held = pages
      .map((page) => ROWS.filter((row) => page.includes(row)))
      .map((rows, page) => ({ rows, page }))
      .filter(({ rows }) => rows.length > 0);
    expect(held.flatMap(({ rows }) => rows)).toEqual(ROWS);
    for (const { rows } of held) expect(rows.length, `${lines} lines`).toBeGreaterThan(1);
    const [{ rows, page: first }] = held;
    if (held.length > 1) parted.add(rows.length);
    for (const word of ["Wholestrength", "Leadsentence", "Captionwords"]) {
      const at = pages.findIndex((page, number) => number > 0 && page.includes(word));
      expect(Math.max(at, 0), `${word} after ${lines} lines`).toBe(first);
    }
    for (const [at, page] of pages.entries()) {
      const rowsHere = held.some((one) => one.page === at);
      expect(page.includes("Headword"), `head on page ${at + 1}, ${lines} lines`).toBe(rowsHere);
    }
  }
  // the places of the break were really tried
  expect(parted.size).toBeGreaterThan(5);
}, 120_000);
