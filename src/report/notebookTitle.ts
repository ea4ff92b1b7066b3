import { markdownToNodes } from "./markdownToNodes.js";
import { plainText } from "./plainText.js";
import { readNotebook } from "./readNotebook.js";

/**
 * The words of a notebook's first level-1 heading, which a report's title replaces; undefined without one.
 *
 * @throws TypeError when `notebook` is not an nbformat 4 notebook
 *
 * @example
 * const cell = { cell_type: "markdown", metadata: {}, source: "# Two *mixes*" };
 * notebookTitle({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [cell] }) // => "Two mixes"
 */
export function notebookTitle(notebook: unknown): string | undefined {
  for (const cell of readNotebook(notebook).cells) {
    if (cell.cell_type !== "markdown" || cell.metadata.tags.includes("notebook-only")) continue;
    for (const node of markdownToNodes(cell.source)) {
      if (node.kind === "heading" && node.level === 1) return plainText(node.inlines);
    }
  }
  return undefined;
}
