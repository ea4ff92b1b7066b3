import { languageOf, render } from "../words/render.js";
import type { Paper } from "../workshop/papers.js";
import type { DocumentNode } from "./document.js";
import { drawnFigure } from "./drawnFigure.js";
import { smartQuotes } from "./markdown.js";
import { renderPdf } from "./pdf/renderPdf.js";
import type { ReportMeta } from "./reportMeta.js";
import { numberNodes } from "./sections.js";

/**
 * Sets a paper of the workshop as a PDF in the style of a handout: no contents, questions kept with their room
 * to write.
 *
 * @param meta of the class: its title stands below that of the paper.
 */
export async function renderPaper(
  paper: Paper,
  meta: Omit<ReportMeta, "layout">,
): Promise<Uint8Array> {
  const { language } = meta;
  const nodes: DocumentNode[] = [];
  for (const [index, part] of paper.parts.entries()) {
    if (part.kind === "figure") nodes.push(await drawnFigure(part, `part-${index}-`, language));
    else if (part.kind !== "heading") nodes.push(part);
    else {
      const inlines = [{ kind: "text", text: render(part.text, language) }] as const;
      nodes.push({ kind: "heading", level: 1, inlines, id: "" });
    }
  }
  const title = render(paper.title, language);
  const { pdf } = await renderPdf({
    meta: { ...meta, title, subtitle: meta.title, layout: "handout" },
    nodes: numberNodes(smartQuotes(nodes, languageOf(language)), language),
    annex: [],
    findings: [],
  });
  return pdf;
}
