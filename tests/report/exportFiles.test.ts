import { createRequire } from "node:module";
import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { figurePng } from "../../src/figures/svg/figurePng.js";
import { renderSvg } from "../../src/figures/svg/renderSvg.js";
import type { Finding } from "../../src/findings/finding.js";
import type { DocumentNode } from "../../src/report/document.js";
import { exportFiles } from "../../src/report/export/exportFiles.js";
import { harmlessText, shownNumber } from "../../src/report/export/exportTable.js";

const xlsx = createRequire(import.meta.url)("@e965/xlsx") as typeof import("@e965/xlsx");
const HOSTILE = ["=cmd|' /C calc'!A0", "+1+1", "-2+3", "@SUM(A1)", "\t=1", "\r=1", "＝1+1"];

const table = (number: number, rows: readonly (readonly string[])[]): DocumentNode => ({
  kind: "table",
  number,
  caption: "=Soíl/[A]: what it weighs, and a caption that is much too long for a sheet",
  columns: [
    { header: "=Name" },
    { header: "Mass", unit: "kg", align: "right" },
    { header: "Block" },
  ],
  rows,
  notes: ["+a note"],
});

const textOf = (file: string | Uint8Array | undefined) => {
  if (typeof file !== "string") throw new Error("expected a text");
  return file;
};

describe("numbers as a report prints them", () => {
  it.each([
    ["12.50", { value: 12.5, decimals: 2 }],
    ["−3", { value: -3, decimals: 0 }],
    ["0", { value: 0, decimals: 0 }],
  ])("reads %j", (text, number) => expect(shownNumber(text)).toEqual(number));

  it.each(["", "–", "≥ 12", "12 kg", "1.2.3", "12.", ".5", "12,5", "1e5", "12345678901234567"])(
    "leaves %j as text",
    (text) => expect(shownNumber(text)).toBeUndefined(),
  );

  it("reads the decimal sign of the language", () => {
    expect(shownNumber("−12,50", "es")).toEqual({ value: -12.5, decimals: 2 });
    expect(shownNumber("12.50", "es")).toBeUndefined();
    expect(shownNumber("12.50", "es-MX")).toEqual({ value: 12.5, decimals: 2 });
  });
});

