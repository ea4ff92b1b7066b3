import { z } from "zod";
import { phrase } from "../words/say.js";
import type { ReportConfig } from "./reportConfig.js";
import { text } from "./schemaFields.js";

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
