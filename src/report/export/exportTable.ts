import type { BlockRows } from "../../blocks/kinds.js";
import { isBlock, rowsOf } from "../../blocks/kinds.js";
import { type Locale, renderAll, type Said, withDecimalSign } from "../../words/render.js";
import type { DocumentNode } from "../document.js";

/** A table of the report, or one of its lists, as plain rows in one language. */
export interface ExportTable extends Said<BlockRows> {
  /** Of the report's numbering; lists have none. */
  readonly number?: number;
}

/** Every table and list of a report, in its order and with its numbers. */
export function exportTables(nodes: readonly DocumentNode[], locale: Locale): ExportTable[] {
  return nodes.flatMap((node) => {
    if (!isBlock(node)) return [];
    const rows = rowsOf(node);
    if (rows === undefined || rows.rows.length === 0) return [];
    return [{ ...renderAll(rows, locale), number: node.number }];
  });
}

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
export function tableCsv({ columns, rows }: ExportTable, locale: Locale): string {
  const header = csvRow(columns.map((column) => column.header));
  const body = rows.map((row) =>
    csvRow(
      row.map((cell, at) => {
        const number = columns[at]?.numeric ? shownNumber(cell, locale) : undefined;
        return number ? number.value.toFixed(number.decimals) : cell;
      }),
    ),
  );
  return header + body.join("");
}

/** A number as a report prints it. */
export interface ShownNumber {
  readonly value: number;
  /** How many decimals are printed. */
  readonly decimals: number;
}

/**
 * Reads a number as a report prints it; none where the text is anything else, also where it has more
 * digits than a number of the machine keeps.
 *
 * @param locale that the report is in; default `en`
 *
 * @example
 * shownNumber("−0.50") // => { value: -0.5, decimals: 2 }
 * shownNumber("−0,50", "es") // => { value: -0.5, decimals: 2 }
 * shownNumber("≥ 12") // => undefined
 */
export function shownNumber(text: string, locale: Locale = "en"): ShownNumber | undefined {
  const [whole = "", fraction, more] = text.replace("−", "-").split(withDecimalSign(".", locale));
  const known = /^-?\d{1,15}$/.test(whole) && (fraction === undefined || /^\d+$/.test(fraction));
  if (!known || more !== undefined || text.length > 16) return undefined;
  return { value: Number(`${whole}.${fraction ?? "0"}`), decimals: fraction?.length ?? 0 };
}
