import { isMessage, type Text } from "../words/message.js";

/**
 * Takes a value as what a field must hold, without what is not known of it.
 *
 * @throws TypeError that names the place
 */
export type Field<T> = (value: unknown, place: string) => T;

/** A field for each key of a type: one that is missing, or too many, does not compile. */
export type Fields<T> = { readonly [Key in keyof T]-?: Field<T[Key]> };

function wrong(place: string, value: unknown, expected: string): never {
  throw new TypeError(`invalid \`${place}\`: ${JSON.stringify(value)}; expected ${expected}`);
}

/** A text that is no message: a name, a code, a user's own words. */
export const text: Field<string> = (value, place) =>
  typeof value === "string" ? value : wrong(place, value, "a text");

/** A text or a message. */
export const words: Field<Text> = (value, place) =>
  typeof value === "string" || isMessage(value) ? value : wrong(place, value, "a text");

export const count: Field<number> = (value, place) =>
  typeof value === "number" && Number.isInteger(value) ? value : wrong(place, value, "a count");

export const flag: Field<boolean> = (value, place) =>
  typeof value === "boolean" ? value : wrong(place, value, "true or false");

export function oneOf<const T extends string>(...names: readonly T[]): Field<T> {
  return (value, place) =>
    names.find((name) => name === value) ?? wrong(place, value, `one of ${names.join(", ")}`);
}

export function optional<T>(field: Field<T>): Field<T | undefined> {
  return (value, place) => (value === undefined ? undefined : field(value, place));
}

export function list<T>(field: Field<T>): Field<readonly T[]> {
  return (value, place) =>
    Array.isArray(value)
      ? value.map((item, at) => field(item, `${place}[${at}]`))
      : wrong(place, value, "a list");
}

export function object<T extends object>(fields: Fields<T>): Field<T> {
  return (value, place) => {
    if (typeof value !== "object" || value === null) return wrong(place, value, "an object");
    const given = value as Record<string, unknown>;
    const taken: Record<string, unknown> = {};
    for (const [name, field] of Object.entries<Field<unknown>>(fields)) {
      const own = field(given[name], `${place}.${name}`);
      if (own !== undefined) taken[name] = own;
    }
    return taken as T;
  };
}
