import type { TableBlock, TableColumn } from "../tables/reportBlock.js";

const MAX_ROWS = 50;
const DIGITS = 6;

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function isFlat(value: unknown): boolean {
  return value === null || value instanceof Date || !["object", "function"].includes(typeof value);
}

function isMissing(value: unknown): boolean {
  return value === null || value === undefined || Number.isNaN(value);
}

function cellText(value: unknown): string {
  if (isMissing(value)) return "–";
  if (typeof value === "number") return String(Number(value.toPrecision(DIGITS)));
  return value instanceof Date ? value.toISOString() : String(value);
}

function block(headers: readonly string[], values: readonly (readonly unknown[])[]): TableBlock {
  const columns = headers.map((header, index): TableColumn => {
    const own = values.map((row) => row[index]).filter((value) => !isMissing(value));
    const numeric = own.length > 0 && own.every((value) => typeof value === "number");
    return { header, align: numeric ? "right" : "left" };
  });
  const shown = values.slice(0, MAX_ROWS);
  const rows = shown.map((row) => headers.map((_, index) => cellText(row[index])));
  const rounded = shown
    .flat()
    .some((value) => typeof value === "number" && Number(value.toPrecision(DIGITS)) !== value);
  const notes = [
    ...(shown.length < values.length
      ? [`The first ${shown.length} of ${values.length} rows.`]
      : []),
    ...(rounded && shown.flat().some(Number.isFinite)
      ? [`Numbers rounded to ${DIGITS} significant digits.`]
      : []),
  ];
  const count = (number: number, name: string) => `${number} ${name}${number === 1 ? "" : "s"}`;
  const caption = `${count(values.length, "row")}, ${count(headers.length, "column")}`;
  return { kind: "table", caption, columns, rows, notes };
}

/** A danfo.js frame by its shape, since the library must not be loaded to look at a value. */
function frame(value: Record<string, unknown>): TableBlock | undefined {
  const { columns, values, index } = value;
  if (!Array.isArray(columns) || !Array.isArray(values) || !Array.isArray(index)) return undefined;
  if (!values.every((row) => Array.isArray(row) && row.length === columns.length)) return undefined;
  const counted = index.every((label, place) => label === place);
  const headers = columns.map(String);
  return counted
    ? block(headers, values)
    : block(
        ["index", ...headers],
        values.map((row: unknown[], place) => [index[place], ...row]),
      );
}

/**
 * Makes a table of a danfo.js frame or of a list of flat objects; `undefined` of anything else.
 *
 * Columns are the keys in the order of their first appearance. Numbers are shown with six significant
 * digits and missing values as a dash; of more than 50 rows the first 50. What was left out is noted
 * below the table.
 */
export function asTable(value: unknown): TableBlock | undefined {
  if (isRecord(value)) return frame(value);
  if (!Array.isArray(value) || value.length === 0) return undefined;
  if (!value.every((row) => isRecord(row) && Object.values(row).every(isFlat))) return undefined;
  const headers = [...new Set(value.flatMap((row) => Object.keys(row)))];
  if (headers.length === 0) return undefined;
  return block(
    headers,
    value.map((row) => headers.map((header) => row[header])),
  );
}
