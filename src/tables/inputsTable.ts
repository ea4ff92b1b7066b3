import type { InputFile } from "../study/study.js";
import type { TableBlock } from "./reportBlock.js";

/** The files that the numbers come from, each with the checksum of its bytes. */
export function inputsTable(inputs: readonly InputFile[]): TableBlock {
  return {
    kind: "table",
    caption: "Input files and their checksums",
    columns: [{ header: "File" }, { header: "SHA-256" }],
    rows: inputs.map(({ file, sha256 }) => [file, sha256]),
  };
}
