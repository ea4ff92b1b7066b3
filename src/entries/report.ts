import { z } from "zod";
import { say } from "../words/message.js";
import { render } from "../words/render.js";
import { text } from "./writtenValue.js";

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
        render(
          say`A colour stands in quotes, for example '#1f5f8b': without them the # begins a comment.`,
        ),
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

/** A clause of the user's own code, and where the report answers it. */
export interface ClauseConfig {
  /** As the code numbers it. */
  readonly clause: string;
  readonly requirement: string;
  /** Key of a section of the report; absent while the clause is open. */
  readonly answeredBy?: string;
  readonly remark?: string;
}

/** One line of the decision log. */
export interface DecisionConfig {
  /** ISO 8601 calendar date. */
  readonly date: string;
  readonly what: string;
  readonly why: string;
  readonly insteadOf?: string;
}

/** A calendar date, as the study's own. */
const dateField = z.iso.date(
  render(say`A date is written year-month-day, for example 2026-05-18.`),
);

/** `checklist`: the clauses that a reviewer will look for. */
export const checklistSchema = z.array(
  z
    .strictObject({
      clause: text,
      requirement: text,
      "answered-by": text.optional(),
      remark: text.optional(),
    })
    .transform(
      (entry): ClauseConfig => ({
        ...{ clause: entry.clause, requirement: entry.requirement },
        ...(entry["answered-by"] === undefined ? {} : { answeredBy: entry["answered-by"] }),
        ...(entry.remark === undefined ? {} : { remark: entry.remark }),
      }),
    ),
);

/** `decisions`: what was decided on the way, and why. */
export const decisionsSchema = z.array(
  z
    .strictObject({ date: dateField, what: text, why: text, "instead-of": text.optional() })
    .transform(
      (entry): DecisionConfig => ({
        ...{ date: entry.date, what: entry.what, why: entry.why },
        ...(entry["instead-of"] === undefined ? {} : { insteadOf: entry["instead-of"] }),
      }),
    ),
);

/** How a sample of a material was taken: the user's statement, printed as it stands. */
export interface SamplingConfig {
  /** Id of the material. */
  readonly material: string;
  readonly where: string;
  readonly how: string;
  /** Pits, boreholes or heaps that the sample was put together from. */
  readonly pits?: number;
  /** ISO 8601 calendar date. */
  readonly date?: string;
}

/** `sampling`: one statement or more a material. */
export const samplingSchema = z.array(
  z.strictObject({
    material: text,
    where: text,
    how: text,
    pits: z.int().min(1).max(10_000).optional(),
    date: dateField.optional(),
  }),
);
