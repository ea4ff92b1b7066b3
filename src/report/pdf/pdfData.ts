import { checklistHeaders } from "../../blocks/block.js";
import { say } from "../../words/message.js";
import type { PdfAttachment } from "../attachments.js";
import {
  cellAlign,
  type DocumentNode,
  type Inline,
  plainText,
  type ReportDocument,
} from "../document.js";
import { findingDetail, severityWord } from "../findingWords.js";
import { dateParts, inventedWords, longDate } from "../reportMeta.js";

const RUNNING_TITLE = 80;
/** Umber, as in the HTML file. */
const OUR_ACCENT = "#5b3a1e";

/** The words around the report's own; the template fills in the page numbers. */
function wordsOfReport(): Readonly<Record<string, string>> {
  return {
    contents: say`Contents`,
    table: say`Table`,
    figure: say`Figure`,
    warning: say`Warning`,
    note: say`Note`,
    pageOf: say`page ${"<page>"} of ${"<pages>"}`,
    annexFiles: say`Annex: files read`,
    annexCode: say`Annex: the computation`,
    file: say`File`,
    digest: say`SHA-256 digest`,
  };
}

/** Keeps a right-to-left text from drawing the numbers behind it into its own order (Unicode UAX 9). */
function isolated(text: string): string {
  return startsRightToLeft(text) ? `\u2068${text}\u2069` : text;
}

/** The whole report as the JSON the template reads, before characters are checked. */
export function pdfData(
  document: ReportDocument,
  mathOf: MathOf,
  page: "A4" | "us-letter",
  date: string,
  attachments: readonly PdfAttachment[] = [],
): object {
  const { meta, nodes, annex } = document;
  const title = meta.title.trim() || say`Report`;
  const head = meta.style?.header ?? title;
  const running =
    head.length > RUNNING_TITLE ? `${head.slice(0, RUNNING_TITLE - 1).trimEnd()}…` : head;
  const { style = {} } = meta;
  const madeWith = meta.madeWith ? say`Made with ${meta.madeWith}` : "";
  return {
    meta: {
      title,
      running,
      subtitle: meta.subtitle ?? "",
      description: [meta.subtitle, meta.place].filter(Boolean).join(", "),
      keywords: meta.keywords ?? [],
      facts: [meta.place && isolated(meta.place), longDate(date, meta.language)]
        .filter(Boolean)
        .join("  ·  "),
      longDate: longDate(date, meta.language),
      language: meta.language,
      place: meta.place ?? "",
      accent: style.accent?.light ?? OUR_ACCENT,
      families: [...new Set((style.fonts ?? []).map(({ family }) => family))],
      logo: style.logo ? `logo.${style.logo.type}` : "",
      logoText: style.logo?.alt ?? "",
      foot: style.footer ?? madeWith,
      header: style.header ?? "",
      footer: style.footer ?? "",
      handout: meta.layout === "handout",
      sheet: meta.layout === "sheet",
      paper: page === "A4" ? "a4" : "us-letter",
      ...dateParts(date),
      invented: meta.invented === true,
      inventedShort: inventedWords().short,
      inventedLong: inventedWords().long,
      madeWith,
      inputs: meta.inputs ?? [],
    },
    words: wordsOfReport(),
    attached: attachments.map(({ bytes: _, ...file }, at) => ({ ...file, at })),
    nodes: nodes.flatMap((node) => pdfNode(node, mathOf) ?? []),
    annex: annex.map(({ cell, text }) => ({ lead: say`Code of cell ${cell}`, text })),
  };
}

/** Characters of room for what is written by hand. */
const WRITTEN_IN = 30;

/** A node as the template reads it: plain JSON. */
type PdfNode = { readonly kind: string } & Readonly<Record<string, unknown>>;
/** Typst maths for a TeX formula, or undefined when it has to be shown as TeX. */
type MathOf = (tex: string) => string | undefined;

/** Inline nodes as the template reads them; maths that cannot be set becomes code. */
function pdfInlines(inlines: readonly Inline[], mathOf: MathOf): PdfNode[] {
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
function pdfNode(node: DocumentNode, mathOf: MathOf): PdfNode | undefined {
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

/** Longest text, in characters, of a column that needs no share of the free width. */
const SHORT = 22;
const LONGEST_COUNTED = 70;
const LEAST_COUNTED = 6;
/** A header up to this long stands on one line. */
const BROKEN_HEAD = 14;
/** Characters that a line of a table holds, about, and what two columns keep between them. */
const LINE = 96;
const GAP = 2;
/** In a table too wide for its line: what a long text gets at most. */
const CROWDED = 26;

/**
 * Width of each column: 0 for as wide as its content, otherwise its share of the free width.
 * Long columns share by the length of their text; when all are short they share evenly, so that
 * a table always fills the measure. A column of which only the header is filled counts as `toWriteIn`
 * characters: 0 in a report, more on a sheet where somebody writes by hand.
 *
 * A header longer than its cells may break between words: in a report such a column gets the share of what it
 * needs broken, because as wide as its content would mean as wide as the unbroken header. Where columns as
 * wide as their content would fill the line, all share it by their longest words.
 */
export function columnWidths(
  columns: readonly (readonly string[])[],
  toWriteIn = 0,
  heads = 1,
): number[] {
  const needs = columns.map((cells) => {
    const blank = cells.length > heads && cells.slice(heads).every((cell) => cell === "");
    const head = Math.max(0, ...cells.slice(0, heads).map((cell) => cell.length));
    const inCells = Math.max(
      blank ? toWriteIn : 0,
      ...cells.slice(heads).map((cell) => cell.length),
    );
    if (toWriteIn > 0 || head <= Math.max(inCells, BROKEN_HEAD)) {
      return { length: Math.max(inCells, head), breaks: false };
    }
    const words = cells.slice(0, heads).flatMap((cell) => cell.split(" "));
    const longestWord = Math.max(...words.map((word) => word.length));
    return { length: Math.max(inCells, longestWord, Math.ceil(head / 2)), breaks: true };
  });
  if (needs.every(({ length }) => length <= SHORT)) {
    return needs.some(({ breaks }) => breaks) ? needs.map(share) : needs.map(() => 1);
  }
  const free = ({ length, breaks }: (typeof needs)[number]) => length > SHORT || breaks;
  const taken = needs.reduce(
    (sum, need) => sum + GAP + (free(need) ? LEAST_COUNTED : need.length),
    0,
  );
  if (taken > LINE) return columns.map(crowdedShare);
  return needs.map((need) => (free(need) ? share(need) : 0));
}

/** As wide as its content would leave nothing for the others: every column breaks, but between words only. */
function crowdedShare(cells: readonly string[]): number {
  const word = Math.max(...cells.flatMap((cell) => cell.split(" ")).map(({ length }) => length));
  const whole = Math.max(...cells.map(({ length }) => length));
  return Math.max(LEAST_COUNTED, Math.min(word + 1, CROWDED), Math.min(whole / 3, CROWDED));
}

function share({ length }: { readonly length: number }): number {
  return Math.min(Math.max(length, LEAST_COUNTED), LONGEST_COUNTED);
}

const FIRST_LETTER =
  /^\P{L}*[\p{Script=Arabic}\p{Script=Hebrew}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]/u;

/** Whether the first letter of a text is of a script that runs from right to left. */
export function startsRightToLeft(text: string): boolean {
  return FIRST_LETTER.test(text);
}
