import { acceptedUnits, parseQuantity } from "../quantities/parseQuantity.js";
import { parseSieve } from "../quantities/sieves.js";
import { type Dimension, UNITS } from "../quantities/units.js";
import { say, type Text } from "../words/message.js";
import { render } from "../words/render.js";

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

export type Read<T> = { readonly value: T } | { readonly problems: readonly Problem[] };

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

type Need = "required" | "optional" | "default" | "inline" | "unread";

/** One key of a group. */
export interface Row<As extends string, T, N extends Need> {
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
  /** Of an inline group: what leaving it out means; `defaults` reads an empty group. */
  readonly leftOut?: "defaults" | "nothing" | "problem";
}

// biome-ignore lint/suspicious/noExplicitAny: a table of rows of any type
export type Rows = Readonly<Record<string, Row<string, any, Need>>>;

type Named<R extends Rows, N extends Need> = {
  [K in keyof R]: R[K]["need"] extends N ? K : never;
}[keyof R];
type ValueOf<X> = X extends Row<string, infer T, Need> ? T : never;
type Both<U> = (U extends unknown ? (one: U) => void : never) extends (all: infer I) => void
  ? I
  : never;
type Flat<T> = { readonly [K in keyof T]: T[K] } & {};

/** The type that a table of rows is read into. */
export type Entry<R extends Rows> = Flat<
  { [K in Named<R, "required" | "default"> as R[K]["as"]]: ValueOf<R[K]> } & {
    [K in Named<R, "optional"> as R[K]["as"]]?: ValueOf<R[K]>;
  } & ([Named<R, "inline">] extends [never] ? unknown : Both<ValueOf<R[Named<R, "inline">]>>)
>;

interface RowOptions {
  readonly earlier?: readonly string[];
}

/** A key that must be there. */
export function required<const As extends string, T>(
  as: As,
  kind: Kind<T>,
  says: string,
  { earlier = [] }: RowOptions = {},
): Row<As, T, "required"> {
  return { as, kind, need: "required", says, earlier };
}

/** A key that may be left out, and is then not in the configuration. */
export function optional<const As extends string, T>(
  as: As,
  kind: Kind<T>,
  says: string,
  { earlier = [] }: RowOptions = {},
): Row<As, T, "optional"> {
  return { as, kind, need: "optional", says, earlier };
}

/**
 * A key that may be left out.
 *
 * @param written what is taken then, as it would be written.
 * @throws TypeError where the kind does not read that.
 */
export function byDefault<const As extends string, T>(
  as: As,
  kind: Kind<T>,
  written: unknown,
  says: string,
  { earlier = [] }: RowOptions = {},
): Row<As, T, "default"> {
  defaultOf(kind, written);
  return { as, kind, need: "default", says, byDefault: written, earlier };
}

/**
 * A group whose values stand in the configuration beside the group itself, not below it. Left out, its keys
 * have their own defaults.
 */
export function inline<T>(
  kind: Kind<T>,
  says: string,
  { earlier = [] }: RowOptions = {},
): Row<never, T, "inline"> {
  defaultOf(kind, {});
  return { as: "" as never, kind, need: "inline", says, earlier, leftOut: "defaults" };
}

/** As `inline`, of a group that must be there. */
export function requiredInline<T>(kind: Kind<T>, says: string): Row<never, T, "inline"> {
  return { as: "" as never, kind, need: "inline", says, earlier: [], leftOut: "problem" };
}

/** As `inline`, of a group that is there with all its required keys or not at all. */
export function optionalInline<T>(kind: Kind<T>, says: string): Row<never, Partial<T>, "inline"> {
  return { as: "" as never, kind, need: "inline", says, earlier: [], leftOut: "nothing" };
}

/** A key that must be right and says nothing more. */
export function unread(kind: Kind<unknown>, says: string): Row<never, unknown, "unread"> {
  return { as: "" as never, kind, need: "unread", says, earlier: [] };
}

