import type { Finding } from "../findings/finding.js";
import { say, type Text } from "../words/message.js";

export interface TableColumn {
  readonly header: Text;
  readonly unit?: Text;
  /** Default left; numbers stand right. */
  readonly align?: "left" | "right";
}

export interface TableBlock {
  readonly kind: "table";
  readonly caption: Text;
  readonly columns: readonly TableColumn[];
  /** One text a cell, as many as there are columns. */
  readonly rows: readonly (readonly Text[])[];
  readonly notes?: readonly Text[];
}

export interface FindingsBlock {
  readonly kind: "findings";
  readonly findings: readonly Finding[];
}

export interface CautionsBlock {
  readonly kind: "cautions";
  readonly items: readonly {
    readonly title: string;
    readonly text: string;
    readonly source: string;
  }[];
}

export interface KeyValuesBlock {
  readonly kind: "keyValues";
  readonly caption: Text;
  readonly items: readonly { readonly label: Text; readonly value: Text }[];
}

export interface ReferencesBlock {
  readonly kind: "references";
  /** `mark` says how the source is known: read, from memory, common practice. */
  readonly items: readonly { readonly text: string; readonly mark: string }[];
}

export interface SignatureBlock {
  readonly kind: "signature";
  readonly label: string;
  /** What is to be written on each line; the lines stay blank. */
  readonly lines: readonly string[];
}

export interface ParagraphBlock {
  readonly kind: "paragraph";
  readonly text: Text;
}

export interface NoteBlock {
  readonly kind: "note";
  readonly tone: "note" | "warning";
  readonly text: Text;
}

export interface ChecklistBlock {
  readonly kind: "checklist";
  readonly caption: Text;
  readonly items: readonly {
    /** As the user's code numbers it. */
    readonly clause: string;
    readonly requirement: string;
    readonly remark: string;
    /** Key of the section that answers it; a report turns it into a link. Absent while open. */
    readonly sectionKey?: string;
    /** Title of that section, where its key is one of the appendix. */
    readonly sectionTitle?: string;
  }[];
}

export interface PageBreakBlock {
  readonly kind: "pageBreak";
}

/** A part of a report that is more than running text, as plain data: a notebook shows it, a report prints it. */
export type ReportBlock =
  | TableBlock
  | FindingsBlock
  | CautionsBlock
  | KeyValuesBlock
  | ReferencesBlock
  | SignatureBlock
  | ParagraphBlock
  | NoteBlock
  | ChecklistBlock
  | PageBreakBlock;

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
export function checklistHeaders(): Text[] {
  return [say`Clause`, say`Requirement`, say`Answered in`, say`Remark`];
}
