import { expect, test } from "vitest";
import { columnWidths } from "../../src/report/pdf/pdfData.js";

test("short columns share evenly, long ones by their text", () => {
  expect(
    columnWidths([
      ["A", "1"],
      ["B", "2"],
    ]),
  ).toEqual([1, 1]);
  expect(
    columnWidths([
      ["A", "1"],
      ["B", "x".repeat(40)],
      ["C", "y".repeat(400)],
    ]),
  ).toEqual([0, 40, 70]);
});

test("a long header over short cells breaks, and does not take the room of long cells", () => {
  const widths = columnWidths([
    ["Material", "Site soil from the road cut"],
    ["Densidad de partículas", "166.1"],
    ["Precio", "4"],
  ]);
  expect(widths).toEqual([27, 11, 0]);
});

test("on a sheet a blank column has room to write", () => {
  expect(
    columnWidths(
      [
        ["Fecha de la mezcla", ""],
        ["N", "1"],
      ],
      30,
    ),
  ).toEqual([30, 0]);
});

test("in a table of more columns than its line holds each has room for its longest word", () => {
  const sheet = ["block", "batch", "cement (%)", "length (mm)", "width (mm)", "height (mm)"];
  const columns = [
    ...[...sheet, "load (kN)", "dry density (kg/m3)"].map((head) => ["A", head, "100.0"]),
    ["J", "excluded", "corner broke off when the mould was opened"],
    ["K", "remark", "hairline along one layer"],
  ];
  const shares = columnWidths(columns);
  const measure = shares.reduce((sum, share) => sum + share, 0);
  for (const [index, cells] of columns.entries()) {
    const longest = Math.max(
      ...cells.flatMap((cell) => cell.split(" ")).map((word) => word.length),
    );
    expect((shares[index] / measure) * 110, cells[1]).toBeGreaterThan(longest);
  }
});
