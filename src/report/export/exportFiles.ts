import { figurePng } from "../../figures/svg/figurePng.js";
import { say } from "../../words/message.js";
import { type Locale, render } from "../../words/render.js";
import { slug } from "../../words/slug.js";
import type { DocumentNode, FigureNode } from "../document.js";
import { csvRow, exportTables, tableCsv } from "./exportTable.js";
import { workbook } from "./workbook.js";

/** Begins the name of every file of a table or figure: an earlier export is known by it. */
export const EXPORTED = /^(table|figure|list)-[a-z0-9-]+\.(csv|svg|png)$/;

/** `table-07-quantities`: sorted by number also beyond nine. */
function fileName(kind: string, number: number | undefined, caption: string): string {
  const place = number === undefined ? "" : String(number).padStart(2, "0");
  return [kind, place, slug(caption)].filter(Boolean).join("-");
}

/**
 * The files of an export, by their names: every table and list as CSV and all of them as one workbook,
 * every figure as SVG and PNG, and `contents.csv` that says what is in which.
 *
 * @param nodes of the report: what an executed notebook shows, numbered as the report numbers it.
 * @param title of the study.
 * @param locale that the report is in; default `en`
 */
export function exportFiles(
  nodes: readonly DocumentNode[],
  title: string,
  locale: Locale = "en",
): Readonly<Record<string, string | Uint8Array>> {
  const files: Record<string, string | Uint8Array> = {};
  const contents = [
    [say`file`, say`caption`, say`notes or text alternative`].map((word) => render(word, locale)),
  ];
  const free = (name: string, ending: string): string => {
    let own = `${name}${ending}`;
    for (let again = 2; own in files; again++) own = `${name}-${again}${ending}`;
    return own;
  };
  const tables = exportTables(nodes, locale);
  for (const table of tables) {
    const kind = table.number === undefined ? "list" : "table";
    const file = free(fileName(kind, table.number, table.caption), ".csv");
    files[file] = tableCsv(table, locale);
    contents.push([file, table.caption, table.notes.join("\n")]);
  }
  const figures = nodes.filter((node): node is FigureNode => node.kind === "figure");
  for (const { number, caption, alt, svg } of figures) {
    const name = fileName("figure", number, caption);
    files[`${name}.svg`] = `<?xml version="1.0" encoding="UTF-8"?>\n${svg}\n`;
    files[`${name}.png`] = figurePng(svg);
    const words = render(alt, locale);
    contents.push([`${name}.svg`, caption, words], [`${name}.png`, caption, words]);
  }
  files["tables.xlsx"] = workbook(tables, title, locale);
  files["contents.csv"] = contents.map(csvRow).join("");
  return files;
}
