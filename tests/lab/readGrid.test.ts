import { CFB, utils, type WorkSheet, write } from "@e965/xlsx";
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
    const {
      findings: [finding],
    } = await readGrid("a.csv", bytes('a,b\n"1,2\n'));
    expect(finding).toMatchObject({ code: "not-a-csv", severity: "error" });
    expect(render(finding.message)).toMatch(/[Qq]uote/);
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

  const workbook = (sheets: Record<string, WorkSheet>, hidden: readonly boolean[] = []) => {
    const book = utils.book_new();
    for (const [name, sheet] of Object.entries(sheets)) utils.book_append_sheet(book, sheet, name);
    book.Workbook = { Sheets: hidden.map((each) => ({ Hidden: each ? 1 : 0 })) };
    return new Uint8Array(write(book, { type: "array", bookType: "xlsx" }));
  };
  const cells = (...rows: unknown[][]) => utils.aoa_to_sheet(rows);

  it("reads the first sheet that is in sight, and says that there are others", async () => {
    const bytes = workbook({ one: cells(["first"]), two: cells(["second"]), three: cells([]) }, [
      true,
    ]);
    const { grid, findings } = await readGrid("a.xlsx", bytes);
    expect(grid?.rows).toEqual([["second"]]);
    expect(findings).toMatchObject([{ severity: "note", code: "further-sheets", value: "one" }]);
    expect((await readGrid("a.xlsx", workbook({ one: cells(["first"]) }))).findings).toEqual([]);
  });

  it("says which rows are hidden, and reads them", async () => {
    const sheet = cells(["a", "b"], ["1", "2"], ["3", "4"]);
    sheet["!rows"] = [{}, { hidden: true }, {}];
    const { grid, findings } = await readGrid("a.xlsx", workbook({ sheet }));
    expect(grid?.rows).toHaveLength(3);
    expect(findings).toMatchObject([{ severity: "warning", code: "hidden-rows", row: 2 }]);
  });

  it("keeps rows where they stand, also beyond a dimension that is declared too small", async () => {
    const bytes = workbook({ sheet: cells([], [], ["a", "b"], ["1", "2"]) });
    const files = CFB.read(bytes, { type: "buffer" });
    const xml = CFB.find(files, "/xl/worksheets/sheet1.xml");
    const text = new TextDecoder().decode(new Uint8Array(xml?.content ?? []));
    const small = text.replace(/<dimension ref="[^"]*"/, '<dimension ref="A3:B3"');
    expect(small).not.toBe(text);
    CFB.utils.cfb_add(files, "/xl/worksheets/sheet1.xml", new TextEncoder().encode(small));
    const declared = CFB.write(files, { fileType: "zip", type: "buffer" }) as unknown as Uint8Array;
    expect(await rowsOf("a.xlsx", declared)).toEqual([
      ["", ""],
      ["", ""],
      ["a", "b"],
      ["1", "2"],
    ]);
  });

  it("reads percent as it shows, tells dates and errors from numbers", async () => {
    const sheet = cells(["moisture (%)", "sieve", "mass"], [0.07, 0, 0], [0.065, 0, 0]);
    sheet.A2.z = "0%";
    sheet.A3.z = "0.0%";
    sheet.B2 = { t: "n", v: 45355, z: "d-mmm" };
    sheet.C2 = { t: "e", v: 7 };
    const rows = await rowsOf("a.xlsx", workbook({ sheet }));
    expect(rows?.slice(1)).toEqual([
      ["7 %", "2024-03-04", "#DIV/0!"],
      ["6.5 %", "0", "0"],
    ]);
  });

  it("refuses a cell that stands far away at once", async () => {
    const sheet = cells(["a", "b"], ["1", "2"]);
    sheet.A5001 = { t: "n", v: 1 };
    sheet["!ref"] = "A1:B5001";
    const { findings } = await readGrid("a.xlsx", workbook({ sheet }));
    expect(findings.map(({ code }) => code)).toEqual(["not-a-workbook"]);
  });
});
