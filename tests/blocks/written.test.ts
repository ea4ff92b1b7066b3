import { describe, expect, it } from "vitest";
import type { ReportBlock } from "../../src/blocks/block.js";
import { isNumbered, partsOf, rowsOf } from "../../src/blocks/kinds.js";
import { blockHtml } from "../../src/blocks/partHtml.js";
import { blockText } from "../../src/blocks/partText.js";
import { finding } from "../../src/findings/finding.js";
import { say } from "../../src/words/message.js";
import { renderAll } from "../../src/words/render.js";

const table: ReportBlock = {
  kind: "table",
  caption: "Sieves",
  columns: [
    { header: "sieve", unit: "mm" },
    { header: "passing", unit: "%" },
    { header: "remark" },
  ],
  rows: [
    ["2", { number: "60.5" }, "washed & dried"],
    ["0.063", { number: "8.25" }, ""],
  ],
  rowKeys: ["coarse", "fine"],
  links: [{ row: 1, column: 2, to: "annex" }],
  notes: ["By mass."],
};
const places = {
  annex: { id: "annex-a", label: "Annex A" },
  coarse: { id: "row-coarse", label: "Table 3" },
};
const found = finding(
  { file: "s.csv", row: 4, column: "retained (g)", value: "x" },
  "error",
  "bad",
  {
    message: say`It is no number.`,
    expected: say`a number`,
    remedy: say`Write one`,
  },
);

/** The classes of the first cell of a table with this text. */
const classOf = (text: string) => {
  const one: ReportBlock = {
    kind: "table",
    caption: "",
    columns: [{ header: "a" }],
    rows: [[text]],
  };
  return (
    /<tbody>\n<tr><th scope="row"( class="[^"]*")?/.exec(blockHtml(one, "page", "en"))![1] ?? ""
  );
};

describe("a table", () => {
  it("on a page has its number, ids, links and units, digits to the right", () => {
    expect(blockHtml({ ...table, number: 3, places }, "page", "en")).toBe(
      '<div class="scroll short" role="region" tabindex="0" aria-label="Table 3">' +
        '<table id="table-3"><caption><span><span class="label">Table 3</span> Sieves</span></caption>\n' +
        '<thead><tr><th scope="col" class="right">sieve <span class="unit">mm</span></th>' +
        '<th scope="col" class="right">passing <span class="unit">%</span></th>' +
        '<th scope="col">remark</th></tr></thead>\n<tbody>\n' +
        '<tr id="row-coarse"><th scope="row" class="right">2</th><td class="right">60.5</td>' +
        "<td>washed &amp; dried</td></tr>\n" +
        '<tr><th scope="row" class="right">0.063</th><td class="right">8.25</td>' +
        '<td><a href="#annex-a">Annex A</a></td></tr>\n' +
        '</tbody></table></div>\n<ul class="table-notes"><li>By mass.</li></ul>',
    );
  });

  it("in a cell has no class, id or link", () => {
    const html = blockHtml({ ...table, number: 3, places }, "cell", "es");
    expect(html).toContain('<th scope="col" style="text-align:right">passing, %</th>');
    expect(html).toContain('<td style="text-align:right">60,5</td>');
    expect(html).toContain('<td style="text-align:left">Annex A</td>');
    expect(html).toContain("</table>\n<p><small>By mass.</small></p>");
    expect(html).not.toMatch(/class=| id=|<a /);
  });

  it("as text stands in columns under a rule", () => {
    expect(blockText(table, "en").split("\n")).toEqual([
      "Sieves",
      "",
      "sieve, mm  passing, %  remark",
      "---------  ----------  --------------",
      "        2        60.5  washed & dried",
      "    0.063        8.25",
      "By mass.",
    ]);
  });

  it("as rows has its units in the header", () => {
    expect(renderAll(rowsOf(table)!)).toEqual({
      caption: "Sieves",
      columns: [
        { header: "sieve (mm)", numeric: false },
        { header: "passing (%)", numeric: false },
        { header: "remark", numeric: false },
      ],
      rows: [
        ["2", "60.5", "washed & dried"],
        ["0.063", "8.25", ""],
      ],
      notes: ["By mass."],
    });
  });

  it("lets a text of more than 40 letters run, and breaks where it breaks", () => {
    expect(classOf("a".repeat(40))).toBe("");
    expect(classOf("a".repeat(41))).toBe(' class="long"');
    expect(classOf("a\nb")).toBe(' class="lines"');
  });

  it("is kept on one page of paper up to 14 rows", () => {
    const rows = (count: number) =>
      blockHtml(
        { ...table, rows: Array.from({ length: count }, () => ["1", "2", "3"]) },
        "page",
        "en",
      );
    expect(rows(14)).toContain('class="scroll short"');
    expect(rows(15)).toContain('class="scroll"');
    expect(rows(14)).toContain('aria-label="Sieves"');
    expect(blockHtml({ ...table, caption: "" }, "page", "en")).toContain('aria-label="Table"');
  });
});

