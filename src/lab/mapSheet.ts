import { decimalComma } from "./decimalComma.js";
import type { Finding } from "./finding.js";
import { mappedSources } from "./mappedSources.js";
import { foldedCell, type MappingPlace, mappedTargets, ruleOf } from "./mappedTargets.js";
import type { SheetGrid } from "./sheetGrid.js";
import { findHeaderRow } from "./sheetHeader.js";
import type { SheetLayout } from "./sheetLayout.js";
import type { SheetMapping } from "./sheetMapping.js";

/**
 * Turns a sheet of the user's own layout into one of ours: header cells, lines and texts are renamed,
 * the column that our layout has first comes first, facts of the study stand beside. Rows keep their
 * places, so that what a reader finds is told with the row of the user's own sheet.
 *
 * @param layouts the forms that this kind of sheet may have.
 * @returns the grid, or `undefined` where the mapping is wrong; all of its faults are pushed together.
 */
export function mapSheet(
  { file, rows: given }: SheetGrid,
  mapping: SheetMapping,
  layouts: readonly SheetLayout[],
  place: MappingPlace,
  findings: Finding[],
): SheetGrid | undefined {
  const before = findings.length;
  const rows = given.map((cells, index) => (index < mapping.skipRows ? [""] : cells));
  const headerIndex = headerOf({ file, rows }, mapping, layouts);
  const sheet = { file, rows, headerIndex };
  findings.push(...mappedTargets(mapping, layouts, place));
  findings.push(...mappedSources(sheet, mapping, layouts, place));
  if (findings.length > before) return undefined;

  const columns = renamed(mapping.columns);
  const lines = renamed(mapping.lines);
  const cells = renamed(mapping.cells);
  const facts = Object.entries(mapping.facts).map(([name, value]) => ({ name, value }));
  if (headerIndex < 0) return { file, rows, facts };

  const header = rows[headerIndex].map((cell) => columns(cell));
  const first = header.findIndex((cell) => ruleOf([layouts[0].columns[0]], cell));
  const order = header.map((_, at) => at);
  if (first > 0) order.unshift(...order.splice(first, 1));
  const columnRules = layouts.flatMap((layout) => layout.columns);
  const factRules = layouts.flatMap((layout) => layout.facts);
  const rules = header.map((cell) => ruleOf(columnRules, cell));
  const stored = /\.xlsx$/i.test(file);
  const pointed = (text: string, rule: (typeof rules)[number], row: number, column: string) =>
    mapping.decimalComma && rule
      ? decimalComma(text, rule, { file, row, column }, stored, findings)
      : text;
  const mapped = rows.map((row, index) => {
    if ((row[0] ?? "").startsWith("#")) return row;
    if (index < headerIndex) {
      const name = lines(row[0] ?? "");
      const rest = row.slice(1);
      if (rest.length > 0) rest[0] = pointed(rest[0], ruleOf(factRules, name), index + 1, name);
      return [name, ...rest];
    }
    if (index === headerIndex) return order.map((at) => header[at]);
    const own = row.map((cell, at) => pointed(cells(cell), rules[at], index + 1, header[at]));
    // Cells beyond the header stay behind it, for the reader to refuse.
    return [...order.map((at) => own[at] ?? ""), ...own.slice(header.length)];
  });
  return { file, rows: mapped, facts };
}

/** The row that holds the most of the mapped header cells; without any the one that our layout knows. */
function headerOf(grid: SheetGrid, mapping: SheetMapping, layouts: readonly SheetLayout[]): number {
  const names = Object.keys(mapping.columns).map(foldedCell);
  if (names.length === 0) {
    const found = layouts.map((layout) => findHeaderRow(grid, layout)).find((index) => index >= 0);
    return found ?? -1;
  }
  const counts = grid.rows.map((row) => {
    const folded = row.map(foldedCell);
    return names.filter((name) => folded.includes(name)).length;
  });
  const most = Math.max(0, ...counts);
  return most === 0 ? -1 : counts.indexOf(most);
}

function renamed(names: Readonly<Record<string, string>>): (cell: string) => string {
  const ours = new Map(Object.entries(names).map(([own, name]) => [foldedCell(own), name]));
  return (cell) => ours.get(foldedCell(cell)) ?? cell;
}
