import { z } from "zod";
import { dateField } from "./reviewSchema.js";
import { text } from "./schemaFields.js";

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
