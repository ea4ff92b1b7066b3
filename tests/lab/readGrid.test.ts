import { utils, write } from "@e965/xlsx";
import { describe, expect, it } from "vitest";
import { readGrid } from "../../src/lab/sheet/grid.js";
import { render } from "../../src/words/render.js";

const bytes = (text: string) => new TextEncoder().encode(text);
const rowsOf = async (file: string, content: Uint8Array) =>
  (await readGrid(file, content)).grid?.rows;

describe("CSV", () => {
  const expected = [
    ["dry mass (g)", "800"],
    ["", ""],
    ["sieve (mm)", "retained (g)"],
    ["2", "12.5"],
  ];

  it.each([
    ["commas", "dry mass (g),800\n,\nsieve (mm),retained (g)\n2,12.5\n"],
    ["semicolons", "dry mass (g);800\n;\nsieve (mm);retained (g)\n2;12.5\n"],
    ["tabs", "dry mass (g)\t800\n\t\nsieve (mm)\tretained (g)\n2\t12.5\n"],
    [
      "a byte order mark and CRLF",
      "\ufeffdry mass (g),800\r\n,\r\nsieve (mm),retained (g)\r\n2,12.5\r\n",
    ],
    ["quotes and spaces", '"dry mass (g)", 800\n,\n"sieve (mm)","retained (g)"\n 2 , 12.5\n'],
  ])("with %s", async (_, text) => {
    expect(await rowsOf("a.csv", bytes(text))).toEqual(expected);
  });

  it("keeps blank rows, so that row numbers are those of the sheet", async () => {
    expect(await rowsOf("a.csv", bytes("a,b\n\n\n1,2\n"))).toEqual([
      ["a", "b"],
      [""],
      [""],
      ["1", "2"],
    ]);
  });

  it("takes a semicolon in a remark for what it is", async () => {
    expect(
      await rowsOf("a.csv", bytes("# x; y\nmethod,three layers; 25 blows\na,b\n1,2\n")),
    ).toEqual([["# x; y"], ["method", "three layers; 25 blows"], ["a", "b"], ["1", "2"]]);
  });

  it("says which quote never closes", async () => {
    const { finding } = await readGrid("a.csv", bytes('a,b\n"1,2\n'));
    expect(finding).toMatchObject({ code: "not-a-csv", severity: "error" });
    expect(render(finding?.message ?? "")).toMatch(/[Qq]uote/);
  });
});

describe("XLSX", () => {
  it("gives numbers at full precision, not as displayed, and texts as they stand", async () => {
    const sheet = utils.aoa_to_sheet([
      ["strength (MPa)", "remark"],
      [1 / 3, " = SUM(A1) "],
      [null, "gap"],
    ]);
    sheet.A2.z = "0.0";
    const book = utils.book_new();
    utils.book_append_sheet(book, sheet, "blocks");
    const rows = await rowsOf(
      "a.xlsx",
      new Uint8Array(write(book, { type: "array", bookType: "xlsx" })),
    );
    expect(rows).toEqual([
      ["strength (MPa)", "remark"],
      [String(1 / 3), "= SUM(A1)"],
      ["", "gap"],
    ]);
  });

  it("reads the first sheet only", async () => {
    const book = utils.book_new();
    utils.book_append_sheet(book, utils.aoa_to_sheet([["first"]]), "one");
    utils.book_append_sheet(book, utils.aoa_to_sheet([["second"]]), "two");
    const rows = await rowsOf(
      "a.xlsx",
      new Uint8Array(write(book, { type: "array", bookType: "xlsx" })),
    );
    expect(rows).toEqual([["first"]]);
  });
});
