import { startsRightToLeft } from "../../blocks/html.js";
import { isBlock, partsOf } from "../../blocks/kinds.js";
import {
  aroundCitations,
  cellText,
  gridSides,
  type SaidCell,
  type SaidGrid,
  type SaidPart,
  type Side,
  sentences,
} from "../../blocks/part.js";
import { say } from "../../words/message.js";
import { type Locale, languageOf, render, renderAll } from "../../words/render.js";
import type { PdfAttachment } from "../attachments.js";
import {
  type DocumentNode,
  type Inline,
  pairedFigures,
  plainText,
  type ReportDocument,
} from "../document.js";
import { dateParts, INVENTED, longDate, NO_APPROVAL, type ReportMeta } from "../reportMeta.js";

const RUNNING_TITLE = 80;
/** Umber, as in the HTML file. */
const OUR_ACCENT = "#5b3a1e";

/** The words around the report's own; the template fills in the page numbers. */
const WORDS = {
  contents: say`Contents`,
  table: say`Table`,
  figure: say`Figure`,
  warning: say`Warning`,
  pageOf: say`page ${"<page>"} of ${"<pages>"}`,
  annexFiles: say`Annex: files read`,
  annexCode: say`Annex: the computation`,
  file: say`File`,
  digest: say`SHA-256 digest`,
  noApproval: NO_APPROVAL,
};

/** Keeps a right-to-left text from drawing the numbers behind it into its own order (Unicode UAX 9). */
function isolated(text: string): string {
  return startsRightToLeft(text) ? `\u2068${text}\u2069` : text;
}

/** The whole report as the JSON the template reads, before characters are checked. */
export function pdfData(
  document: ReportDocument,
  mathOf: MathOf,
  attachments: readonly PdfAttachment[],
): object {
  const { meta, nodes, annex } = document;
  const context = { mathOf, locale: meta.language };
  return {
    meta: pdfMeta(meta),
    words: renderAll(WORDS, meta.language),
    attached: attachments.map(({ bytes: _, ...file }, at) => ({ ...file, at })),
    nodes: pairedFigures(nodes).flatMap((node) =>
      node.kind === "pair"
        ? [{ kind: "pair", figures: node.figures.flatMap((one) => pdfNode(one, context)) }]
        : pdfNode(node, context),
    ),
    annex: annex.map(({ cell, text }) => ({
      lead: render(say`Code of cell ${cell}`, meta.language),
      text,
    })),
  };
}

/** What stands on the title page, at the head and foot of each page, and in the properties. */
function pdfMeta(meta: ReportMeta): object {
  const { language, style = {}, layout, subtitle = "", place = "", page, date } = meta;
  const title = meta.title.trim() || render(say`Report`, language);
  const head = style.header ?? title;
  const madeWith = meta.madeWith ? render(say`Made with ${meta.madeWith}`, language) : "";
  const written = longDate(date, language);
  return {
    title,
    running: head.length > RUNNING_TITLE ? `${head.slice(0, RUNNING_TITLE - 1).trimEnd()}…` : head,
    subtitle,
    description: [subtitle, place].filter(Boolean).join(", "),
    keywords: meta.keywords ?? [],
    facts: [isolated(place), written].filter(Boolean).join("  ·  "),
    longDate: written,
    language: languageOf(language),
    place,
    accent: style.accent?.light ?? OUR_ACCENT,
    families: [...new Set((style.fonts ?? []).map(({ family }) => family))],
    logo: style.logo ? `logo.${style.logo.type}` : "",
    logoText: style.logo?.alt ?? "",
    foot: style.footer ?? madeWith,
    header: style.header ?? "",
    footer: style.footer ?? "",
    handout: layout === "handout",
    sheet: layout === "sheet",
    onePage: meta.onePage === true,
    paper: page === "A4" ? "a4" : "us-letter",
    ...dateParts(date),
    invented: meta.invented === true,
    inventedShort: render(INVENTED.short, language),
    inventedLong: render(INVENTED.long, language),
    madeWith,
    inputs: meta.inputs ?? [],
  };
}

/** Characters of room for what is written by hand. */
const WRITTEN_IN = 30;

