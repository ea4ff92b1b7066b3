import type { ReportDocument } from "../documentNode.js";
import { INVENTED_WORDS } from "../inventedWords.js";
import { dateParts, longDate } from "../longDate.js";
import { type MathOf, pdfNode } from "./pdfNode.js";

const RUNNING_TITLE = 80;

/** The whole report as the JSON the template reads, before characters are checked. */
export function pdfData(
  document: ReportDocument,
  mathOf: MathOf,
  page: "A4" | "us-letter",
  date: string,
): object {
  const { meta, nodes, annex } = document;
  const title = meta.title.trim() || "Report";
  const running =
    title.length > RUNNING_TITLE ? `${title.slice(0, RUNNING_TITLE - 1).trimEnd()}…` : title;
  return {
    meta: {
      title,
      running,
      subtitle: meta.subtitle ?? "",
      description: [meta.subtitle, meta.place].filter(Boolean).join(", "),
      keywords: meta.keywords ?? [],
      facts: [meta.place, longDate(date)].filter(Boolean).join("  ·  "),
      longDate: longDate(date),
      language: meta.language,
      sheet: meta.layout === "sheet",
      paper: page === "A4" ? "a4" : "us-letter",
      ...dateParts(date),
      invented: meta.invented === true,
      inventedShort: INVENTED_WORDS.short,
      inventedLong: INVENTED_WORDS.long,
      madeWith: meta.madeWith ? `Made with ${meta.madeWith}` : "",
      inputs: meta.inputs ?? [],
    },
    nodes: nodes.flatMap((node) => pdfNode(node, mathOf) ?? []),
    annex: annex.map(({ cell, text }) => ({ lead: `Code of cell ${cell}`, text })),
  };
}
