import type {
  CautionsBlock,
  ChecklistBlock,
  FindingsBlock,
  ReferencesBlock,
} from "../../blocks/block.js";
import { say } from "../../words/message.js";
import { localNumber } from "../../words/render.js";
import type { DocumentNode, NumberedBlock } from "../document.js";

/** A column as another program gets it: the unit stands in the header. */
interface ExportColumn {
  readonly header: string;
  /** Whether its cells may be numbers; identifiers made of digits must stay text. */
  readonly numeric: boolean;
}

/** A table of the report, or one of its lists, as plain rows. */
export interface ExportTable {
  /** Of the report's numbering; lists have none. */
  readonly number?: number;
  readonly caption: string;
  readonly columns: readonly ExportColumn[];
  readonly rows: readonly (readonly string[])[];
  readonly notes: readonly string[];
}

type Listed = NumberedBlock | ChecklistBlock | FindingsBlock | CautionsBlock | ReferencesBlock;

const texts = (...headers: readonly string[]): ExportColumn[] =>
  headers.map((header) => ({ header, numeric: false }));

function rowsOf(block: Listed): ExportTable {
  switch (block.kind) {
    case "table":
      return {
        number: block.number,
        caption: block.caption,
        columns: block.columns.map(({ header, unit, align }) => ({
          header: unit === undefined ? header : `${header} (${unit})`,
          numeric: align === "right",
        })),
        rows: block.rows,
        notes: block.notes ?? [],
      };
    case "keyValues":
      return {
        number: block.number,
        caption: block.caption,
        columns: texts(say`entry`, say`value`),
        rows: block.items.map(({ label, value }) => [label, value]),
        notes: [],
      };
    case "findings":
      return {
        caption: say`Findings of the checks`,
        columns: texts(
          ...[say`severity`, say`code`, say`file`, say`row`, say`column`, say`value`],
          ...[say`finding`, say`expected`, say`remedy`],
        ),
        rows: block.findings.map((found) => [
          ...[found.severity, found.code, found.file, String(found.row ?? "")],
          ...[found.column ?? "", found.value ?? ""],
          ...[found.message, found.expected, found.remedy],
        ]),
        notes: [],
      };
    case "checklist":
      return {
        caption: block.caption,
        columns: texts(say`clause`, say`requirement`, say`section`, say`remark`),
        rows: block.items.map(({ clause, requirement, sectionTitle, sectionKey, remark }) => [
          ...[clause, requirement, sectionTitle ?? sectionKey ?? "", remark],
        ]),
        notes: [],
      };
    case "cautions":
      return {
        caption: say`Cautions`,
        columns: texts(say`caution`, say`text`, say`source`),
        rows: block.items.map(({ title, text, source }) => [title, text, source]),
        notes: [],
      };
    case "references":
      return {
        caption: say`References`,
        columns: texts(say`source`, say`mark`),
        rows: block.items.map(({ text, mark }) => [text, mark]),
        notes: [],
      };
  }
}

const KINDS = new Set<DocumentNode["kind"]>([
  ...(["table", "keyValues", "checklist", "findings", "cautions", "references"] as const),
]);

/** Every table and list of a report, in its order and with its numbers. */
export function exportTables(nodes: readonly DocumentNode[]): ExportTable[] {
  return nodes
    .filter((node): node is Listed & DocumentNode => KINDS.has(node.kind))
    .map(rowsOf)
    .filter(({ rows }) => rows.length > 0);
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

/** A number as a report prints it. */
export interface ShownNumber {
  readonly value: number;
  /** How many decimals are printed. */
  readonly decimals: number;
}

/**
 * Reads a number as a report prints it, in the language that words are said in now; none where the
 * text is anything else, also where it has more digits than a number of the machine keeps.
 *
 * @example
 * shownNumber("−0.50") // => { value: -0.5, decimals: 2 }
 * shownNumber("≥ 12") // => undefined
 */
export function shownNumber(text: string): ShownNumber | undefined {
  const [whole, fraction, more] = text.replace("−", "-").split(localNumber("."));
  const known = /^-?\d{1,15}$/.test(whole) && (fraction === undefined || /^\d+$/.test(fraction));
  if (!known || more !== undefined || text.length > 16) return undefined;
  return { value: Number(`${whole}.${fraction ?? "0"}`), decimals: fraction?.length ?? 0 };
}