/** Reads what must be right, such as a default of the table itself. */
function defaultOf<T>(kind: Kind<T>, written: unknown): T {
  const read = kind.read(written, []);
  if ("value" in read) return read.value;
  throw new TypeError(`invalid default: ${JSON.stringify(written)}`);
}

/** Whether a value of YAML is a group of keys. */
export function isGroup(written: unknown): written is Readonly<Record<string, unknown>> {
  return typeof written === "object" && written !== null && !Array.isArray(written);
}

function wrong(
  path: Path,
  written: unknown,
  message: Text,
  expected: Text,
): { readonly problems: readonly Problem[] } {
  const value = typeof written === "object" ? {} : { value: String(written) };
  return { problems: [{ path, code: "wrong-value", ...value, message, expected }] };
}

function exampleWords(examples: Kind<unknown>["examples"]): Text {
  const [first, second] = examples;
  if (second === undefined) return say`for example “${String(first)}”`;
  return say`for example “${String(first)}” or “${String(second)}”`;
}

/** What should stand there, with its bounds and an example. */
export function wanted({ form, bounds, examples }: Omit<Kind<unknown>, "read" | "schema">): Text {
  const parts: Text[] = [form];
  if (bounds !== undefined) parts.push(bounds);
  if (examples.length > 0) parts.push(exampleWords(examples));
  if (parts.length === 3) return say`${parts[0]}, ${parts[1]}, ${parts[2]}`;
  if (parts.length === 2) return say`${parts[0]}, ${parts[1]}`;
  return form;
}

/** A text that says something. */
export function text(example: string): Kind<string> {
  const words = { form: say`a text`, examples: [example], type: "string" };
  return {
    ...words,
    schema: () => ({ type: "string", minLength: 1 }),
    read(written, path) {
      if (typeof written !== "string") {
        return wrong(path, written, say`This is not a text.`, wanted(words));
      }
      const value = written.trim();
      if (value === "") return wrong(path, written, say`This text is empty.`, wanted(words));
      return { value };
    },
  };
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
  return {
    ...words,
    schema: () => ({ type: "string", pattern: expression.source }),
    read: (written, path) =>
      typeof written === "string" && expression.test(written)
        ? { value: written as T }
        : wrong(path, written, message, exampleWords([example])),
  };
}

/** A calendar date. */
export function date(example: string): Kind<string> {
  const words = { form: say`a date, year-month-day`, examples: [example], type: "string" };
  const isDate = (text: string) => {
    if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
    const parsed = new Date(`${text}T00:00:00Z`);
    return !Number.isNaN(parsed.getTime()) && parsed.toISOString().startsWith(text);
  };
  return {
    ...words,
    schema: () => ({ type: "string", format: "date" }),
    read: (written, path) =>
      typeof written === "string" && isDate(written)
        ? { value: written }
        : wrong(
            path,
            written,
            say`A date is written year-month-day, for example 2026-05-18.`,
            wanted(words),
          ),
  };
}

/** One of some texts, numbers or truth values. */
export function oneOf<const C extends readonly (string | number | boolean)[]>(
  ...choices: C
): Kind<C[number]> {
  const form =
    choices.length === 1
      ? say`${String(choices[0])}`
      : say`one of ${choices.map(String).join(", ")}`;
  return {
    form,
    examples: [],
    type: choices.map((choice) => JSON.stringify(choice)).join(" | "),
    schema: () => (choices.length === 1 ? { const: choices[0] } : { enum: choices }),
    read: (written, path) =>
      choices.includes(written as never)
        ? { value: written as C[number] }
        : wrong(path, written, say`This is none of the values that may stand here.`, form),
  };
}

interface Limits {
  readonly min?: number;
  readonly max?: number;
  /** The value is more than this. */
  readonly above?: number;
}

