import { z } from "zod";
import { parseSieve } from "../quantities/parseSieve.js";
import { say } from "../words/say.js";
import { writtenForms } from "./writtenForm.js";

const field = z.string().transform((text, context): number => {
  const sizeMm = /^[\d.,\s]+$/.test(text) ? undefined : parseSieve(text);
  if (sizeMm !== undefined && sizeMm >= 1 && sizeMm <= 100) return sizeMm;
  context.addIssue({
    code: "custom",
    message: say`This is not a grain size.`,
    params: { expected: say`1 mm to 100 mm, for example “20 mm” or “3/4 in”`, value: text },
  });
  return z.NEVER;
});

/** A grain size of `study.yaml`: a number with its unit, or a sieve such as `3/4 in` or `No. 4`; gives mm. */
export const sizeField = field.register(writtenForms, {
  type: "string",
  description: "A grain size with its unit, or a sieve, 1 mm to 100 mm.",
  examples: ["20 mm", "3/4 in", "No. 4"],
});
