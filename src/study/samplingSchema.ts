import { z } from "zod";
import { dateField } from "./reviewSchema.js";
import { text } from "./schemaFields.js";

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
