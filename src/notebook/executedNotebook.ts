import { KERNEL_NAME, kernelSpec } from "./kernelSpec.js";
import {
  type CellOutput,
  joinText,
  type NotebookCell,
  type NotebookFile,
  splitText,
} from "./nbformat.js";

/** Texts are stored line by line; JSON stays JSON. */
function stored(mime: string, value: unknown): unknown {
  return typeof value === "string" && (mime.startsWith("text/") || mime === "image/svg+xml")
    ? splitText(value)
    : value;
}

function storedOutput(output: CellOutput): CellOutput {
  if (output.output_type === "stream") {
    return { ...output, text: splitText(joinText(output.text)) };
  }
  const data = Object.fromEntries(
    Object.entries(output.data).map(([mime, value]) => [mime, stored(mime, value)]),
  );
  return { output_type: "display_data", data, metadata: output.metadata };
}

/** A cell without the times of an earlier run; a code cell with what this run made. */
function executedCell(
  cell: NotebookCell,
  count: number | null,
  outputs: readonly CellOutput[],
): NotebookCell {
  const { execution: _, ...metadata } = cell.metadata;
  if (cell.cell_type !== "code") return { ...cell, metadata };
  return { ...cell, metadata, execution_count: count, outputs: outputs.map(storedOutput) };
}

/**
 * Makes the executed notebook: code cells numbered 1, 2, … as far as they were run, their outputs in
 * place of older ones, and metadata that is the same on every machine.
 *
 * @param outputs of the code cells in order, as many as were run
 */
export function executedNotebook(
  notebook: NotebookFile,
  outputs: readonly (readonly CellOutput[])[],
): NotebookFile {
  let run = 0;
  const cells = notebook.cells.map((cell) => {
    if (cell.cell_type !== "code") return executedCell(cell, null, []);
    const own = outputs[run];
    run += 1;
    return executedCell(cell, own === undefined ? null : run, own ?? []);
  });
  const { display_name, language } = kernelSpec();
  return {
    cells,
    metadata: {
      ...notebook.metadata,
      kernelspec: { display_name, language, name: KERNEL_NAME },
      language_info: { file_extension: ".ts", mimetype: "text/typescript", name: "typescript" },
    },
    nbformat: 4,
    nbformat_minor: notebook.nbformat_minor,
  };
}
