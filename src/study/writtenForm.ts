import { z } from "zod";

/** What a field looks like in `study.yaml`, as JSON Schema, where its type alone says too little. */
export interface WrittenForm {
  readonly type?: "string" | "number" | readonly ["string", "number"];
  readonly description: string;
  readonly examples?: readonly (string | number)[];
  readonly pattern?: string;
}

/** By field; fields that read a text into a number stand here. */
export const writtenForms = z.registry<WrittenForm>();

/**
 * Fields that accept more than one form and sort them out themselves: a schema of those forms. (The
 * registry would rewrite the schema's own type, so it is told nothing of it.)
 */
export const writtenAs = z.registry<{ readonly schema: unknown }>();
