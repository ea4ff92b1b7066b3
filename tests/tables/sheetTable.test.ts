import { expect, it } from "vitest";
import { sheetTable } from "../../src/tables/inputs.js";
import { renderAll } from "../../src/words/render.js";

it("shows every filled cell under its spreadsheet column and row", () => {
  const wide = Array.from({ length: 28 }, (_, index) => (index === 27 ? "last" : ""));
  const table = renderAll(
    sheetTable({ file: "a.csv", rows: [["# a remark", ""], ["x", "1"], ["", ""], wide] }),
  );
  expect(table.columns.map(({ header }) => header).slice(0, 3)).toEqual(["row", "A", "B"]);
  expect(table.columns.at(-1)?.header).toBe("AB");
  expect(table.rows.map((row) => row[0])).toEqual(["2", "4"]);
  expect(table.notes).toEqual(["Row 1: # a remark"]);
  expect(table.rows[1].at(-1)).toBe("last");
  expect(table.rows.every((row) => row.length === table.columns.length)).toBe(true);
});
