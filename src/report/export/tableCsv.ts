import type { ExportTable } from "./exportTable.js";
import { shownNumber } from "./shownNumber.js";

/** What a spreadsheet takes as the start of a formula; the wide forms count in some languages. */
const FORMULA = /^[=+\-@\t\r\n＝＋－＠]/;
const NUMBER = /^[+-]?\d+(\.\d+)?$/;

/**
 * Makes a text harmless to a spreadsheet that opens a CSV file: an apostrophe goes before what it would
 * take for a formula. A plain number stays as it is.
 *
 * Source: OWASP, “CSV Injection” (from memory).
 *
 * @example
 * harmlessText("=1+1") // => "'=1+1"
 * harmlessText("-0.5") // => "-0.5"
 */
export function harmlessText(text: string): string {
  return FORMULA.test(text) && !NUMBER.test(text) ? `'${text}` : text;
}

/**
 * A row of CSV.
 *
 * Source: RFC 4180 (from memory), with line feeds alone.
 */
export function csvRow(cells: readonly string[]): string {
  const quoted = cells.map((cell) => {
    const text = harmlessText(cell);
    return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  });
  return `${quoted.join(",")}\n`;
}

/**
 * A table as CSV: one row of headers with units, then the rows with the digits that the report shows.
 * Numbers have a decimal point and an ASCII minus sign whatever the language, because a file for
 * programs must not change its form with it.
 */
export function tableCsv({ columns, rows }: ExportTable): string {
  const header = csvRow(columns.map((column) => column.header));
  const body = rows.map((row) =>
    csvRow(
      row.map((cell, at) => {
        const number = columns[at]?.numeric ? shownNumber(cell) : undefined;
        return number ? number.value.toFixed(number.decimals) : cell;
      }),
    ),
  );
  return header + body.join("");
}
