import type { FixedOrRange } from "../blend/target.js";
import { acceptedUnits, parseQuantity } from "../quantities/parseQuantity.js";
import { parseSieve } from "../quantities/sieves.js";
import { type Dimension, UNITS } from "../quantities/units.js";
import { say, type Text } from "../words/message.js";

/** Keys and positions from the top of `study.yaml`. */
export type Path = readonly (string | number)[];

/** What is wrong at a place of `study.yaml`; whoever reads the file adds row and remedy. */
export interface Problem {
  readonly path: Path;
  readonly code: "missing-key" | "unknown-key" | "renamed-key" | "wrong-value";
  /** As written. */
  readonly value?: string;
  readonly message: Text;
  readonly expected: Text;
  /** Of an unknown key: the keys of that place. Of a renamed one: its name now. */
  readonly known?: readonly string[];
}

/** Why a value was not read. */
export interface Problems {
  readonly problems: readonly Problem[];
}

export type Read<T> = { readonly value: T } | Problems;

/** A part of a JSON Schema. */
export interface SchemaNode {
  readonly [keyword: string]: unknown;
}

/** How one value of `study.yaml` is written, read and described. */
export interface Kind<T> {
  /** What is to be written, such as “a number with its unit (MPa, psi)”. */
  readonly form: Text;
  /** Limits of it, in words. */
  readonly bounds?: Text;
  readonly examples: readonly (string | number | boolean)[];
  /** The TypeScript type of what is read, where the parts do not say it. */
  readonly type?: string;
  /** Name of that type. */
  readonly name?: string;
  readonly parts?: Parts;
  /** What is said where a key has nothing behind it. */
  readonly whenEmpty?: Text;
  schema(): SchemaNode;
  read(written: unknown, path: Path): Read<T>;
}

/** What stands below a kind, for whoever walks the table. */
export type Parts =
  | {
      readonly kind: "group";
      readonly rows: Rows;
      readonly constants: Readonly<Record<string, string>>;
    }
  | { readonly kind: "list"; readonly item: Kind<unknown> }
  | { readonly kind: "names"; readonly item: Kind<unknown> }
  | { readonly kind: "forms"; readonly forms: Readonly<Record<string, Kind<unknown>>> };

/**
 * One key of a group: its value stands below its name in the configuration, beside the group (`BESIDE`) or
 * nowhere (`NOWHERE`).
 */
export interface Row<As extends string, T, N extends "required" | "optional" | "default"> {
  /** Its name in the configuration. */
  readonly as: As;
  readonly kind: Kind<T>;
  readonly need: N;
  /** One sentence on what it is; form, units, bounds and example are the kind's. */
  readonly says: string;
  /** What is taken where it is left out, as it would be written. */
  readonly byDefault?: unknown;
  /** Names that the key had. */
  readonly earlier: readonly string[];
}

// biome-ignore lint/suspicious/noExplicitAny: a row of any type
export type AnyRow = Row<string, any, "required" | "optional" | "default">;
export type Rows = Readonly<Record<string, AnyRow>>;

/** In the place of a name: the values of this group stand beside it. */
export const BESIDE = "...";
/** In the place of a name: this key must be right and says nothing more. */
export const NOWHERE = "";

/** Whether a value of YAML is a group of keys. */
export function isGroup(written: unknown): written is Readonly<Record<string, unknown>> {
  return typeof written === "object" && written !== null && !Array.isArray(written);
}

/** A value that may not stand there, as it is told. */
export function wrong(path: Path, written: unknown, message: Text, expected: Text): Problems {
  const value = typeof written === "object" ? {} : { value: String(written) };
  return { problems: [{ path, code: "wrong-value", ...value, message, expected }] };
}

function exampleWords([first, second]: Kind<unknown>["examples"]): Text {
  if (second === undefined) return say`for example “${String(first)}”`;
  return say`for example “${String(first)}” or “${String(second)}”`;
}

type Words = Pick<Kind<unknown>, "form" | "bounds" | "examples" | "type">;

/** What should stand there, with its bounds and an example. */
export function wanted({ form, bounds, examples }: Words): Text {
  const parts: Text[] = [form];
  if (bounds !== undefined) parts.push(bounds);
  if (examples.length > 0) parts.push(exampleWords(examples));
  if (parts.length === 3) return say`${parts[0]}, ${parts[1]}, ${parts[2]}`;
  if (parts.length === 2) return say`${parts[0]}, ${parts[1]}`;
  return form;
}

/** Why a value is not taken, and what was expected: by itself what its kind wants. */
export class Refusal {
  constructor(
    readonly message: Text,
    readonly expected?: Text,
  ) {}
}

/** A value without keys of its own. */
function single<T>(
  words: Words & { readonly type: string },
  schema: SchemaNode,
  take: (written: unknown) => T | Refusal,
): Kind<T> {
  const asWritten = { ...words, schema: () => schema, read: (value: unknown) => ({ value }) };
  return shaped(asWritten, words.type, take);
}

/**
 * The same written form, brought to another shape.
 *
 * @param type the TypeScript type of that shape.
 * @param into gives the value, or why there is none.
 */
