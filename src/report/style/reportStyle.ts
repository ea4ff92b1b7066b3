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
 * What a report wears in place of our own dress: made by `openReportStyle`, which has checked every file.
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
