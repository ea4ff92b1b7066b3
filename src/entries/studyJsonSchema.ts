import { z } from "zod";
import { studySchema } from "./studySchema.js";
import { writtenAs, writtenForms } from "./writtenValue.js";

/** A part of a JSON Schema, as far as it is looked into here. */
export interface SchemaNode {
  readonly [keyword: string]: unknown;
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly additionalProperties?: boolean | SchemaNode;
  readonly items?: SchemaNode;
  readonly anyOf?: readonly SchemaNode[];
  readonly oneOf?: readonly SchemaNode[];
}

export type SchemaDraft = "2020-12" | "7";

/**
 * The JSON Schema of `study.yaml`: what an editor needs to check and complete it while somebody types.
 * It is made from the same schema that `loambook check` uses; what only reading can tell (ranges of
 * quantities, sheets that are not there, conditions between keys) is left to that command.
 *
 * Source: JSON Schema draft 2020-12, or draft 7 for editors that know no later one.
 *
 * @param draft default 2020-12.
 *
 * @example
 * studyJsonSchema().required.slice(0, 3) // => ["format", "title", "place"]
 */
export function studyJsonSchema(
  draft: SchemaDraft = "2020-12",
): SchemaNode & { readonly required: readonly string[] } {
  const { $schema, ...rest } = schemaOf(studySchema, draft);
  return {
    $schema,
    title: "Study of loambook, loambook-study/1",
    ...rest,
    required: rest.required as readonly string[],
  };
}

function schemaOf(schema: z.ZodType, draft: SchemaDraft): SchemaNode {
  return z.toJSONSchema(schema, {
    io: "input",
    target: draft === "7" ? "draft-7" : "draft-2020-12",
    unrepresentable: "any",
    override: ({ zodSchema, jsonSchema }) => {
      const field = zodSchema as unknown as z.ZodType;
      const form = writtenForms.get(field);
      const other = writtenAs.get(field)?.schema as z.ZodType | undefined;
      if (!form && !other) return;
      delete jsonSchema.anyOf;
      delete jsonSchema.type;
      if (form) Object.assign(jsonSchema, form);
      if (other) {
        const { $schema: _, ...forms } = schemaOf(other, draft);
        Object.assign(jsonSchema, forms);
      }
    },
  }) as SchemaNode;
}

/**
 * The keys that `study.yaml` may hold at a place; none where that place is no group of keys.
 *
 * @param path keys and positions from the top, such as `["materials", 0, "share"]`.
 *
 * @example
 * knownKeys(["materials", 0, "share"]) // => ["min", "max"]
 */
export function knownKeys(path: readonly PropertyKey[]): readonly string[] {
  let places: SchemaNode[] = forms(studyJsonSchema());
  for (const step of path) {
    places = places.flatMap((place) => {
      const below =
        typeof step === "number"
          ? place.items
          : (place.properties?.[String(step)] ?? place.additionalProperties);
      return typeof below === "object" ? forms(below) : [];
    });
  }
  return [...new Set(places.flatMap(({ properties }) => Object.keys(properties ?? {})))];
}

/** A place may have several forms: all of them. */
function forms(node: SchemaNode): SchemaNode[] {
  return [node, ...[...(node.anyOf ?? []), ...(node.oneOf ?? [])].flatMap(forms)];
}
