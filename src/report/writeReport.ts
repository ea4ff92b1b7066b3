import type { Finding } from "../findings/finding.js";
import { filesAlreadyIn, writeFilesWhole } from "../notebook/wholeFolder.js";
import type { PdfAttachment } from "./attachments.js";
import { renderHtml } from "./html/renderHtml.js";
import { notebookToDocument } from "./notebookToDocument.js";
import { renderPdf } from "./pdf/renderPdf.js";
import type { PdfStandard, ReportMeta } from "./reportMeta.js";

/** What `writeReport` needs to know. */
export interface WriteReportOptions {
  /** Executed notebook, as parsed from its JSON. */
  readonly notebook: object;
  /** Its `layout` chooses the template, its `style` the look of the pages. */
  readonly meta: ReportMeta;
  /** Folder for the files; made when it is not there. */
  readonly outFolder: string;
  /** Whether a report already in the folder may be replaced; default false. */
  readonly replace?: boolean;
  /** Name of the two files without their endings; default `report`. */
  readonly name?: string;
  /** Further files that belong to the report, by their names. */
  readonly companions?: Readonly<Record<string, string | Uint8Array>>;
  /** Default `a-2a`. */
  readonly standard?: PdfStandard;
  /** Files to stand inside the PDF; only with the standard `a-3a`. Default none. */
  readonly attachments?: readonly PdfAttachment[];
}

/** Where the report is and what was found while making it. */
export interface WrittenReport {
  readonly htmlPath: string;
  readonly pdfPath: string;
  readonly findings: readonly Finding[];
}

/**
 * Makes one HTML and one PDF file from an executed notebook, with their companions, whole or not at
 * all: everything is rendered and written beside the wanted folder before anything there is touched.
 * With `replace` these files are exchanged and others in the folder are left alone.
 *
 * The words around the report's own are said in the language of `meta`.
 *
 * @throws RangeError when the folder holds something and `replace` is not set, and when the date
 * is no day of the calendar; TypeError when the notebook is none
 */
export async function writeReport(options: WriteReportOptions): Promise<WrittenReport> {
  const { outFolder, replace, name = "report", companions, standard, attachments } = options;
  // before anything is rendered: a refusal must not cost a minute
  const present = await filesAlreadyIn(outFolder, replace);
  const document = notebookToDocument(options.notebook, options.meta);
  const html = renderHtml(document);
  const { pdf, findings } = await renderPdf(document, { standard, attachments });
  const contents = { [`${name}.html`]: html, [`${name}.pdf`]: pdf, ...companions };
  const [htmlPath, pdfPath] = await writeFilesWhole(outFolder, contents, present);
  return { htmlPath, pdfPath, findings: [...document.findings, ...findings] };
}
