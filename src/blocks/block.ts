import type { Finding } from "../findings/finding.js";
import type { Text } from "../words/message.js";

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
    readonly title: Text;
    readonly text: Text;
    readonly source: Text;
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
  readonly items: readonly { readonly text: Text; readonly mark: Text }[];
}

export interface SignatureBlock {
  readonly kind: "signature";
  readonly label: Text;
  /** What is to be written on each line; the lines stay blank. */
  readonly lines: readonly Text[];
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
    readonly sectionTitle?: Text;
  }[];
}

export interface PageBreakBlock {
  readonly kind: "pageBreak";
}

/**
 * A part of a report that is more than running text, as plain data: a notebook shows it, a report prints it.
 * What each kind must hold and how it is written stands in `KINDS`.
 */
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

/** A section of a report that a clause is answered in. */
export interface SectionLink {
  readonly id: string;
  readonly number: string;
  readonly title: string;
}

/** What a report adds to a block once it knows the whole. */
export interface Placed {
  /** Position among the tables, from 1. */
  readonly number?: number;
  /** The section of each item of a checklist, null where this report has none. */
  readonly sections?: readonly (SectionLink | null)[];
}
