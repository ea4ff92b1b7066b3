import { z } from "zod";
import type { MappedSheet, SheetSource } from "../lab/sheet/grid.js";
import { say } from "../words/message.js";
import { render } from "../words/render.js";
import { writtenAs } from "./writtenValue.js";

const DELIMITERS = { comma: ",", semicolon: ";", tab: "\t" } as const;

const text = z.string().trim().min(1, render(say`This text is empty.`));
const names = z.record(text, text).default({});
const value = z.union([z.string(), z.number(), z.boolean()]).transform(String);

const mapped = z
  .strictObject({
    sheet: text,
    columns: names,
    lines: names,
    cells: names,
    facts: z.record(text, value).default({}),
    "skip-rows": z.int().min(0).max(1000).default(0),
    delimiter: z.enum(["comma", "semicolon", "tab"]).optional(),
    decimal: z.enum(["point", "comma"]).default("point"),
  })
  .transform(
    ({ "skip-rows": skipRows, delimiter, decimal, ...rest }): MappedSheet => ({
      ...rest,
      skipRows,
      ...(delimiter === undefined ? {} : { delimiter: DELIMITERS[delimiter] }),
      decimalComma: decimal === "comma",
    }),
  );

const field = z.unknown().transform((entry, context): SheetSource => {
  const mapping = typeof entry === "object" && entry !== null && !Array.isArray(entry);
  const outcome = (mapping ? mapped : text).safeParse(entry);
  if (outcome.success) return outcome.data;
  // As they are, so that unknown and missing keys are told as everywhere else.
  for (const issue of outcome.error.issues) context.addIssue({ ...issue, input: entry } as never);
  return z.NEVER;
});

/** A sheet inside the study folder: its name, or a group with its name and how to read its own layout. */
export const sheetField = field.register(writtenAs, { schema: z.union([text, mapped]) });

/** The files of sheets, whether named bare or with how they are read; those that are not given are left out. */
export function sheetsOf(...sources: readonly (SheetSource | undefined)[]): string[] {
  return sources.flatMap((source) => {
    if (source === undefined) return [];
    return [typeof source === "string" ? source : source.sheet];
  });
}
