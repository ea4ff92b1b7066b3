import { JSDOM } from "jsdom";
import { describe, expect, it } from "vitest";
import { toBundle } from "../../src/notebook/mimeBundle.js";
import { toDataFrame } from "../../src/tables/toDataFrame.js";
import { say } from "../../src/words/message.js";
import { render } from "../../src/words/render.js";
import { BLOCKS, X } from "../blocks/hostileBlocks.js";

function occurrences(text: string, part: string): number {
  return text.split(part).length - 1;
}

describe("toBundle of report blocks", () => {
  it.each(Object.values(BLOCKS))("$kind: shows every text, and none as markup", async (block) => {
    const { data, metadata } = await toBundle(block);
    expect(metadata).toEqual({});
    expect(data["application/vnd.loambook.node+json"]).toEqual(block);
    const { document } = new JSDOM(`<body>${data["text/html"]}</body>`).window;
    expect(document.querySelectorAll("script, img")).toHaveLength(0);
    const texts = occurrences(JSON.stringify(block), JSON.stringify(X).slice(1, -1));
    expect(occurrences(document.body.textContent, X)).toBe(texts);
    expect(occurrences(data["text/plain"] as string, X)).toBe(texts);
  });

  it("writes a table that says what its headers head, and text in columns", async () => {
    const { data } = await toBundle({
      kind: "table",
      caption: "Passing",
      columns: [
        { header: "Sieve", unit: "mm" },
        { header: "Passing", unit: "%", align: "right" },
      ],
      rows: [
        ["2", "78"],
        ["0.063", "4.1"],
      ],
      notes: ["Washed."],
    });
    expect(data["text/plain"]).toBe(
      "Passing\n\nSieve, mm  Passing, %\n---------  ----------\n        2          78\n    0.063         4.1\nWashed.",
    );
    const { document } = new JSDOM(`<body>${data["text/html"]}</body>`).window;
    expect(document.querySelector("table > caption")?.textContent).toBe("Passing");
    expect(document.querySelectorAll('thead th[scope="col"]')).toHaveLength(2);
    expect(document.querySelectorAll('tbody th[scope="row"]')).toHaveLength(2);
    const cell = document.querySelector<HTMLElement>("tbody td");
    expect(cell?.style.textAlign).toBe("right");
  });

  it.each([
    [{ kind: "table", caption: "c", columns: [] }, "invalid `table.rows`: undefined"],
    [{ kind: "paragraph", text: 3 }, "invalid `paragraph.text`: 3; expected a text"],
    [
      { kind: "table", caption: "c", columns: [{ header: "h" }], rows: [["a", "b"]] },
      "2 cells; expected 1",
    ],
    [{ kind: "findings", findings: [{}] }, "invalid `findings.findings[0].severity`: undefined"],
    [{ kind: "note", tone: "loud", text: "x" }, 'invalid `note.tone`: "loud"; expected one of'],
    [{ kind: "figure", title: "t", altText: "", data: [], layout: {} }, "`figure.altText`"],
  ])("refuses %j", async (value, message) => {
    await expect(toBundle(value)).rejects.toThrow(message);
  });
});

describe("toBundle of a figure", () => {
  const figure = { kind: "figure", title: X, altText: `Alt ${X}`, data: [], layout: {} } as const;

  const svg =
    '<svg xmlns="http://www.w3.org/2000/svg" width="200" height="100"><rect width="9" height="9"/></svg>';

  it("holds each form once: data, drawing, picture and words, and no HTML to be cleaned", async () => {
    const { data, metadata } = await toBundle({ ...figure, svg });
    expect(Object.keys(data)).toEqual([
      "application/vnd.plotly.v1+json",
      "image/svg+xml",
      "image/png",
      "text/plain",
    ]);
    const words = { alt: figure.altText, caption: X };
    for (const mime of Object.keys(data)) expect(metadata[mime]).toMatchObject(words);
    expect(data["image/svg+xml"]).toBe(svg);
    expect(metadata["image/png"]).toEqual({ ...words, width: 200 });
    const png = Buffer.from(data["image/png"] as string, "base64");
    expect(png.subarray(1, 4).toString()).toBe("PNG");
    expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([300, 150]);
  });

  it("draws one that is not drawn, the same each time", { timeout: 60_000 }, async () => {
    const bars = { ...figure, data: [{ type: "bar", x: ["a"], y: [1] }] };
    const [first, second] = [await toBundle(bars), await toBundle(bars)];
    expect(first.data["image/svg+xml"]).toMatch(/^<svg [\s\S]*<\/svg>\s*$/);
    expect(first).toEqual(second);
  });

  it("says its messages in the language asked for, in the drawing and in the data", async () => {
    const said = {
      ...figure,
      title: say`Table`,
      altText: say`Figure`,
      data: [{ type: "bar", x: ["a"], y: [1], name: say`Warning` }],
    };
    const { data } = await toBundle(said, "es");
    expect(data["text/plain"]).toBe(`${render(say`Table`, "es")}\n${render(say`Figure`, "es")}`);
    expect(data["image/svg+xml"]).toContain(`<title`);
    expect(JSON.stringify(data)).toContain(render(say`Warning`, "es"));
    expect(JSON.stringify(data)).not.toContain('"values":');
  });
});

describe("toBundle of other values", () => {
  const NODE = "application/vnd.loambook.node+json";

  it("makes a table of flat objects, whose keys may differ", async () => {
    const rows = [{ a: 0.1 + 0.2, b: "x" }, { a: null, c: true }, { a: Number.NaN }];
    expect((await toBundle(rows)).data[NODE]).toEqual({
      kind: "table",
      caption: "3 rows, 3 columns",
      columns: [
        { header: "a", align: "right" },
        { header: "b", align: "left" },
        { header: "c", align: "left" },
      ],
      rows: [
        ["0.3", "x", "–"],
        ["–", "–", "true"],
        ["–", "–", "–"],
      ],
      notes: ["Numbers rounded to 6 significant digits."],
    });
  });

  it("says how many rows of a long table it leaves out", async () => {
    const rows = Array.from({ length: 51 }, (_, index) => ({ index }));
    const block = (await toBundle(rows)).data[NODE] as { rows: unknown[]; notes: string[] };
    expect(block.rows).toHaveLength(50);
    expect(block.notes).toEqual(["The first 50 of 51 rows."]);
  });

  it("makes a table of a danfo.js frame", { timeout: 60_000 }, async () => {
    const frame = await toDataFrame([
      { name: "soil", share: 62 },
      { name: "sand", share: 38 },
    ]);
    expect((await toBundle(frame)).data[NODE]).toMatchObject({
      columns: [{ header: "name" }, { header: "share", align: "right" }],
      rows: [
        ["soil", "62"],
        ["sand", "38"],
      ],
    });
    const named = { columns: ["n"], index: ["p", "q"], values: [[1], [2]] };
    expect((await toBundle(named)).data[NODE]).toMatchObject({
      columns: [{ header: "index" }, { header: "n" }],
      rows: [
        ["p", "1"],
        ["q", "2"],
      ],
    });
  });

  it.each([
    ["a text <b>", "a text <b>"],
    [undefined, "undefined"],
    [[], "[]"],
    [[1, 2], "[ 1, 2 ]"],
    [[{ a: { b: 1 } }], "[ { a: { b: 1 } } ]"],
    [{ kind: "unheard-of", a: 1 }, "{ kind: 'unheard-of', a: 1 }"],
  ])("shows %j as text", async (value, text) => {
    expect(await toBundle(value)).toEqual({ data: { "text/plain": text }, metadata: {} });
  });
});
