import type { ParagraphBlock, ReportBlock, TableBlock, TableLink } from "../../blocks/block.js";
import { type Figure, figureInReport } from "../../figures/figure.js";
import type { SheetSource } from "../../lab/sheet/grid.js";
import type { Text } from "../../words/message.js";

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
export function cited(text: Text, parts: readonly (AppendixPart | undefined)[]): AppendixPart[] {
  const shown = parts.filter((part): part is AppendixPart => part !== undefined && !isEmpty(part));
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
