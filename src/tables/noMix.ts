import { phrase } from "../words/say.js";
import type { NoteBlock } from "./reportBlock.js";

/** What stands in the place of a table about the mix where the tests do not give one. */
export const NO_MIX: NoteBlock = {
  kind: "note",
  tone: "warning",
  text: phrase`The tests do not give a mix: see the findings.`,
};
