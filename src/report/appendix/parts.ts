import type { ParagraphBlock, ReportBlock, TableBlock, TableLink } from "../../blocks/block.js";
import { type Figure, figureInReport } from "../../figures/figure.js";
import type { SheetSource } from "../../lab/sheet/grid.js";
import { say, type Text } from "../../words/message.js";
import { render } from "../../words/render.js";

/** What a section of the appendix holds, in the order of reading. */
export type AppendixPart = ReportBlock | Figure;

/** Where the rows of a table lead, and what leads to them. */
interface RowPlaces {
  readonly links?: readonly TableLink[];
  readonly rowKeys?: readonly string[];
}

/** A table as other parts cite it; a note that stands in its place stays what it is. */
export function keyed<Block extends ReportBlock>(
  key: string,
  block: Block,
  places: RowPlaces = {},
): Block {
  if (block.kind === "keyValues" || block.kind === "checklist") return { ...block, key };
  return block.kind === "table" ? { ...block, key, ...places } : block;
}

/** A figure as the report places it; a note that stands in its place stays what it is. */
export function inReport(
  figure: AppendixPart,
  key: string,
  size: "full" | "low" | "half" | "own",
): AppendixPart {
  return figure.kind === "figure" ? figureInReport(figure, key, size) : figure;
}

/** A sentence that names the tables and figures behind it, and these: those that hold nothing are left out. */
export function cited(
  text: Text,
  parts: readonly (AppendixPart | false | undefined)[],
): AppendixPart[] {
  const shown = parts.filter((part): part is AppendixPart => !!part && !isEmpty(part));
  if (shown.length === 0) return [];
  return [
    paragraph(text, shown.flatMap(keyOf)),
    ...shown.map((part) => (part.kind === "table" ? withoutEmptyColumns(part) : part)),
  ];
}

/** A sentence that names the tables, figures and sections of these keys. */
export function paragraph(text: Text, cites: readonly string[] = []): ParagraphBlock {
  return { kind: "paragraph", text, cites };
}

/** Characters that a line of a table holds, with two between columns. */
const LINE = 92;

/**
 * A sheet's table with as many columns as a page has room for without parting a word; the others follow in
 * tables that begin with the first column again. Notes stand below the last.
 */
export function acrossThePage(table: TableBlock): TableBlock[] {
  const { columns, rows, notes } = table;
  const need = columns.map((_, at) => {
    const words = rows.flatMap((row) => render(row[at], "en").split(" "));
    return 2 + Math.max(1, ...words.map(({ length }) => length));
  });
  const [first, ...others] = columns.map((_, at) => at);
  const parts = [[first]];
  for (const at of others) {
    const last = parts[parts.length - 1];
    const full = [...last, at].reduce((sum, one) => sum + need[one], 0) > LINE;
    if (full && last.length > 1) parts.push([first, at]);
    else last.push(at);
  }
  if (parts.length === 1) return [table];
  return parts.map((part, index) => {
    const [from, to] = [columns[part[1]].header, columns[part[part.length - 1]].header];
    return {
      ...table,
      caption: say`${table.caption}, columns ${from} to ${to}`,
      columns: part.map((at) => columns[at]),
      rows: rows.map((row) => part.map((at) => row[at])),
      notes: index + 1 === parts.length ? notes : undefined,
    };
  });
}

function isEmpty(part: AppendixPart): boolean {
  if (part.kind === "table") return part.rows.length === 0;
  if (part.kind === "keyValues" || part.kind === "checklist") return part.items.length === 0;
  return false;
}

function keyOf(part: AppendixPart): string[] {
  return "key" in part && part.key !== undefined ? [part.key] : [];
}

/** What links lead to a row of a sheet by, in the annex of the readings. */
export function sheetRow(source: SheetSource | undefined, row: number): string {
  const file = typeof source === "object" ? source.sheet : (source ?? "");
  return `${file} row ${row}`;
}

/** The first cell of each row leads to a place. */
export function rowLinks(places: readonly (string | undefined)[], column = 0): TableLink[] {
  return places.flatMap((to, row) => (to === undefined ? [] : [{ row, column, to }]));
}

/** A table without the columns that no cell fills and no link names. */
function withoutEmptyColumns(table: TableBlock): TableBlock {
  const { columns, rows, links = [] } = table;
  const kept = columns.flatMap((_, at) =>
    rows.some((row) => row[at] !== "") || links.some(({ column }) => column === at) ? [at] : [],
  );
  if (kept.length === columns.length) return table;
  const of = <T>(cells: readonly T[]) => kept.map((at) => cells[at]);
  return {
    ...table,
    columns: of(columns),
    rows: rows.map(of),
    links: links.map((link) => ({ ...link, column: kept.indexOf(link.column) })),
  };
}
