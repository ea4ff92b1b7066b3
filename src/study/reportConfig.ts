/** How a study's reports look, in its maker's own dress. The files lie inside the study folder. */
export interface ReportConfig {
  /** Default `permit`. */
  readonly template?: "permit" | "handout";
  /** An SVG or PNG picture for the title block. */
  readonly logo?: string;
  /** What a reader who cannot see the logo is told. Default “Logo”. */
  readonly logoText?: string;
  /** Colour of headings and rules, as CSS writes colours. */
  readonly accent?: string;
  /** Text of the running head, in place of the title. */
  readonly header?: string;
  /** Text of the running foot, in place of what made the report. */
  readonly footer?: string;
  /** A style sheet that stands behind ours in the HTML file. */
  readonly css?: string;
  /** A Typst file whose names stand in place of ours in the PDF. */
  readonly typst?: string;
  /** A folder of TTF and OTF fonts for scripts that ours do not have. */
  readonly fonts?: string;
}
