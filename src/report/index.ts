/** Executed notebooks as HTML and PDF; the crew's sheets. @module */
export {
  type CalculationLine,
  type WorkedCalculation,
  workedCalculations,
} from "./appendix/calculations.js";
export type { AppendixPart } from "./appendix/parts.js";
export {
  type AppendixSectionKey,
  type PermitAppendix,
  permitAppendix,
} from "./appendix/permitAppendix.js";
export type { PdfAttachment } from "./attachments.js";
export { studyAttachments } from "./attachments.js";
export type {
  BlockNode,
  CodeNode,
  DocumentNode,
  FigureNode,
  HeadingNode,
  Inline,
  ReportDocument,
} from "./document.js";
export { EXPORTED, exportFiles } from "./export/exportFiles.js";
export {
  csvRow,
  harmlessText,
  type ShownNumber,
  shownNumber,
  tableCsv,
} from "./export/exportTable.js";
export { type HtmlOptions, renderHtml } from "./html/renderHtml.js";
export { notebookTitle, notebookToDocument } from "./notebookToDocument.js";
export { type PdfOptions, type PdfResult, renderPdf } from "./pdf/renderPdf.js";
export type {
  ReportFont,
  ReportInput,
  ReportLogo,
  ReportMeta,
  ReportStyle,
} from "./reportMeta.js";
export {
  PDF_STANDARDS,
  type PdfStandard,
  REPORT_TEMPLATES,
  type ReportTemplate,
} from "./reportMeta.js";
export { openReportStyle } from "./style/openReportStyle.js";
export type { OpenedStyle } from "./style/styleFile.js";
export { type WriteReportOptions, type WrittenReport, writeReport } from "./writeReport.js";
export { siteDocument, type WrittenSite, writeSite } from "./writeSite.js";
