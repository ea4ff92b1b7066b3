import type { Nodes, PhrasingContent, RootContent, TableRow } from "mdast";
import { fromMarkdown } from "mdast-util-from-markdown";
import { gfmTableFromMarkdown } from "mdast-util-gfm-table";
import { mathFromMarkdown } from "mdast-util-math";
import { gfmTable } from "micromark-extension-gfm-table";
import { math } from "micromark-extension-math";
import type { Language } from "../words/render.js";
import { type DocumentNode, type Inline, plainText } from "./document.js";

type Definitions = ReadonlyMap<string, string>;

interface Cell {
  readonly source: string;
  readonly known: Definitions;
}

function inlines(nodes: readonly PhrasingContent[], known: Definitions): Inline[] {
  return nodes.flatMap((node): Inline[] => {
    switch (node.type) {
      // markup inside a notebook is shown as the text it is, never obeyed
      case "text":
      case "html":
        return [{ kind: "text", text: node.value.replaceAll("\n", " ") }];
      case "inlineCode":
        return [{ kind: "code", text: node.value }];
      case "inlineMath":
        return [{ kind: "math", tex: node.value }];
      case "break":
        return [{ kind: "break" }];
      case "emphasis":
      case "strong":
        return [{ kind: node.type, children: inlines(node.children, known) }];
      case "link":
        return [{ kind: "link", address: node.url, children: inlines(node.children, known) }];
      case "linkReference": {
        const address = known.get(node.identifier) ?? "";
        return [{ kind: "link", address, children: inlines(node.children, known) }];
      }
      // a picture would have to be fetched: its words and address stand in its place
      case "image":
        return [
          { kind: "link", address: node.url, children: [{ kind: "text", text: node.alt ?? "" }] },
        ];
      default:
        return [];
    }
  });
}

/**
 * A paragraph in which `$$…$$` stands on one line: markdown takes that for maths in the text,
 * notebooks show it as a displayed formula, so the paragraph is parted around it.
 */
function paragraph(nodes: readonly PhrasingContent[], cell: Cell): DocumentNode[] {
  const made: DocumentNode[] = [];
  let run: PhrasingContent[] = [];
  const close = (): void => {
    const inside = inlines(run, cell.known);
    if (plainText(inside).trim() !== "") made.push({ kind: "prose", inlines: inside });
    run = [];
  };
  for (const node of nodes) {
    const start = node.position?.start.offset ?? 0;
    if (node.type === "inlineMath" && cell.source.startsWith("$$", start)) {
      close();
      made.push({ kind: "mathBlock", tex: node.value });
    } else run.push(node);
  }
  close();
  return made;
}

function tableRow(row: TableRow, known: Definitions): Inline[][] {
  return row.children.map((cell) => inlines(cell.children, known));
}

/** Content of a list item or quotation; a heading in there would break the order of headings. */
function inside(nodes: readonly RootContent[], cell: Cell): DocumentNode[] {
  return nodes.flatMap((node) =>
    block(node, cell).map(
      (made): DocumentNode =>
        made.kind === "heading"
          ? { kind: "prose", inlines: [{ kind: "strong", children: made.inlines }] }
          : made,
    ),
  );
}

function block(node: RootContent, cell: Cell): DocumentNode[] {
  const { known } = cell;
  switch (node.type) {
    case "heading":
      return [
        { kind: "heading", level: node.depth, inlines: inlines(node.children, known), id: "" },
      ];
    case "paragraph":
      return paragraph(node.children, cell);
    case "html":
      return [{ kind: "prose", inlines: [{ kind: "text", text: node.value }] }];
    case "math":
      return [{ kind: "mathBlock", tex: node.value }];
    case "code":
      return [{ kind: "stream", text: node.value, cell: 0, warning: false }];
    case "thematicBreak":
      return [{ kind: "rule" }];
    case "blockquote":
      return [{ kind: "quote", children: inside(node.children, cell) }];
    case "list":
      return [
        {
          kind: "list",
          ordered: node.ordered === true,
          start: node.start ?? 1,
          items: node.children.map((item) => inside(item.children, cell)),
        },
      ];
    case "table": {
      const [header, ...rows] = node.children.map((row) => tableRow(row, known));
      const align = (node.align ?? []).map((side) => side ?? undefined);
      return [{ kind: "proseTable", align, header: header ?? [], rows }];
    }
    default:
      return [];
  }
}