export function shaped<T, U>(
  kind: Kind<T>,
  type: string,
  into: (value: T) => U | Refusal,
): Kind<U> {
  return {
    ...kind,
    type,
    read(written, path) {
      const read = kind.read(written, path);
      if ("problems" in read) return read;
      const value = into(read.value);
      if (!(value instanceof Refusal)) return { value };
      return wrong(path, written, value.message, value.expected ?? wanted(kind));
    },
  };
}

/** A text that says something. */
export function text(example: string): Kind<string> {
  const words = { form: say`a text`, examples: [example], type: "string" };
  return single(words, { type: "string", minLength: 1 }, (written) => {
    if (typeof written !== "string") return new Refusal(say`This is not a text.`);
    return written.trim() || new Refusal(say`This text is empty.`);
  });
}

/** A text, or a number or truth value that is taken as one. */
export function label(example: string): Kind<string> {
  const { read, ...asText } = text(example);
  return {
    ...asText,
    schema: () => ({ type: ["string", "number", "boolean"] }),
    read: (written, path) =>
      read(/^(number|boolean)$/.test(typeof written) ? String(written) : written, path),
  };
}

/** A text of a fixed pattern. */
export function pattern<T extends string = string>(
  expression: RegExp,
  example: string,
  message: Text,
  type = "string",
): Kind<T> {
  const words = { form: say`a text`, examples: [example], type };
  return single(words, { type: "string", pattern: expression.source }, (written) =>
    typeof written === "string" && expression.test(written)
      ? (written as T)
      : new Refusal(message, exampleWords([example])),
  );
}

/** A calendar date. */
export function date(example: string): Kind<string> {
  const words = { form: say`a date, year-month-day`, examples: [example], type: "string" };
  const isDate = (text: string) => {
    if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
    const parsed = new Date(`${text}T00:00:00Z`);
    return !Number.isNaN(parsed.getTime()) && parsed.toISOString().startsWith(text);
  };
  return single(words, { type: "string", format: "date" }, (written) =>
    typeof written === "string" && isDate(written)
      ? written
      : new Refusal(say`A date is written year-month-day, for example 2026-05-18.`),
  );
}

/** One of some texts, numbers or truth values. */
export function oneOf<const C extends readonly (string | number | boolean)[]>(
  ...choices: C
): Kind<C[number]> {
  const only = choices.length === 1;
  const words = {
    form: only ? say`${String(choices[0])}` : say`one of ${choices.map(String).join(", ")}`,
    examples: [],
    type: choices.map((choice) => JSON.stringify(choice)).join(" | "),
  };
  return single(words, only ? { const: choices[0] } : { enum: choices }, (written) =>
    choices.includes(written as never)
      ? (written as C[number])
      : new Refusal(say`This is none of the values that may stand here.`),
  );
}

interface Limits {
  readonly min?: number;
  readonly max?: number;
  /** The value is more than this. */
  readonly above?: number;
}

/** Limits in words; undefined where there are none. */
export function boundsOf({ min, max, above }: Limits, unit: string): Text | undefined {
  const tail = unit === "" || unit === "-" ? "" : ` ${unit}`;
  if (min !== undefined && max !== undefined) return say`${min} to ${max}${tail}`;
  if (above !== undefined && max !== undefined) {
    return say`more than ${above}, at most ${max}${tail}`;
  }
  if (above !== undefined) return say`more than ${above}${tail}`;
  if (min !== undefined) return say`at least ${min}${tail}`;
  return max === undefined ? undefined : say`at most ${max}${tail}`;
}

/** The worth of rounding when a bound is converted to another unit. */
const ROUNDING = 1e-12;

const OUTSIDE = new Refusal(say`This value is outside the allowed range.`);

function within(value: number, { min, max, above }: Limits): number | Refusal {
  const slack = (bound: number) => ROUNDING * Math.abs(bound);
  const inside =
    (min === undefined || value >= min - slack(min)) &&
    (max === undefined || value <= max + slack(max)) &&
    (above === undefined || value > above);
  return inside ? value : OUTSIDE;
}

/** A number without a unit; `whole` for counts. */
export function number({
  whole = false,
  example,
  ...limits
}: Limits & { readonly whole?: boolean; readonly example: number }): Kind<number> {
  const words = {
    form: whole ? say`a whole number` : say`a number`,
    bounds: boundsOf(limits, ""),
    examples: [example],
    type: "number",
  };
  const { min, max, above } = limits;
  const schema = {
    type: whole ? "integer" : "number",
    ...(min === undefined ? {} : { minimum: min }),
    ...(above === undefined ? {} : { exclusiveMinimum: above }),
    ...(max === undefined ? {} : { maximum: max }),
  };
  return single(words, schema, (written) => {
    if (typeof written !== "number" || !Number.isFinite(written)) {
      return new Refusal(say`This is not a number.`);
    }
    if (whole && !Number.isInteger(written)) {
      return new Refusal(say`This is not a whole number.`);
    }
    return within(written, limits);
  });
}

