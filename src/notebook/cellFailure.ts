import { emittedCode } from "./emittedCode.js";
import { emittedPlace } from "./emittedPlace.js";
import type { KernelClient } from "./kernelClient.js";
import { kernelText } from "./kernelText.js";
import { type CellOutput, joinText } from "./nbformat.js";
import type { CellFailure, CellPlace } from "./notebookRun.js";
import { stderrPlace } from "./stderrPlace.js";

async function failedLine(
  kernel: KernelClient,
  source: string,
  stderr: string,
): Promise<number | undefined> {
  const place = stderrPlace(stderr);
  if (place === undefined) return undefined;
  // the compiler sees one line more than the cell has
  if (place.kind === "compile") return Math.min(place.line, source.split("\n").length);
  const emitted = await emittedCode(kernel);
  return emitted === undefined
    ? undefined
    : emittedPlace(source, emitted, place.line, place.column);
}

/**
 * Finds out about a cell that has just failed, while its kernel still lives.
 *
 * @returns the failure, and the cell's outputs with the kernel's words freed of this machine's paths
 */
export async function cellFailure(
  kernel: KernelClient,
  place: CellPlace,
  outputs: readonly CellOutput[],
  cwd: string,
): Promise<{ readonly failure: CellFailure; readonly outputs: readonly CellOutput[] }> {
  const { source } = place;
  const stderr = outputs
    .map((output) =>
      output.output_type === "stream" && output.name === "stderr" ? joinText(output.text) : "",
    )
    .join("");
  const line = await failedLine(kernel, source, stderr);
  const kernelMessage = kernelText(stderr, cwd);
  const where = line === undefined ? {} : { line, codeLine: source.split("\n")[line - 1] };
  const cleaned = outputs.map((output) =>
    output.output_type === "stream" && output.name === "stderr"
      ? { ...output, text: `${kernelText(joinText(output.text), cwd)}\n` }
      : output,
  );
  return { failure: { ...place, ...where, kernelMessage }, outputs: cleaned };
}
