import type { NoteBlock } from "../blocks/block.js";
import { say } from "../words/message.js";

/** What stands in the place of a table about the mix where the tests do not give one. */
export function noMix(): NoteBlock {
  return {
    kind: "note",
    tone: "warning",
    text: say`The tests do not give a mix: see the findings.`,
  };
}
