import type { Placed, ReportBlock } from "../blocks/block.js";
import type { Finding } from "../findings/finding.js";
import type { Text } from "../words/message.js";
import type { ReportMeta } from "./reportMeta.js";

/** A run of text inside a paragraph, heading or cell of a markdown table. */
export type Inline =
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "code"; readonly text: string }
  | { readonly kind: "math"; readonly tex: string }
  | { readonly kind: "break" }
  | { readonly kind: "emphasis" | "strong"; readonly children: readonly Inline[] }
  | { readonly kind: "link"; readonly children: readonly Inline[]; readonly address: string };

/** Heading of the body; level 1 is a main section, because the title stands above all. */
export interface HeadingNode {
  readonly kind: "heading";
  readonly level: number;
  readonly inlines: readonly Inline[];
  readonly id: string;
  /** `1`, `1.2`, …: set by `numberNodes`. */
  readonly number?: string;
  /** What a clause checklist names the section by, from the tag `section-<key>` of its cell. */
  readonly key?: string;
  /** Annexes are lettered, and do not count among the pages of the body. */
  readonly annex?: boolean;
}

/** A figure: the still drawing, words for it, and plotly's JSON where there is any. */
export interface FigureNode {
  readonly kind: "figure";
  /** Cleaned SVG text: no script, no event handler, no outside address. */
  readonly svg: string;
  readonly plotly?: { readonly data: readonly object[]; readonly layout: object };
  readonly alt: Text;
  readonly caption: string;
  /** What sentences cite it by. */
  readonly key?: string;
  /** Two of half width that follow each other stand side by side. */
  readonly half?: boolean;
  /** Position among the figures, from 1: set by `numberNodes`. */
  readonly number?: number;
}

/** A block of the report, with its number and, for a checklist, the sections it leads to. */
export type BlockNode = ReportBlock & Placed;

/** Source of a code cell; `cell` counts code cells from 1. */
export interface CodeNode {
  readonly kind: "code";
  readonly text: string;
  readonly cell: number;
}

/** One block of the report, in reading order. */
export type DocumentNode =
  | HeadingNode
  | FigureNode
  | CodeNode
  | BlockNode
  | { readonly kind: "prose"; readonly inlines: readonly Inline[] }
  | {
      readonly kind: "list";
      readonly ordered: boolean;
      readonly start: number;
      readonly items: readonly (readonly DocumentNode[])[];
    }
  | { readonly kind: "quote"; readonly children: readonly DocumentNode[] }
  | {
      readonly kind: "proseTable";
      readonly align: readonly ("left" | "right" | "center" | undefined)[];
      readonly header: readonly (readonly Inline[])[];
      readonly rows: readonly (readonly (readonly Inline[])[])[];
    }
  | { readonly kind: "mathBlock"; readonly tex: string }
  | { readonly kind: "rule" }
  /** Room to write by hand, below an exercise of a handout. */
  | { readonly kind: "writingLines"; readonly lines: number }
  /** Text a cell printed; `warning` marks its stderr stream. */
  | {
      readonly kind: "stream";
      readonly text: string;
      readonly cell: number;
      readonly warning: boolean;
    };

/** A whole report, ready to be rendered. */
export interface ReportDocument {
  readonly meta: ReportMeta;
  readonly nodes: readonly DocumentNode[];
  /** Source of every code cell, in order, where the report was asked to hold it. */
  readonly annex: readonly CodeNode[];
  /** What went wrong or was changed while reading the notebook. */
  readonly findings: readonly Finding[];
}

/** The words of inline nodes without their form: for ids, contents lists and PDF bookmarks. */
export function plainText(inlines: readonly Inline[]): string {
  return inlines
    .map((inline) => {
      switch (inline.kind) {
        case "text":
        case "code":
          return inline.text;
        case "math":
          return inline.tex;
        case "break":
          return " ";
        default:
          return plainText(inline.children);
      }
    })
    .join("");
}

/** Two small figures that a reader compares. */
export interface FigurePair {
  readonly kind: "pair";
  readonly figures: readonly [FigureNode, FigureNode];
}

/** Puts two figures of half width that follow each other side by side. */
export function pairedFigures(nodes: readonly DocumentNode[]): (DocumentNode | FigurePair)[] {
  const placed: (DocumentNode | FigurePair)[] = [];
  for (const node of nodes) {
    const before = placed.at(-1);
    if (node.kind === "figure" && node.half && before?.kind === "figure" && before.half) {
      placed[placed.length - 1] = { kind: "pair", figures: [before, node] };
    } else placed.push(node);
  }
  return placed;
}
