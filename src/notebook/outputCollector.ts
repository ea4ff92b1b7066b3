import type { KernelMessage } from "./messages.js";
import type { CellOutput } from "./nbformat.js";

type Mutable =
  | { output_type: "stream"; name: "stdout" | "stderr"; text: string }
  | {
      output_type: "display_data";
      data: Record<string, unknown>;
      metadata: Record<string, unknown>;
      displayId?: unknown;
    };

function record(value: unknown): Record<string, unknown> {
  return typeof value === "object" && value !== null ? (value as Record<string, unknown>) : {};
}

/** Gathers what the kernel publishes, cell by cell. */
export interface OutputCollector {
  /** Takes a message of the iopub channel; other kinds than outputs are passed over. */
  readonly take: (message: KernelMessage) => void;
  /** Outputs of one request so far, in order, texts of the same stream that follow each other joined. */
  readonly outputsOf: (requestId: string) => CellOutput[];
}

/**
 * Makes a collector. An output belongs to the request that its message names, also when it comes
 * late; an update replaces every output shown under the same display id, whichever cell showed it.
 */
export function outputCollector(): OutputCollector {
  const cells = new Map<string, Mutable[]>();
  const take = ({ type, parentId, content }: KernelMessage): void => {
    if (parentId === undefined) return;
    const outputs = cells.get(parentId) ?? [];
    cells.set(parentId, outputs);
    const displayId = record(content.transient).display_id;
    if (type === "stream") {
      const name = content.name === "stderr" ? "stderr" : "stdout";
      const last = outputs.at(-1);
      if (last?.output_type === "stream" && last.name === name) last.text += content.text;
      else outputs.push({ output_type: "stream", name, text: String(content.text) });
    } else if (type === "display_data") {
      const [data, metadata] = [record(content.data), record(content.metadata)];
      outputs.push({ output_type: "display_data", data, metadata, displayId });
    } else if (type === "update_display_data" && displayId !== undefined) {
      for (const output of [...cells.values()].flat()) {
        if (output.output_type === "display_data" && output.displayId === displayId) {
          output.data = record(content.data);
          output.metadata = record(content.metadata);
        }
      }
    }
  };
  const outputsOf = (requestId: string): CellOutput[] =>
    (cells.get(requestId) ?? []).map((output): CellOutput => {
      if (output.output_type === "stream") return { ...output };
      const { displayId: _, ...shown } = output;
      return shown;
    });
  return { take, outputsOf };
}
