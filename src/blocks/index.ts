/** Parts of a report as plain data, and how they are written. @module */
export type {
  CautionsBlock,
  ChecklistBlock,
  FindingsBlock,
  KeyValuesBlock,
  NoteBlock,
  PageBreakBlock,
  ParagraphBlock,
  ReferencesBlock,
  ReportBlock,
  SignatureBlock,
  TableBlock,
  TableColumn,
} from "./block.js";
export { readBlock } from "./kinds.js";
export { blockHtml, type HtmlForm } from "./partHtml.js";
export { blockText } from "./partText.js";
