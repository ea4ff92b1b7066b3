import type { Text } from "../words/message.js";
import type { Said } from "../words/render.js";

/** Side on which the texts of a column stand. */
export type Side = "left" | "right" | "center";

export interface GridColumn {
  readonly header: Text;
  readonly unit?: Text;
  /** Without it, numbers stand right. */
  readonly align?: Side;
  /** Share of the width on paper; without one it follows from the texts. */
  readonly share?: number;
  /** Whether its cells lead to other pages: on paper their numbers stand in a column behind it. */
  readonly links?: boolean;
}

/** A text, perhaps one that leads to a place of the same report or stands out. */
export type GridCell =
  | Text
  | { readonly text: Text; readonly to?: string; readonly strong?: boolean };

export interface GridPart {
  readonly part: "grid";
  /** `pairs`: labels and their values, without headers. */
  readonly look: "table" | "pairs";
  readonly caption: Text;
  /** Of the report's tables. */
  readonly number?: number;
  readonly columns: readonly GridColumn[];
  readonly rows: readonly (readonly GridCell[])[];
  /** Ids of the rows that links of the same report lead to; empty where none do. */
  readonly rowIds?: readonly string[];
  readonly notes: readonly Text[];
}

export interface Entry {
  readonly tone?: "error" | "warning" | "note";
  /** One word before the text. */
  readonly tag?: Text;
  /** Stands above the text. */
  readonly title?: Text;
  readonly text: Text;
  /** Stands behind the text, in small type. */
  readonly mark?: Text;
  /** Sentences below the text, in small type. */
  readonly details?: readonly Text[];
}

interface EntriesPart {
  readonly part: "entries";
  readonly look: "findings" | "cautions" | "references";
  readonly entries: readonly Entry[];
  /** What is said where there are none. */
  readonly whenEmpty?: Text;
}

/**
 * What blocks are made of. A writer of HTML, text or PDF knows these few, not the kinds of blocks.
 */
export type Part =
  | GridPart
  | EntriesPart
  | {
      readonly part: "box";
      readonly tone: "note" | "warning";
      readonly tag: Text;
      readonly text: Text;
    }
  | {
      readonly part: "text";
      readonly text: Text;
      /** Tables, figures and sections that it speaks of, in the order of the text. */
      readonly cites?: readonly { readonly text: string; readonly to: string }[];
    }
  | { readonly part: "title"; readonly level: number; readonly text: Text }
  | { readonly part: "contents" }
  | { readonly part: "blanks"; readonly label: Text; readonly lines: readonly Text[] }
  | { readonly part: "break" };

/** Parts whose messages are said: all that writers see. */
export type SaidPart = Said<Part>;
export type SaidGrid = Said<GridPart>;
export type SaidCell = Said<GridCell>;

/** The text of a cell, whatever else is known of it. */
export function cellText(cell: SaidCell): string {
  return typeof cell === "string" ? cell : cell.text;
}

const NUMERIC = /^[-+−–±<>≤≥≈~ ]*\d[\d\s.,'’]*(?:[–-]\s*\d[\d\s.,]*)?\s*(?:%|‰)?$/;

/** Right when each filled cell is a number (with sign, range or percent) so that digits stand under digits. */
function sideOf(cells: readonly string[]): Side {
  const filled = cells.map((cell) => cell.trim()).filter((cell) => !/^[-–—]?$/.test(cell));
  return filled.length > 0 && filled.every((cell) => NUMERIC.test(cell)) ? "right" : "left";
}

/** The side of each column of a table. */
export function gridSides({ columns, rows }: Pick<SaidGrid, "columns" | "rows">): Side[] {
  return columns.map(({ align }, at) => {
    const texts = rows.map((row) => cellText(row[at] ?? ""));
    return align ?? sideOf(texts);
  });
}

/** Details as running text: each a sentence. */
export function sentences(details: readonly string[]): string {
  return details.map((text) => (/[.!?]$/.test(text) ? text : `${text}.`)).join(" ");
}

/**
 * A paragraph before and behind the citations that belong to it: they stand in parentheses before its full
 * stop.
 */
export function aroundCitations(text: string): readonly [before: string, behind: string] {
  const end = /[.:]$/.exec(text)?.[0] ?? "";
  return [text.slice(0, text.length - end.length), end];
}
