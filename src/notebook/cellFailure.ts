import { withoutCellLines } from "./kernel/cellTrace.js";
import type { KernelExecution } from "./kernel/client.js";
import { joinText } from "./notebookFile.js";
import type { CellFailure, CellPlace } from "./notebookRun.js";

/** What is known of a cell that has failed: from its `error` message, or else from what it wrote to stderr. */
export function cellFailure(
  place: CellPlace,
  execution: Pick<KernelExecution, "outputs" | "errorLine">,
): CellFailure {
  const outputs = execution.outputs();
  const error = outputs.findLast((output) => output.output_type === "error");
  const stderr = outputs.flatMap((output) =>
    output.output_type === "stream" && output.name === "stderr" ? [joinText(output.text)] : [],
  );
  const kernelMessage =
    error === undefined ? stderr.join("").trim() : withoutCellLines(error.traceback);
  const line = execution.errorLine();
  if (line === undefined) return { ...place, kernelMessage };
  return { ...place, line, codeLine: place.source.split("\n")[line - 1], kernelMessage };
}
