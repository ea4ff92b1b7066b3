import type { StudyConfig } from "../study/studyConfig.js";
import { say } from "../words/say.js";
import { BLANK } from "./cell.js";
import type { NoteBlock, TableBlock } from "./reportBlock.js";

/** The decision log, in the order of its dates; entries of one day stay in the order of the study. */
export function decisionsTable({
  decisions = [],
}: Pick<StudyConfig, "decisions">): TableBlock | NoteBlock {
  if (decisions.length === 0) {
    return { kind: "note", tone: "note", text: say`No decisions were entered.` };
  }
  const inOrder = [...decisions].sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
  return {
    kind: "table",
    caption: say`Decisions, as entered`,
    columns: [
      { header: say`Date` },
      { header: say`Decided` },
      { header: say`Because` },
      { header: say`Instead of` },
    ],
    rows: inOrder.map(({ date, what, why, insteadOf }) => [date, what, why, insteadOf ?? BLANK]),
  };
}
