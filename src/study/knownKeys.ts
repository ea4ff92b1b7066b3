import { type SchemaNode, studyJsonSchema } from "./studyJsonSchema.js";

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
