import type { TableBlock } from "../blocks/block.js";
import type { SheetGrid, SheetMapping } from "../lab/sheet/grid.js";
import type { InputFile } from "../study/study.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { numberColumn } from "./cell.js";
import { present, tableOf } from "./tableOf.js";

/** The files that the numbers come from, each with the checksum of its bytes. */
export function inputsTable(inputs: readonly InputFile[]): TableBlock {
  return tableOf(say`Input files and their checksums`, inputs, [
    [say`File`, ({ file }) => file],
    [say`SHA-256`, ({ sha256 }) => sha256],
  ]);
}

/** A lab sheet as it was read, cell by cell, for the annex. Rows are numbered as a spreadsheet does. */
export function sheetTable(sheet: SheetGrid): TableBlock {
  // A remark stands in one cell and would make its column as wide as the page.
  const isRemark = (row: readonly string[]) => (row[0] ?? "").startsWith("#");
  const width = Math.max(...sheet.rows.map((row) => (isRemark(row) ? 0 : lastFilled(row))));
  const columns = Array.from({ length: width }, (_, index) => ({ header: columnName(index) }));
  return {
    kind: "table",
    caption: say`Readings as given: ${sheet.file}`,
    columns: [numberColumn(say`row`), ...columns],
    rows: sheet.rows.flatMap((row, index) =>
      lastFilled(row) === 0 || isRemark(row)
        ? []
        : [[String(index + 1), ...columns.map((_, at) => row[at] ?? "")]],
    ),
    notes: [
      ...sheet.rows.flatMap((row, index) =>
        isRemark(row)
          ? [say`Row ${index + 1}: ${row.filter((cell) => cell !== "").join(" ")}`]
          : [],
      ),
      ...(sheet.readAs ?? []).flatMap(mappingNotes),
    ],
  };
}

function lastFilled(row: readonly string[]): number {
  return row.reduce((last, cell, index) => (cell === "" ? last : index + 1), 0);
}

function columnName(index: number): string {
  return index < 26
    ? String.fromCharCode(65 + index)
    : columnName(Math.floor(index / 26) - 1) + columnName(index % 26);
}

/** How a sheet of the user's own layout was read. */
function mappingNotes(mapping: SheetMapping): Text[] {
  const { columns, lines, cells, facts, skipRows, decimalComma } = mapping;
  const renamed = Object.entries({ ...lines, ...columns, ...cells });
  const given = Object.entries(facts);
  return present([
    renamed.length > 0 &&
      say`Read as: ${joinTexts(
        renamed.map(([own, ours]) => say`“${own}” as “${ours}”`),
        "; ",
      )}.`,
    given.length > 0 &&
      say`Given in study.yaml: ${given.map(([name, value]) => `${name} ${value}`).join("; ")}.`,
    skipRows > 0 && say`Rows 1 to ${skipRows} were not read.`,
    decimalComma && say`Its numbers have decimal commas.`,
  ]);
}
