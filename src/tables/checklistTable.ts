import { say } from "../words/say.js";
import type { ChecklistBlock, TableBlock } from "./reportBlock.js";

/**
 * A clause checklist as a plain table, for where nothing can be linked: the key of the section stands
 * where a report has the link.
 *
 * @example
 * const item = { clause: "3.2", requirement: "State the mix.", remark: "", sectionKey: "mix", sectionTitle: "Specified mix" };
 * checklistTable({ kind: "checklist", caption: "Clauses", items: [item] }).rows // => [["3.2", "State the mix.", "Specified mix", "–"]]
 */
export function checklistTable({ caption, items }: ChecklistBlock): TableBlock {
  return {
    kind: "table",
    caption,
    columns: checklistHeaders().map((header) => ({ header })),
    rows: items.map(({ clause, requirement, remark, sectionKey, sectionTitle }) => [
      clause,
      requirement,
      sectionTitle ?? sectionKey ?? say`open`,
      remark || "–",
    ]),
  };
}

/** Clause, requirement, answer and remark. */
export function checklistHeaders(): string[] {
  return [say`Clause`, say`Requirement`, say`Answered in`, say`Remark`];
}
