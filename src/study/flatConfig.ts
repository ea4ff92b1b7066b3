/** What stands at the end of a path of an entry. */
export type FlatValue = string | number | boolean | null;

/**
 * Every value of a configuration by its path, such as `materials.gravel.moisturePct`. Things with an id go
 * by it, so that another order is no change; other lists go by position, from 1.
 */
export function flatConfig(value: unknown, path = ""): Map<string, FlatValue> {
  const flat = new Map<string, FlatValue>();
  const below = (key: string, part: unknown) => {
    for (const [at, end] of flatConfig(part, path === "" ? key : `${path}.${key}`)) {
      flat.set(at, end);
    }
  };
  if (value === undefined) return flat;
  if (Array.isArray(value)) {
    value.forEach((part, index) => {
      below(idOf(part) ?? String(index + 1), part);
    });
  } else if (typeof value === "object" && value !== null) {
    for (const [key, part] of Object.entries(value)) below(key, part);
  } else flat.set(path, value as FlatValue);
  return flat;
}

function idOf(part: unknown): string | undefined {
  return typeof part === "object" && part !== null && "id" in part ? String(part.id) : undefined;
}
