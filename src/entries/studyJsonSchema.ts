import type { SchemaNode } from "./kinds.js";
import { STUDY } from "./study.js";

export type SchemaDraft = "2020-12" | "7";

const DRAFTS: Readonly<Record<SchemaDraft, string>> = {
  "2020-12": "https://json-schema.org/draft/2020-12/schema",
  "7": "http://json-schema.org/draft-07/schema#",
};

/**
 * The JSON Schema of `study.yaml`: what an editor needs to check and complete it while somebody types, with
 * a description, an example and the default of each key. It is made from the table that `loambook check`
 * reads by; what only reading can tell (ranges of quantities, sheets that are not there, conditions between
 * keys) is left to that command.
 *
 * Source: JSON Schema draft 2020-12, or draft 7 for editors that know no later one.
 *
 * @param draft default 2020-12.
 *
 * @example
 * studyJsonSchema().required // => ["format", "materials"]
 */
export function studyJsonSchema(
  draft: SchemaDraft = "2020-12",
): SchemaNode & { readonly required: readonly string[] } {
  const schema = STUDY.schema();
  return {
    $schema: DRAFTS[draft],
    title: "Study of loambook, loambook-study/1",
    ...schema,
    required: schema.required as readonly string[],
  };
}
