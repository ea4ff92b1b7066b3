import { say } from "../../words/say.js";
import type { ReportDocument } from "../documentNode.js";
import { inventedWords } from "../inventedWords.js";
import { dateParts, longDate } from "../longDate.js";
import { startsRightToLeft } from "../startsRightToLeft.js";
import type { PdfAttachment } from "./pdfAttachment.js";
import { type MathOf, pdfNode } from "./pdfNode.js";

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
