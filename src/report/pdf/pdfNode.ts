import { checklistHeaders } from "../../tables/checklistTable.js";
import { say } from "../../words/say.js";
import { cellAlign } from "../cellAlign.js";
import type { DocumentNode, Inline } from "../documentNode.js";
import { findingDetail } from "../findingPlace.js";
import { plainText } from "../plainText.js";
import { severityWord } from "../severityWord.js";
import { columnWidths } from "./columnWidths.js";

/** Characters of room for what is written by hand. */
const WRITTEN_IN = 30;

/** A node as the template reads it: plain JSON. */
export type PdfNode = { readonly kind: string } & Readonly<Record<string, unknown>>;
/** Typst maths for a TeX formula, or undefined when it has to be shown as TeX. */
export type MathOf = (tex: string) => string | undefined;

/** Inline nodes as the template reads them; maths that cannot be set becomes code. */
export function pdfInlines(inlines: readonly Inline[], mathOf: MathOf): PdfNode[] {
  return inlines.map((inline) => {
    if (inline.kind === "math") {
      const typst = mathOf(inline.tex);
      return typst === undefined
        ? { kind: "code", text: inline.tex }
        : { kind: "math", tex: inline.tex, typst };
    }
    if (!("children" in inline)) return inline;
    const children = pdfInlines(inline.children, mathOf);
    if (inline.kind !== "link") return { kind: inline.kind, children };
    const same = plainText(inline.children) === inline.address;
    return { kind: "link", children, shown: same ? "" : inline.address };
  });
}

/** A document node as the template reads it, or undefined where the PDF does not show it. */
export function pdfNode(node: DocumentNode, mathOf: MathOf): PdfNode | undefined {
  const below = (nodes: readonly DocumentNode[]): PdfNode[] =>
    nodes.flatMap((child) => pdfNode(child, mathOf) ?? []);
  switch (node.kind) {
    case "heading":
    case "prose":
      return { ...node, inlines: pdfInlines(node.inlines, mathOf) };
    case "cautions": {
      const items = node.items.map((item) => ({ ...item, source: say`Source: ${item.source}` }));
      return { ...node, items };
    }
    case "list":
      return { ...node, items: node.items.map(below) };
    case "quote":
      return { ...node, children: below(node.children) };
    // in print the code stands in the annex only
    case "code":
      return undefined;
    case "mathBlock":
      return { ...node, typst: mathOf(node.tex) ?? null };
    case "stream":
      return { ...node, lead: say`Cell ${node.cell} wrote to its error stream:` };
    case "figure":
      return { kind: "figure", number: node.number, alt: node.alt, caption: node.caption };
    case "findings": {
      const findings = node.findings.map((finding) => ({
        severity: severityWord(finding.severity),
        grave: finding.severity !== "note",
        message: finding.message,
        detail: findingDetail(finding),
      }));
      return { kind: "findings", findings };
    }
    case "keyValues": {
      return { ...node, sides: ["left", "left"], widths: [2, 3] };
    }
    case "table": {
      const cells = node.columns.map((_, index) => node.rows.map((row) => row[index]!));
      const widths = columnWidths(
        node.columns.map((column, index) => [column.header, column.unit ?? "", ...cells[index]!]),
        // only a sheet has tables without a number
        node.number === undefined ? WRITTEN_IN : 0,
        2,
      );
      const sides = node.columns.map((column, index) => cellAlign(column.align, cells[index]!));
      const columns = node.columns.map(({ header, unit }) => ({ header, unit: unit ?? "" }));
      return { ...node, columns, sides, widths, notes: node.notes ?? [] };
    }
    case "checklist": {
      const rows = node.items.map(({ clause, requirement, remark, sectionKey }, index) => {
        const link = node.sections?.[index];
        return {
          ...{ clause, requirement, remark, open: sectionKey === undefined },
          ...{ label: link?.id ?? "", section: link ? `${link.number} ${link.title}` : "" },
          words: sectionKey === undefined ? say`open` : say`${sectionKey}: not in this report`,
        };
      });
      const [clause, requirement, answered, remark] = checklistHeaders();
      const header = [clause, requirement, answered, say`Page`, remark];
      const { number, caption } = node;
      return { kind: "checklist", number, caption, header, rows };
    }
    case "proseTable": {
      const columnCount = node.header.length;
      const rows = node.rows.map((row) => {
        // markdown lets a row be shorter or longer than the header
        const full = Array.from({ length: columnCount }, (_, index) => row[index] ?? []);
        return full.map((cell) => pdfInlines(cell, mathOf));
      });
      const header = node.header.map((cell) => pdfInlines(cell, mathOf));
      const texts = node.header.map((cell, index) =>
        [cell, ...node.rows.map((row) => row[index] ?? [])].map(plainText),
      );
      const sides = node.header.map((_, index) => node.align[index] ?? "left");
      return { kind: "proseTable", header, rows, sides, widths: columnWidths(texts) };
    }
    default:
      return { ...node };
  }
}