/** Units of the configuration that are no base units, and what one base unit is in them. */
const OTHER_UNITS = {
  m: { dimension: "length", perBase: 0.001 },
  kg: { dimension: "mass", perBase: 0.001 },
  L: { dimension: "volume", perBase: 0.001 },
  m3: { dimension: "volume", perBase: 1e-6 },
  h: { dimension: "duration", perBase: 1 / 60 },
} as const;

/** A number, then something that may be a unit; which one it is, reading tells. */
const QUANTITY = "^\\s*[+−-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?\\s*[^\\s\\d.,].*$";

const PROBLEMS = {
  empty: say`This field is empty.`,
  "comma-decimal": say`This number is written with a decimal comma.`,
  "not-a-number": say`This is not a number with a unit.`,
  "missing-unit": say`This number has no unit.`,
};

/**
 * A number with its unit, such as `1650 kg/m3`, or a bare one of the dimension `number`.
 *
 * @param unit what the value is given in: a dimension for its base unit, or m, kg, L, m3, h.
 * @param limits in that unit.
 */
export function quantity(
  unit: Dimension | keyof typeof OTHER_UNITS,
  { example, ...limits }: Limits & { readonly example: string },
): Kind<number> {
  const other = unit in OTHER_UNITS ? OTHER_UNITS[unit as keyof typeof OTHER_UNITS] : undefined;
  const dimension = other?.dimension ?? (unit as Dimension);
  const bare = dimension === "number";
  const units = acceptedUnits(dimension);
  const words = {
    form: bare ? say`a number` : say`a number with its unit (${units})`,
    bounds: boundsOf(limits, other ? unit : UNITS[dimension].base),
    examples: [example],
    type: "number",
  };
  const schema = bare ? { type: ["number", "string"] } : { type: "string", pattern: QUANTITY };
  return single(words, schema, (written) => {
    if (typeof written !== "string" && typeof written !== "number") {
      return new Refusal(PROBLEMS["not-a-number"]);
    }
    const parsed = parseQuantity(String(written), dimension);
    if ("value" in parsed) {
      return within(other ? parsed.value * other.perBase : parsed.value, limits);
    }
    return new Refusal(
      parsed.problem === "unknown-unit"
        ? say`The unit “${parsed.unit ?? ""}” is not known here.`
        : PROBLEMS[parsed.problem],
    );
  });
}

/** A quantity of more than nothing. */
export function positive(unit: Parameters<typeof quantity>[0], example: string): Kind<number> {
  return quantity(unit, { above: 0, example });
}

/** A share or moisture, in percent. */
export function percent(example: string, max = 100): Kind<number> {
  return quantity("ratio", { min: 0, max, example });
}

/** A density of loose soil, aggregate or cement, in kg/m³: between ash and packed gravel. */
export function looseDensity(example: string): Kind<number> {
  return quantity("density", { min: 500, max: 2500, example });
}

/** A dry density of rammed earth, in kg/m³: between loose soil and solid grains. */
export function earthDensity(example: string): Kind<number> {
  return quantity("density", { min: 1200, max: 2600, example });
}

/** A grain size, or a sieve such as `3/4 in` or `No. 4`, in mm. */
export function size(...examples: readonly string[]): Kind<number> {
  const limits = { min: 1, max: 100 };
  const words = {
    form: say`a grain size with its unit, or a sieve`,
    bounds: boundsOf(limits, "mm"),
    examples,
    type: "number",
  };
  return single(words, { type: "string" }, (written) => {
    const text = String(written);
    // A bare number would be taken as mm in silence.
    if (/^[\d.,\s]+$/.test(text)) return new Refusal(PROBLEMS["missing-unit"]);
    const value = typeof written === "string" ? parseSieve(text) : undefined;
    return value === undefined
      ? new Refusal(say`This is not a grain size.`)
      : within(value, limits);
  });
}

/** One value, or two with “to” between them. */
export function fixedOrRange(
  kind: Kind<number>,
  ...examples: readonly (string | number)[]
): Kind<FixedOrRange> {
  const words = {
    form: say`${kind.form}, or two with “to” between them`,
    bounds: kind.bounds,
    examples,
    type: "FixedOrRange",
  };
  return single(words, { type: kind.schema().type }, (written) => {
    const parts = String(written).split(/\s+to\s+/);
    const read = allOf(parts.map((part) => kind.read(part, [])));
    if ("problems" in read) return new Refusal(read.problems[0].message);
    const [low, high, more] = read.value;
    if (more !== undefined) return new Refusal(say`This is neither a value nor a range.`);
    if (high === undefined) return low;
    if (low < high) return { min: low, max: high };
    return new Refusal(say`This range runs from its larger end to its smaller.`);
  });
}

/** Several values as one, or the problems of all. */
export function allOf<T>(reads: readonly Read<T>[]): Read<T[]> {
  const problems = reads.flatMap((read) => ("problems" in read ? read.problems : []));
  if (problems.length > 0) return { problems };
  return { value: reads.flatMap((read) => ("value" in read ? [read.value] : [])) };
}