function boundsOf({ min, max, above }: Limits, unit: string): Text | undefined {
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

function inside(value: number, { min, max, above }: Limits): boolean {
  const slack = (bound: number) => ROUNDING * Math.abs(bound);
  return (
    (min === undefined || value >= min - slack(min)) &&
    (max === undefined || value <= max + slack(max)) &&
    (above === undefined || value > above)
  );
}

/** A number without a unit; `whole` for counts. */
export function number(
  limits: Limits & { readonly whole?: boolean; readonly example: number },
): Kind<number> {
  const { whole = false, example, ...bounded } = limits;
  const words = {
    form: whole ? say`a whole number` : say`a number`,
    bounds: boundsOf(bounded, ""),
    examples: [example],
    type: "number",
  };
  const { min, max, above } = bounded;
  return {
    ...words,
    schema: () => ({
      type: whole ? "integer" : "number",
      ...(min === undefined ? {} : { minimum: min }),
      ...(above === undefined ? {} : { exclusiveMinimum: above }),
      ...(max === undefined ? {} : { maximum: max }),
    }),
    read(written, path) {
      if (typeof written !== "number" || !Number.isFinite(written)) {
        return wrong(path, written, say`This is not a number.`, wanted(words));
      }
      if (whole && !Number.isInteger(written)) {
        return wrong(path, written, say`This is not a whole number.`, wanted(words));
      }
      if (!inside(written, bounded)) {
        return wrong(path, written, say`This value is outside the allowed range.`, wanted(words));
      }
      return { value: written };
    },
  };
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
  return {
    ...words,
    schema: () => (bare ? { type: ["number", "string"] } : { type: "string", pattern: QUANTITY }),
    read(written, path) {
      if (typeof written !== "string" && typeof written !== "number") {
        return wrong(path, written, PROBLEMS["not-a-number"], wanted(words));
      }
      const parsed = parseQuantity(String(written), dimension);
      if ("problem" in parsed) {
        const message =
          parsed.problem === "unknown-unit"
            ? say`The unit “${parsed.unit ?? ""}” is not known here.`
            : PROBLEMS[parsed.problem];
        return wrong(path, written, message, wanted(words));
      }
      const value = other ? parsed.value * other.perBase : parsed.value;
      if (inside(value, limits)) return { value };
      return wrong(path, written, say`This value is outside the allowed range.`, wanted(words));
    },
  };
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
  return {
    ...words,
    schema: () => ({ type: "string" }),
    read(written, path) {
      const text = String(written);
      // A bare number would be taken as mm in silence.
      if (/^[\d.,\s]+$/.test(text))
        return wrong(path, written, PROBLEMS["missing-unit"], wanted(words));
      const value = typeof written === "string" ? parseSieve(text) : undefined;
      if (value === undefined)
        return wrong(path, written, say`This is not a grain size.`, wanted(words));
      if (inside(value, limits)) return { value };
      return wrong(path, written, say`This value is outside the allowed range.`, wanted(words));
    },
  };
}

/** One value, or two with “to” between them. */
export function fixedOrRange(
  kind: Kind<number>,
  ...examples: readonly (string | number)[]
): Kind<number | { readonly min: number; readonly max: number }> {
  const words = {
    form: say`${kind.form}, or two with “to” between them`,
    bounds: kind.bounds,
    examples,
    type: "FixedOrRange",
  };
  return {
    ...words,
    schema: () => ({ type: kind.schema().type }),
    read(written, path) {
      const parts = String(written).split(/\s+to\s+/);
      const reads = parts.map((part) => kind.read(part, path));
      const [first] = reads.flatMap((read) => ("problems" in read ? read.problems : []));
      if (first !== undefined) return wrong(path, written, first.message, wanted(words));
      const [low, high, more] = reads.flatMap((read) => ("value" in read ? [read.value] : []));
      if (more !== undefined) {
        return wrong(path, written, say`This is neither a value nor a range.`, wanted(words));
      }
      if (high === undefined) return { value: low };
      if (low < high) return { value: { min: low, max: high } };
      return wrong(
        path,
        written,
        say`This range runs from its larger end to its smaller.`,
        wanted(words),
      );
    },
  };
}

/** What must hold between the keys of a group. */
export interface Check<E> {
  /** The key that it is told at; without it the group. */
  readonly at?: string;
  readonly holds: (entry: E) => boolean;
  readonly message: Text;
  readonly expected: Text;
}

interface GroupOptions<E, C> {
  /** Name of the type. */
  readonly name?: string;
  readonly checks?: readonly Check<E>[];
  /** What stands in the configuration without being written. */
  readonly constants?: C;
}

/**
 * A group of keys, in the order in which they stand in the configuration.
 *
 * All problems of its keys are told together; only where there are none, its checks are made.
 */
export function group<
  const R extends Rows,
  const C extends Readonly<Record<string, string>> = Record<never, string>,
>(
  rows: R,
  { name, checks = [], constants }: GroupOptions<Entry<R>, C> = {},
): Kind<Flat<C & Entry<R>>> {
  const names = Object.keys(rows);
  return {
    form: say`a group of keys`,
    examples: [],
    ...(name === undefined ? {} : { name }),
    parts: { kind: "group", rows, constants: constants ?? {} },
    schema: () => groupSchema(rows),
    read(written, path) {
      if (!isGroup(written)) {
        return wrong(
          path,
          written,
          say`This is no group of keys.`,
          say`the keys ${names.join(", ")}`,
        );
      }
      const entry: Record<string, unknown> = { ...constants };
      const problems = keyProblems(rows, written, path);
      for (const [key, row] of Object.entries(rows)) {
        const read = readRow(key, row, written, path);
        if ("problems" in read) problems.push(...read.problems);
        else Object.assign(entry, read.value);
      }
      if (problems.length > 0) return { problems };
      const broken = checks.filter(({ holds }) => !holds(entry as Entry<R>));
      if (broken.length === 0) return { value: entry as Flat<C & Entry<R>> };
      return {
        problems: broken.map(({ at, message, expected }) => {
          const place = at === undefined ? path : [...path, at];
          const value =
            at !== undefined && !isGroup(written[at]) ? { value: String(written[at]) } : {};
          return { path: place, code: "wrong-value", ...value, message, expected };
        }),
      };
    },
  };
}

/** Keys that are not known, or had this name once. */
function keyProblems(
  rows: Rows,
  written: Readonly<Record<string, unknown>>,
  path: Path,
): Problem[] {
  const names = Object.keys(rows);
  return Object.keys(written).flatMap((key): Problem[] => {
    if (Object.hasOwn(rows, key)) return [];
    const now = names.find((name) => rows[name].earlier.includes(key));
    const at = { path: [...path, key], value: key };
    if (now !== undefined) {
      return [
        {
          ...at,
          code: "renamed-key",
          message: say`The key “${key}” is now called “${now}”.`,
          expected: now,
          known: [now],
        },
      ];
    }
    return [
      {
        ...at,
        code: "unknown-key",
        message: say`The key “${key}” is not known here.`,
        expected: say`one of ${names.join(", ")}`,
        known: names,
      },
    ];
  });
}

/** What one key brings into the configuration. */
function readRow(
  key: string,
  { as, kind, need, byDefault, earlier, leftOut }: Row<string, unknown, Need>,
  written: Readonly<Record<string, unknown>>,
  path: Path,
): Read<Readonly<Record<string, unknown>>> {
  const at = [...path, key];
  let below = written[key];
  if (below === null) {
    const message = kind.whenEmpty ?? say`Nothing stands behind this key.`;
    return { problems: [{ path: at, code: "wrong-value", message, expected: wanted(kind) }] };
  }
  if (below === undefined) {
    if (earlier.some((name) => name in written)) return { value: {} };
    if (mustStand({ need, leftOut })) {
      return missing(at, wanted(kind));
    }
    if (need === "optional" || leftOut === "nothing") return { value: {} };
    below = need === "inline" ? {} : byDefault;
  }
  const read = kind.read(below, at);
  if ("problems" in read) return read;
  if (need === "unread") return { value: {} };
  if (need === "inline") return { value: read.value as Readonly<Record<string, unknown>> };
  return { value: { [as]: read.value } };
}

/** Whether a key may not be left out. */
export function mustStand({ need, leftOut }: Pick<Row<string, unknown, Need>, "need" | "leftOut">) {
  return need === "required" || need === "unread" || leftOut === "problem";
}

function groupSchema(rows: Rows): SchemaNode {
  const entries = Object.entries(rows);
  const needed = entries.filter(([, row]) => mustStand(row));
  return {
    type: "object",
    properties: Object.fromEntries(
      entries.map(([key, row]) => {
        const { kind, byDefault } = row;
        const { examples } = kind;
        return [
          key,
          {
            description: describe(row),
            ...kind.schema(),
            ...(examples.length === 0 ? {} : { examples }),
            ...(byDefault === undefined ? {} : { default: byDefault }),
          },
        ];
      }),
    ),
    ...(needed.length === 0 ? {} : { required: needed.map(([key]) => key) }),
    additionalProperties: false,
  };
}

/** What an editor shows of a key: its sentence, what is written, and what is taken without it. */
function describe({ says, kind, byDefault }: Row<string, unknown, Need>): string {
  const written = kind.parts?.kind === "group" ? "" : ` ${upper(render(wanted(kind)))}.`;
  const taken =
    byDefault === undefined || typeof byDefault === "object" ? "" : ` Default: ${byDefault}.`;
  return `${says}${written}${taken}`;
}

function upper(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}

/**
 * The same written form, brought to another shape.
 *
 * @param type the TypeScript type of that shape.
 * @param into gives the value, or a message on why there is none with what was expected.
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
      return wrong(path, written, value.message, value.expected);
    },
  };
}

/** What `shaped` gives where a value has no other shape. */
export class Refusal {
  constructor(
    readonly message: Text,
    readonly expected: Text,
  ) {}
}

/** Gives a kind's type a name of its own. */
export function named<T>(name: string, kind: Kind<T>): Kind<T> {
  return { ...kind, name };
}

interface ListOptions {
  readonly min?: number;
  readonly max?: number;
  /** Key of the items that must not stand twice. */
  readonly unique?: string;
}

/** A list of alike things. */
export function list<T>(
  item: Kind<T>,
  { min = 0, max, unique }: ListOptions = {},
): Kind<readonly T[]> {
  const most = max === undefined ? {} : { max };
  const bounds = min === 0 && max === undefined ? undefined : boundsOf({ min, ...most }, "");
  const form = bounds === undefined ? say`a list` : say`a list of ${bounds}`;
  return {
    form,
    examples: [],
    parts: { kind: "list", item },
    schema: () => ({
      type: "array",
      items: item.schema(),
      ...(min === 0 ? {} : { minItems: min }),
      ...(max === undefined ? {} : { maxItems: max }),
      ...(item.examples.length === 0 ? {} : { examples: [[item.examples[0]]] }),
    }),
    read(written, path) {
      if (!Array.isArray(written)) return wrong(path, written, say`This is no list.`, form);
      if (written.length < min || (max !== undefined && written.length > max)) {
        const message = say`This list is too short or too long.`;
        return wrong(path, written, message, form);
      }
      const reads = written.map((one, index) => item.read(one, [...path, index]));
      const problems = reads.flatMap((read) => ("problems" in read ? read.problems : []));
      if (unique !== undefined) problems.push(...repeated(written, unique, path));
      if (problems.length > 0) return { problems };
      return { value: reads.flatMap((read) => ("value" in read ? [read.value] : [])) };
    },
  };
}

function repeated(items: readonly unknown[], key: string, path: Path): Problem[] {
  const names = items.map((item) => (isGroup(item) ? item[key] : undefined));
  return names.flatMap((name, index): Problem[] => {
    if (typeof name !== "string" || names.indexOf(name) === index) return [];
    return [
      {
        path: [...path, index, key],
        code: "wrong-value",
        value: name,
        message: say`Two entries have this ${key}.`,
        expected: say`each ${key} once`,
      },
    ];
  });
}

/**
 * A group whose keys are the user's own names.
 *
 * @param exampleName such a name, for the example that an editor shows
 */
export function names<T>(item: Kind<T>, exampleName: string): Kind<Readonly<Record<string, T>>> {
  const form = say`a group of names, each with ${item.form}`;
  return {
    form,
    examples: [],
    parts: { kind: "names", item },
    schema: () => ({
      type: "object",
      additionalProperties: item.schema(),
      examples: [{ [exampleName]: item.examples[0] }],
    }),
    read(written, path) {
      if (!isGroup(written)) return wrong(path, written, say`This is no group of keys.`, form);
      const reads = Object.entries(written).map(
        ([name, below]) => [name, item.read(below, [...path, name])] as const,
      );
      const problems = reads.flatMap(([, read]) => ("problems" in read ? read.problems : []));
      if (problems.length > 0) return { problems };
      return {
        value: Object.fromEntries(
          reads.flatMap(([name, read]) => ("value" in read ? [[name, read.value]] : [])),
        ),
      };
    },
  };
}

interface FormsOptions {
  readonly name?: string;
  readonly type?: string;
  /** Said of a key that only another form has. */
  readonly misplaced?: Text;
}

type ReadOf<K> = K extends Kind<infer T> ? T : never;

/**
 * Several forms of one entry. A problem is told of the form that was meant.
 *
 * @param pick names that form, or says which key decides and what may stand there.
 */
export function forms<const F extends Readonly<Record<string, Kind<unknown>>>>(
  all: F,
  pick: (
    written: unknown,
  ) =>
    | keyof F
    | { readonly at: string; readonly choices: readonly string[]; readonly message: Text },
  { misplaced = say`This key belongs to another form of this entry.`, ...own }: FormsOptions = {},
): Kind<ReadOf<F[keyof F]>> {
  const kinds = Object.values(all);
  const keys = new Set(
    kinds.flatMap(({ parts }) => (parts?.kind === "group" ? Object.keys(parts.rows) : [])),
  );
  const [first, ...others] = kinds.map(({ form }) => form);
  const groups = kinds.every(({ parts }) => parts?.kind === "group");
  const form = groups
    ? first
    : others.reduce<Text>((words, other) => say`${words}, or ${other}`, first);
  return {
    form,
    examples: kinds.flatMap(({ examples }) => examples),
    ...own,
    parts: { kind: "forms", forms: all },
    schema: () => ({ anyOf: kinds.map((kind) => kind.schema()) }),
    read(written, path) {
      const meant = pick(written);
      if (typeof meant === "object") {
        const { at, choices, message } = meant;
        const expected = say`one of ${choices.join(", ")}`;
        if (!isGroup(written)) return wrong(path, written, say`This is no group of keys.`, form);
        if (written[at] === undefined) return missing([...path, at], expected);
        return wrong([...path, at], written[at], message, expected);
      }
      const read = all[meant].read(written, path) as Read<ReadOf<F[keyof F]>>;
      if ("value" in read) return read;
      return {
        problems: read.problems.map((problem) => {
          const own = problem.code === "unknown-key" && problem.path.length === path.length + 1;
          if (!own || !keys.has(String(problem.value))) return problem;
          const { path: place, value: key = "", known = [] } = problem;
          const below = isGroup(written) ? written[key] : undefined;
          return wrong(place, below, misplaced, say`one of ${known.join(", ")}`).problems[0];
        }),
      };
    },
  };
}

function missing(path: Path, expected: Text): { readonly problems: readonly Problem[] } {
  const message = say`This key is missing.`;
  return { problems: [{ path, code: "missing-key", message, expected }] };
}
