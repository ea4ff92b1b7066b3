import { toBundle } from "../notebook/mimeBundle.js";
import type { NotebookCell } from "../notebook/notebookFile.js";
import { render } from "../words/render.js";
import type { Paper } from "../workshop/papers.js";
import { notebookToDocument } from "./notebookToDocument.js";
import { renderPdf } from "./pdf/renderPdf.js";
import type { ReportMeta } from "./reportMeta.js";

/**
 * Sets a paper of the workshop as a PDF in the style of a handout: no code, no contents, questions kept with
 * their room to write.
 *
 * @param meta of the class: its title stands below that of the paper.
 */
export async function renderPaper(
  paper: Paper,
  meta: Omit<ReportMeta, "layout">,
): Promise<Uint8Array> {
  const { language } = meta;
  const cells: NotebookCell[] = [];
  for (const [index, part] of paper.parts.entries()) {
    const id = `part-${index + 1}`;
    if (part.kind === "heading") {
      const source = `## ${render(part.text, language)}`;
      cells.push({ cell_type: "markdown", id, metadata: {}, source });
      continue;
    }
    const { data, metadata } = await toBundle(part, language);
    cells.push({
      cell_type: "code",
      id,
      metadata: { tags: ["hide-code"] },
      source: "",
      execution_count: null,
      outputs: [{ output_type: "display_data", data, metadata }],
    });
  }
  const notebook = { nbformat: 4, nbformat_minor: 5, metadata: {}, cells };
  const document = notebookToDocument(notebook, {
    ...meta,
    title: render(paper.title, language),
    subtitle: meta.title,
    layout: "handout",
  });
  const { pdf } = await renderPdf(document);
  return pdf;
}
