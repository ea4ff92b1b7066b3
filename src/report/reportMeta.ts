import type { Language } from "../words/language.js";
import type { ReportTemplate } from "./reportTemplate.js";
import type { ReportStyle } from "./style/reportStyle.js";

/** A file the study was computed from, told apart by its SHA-256 digest (hexadecimal). */
export interface ReportInput {
  readonly file: string;
  readonly sha256: string;
}

/**
 * What the title page of a report says, and what goes into the properties of the PDF.
 * Given by the caller: nothing here is taken from a clock or from the machine.
 */
export interface ReportMeta {
  readonly title: string;
  readonly subtitle?: string;
  readonly place?: string;
  /** Date of the study, `YYYY-MM-DD`. */
  readonly date: string;
  /** Of the words around the report's own, of hyphenation and of dates. */
  readonly language: Language;
  /** True when the laboratory data are invented for a demonstration: shown on every page. */
  readonly invented?: boolean;
  readonly page: "A4" | "us-letter";
  /**
   * One of the report templates, or `sheet`: large type to read at arm's length, no title page, no
   * contents, no numbers. Default `permit`.
   */
  readonly layout?: ReportTemplate | "sheet";
  /** The maker's own dress, from `openReportStyle`. */
  readonly style?: ReportStyle;
  readonly keywords?: readonly string[];
  readonly inputs?: readonly ReportInput[];
  /** Name and version of what made the report, for example `loambook 0.1.0`. */
  readonly madeWith?: string;
}