describe("CSV", () => {
  it.each(HOSTILE)("puts an apostrophe before %j", (text) => {
    expect(harmlessText(text)).toBe(`'${text}`);
  });

  it.each(["-0.5", "+3", "5", "a=b", "–", "", "2026-05-18"])("leaves %j", (text) => {
    expect(harmlessText(text)).toBe(text);
  });

  it("keeps digits, writes a decimal point in every language, and no formula anywhere", () => {
    const rows = [...HOSTILE.map((text) => [text, "−1,50", "007"]), ['say "x", y', "≥ 2", "8"]];
    const files = exportFiles([table(7, rows)], "=title", "es");
    const name = Object.keys(files).find((file) => file.startsWith("table-07-")) as string;
    expect(name).toMatch(/^table-07-soil-a-what-it-weighs[a-z-]*\.csv$/);
    const read: string[][] = parse(textOf(files[name]));
    expect(read[0]).toEqual(["'=Name", "Mass (kg)", "Block"]);
    expect(read[1]).toEqual([`'${HOSTILE[0]}`, "-1.50", "007"]);
    expect(read.at(-1)).toEqual(['say "x", y', "≥ 2", "8"]);
    const contents: string[][] = parse(textOf(files["contents.csv"]));
    for (const cell of [...read, ...contents].flat()) {
      if (!/^-\d/.test(cell)) expect(cell).not.toMatch(/^[=+\-@\t\r]/);
    }
    expect(contents[1]).toEqual([name, expect.stringMatching(/^'=Soíl/), "'+a note"]);
  });
});

describe("the workbook", () => {
  const rows = [...HOSTILE.map((text) => [text, "−1.50", "007"]), ["plain", "≥ 2", "8"]];
  const nodes = [table(1, rows), table(2, rows), table(12, rows)];

  it("holds text as text, numbers as numbers with their decimals, and no formula", () => {
    const bytes = exportFiles(nodes, "=title")["tables.xlsx"];
    const book = xlsx.read(bytes, { type: "buffer", cellNF: true, cellFormula: true });
    expect(book.SheetNames).toHaveLength(4);
    expect(new Set(book.SheetNames.map((name) => name.toLowerCase())).size).toBe(4);
    for (const name of book.SheetNames) {
      expect(name.length).toBeLessThanOrEqual(31);
      expect(name).not.toMatch(/[[\]:*?/\\]/);
      for (const [place, cell] of Object.entries(book.Sheets[name])) {
        if (place.startsWith("!")) continue;
        expect(cell.f).toBeUndefined();
        if (cell.t === "s") expect(cell.z).toBe("@");
      }
    }
    const sheet = book.Sheets[book.SheetNames[1]];
    expect(sheet.A4).toMatchObject({ t: "s", v: HOSTILE[0] });
    expect(sheet.B3).toMatchObject({ t: "s", v: "Mass (kg)" });
    expect(sheet.B4).toMatchObject({ t: "n", v: -1.5, z: "0.00" });
    expect(sheet.C4).toMatchObject({ t: "s", v: "007" });
    expect(sheet.B11).toMatchObject({ t: "s", v: "≥ 2" });
  });

  it("is the same for the same tables", () => {
    const [one, two] = [1, 2].map(() => exportFiles(nodes, "t")["tables.xlsx"]);
    expect(Buffer.from(one as Uint8Array).equals(Buffer.from(two as Uint8Array))).toBe(true);
  });
});

describe("figures", () => {
  it("become SVG and PNG of twice the size, with the text drawn", async () => {
    const drawn = (title: string) =>
      renderSvg(
        {
          data: [{ type: "bar", x: ["a"], y: [1] }],
          layout: { xaxis: { title: { text: title } } },
          title: "One",
          altText: "One bar",
        },
        { widthPx: 300, heightPx: 200 },
      );
    const svg = await drawn("Passing (% of dry mass)");
    const node = { kind: "figure", number: 3, svg, alt: "One bar", caption: "One" } as const;
    const files = exportFiles([node], "t");
    expect(textOf(files["figure-03-one.svg"])).toMatch(/^<\?xml[^>]*\?>\n<svg/);
    const png = Buffer.from(files["figure-03-one.png"] as Uint8Array);
    expect(png.subarray(1, 4).toString()).toBe("PNG");
    expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([600, 400]);
    // A picture without its letters would be the same for every title.
    expect(Buffer.from(figurePng(await drawn(" "))).equals(png)).toBe(false);
    expect(Buffer.from(figurePng(svg)).equals(png)).toBe(true);
    expect(textOf(files["contents.csv"])).toContain("figure-03-one.png,One,One bar");
  });

  it("refuses what is no SVG", () => expect(() => figurePng("<p>")).toThrow());
});

it("lists findings, cautions and references, and gives two of one name two files", () => {
  const finding: Finding = {
    severity: "warning",
    code: "x",
    file: "a.csv",
    row: 3,
    value: "=9",
    message: "m",
    expected: "e",
    remedy: "w",
  };
  const findings: DocumentNode = { kind: "findings", findings: [finding] };
  const files = exportFiles([findings, findings, { kind: "cautions", items: [] }], "t");
  expect(Object.keys(files).sort()).toEqual([
    "contents.csv",
    "list-findings-of-the-checks-2.csv",
    "list-findings-of-the-checks.csv",
    "tables.xlsx",
  ]);
  const read: string[][] = parse(textOf(files["list-findings-of-the-checks.csv"]));
  expect(read[1]).toEqual(["warning", "x", "a.csv", "3", "", "'=9", "m", "e", "w"]);
});
