import { createRequire } from "node:module";
import { say } from "../../words/message.js";
import { type Locale, render } from "../../words/render.js";
import { type ExportTable, shownNumber } from "./exportTable.js";

type Library = typeof import("@e965/xlsx");
type Cell = import("@e965/xlsx").CellObject;

/** Text is stored as text and formatted as text (`@`): it stays text also when somebody edits it. */
const textCell = (text: string): Cell => ({ t: "s", v: text, z: "@" });

function numberCell(text: string, locale: Locale): Cell {
  const number = shownNumber(text, locale);
  if (!number) return textCell(text);
  const { value, decimals } = number;
  return { t: "n", v: value, z: decimals === 0 ? "0" : `0.${"0".repeat(decimals)}` };
}

/** A sheet's name is at most 31 characters, without some of them, and stands once. */
function sheetNames(tables: readonly ExportTable[]): string[] {
  const used = new Set<string>();
  return tables.map(({ number, caption }) => {
    const words = `${number === undefined ? "" : `${number} `}${caption}`
      .replace(/[[\]:*?/\\'\p{Cc}]/gu, " ")
      .replace(/\s+/g, " ")
      .trim();
    const short = (end: string) =>
      `${[...words]
        .slice(0, 31 - end.length)
        .join("")
        .trim()}${end}`;
    let name = short("");
    for (let again = 2; used.has(name.toLowerCase()) || name === ""; again++)
      name = short(` ${again}`);
    used.add(name.toLowerCase());
    return name;
  });
}

function rowsOf(table: ExportTable, locale: Locale): Cell[][] {
  const { caption, columns, rows, notes } = table;
  const written = [
    [textCell(caption)],
    [],
    columns.map(({ header }) => textCell(header)),
    ...rows.map((row) =>
      row.map((cell, at) => (columns[at]?.numeric ? numberCell(cell, locale) : textCell(cell))),
    ),
  ];
  if (notes.length > 0) written.push([], ...notes.map((note) => [textCell(note)]));
  return written;
}

/** Width of each column by its longest cell, within what a screen holds. */
function widths({ columns, rows }: ExportTable): { wch: number }[] {
  return columns.map(({ header }, at) => ({
    wch: Math.min(
      60,
      2 + rows.reduce((max, row) => Math.max(max, row[at]?.length ?? 0), header.length),
    ),
  }));
}

/**
 * All tables in one XLSX workbook: a sheet of contents, then one sheet a table with its caption, headers
 * with units, rows and notes. Numbers are numbers, with the decimals that the report prints; nothing is
 * a formula. The same tables give the same bytes.
 *
 * @param title of the study, for the workbook's properties.
 * @param locale that the tables are in
 */
export function workbook(
  tables: readonly ExportTable[],
  title: string,
  locale: Locale,
): Uint8Array {
  const xlsx = createRequire(import.meta.url)("@e965/xlsx") as Library;
  const book = xlsx.utils.book_new();
  book.Props = { Title: title };
  const contents: ExportTable = {
    caption: title,
    columns: [
      { header: render(say`number`, locale), numeric: true },
      { header: render(say`table`, locale), numeric: false },
      { header: render(say`sheet`, locale), numeric: false },
    ],
    rows: [],
    notes: [],
  };
  const names = sheetNames([{ ...contents, caption: render(say`Contents`, locale) }, ...tables]);
  const listed = tables.map(({ number, caption }, at) => [
    String(number ?? ""),
    caption,
    names[at + 1] as string,
  ]);
  for (const [at, table] of [{ ...contents, rows: listed }, ...tables].entries()) {
    const sheet = xlsx.utils.aoa_to_sheet(rowsOf(table, locale));
    sheet["!cols"] = widths(table);
    xlsx.utils.book_append_sheet(book, sheet, names[at]);
  }
  return new Uint8Array(
    xlsx.write(book, { type: "buffer", bookType: "xlsx", bookSST: true, compression: true }),
  );
}
