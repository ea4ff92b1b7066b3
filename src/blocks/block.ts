import type { Finding } from "../findings/finding.js";
import type { Text } from "../words/message.js";

export interface TableColumn {
  readonly header: Text;
  readonly unit?: Text;
  /** Default left; numbers stand right. */
  readonly align?: "left" | "right";
}

/** A cell of a table that leads to another place of the report. */
export interface TableLink {
  /** Counted from 0, without the header. */
  readonly row: number;
  readonly column: number;
  /** The `key` of a table, figure or section, or one of the `rowKeys` of a table. */
  readonly to: string;
}

/** What a report numbers among its tables. */
interface Captioned {
  /** What other parts of a report cite the table by. */
  readonly key?: string;
  readonly caption: Text;
}

export interface TableBlock extends Captioned {
  readonly kind: "table";
  readonly columns: readonly TableColumn[];
  /** One text a cell, as many as there are columns. */
  readonly rows: readonly (readonly Text[])[];
  /** What links lead to each row by; empty where nothing does. */
  readonly rowKeys?: readonly string[];
  /** Cells that lead elsewhere; a report without that place prints their text alone. */
  readonly links?: readonly TableLink[];
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

export interface KeyValuesBlock extends Captioned {
  readonly kind: "keyValues";
  readonly items: readonly {
    readonly label: Text;
    readonly value: Text;
    /** Where the value leads, as the `to` of a `TableLink`. */
    readonly to?: string;
  }[];
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

/** A question on paper, with room to answer it by hand. */
interface QuestionBlock {
  readonly kind: "question";
  readonly text: Text;
  /** To be ticked. */
  readonly options?: readonly Text[];
  /** Empty lines for working it out, beside the one for the answer; 0 where one ticks. */
  readonly lines: number;
  /** Of the answer. */
  readonly unit?: Text;
}

export interface ParagraphBlock {
  readonly kind: "paragraph";
  readonly text: Text;
  /** Keys of the tables, figures and sections that the sentence speaks of: a report names their numbers behind it. */
  readonly cites?: readonly string[];
}

export interface NoteBlock {
  readonly kind: "note";
  readonly tone: "note" | "warning";
  readonly text: Text;
}

export interface ChecklistBlock extends Captioned {
  readonly kind: "checklist";
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

/** A heading that is part of what is shown: of an annex, which stands in a report only where it was asked for. */
export interface SectionBlock {
  readonly kind: "section";
  /** 1 for a main section. */
  readonly level: number;
  readonly title: Text;
  /** As in a clause checklist. */
  readonly key?: string;
  /** Annexes are lettered. */
  readonly annex?: boolean;
}

/** Where the list of contents stands on paper; without one it follows the title. */
interface ContentsBlock {
  readonly kind: "contents";
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
  | QuestionBlock
  | ParagraphBlock
  | NoteBlock
  | ChecklistBlock
  | SectionBlock
  | ContentsBlock
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
  /** Where links lead, by the key that they name; keys that this report does not have are missing. */
  readonly places?: Readonly<Record<string, Place>>;
}

/** A table, figure, section or row of a report. */
export interface Place {
  readonly id: string;
  /** “Table 3”, for a citation. */
  readonly label: string;
}
