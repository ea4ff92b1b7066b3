import { joinText, type NotebookFile, tagsOf } from "./nbformat.js";
import type { CellPlace } from "./notebookRun.js";
import { INJECTED_TAG } from "./parameters.js";

/**
 * Places of the code cells that a run goes through, counted as the person who wrote the notebook
 * counts them: an injected cell that the file does not have takes the numbers of the cell it follows.
 *
 * @param notebook what is run
 * @param given what stands in the file
 */
export function placesOf(notebook: NotebookFile, given: NotebookFile): CellPlace[] {
  const inserted = notebook.cells.length > given.cells.length;
  const places: CellPlace[] = [];
  let [code, position] = [0, 0];
  for (const cell of notebook.cells) {
    const injected = tagsOf(cell).includes(INJECTED_TAG);
    const counted = !(injected && inserted);
    if (counted) position += 1;
    if (cell.cell_type !== "code") continue;
    if (counted) code += 1;
    places.push({
      cellNumber: Math.max(1, code),
      cellPosition: Math.max(1, position),
      injected,
      source: joinText(cell.source),
    });
  }
  return places;
}