/** A node as the template reads it: plain JSON. */
type PdfNode = { readonly kind: string } & Readonly<Record<string, unknown>>;
/** Typst maths for a TeX formula, or undefined when it has to be shown as TeX. */
type MathOf = (tex: string) => string | undefined;

interface Context {
  readonly mathOf: MathOf;
  readonly locale: Locale;
}

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

/** A document node as the template reads it; none where the PDF does not show it. */
function pdfNode(node: DocumentNode, context: Context): PdfNode[] {
  const { mathOf, locale } = context;
  if (isBlock(node)) return partsOf(node, locale).map((part) => pdfPart(part, locale));
  const below = (nodes: readonly DocumentNode[]): PdfNode[] =>
    nodes.flatMap((child) => pdfNode(child, context));
  switch (node.kind) {
    case "heading": {
      const { level, id, number = "" } = node;
      return [{ kind: "heading", level, id, number, inlines: pdfInlines(node.inlines, mathOf) }];
    }
    case "prose":
      return [{ ...node, inlines: pdfInlines(node.inlines, mathOf) }];
    case "list":
      return [{ ...node, items: node.items.map(below) }];
    case "quote":
      return [{ ...node, children: below(node.children) }];
    // in print the code stands in the annex only
    case "code":
      return [];
    case "mathBlock":
      return [{ ...node, typst: mathOf(node.tex) ?? null }];
    case "stream": {
      const lead = render(say`Cell ${node.cell} wrote to its error stream:`, locale);
      return [{ ...node, lead }];
    }
    case "figure": {
      const { number, caption, alt, half = false } = node;
      return [{ kind: "figure", number, alt: render(alt, locale), caption, half }];
    }
    case "proseTable":
      return [pdfProseTable(node, mathOf)];
    case "rule":
    case "writingLines":
      return [{ ...node }];
  }
}

function pdfProseTable(
  node: Extract<DocumentNode, { readonly kind: "proseTable" }>,
  mathOf: MathOf,
): PdfNode {
  const rows = node.rows.map((row) => {
    // markdown lets a row be shorter or longer than the header
    const full = node.header.map((_, index) => row[index] ?? []);
    return full.map((cell) => pdfInlines(cell, mathOf));
  });
  const header = node.header.map((cell) => pdfInlines(cell, mathOf));
  const texts = node.header.map((cell, index) =>
    [cell, ...node.rows.map((row) => row[index] ?? [])].map(plainText),
  );
  const sides = node.header.map((_, index) => node.align[index] ?? "left");
  return { kind: "proseTable", header, rows, sides, widths: columnWidths(texts) };
}

/** A part of a block as the template reads it; every field is there, empty where there is nothing. */
function pdfPart(part: SaidPart, locale: Locale): PdfNode {
  switch (part.part) {
    case "grid":
      return pdfGrid(part, locale);
    case "entries": {
      const entries = part.entries.map(({ tone, tag, title, text, mark, details }) => ({
        grave: tone !== "note",
        tag: tag ?? "",
        title: title ?? "",
        text,
        mark: mark ?? "",
        detail: sentences(details ?? []),
      }));
      const whenEmpty = part.whenEmpty ?? "";
      return { kind: "entries", ordered: part.look === "references", entries, whenEmpty };
    }
    case "text": {
      const { text, cites = [] } = part;
      const [before, behind] = cites.length === 0 ? [text, ""] : aroundCitations(text);
      return { kind: "text", text: together(before), cites, behind };
    }
    case "title":
      return {
        kind: "heading",
        level: part.level,
        id: "",
        number: "",
        inlines: [{ kind: "text", text: part.text }],
      };
    default:
      return { kind: part.part, ...part };
  }
}

/** A column of a table on paper, with the cells below it. */
interface PaperColumn {
  readonly header: string;
  readonly unit: string;
  readonly side: Side;
  readonly share?: number;
  readonly cells: readonly ReturnType<typeof paperCell>[];
}

