import { say, type Text } from "../words/message.js";
import { type Locale, languageOf } from "../words/render.js";

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
  readonly language: Locale;
  /** True when the laboratory data are invented for a demonstration: shown on every page. */
  readonly invented?: boolean;
  readonly page: "A4" | "us-letter";
  /**
   * One of the report templates, or `sheet`: large type to read at arm's length, no title page, no
   * contents, no numbers. Default `permit`.
   */
  readonly layout?: ReportTemplate | "sheet";
  /** Of a sheet: that it is set as much smaller as one page asks, as far as it can still be read. */
  readonly onePage?: boolean;
  /** Of a sheet: how large it is printed, part of the usual size; default 1. */
  readonly printScale?: number;
  /** Whether the code of the notebook's cells is shown; default false. */
  readonly code?: boolean;
  /** The maker's own styling, from `openReportStyle`. */
  readonly style?: ReportStyle;
  readonly keywords?: readonly string[];
  readonly inputs?: readonly ReportInput[];
  /** Name and version of what made the report, for example `loambook 0.1.0`. */
  readonly madeWith?: string;
}

/**
 * Forms that a report can be made in.
 * - `permit`: for a reviewer: title, contents, all tables and annexes.
 * - `handout`: for a workshop: a short title block, larger type, lines to write on below exercises (cells
 *   tagged `exercise`, or `exercise-8` for eight lines), no checksums and no computation.
 */
export const REPORT_TEMPLATES = ["permit", "handout"] as const;

export type ReportTemplate = (typeof REPORT_TEMPLATES)[number];

/**
 * Standards that a PDF can be made to: archival and tagged (`a-2a`), the same with files attached (`a-3a`),
 * universally accessible (`ua-1`), or none of them.
 */
export const PDF_STANDARDS = ["a-2a", "a-3a", "ua-1", "none"] as const;

export type PdfStandard = (typeof PDF_STANDARDS)[number];

/** A picture for the title block, checked and ready to be set. */
export type ReportLogo =
  | { readonly type: "svg"; readonly svg: string; readonly alt: string }
  | { readonly type: "png"; readonly bytes: Uint8Array; readonly alt: string };

/** A font beside the report's own, for scripts that those do not have. */
export interface ReportFont {
  readonly file: string;
  /** As the font names itself. */
  readonly family: string;
  readonly bytes: Uint8Array;
}

/**
 * A maker's own styling in place of ours: made by `openReportStyle`, which has checked every file.
 * All of it is optional; text in it is data, never markup.
 */
export interface ReportStyle {
  readonly logo?: ReportLogo;
  /** `#rrggbb`: on paper, and the same hue on a dark screen. */
  readonly accent?: { readonly light: string; readonly dark: string };
  readonly header?: string;
  readonly footer?: string;
  /** Style sheet that stands behind ours in the HTML file. */
  readonly css?: string;
  /** Text of a Typst file whose names stand in place of ours in the PDF. */
  readonly typst?: string;
  readonly fonts?: readonly ReportFont[];
}

/** The parts of an ISO date `YYYY-MM-DD`; throws RangeError when it is no day of the calendar. */
export function dateParts(iso: string): { year: number; month: number; day: number } {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso);
  const [year, month, day] = (match ?? []).slice(1).map(Number) as [number, number, number];
  const date = new Date(Date.UTC(year, month - 1, day));
  if (match === null || date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day) {
    throw new RangeError(`invalid \`meta.date\`: ${iso}; expected a day as YYYY-MM-DD`);
  }
  return { year, month, day };
}

/** Today, or the day of SOURCE_DATE_EPOCH where it is set: for the report of a study that has no date. */
export function dayOfMaking(): string {
  const epoch = process.env.SOURCE_DATE_EPOCH;
  const made = epoch === undefined ? new Date() : new Date(1000 * Number(epoch));
  return made.toISOString().slice(0, 10);
}

/** A date as a reader of any country understands it: `2024-05-02` → `2 May 2024`, `2 de mayo de 2024`. */
export function longDate(iso: string, locale: Locale = "en"): string {
  const { year, month, day } = dateParts(iso);
  // the order of day and month must not depend on the country
  const format = new Intl.DateTimeFormat(languageOf(locale) === "en" ? "en-GB" : "es", {
    dateStyle: "long",
    timeZone: "UTC",
  });
  return format.format(Date.UTC(year, month - 1, day));
}

/** What a report on invented data says where it can be seen, and on each page of the PDF. */
export const INVENTED: { readonly long: Text; readonly short: Text } = {
  long: say`The laboratory data in this report are invented for demonstration. Do not build from it.`,
  short: say`Invented demonstration data: do not build from this report.`,
};

/** What every sheet for a crew says at its foot: whoever reads it on site may see nothing else of the study. */
export const NO_APPROVAL: Text = say`Nothing here is an approval. Local rules and the responsible person govern.`;
