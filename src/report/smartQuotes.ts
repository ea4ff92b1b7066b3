import type { Language } from "../words/language.js";
import type { DocumentNode, Inline } from "./documentNode.js";

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
  const of = (inlines: readonly Inline[]): Inline[] => inlineQuotes(inlines, language);
  return nodes.map((node): DocumentNode => {
    switch (node.kind) {
      case "heading":
      case "prose":
        return { ...node, inlines: of(node.inlines) };
      case "list":
        return { ...node, items: node.items.map((item) => smartQuotes(item, language)) };
      case "quote":
        return { ...node, children: smartQuotes(node.children, language) };
      case "proseTable":
        return {
          ...node,
          header: node.header.map(of),
          rows: node.rows.map((row) => row.map(of)),
        };
      default:
        return node;
    }
  });
}