function pdfGrid(grid: SaidGrid, locale: Locale): PdfNode {
  const { look, caption, number, notes, rowIds = [] } = grid;
  const sides = gridSides(grid);
  const columns = grid.columns.flatMap(({ header, unit = "", share, links }, at): PaperColumn[] => {
    const cells = grid.rows.map((row, index) =>
      paperCell(row[at] ?? "", at === 0 ? rowIds[index] : ""),
    );
    const column = { header, unit, side: sides[at] ?? "left", share, cells };
    if (!links) return [column];
    // where nothing can be clicked, the page says where to look
    const pages = cells.map(({ to }) => ({ ...paperCell(""), pageOf: to }));
    const page = { header: render(say`Page`, locale), unit: "", share: 0, cells: pages };
    return [column, { ...page, side: "right" }];
  });
  const widths = columnWidths(
    columns.map(({ header, unit, cells }) => [header, unit, ...cells.map(({ text }) => text)]),
    // only a sheet has tables without a number
    number === undefined ? WRITTEN_IN : 0,
    2,
  );
  return {
    kind: "grid",
    pairs: look === "pairs",
    caption,
    number: number ?? null,
    whole: isShort(grid),
    notes,
    columns: columns.map(({ header, unit }) => ({ header, unit })),
    sides: columns.map(({ side }) => side),
    widths: columns.map(({ share }, at) => share ?? widths[at]),
    rows: grid.rows.map((_, row) => columns.map(({ cells }) => cells[row])),
  };
}

/** Rows and letters of a table that is not parted: a longer one may break between rows. */
const WHOLE = { rows: 9, letters: 700 };

function isShort({ rows }: SaidGrid): boolean {
  const letters = rows.flat().reduce((sum, cell) => sum + cellText(cell).length, 0);
  return rows.length <= WHOLE.rows && letters <= WHOLE.letters;
}

/**
 * A cell as the template reads it: `pageOf` for a place whose page stands in it, `id` in the first of a row for
 * the links that lead to the row.
 */
function paperCell(cell: SaidCell, id = "") {
  const { to = "", strong = false } = typeof cell === "string" ? {} : cell;
  return { text: together(cellText(cell)), to, strong, pageOf: "", id };
}

/** A number and the unit after it, which a line must not part. */
const MEASURE =
  /(\d) (?=(?:%|°[CF]|mm|cm|m|kg|g|L|t|MPa|kPa|psi|lb|ft|yd|points|days|puntos|días)(?!\p{L}))/gu;

/** With no-break spaces between numbers and their units. */
function together(text: string): string {
  return text.replace(MEASURE, "$1\u00a0");
}

/** Longest text, in characters, of a column that needs no share of the free width. */
const SHORT = 22;
const LONGEST_COUNTED = 70;
const MIN_COUNTED = 6;
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
 * a table always fills the measure. A column of which only the header is filled counts as `blankWidth`
 * characters: 0 in a report, more on a sheet where somebody writes by hand.
 *
 * A header longer than its cells may break between words: in a report such a column gets the share of what it
 * needs broken, because as wide as its content would mean as wide as the unbroken header. Where columns as
 * wide as their content would fill the line, all share it by their longest words.
 */
export function columnWidths(
  columns: readonly (readonly string[])[],
  blankWidth = 0,
  heads = 1,
): number[] {
  const needs = columns.map((cells) => {
    const blank = cells.length > heads && cells.slice(heads).every((cell) => cell === "");
    const head = Math.max(0, ...cells.slice(0, heads).map((cell) => cell.length));
    const inCells = Math.max(
      blank ? blankWidth : 0,
      ...cells.slice(heads).map((cell) => cell.length),
    );
    if (blankWidth > 0 || head <= Math.max(inCells, BROKEN_HEAD)) {
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
    (sum, need) => sum + GAP + (free(need) ? MIN_COUNTED : need.length),
    0,
  );
  if (taken > LINE) return columns.map(crowdedShare);
  return needs.map((need) => (free(need) ? share(need) : 0));
}

/** As wide as its content would leave nothing for the others: every column breaks, but between words only. */
function crowdedShare(cells: readonly string[]): number {
  const word = Math.max(...cells.flatMap((cell) => cell.split(" ")).map(({ length }) => length));
  const whole = Math.max(...cells.map(({ length }) => length));
  return Math.max(MIN_COUNTED, Math.min(word + 1, CROWDED), Math.min(whole / 3, CROWDED));
}

function share({ length }: { readonly length: number }): number {
  return Math.min(Math.max(length, MIN_COUNTED), LONGEST_COUNTED);
}
