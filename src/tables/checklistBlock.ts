import { APPENDIX_SECTIONS } from "../study/appendixSections.js";
import type { StudyConfig } from "../study/studyConfig.js";
import { say, sayOf } from "../words/say.js";
import type { ChecklistBlock, NoteBlock } from "./reportBlock.js";

/** The clauses that the study lists, each with the section of the report that answers it. */
export function checklistBlock({
  checklist = [],
}: Pick<StudyConfig, "checklist">): ChecklistBlock | NoteBlock {
  if (checklist.length === 0) {
    return { kind: "note", tone: "note", text: say`No clauses were entered.` };
  }
  return {
    kind: "checklist",
    caption: say`Clauses and where this report answers them`,
    items: checklist.map(({ clause, requirement, answeredBy, remark = "" }) => {
      const section = APPENDIX_SECTIONS.find(({ key }) => key === answeredBy);
      return {
        ...{ clause, requirement, remark },
        ...(answeredBy === undefined ? {} : { sectionKey: answeredBy }),
        ...(section ? { sectionTitle: sayOf(section.title) } : {}),
      };
    }),
  };
}
