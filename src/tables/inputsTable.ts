import type { InputFile } from "../study/study.js";
import { say } from "../words/say.js";
import type { TableBlock } from "./reportBlock.js";

/** The files that the numbers come from, each with the checksum of its bytes. */
export function inputsTable(inputs: readonly InputFile[]): TableBlock {
  return {
    kind: "table",
    caption: say`Input files and their checksums`,
    columns: [{ header: say`File` }, { header: say`SHA-256` }],
    rows: inputs.map(({ file, sha256 }) => [file, sha256]),
  };
}
