import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { type CellOutput, joinText, type NotebookFile } from "../../src/notebook/notebookFile.js";

export const FIXTURES = fileURLToPath(new URL("fixtures/", import.meta.url));

export function fixture(name: string): string {
  return `${FIXTURES}${name}.ipynb`;
}

/** Outputs of the code cells, in order. */
export function outputsOf(notebook: NotebookFile): (readonly CellOutput[])[] {
  return notebook.cells.flatMap(({ outputs }) => (outputs === undefined ? [] : [outputs]));
}

/** Outputs as `stdout: text`, as `error: name: text`, or as the MIME types shown. */
export function plainOutputs(outputs: readonly CellOutput[] | undefined): string[] {
  return (outputs ?? []).map((output) => {
    if (output.output_type === "stream") return `${output.name}: ${joinText(output.text)}`;
    if (output.output_type === "error") return `error: ${output.ename}: ${output.evalue}`;
    return Object.keys(output.data).join(", ");
  });
}

export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ESRCH") return false;
    throw error;
  }
  // a zombie has ended; only its parent has not asked yet
  const stat = `/proc/${pid}/stat`;
  return !existsSync(stat) || !/\) Z /.test(readFileSync(stat, "utf8"));
}

export async function until(condition: () => boolean, milliseconds: number): Promise<boolean> {
  const end = performance.now() + milliseconds;
  while (!condition()) {
    if (performance.now() > end) return false;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  return true;
}
