import { renderHtml } from "./html/renderHtml.js";
import { notebookToDocument } from "./notebookToDocument.js";
import { renderPdf } from "./pdf/renderPdf.js";

const SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1"/>';

/**
 * Makes a report of next to nothing, so that the parser, the formula setter, the typesetter and its
 * fonts are loaded when a real one is asked for: done while a notebook runs on the other core.
 */
export async function warmReport(): Promise<void> {
  const metadata = { "image/svg+xml": { alt: "none", caption: "none" } };
  const output = { output_type: "display_data", data: { "image/svg+xml": SVG }, metadata };
  const cells = [
    { cell_type: "markdown", metadata: {}, source: "$x$" },
    { cell_type: "code", metadata: {}, source: "", execution_count: null, outputs: [output] },
  ];
  const document = notebookToDocument(
    { nbformat: 4, nbformat_minor: 5, metadata: {}, cells },
    { title: "none", date: "2000-01-01", language: "en", page: "A4" },
  );
  renderHtml(document);
  await renderPdf(document);
}
