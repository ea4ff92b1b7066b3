import { z } from "zod";
import { phrase } from "../words/say.js";
import { text } from "./schemaFields.js";

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

/** `report`: how the reports look. Every key may be left out. */
export const reportSchema = z
  .strictObject({
    template: z.enum(["permit", "handout"]).optional(),
    logo: text.optional(),
    "logo-text": text.optional(),
    accent: z
      .string(
        phrase`A colour stands in quotes, for example '#1f5f8b': without them the # begins a comment.`,
      )
      .optional(),
    header: text.optional(),
    footer: text.optional(),
    css: text.optional(),
    typst: text.optional(),
    fonts: text.optional(),
  })
  .transform(
    ({ "logo-text": logoText, ...rest }): ReportConfig => ({
      ...rest,
      ...(logoText === undefined ? {} : { logoText }),
    }),
  );