/**
 * Reads a markdown cell (CommonMark with tables and `$` maths) into document nodes.
 * Raw HTML becomes plain text and pictures become their words: nothing is run or fetched.
 * Heading ids are left empty for `numberNodes`. Text nested without end is shown as it was typed.
 */
export function markdownToNodes(markdown: string): DocumentNode[] {
  const plain: DocumentNode[] = [{ kind: "prose", inlines: [{ kind: "text", text: markdown }] }];
  if (TOO_DEEP.test(markdown)) return plain;
  try {
    return readMarkdown(markdown);
  } catch (problem) {
    // The stack overflows where marks stand in each other without end.
    if (problem instanceof RangeError) return plain;
    throw problem;
  }
}

/** Quotations of quotations, or lists of lists, deeper than anybody writes: reading them takes minutes. */
const TOO_DEEP = /^(?:[ \t]*>){40}|^(?:[ \t]*[-*+] ){40}|^[ \t]{200}/m;

function readMarkdown(markdown: string): DocumentNode[] {
  const tree = fromMarkdown(markdown, {
    extensions: [gfmTable(), math()],
    mdastExtensions: [gfmTableFromMarkdown(), mathFromMarkdown()],
  });
  const known = new Map<string, string>();
  const collect = (node: Nodes): void => {
    if (node.type === "definition") known.set(node.identifier, node.url);
    if ("children" in node) for (const child of node.children) collect(child);
  };
  collect(tree);
  return tree.children.flatMap((node) => block(node, { source: markdown, known }));
}

const DOUBLE: Readonly<Record<Language, readonly [open: string, close: string]>> = {
  en: ["“", "”"],
  es: ["«", "»"],
};

/**
 * Straight quotation marks around words as the language writes them. Marks of inches and minutes, which
 * stand behind a number, and marks without a partner stay as they are.
 */
function quoted(text: string, language: Language): string {
  const [open, close] = DOUBLE[language];
  return text
    .replace(/(?<![\p{L}\p{N}])"(?=\S)([^"]*?[^\s"])"(?![\p{L}\p{N}])/gu, `${open}$1${close}`)
    .replace(/(?<=\p{L})'(?=\p{L})/gu, "’");
}

function inlineQuotes(inlines: readonly Inline[], language: Language): Inline[] {
  return inlines.map((inline): Inline => {
    if (inline.kind === "text") return { ...inline, text: quoted(inline.text, language) };
    if (!("children" in inline)) return inline;
    return { ...inline, children: inlineQuotes(inline.children, language) };
  });
}

/** Sets the quotation marks of a markdown cell's prose by language; code, maths and printed text stay. */
export function smartQuotes(
  nodes: readonly DocumentNode[],
  language: Language,
): readonly DocumentNode[] {
  const quote = (inlines: readonly Inline[]): Inline[] => inlineQuotes(inlines, language);
  return nodes.map((node): DocumentNode => {
    switch (node.kind) {
      case "heading":
      case "prose":
        return { ...node, inlines: quote(node.inlines) };
      case "list":
        return { ...node, items: node.items.map((item) => smartQuotes(item, language)) };
      case "quote":
        return { ...node, children: smartQuotes(node.children, language) };
      case "proseTable":
        return {
          ...node,
          header: node.header.map(quote),
          rows: node.rows.map((row) => row.map(quote)),
        };
      default:
        return node;
    }
  });
}
