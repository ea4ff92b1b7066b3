import type { ReportBlock } from "../../src/blocks/block.js";
import type { Locale } from "../../src/words/render.js";
import { render, renderAll } from "../../src/words/render.js";

/** The heads of a table with their units, in the order of the columns. */
export function headsOf(block: ReportBlock, locale: Locale = "en"): string[] {
  if (block.kind !== "table") throw new Error(`${block.kind} is no table`);
  return block.columns.map(({ header, unit }) => {
    const name = render(header, locale);
    return unit === undefined ? name : `${name} [${render(unit, locale)}]`;
  });
}

/** The rows of a table as a person reads them, each with a cell for every column. */
export function rowsOf(block: ReportBlock, locale: Locale = "en"): (readonly string[])[] {
  if (block.kind !== "table") throw new Error(`${block.kind} is no table`);
  return block.rows.map((row) => {
    if (row.length !== block.columns.length) throw new Error(`${row.length} cells in a row`);
    return row.map((cell) => render(cell, locale));
  });
}

/** The notes of a table. */
export function notesOf(block: ReportBlock): readonly string[] {
  if (block.kind !== "table") throw new Error(`${block.kind} is no table`);
  return renderAll(block.notes ?? []) as readonly string[];
}

/** Labels and values of a block of pairs. */
export function itemsOf(block: ReportBlock | undefined): Record<string, string> {
  if (block?.kind !== "keyValues") throw new Error(`${block?.kind} has no pairs`);
  return Object.fromEntries(block.items.map(({ label, value }) => [render(label), render(value)]));
}

/** Everything that stands in blocks, figures or sheets, as one text in a language. */
export function allTextOf(blocks: unknown, locale: Locale = "en"): string {
  return JSON.stringify(renderAll(blocks, locale));
}
