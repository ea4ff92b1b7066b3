import { say, type Text } from "../words/message.js";
import { render } from "../words/render.js";
import {
  boundsOf,
  isGroup,
  type Kind,
  type Need,
  type Path,
  type Problem,
  type Read,
  type Row,
  type Rows,
  type SchemaNode,
  wanted,
  wrong,
} from "./kinds.js";

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