describe("findings", () => {
  const block: ReportBlock = { kind: "findings", findings: [found] };

  it("say their place, what was expected and what to do", () => {
    expect(blockText(block, "en")).toBe(
      "Error: It is no number.\n  s.csv, row 4, retained (g), “x”. Expected: a number. What to do: Write one.",
    );
    expect(blockHtml(block, "page", "en")).toBe(
      '<ul class="findings">\n<li class="error"><p><strong class="tag">Error</strong> It is no number.</p>\n' +
        '<p class="detail">s.csv, row 4, retained (g), “x”. Expected: a number. What to do: Write one.</p></li>\n</ul>',
    );
    expect(blockText({ kind: "findings", findings: [] }, "en")).toBe("No findings.");
  });

  it("are rows, empty where a place is not known", () => {
    const bare = finding({ file: "s.csv" }, "note", "done", found);
    const { columns, rows } = renderAll(rowsOf({ kind: "findings", findings: [found, bare] })!);
    expect(columns.map(({ header }) => header)).toEqual(
      "severity,code,file,row,column,value,finding,expected,remedy".split(","),
    );
    expect(rows).toEqual([
      [
        "error",
        "bad",
        "s.csv",
        "4",
        "retained (g)",
        "x",
        "It is no number.",
        "a number",
        "Write one",
      ],
      ["note", "done", "s.csv", "", "", "", "It is no number.", "a number", "Write one"],
    ]);
  });
});

describe("a checklist", () => {
  const items = [
    {
      clause: "4.1",
      requirement: "strength",
      remark: "",
      sectionKey: "mix",
      sectionTitle: "The mix",
    },
    { clause: "4.2", requirement: "frost", remark: "later" },
    { clause: "4.3", requirement: "wind", remark: "", sectionKey: "load" },
  ];
  const block: ReportBlock = { kind: "checklist", caption: "Clauses", items };

  it("leads to the sections of its report, and says which is missing", () => {
    const answers = (placed: object) =>
      renderAll(partsOf({ ...block, ...placed }, "en")).flatMap((part) =>
        part.part === "grid" ? part.rows.map((row) => row[2]) : [],
      );
    expect(answers({})).toEqual(["The mix", "open", "load"]);
    const section = { id: "s-mix", number: "3", title: "Mix" };
    expect(answers({ sections: [section, null, null] })).toEqual([
      { text: "3 Mix", to: "s-mix" },
      { text: "open", strong: true },
      { text: "load: not in this report", strong: true },
    ]);
  });

  it("as rows names the section", () => {
    const { columns, rows } = renderAll(rowsOf(block)!);
    expect(columns.map(({ header }) => header)).toEqual([
      "clause",
      "requirement",
      "section",
      "remark",
    ]);
    expect(rows).toEqual([
      ["4.1", "strength", "The mix", ""],
      ["4.2", "frost", "", "later"],
      ["4.3", "wind", "load", ""],
    ]);
  });
});

it("a paragraph cites before its full stop", () => {
  const block: ReportBlock = { kind: "paragraph", text: "See there.", cites: ["annex", "none"] };
  expect(blockHtml({ ...block, places }, "page", "en")).toBe(
    '<p>See there (<a href="#annex-a">Annex A</a>).</p>',
  );
  expect(blockHtml({ ...block, places }, "cell", "en")).toBe("<p>See there.</p>");
});

it("tables, pairs and checklists are numbered, and nothing else", () => {
  const kinds = ["table", "keyValues", "checklist", "findings", "note", "figure"];
  expect(kinds.filter(isNumbered)).toEqual(["table", "keyValues", "checklist"]);
});
