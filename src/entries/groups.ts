import { say, type Text } from "../words/message.js";
import { render } from "../words/render.js";
import {
  type AnyRow,
  allOf,
  BESIDE,
  boundsOf,
  isGroup,
  type Kind,
  NOWHERE,
  type Path,
  type Problem,
  type Problems,
  type Read,
  type Row,
  type Rows,
  type SchemaNode,
  wanted,
  wrong,
} from "./kinds.js";

type ValueOf<X> = X extends AnyRow & { readonly kind: Kind<infer T> } ? T : never;
type Both<U> = (U extends unknown ? (one: U) => void : never) extends (all: infer I) => void
  ? I
  : never;
type Flat<T> = { readonly [K in keyof T]: T[K] } & {};
type NameOf<X extends AnyRow> = Exclude<X["as"], typeof BESIDE | typeof NOWHERE>;
type Beside<X extends AnyRow> = X["as"] extends typeof BESIDE
  ? X["need"] extends "optional"
    ? Partial<ValueOf<X>>
    : ValueOf<X>
  : never;

/** The type that a table of rows is read into. */
export type Entry<R extends Rows> = Flat<
  {
    [K in keyof R as R[K]["need"] extends "optional" ? never : NameOf<R[K]>]: ValueOf<R[K]>;
  } & {
    [K in keyof R as R[K]["need"] extends "optional" ? NameOf<R[K]> : never]?: ValueOf<R[K]>;
  } & Both<{ [K in keyof R]: Beside<R[K]> }[keyof R]>
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
  if ("problems" in kind.read(written, [])) {
    throw new TypeError(`invalid default: ${JSON.stringify(written)}`);
  }
  return { as, kind, need: "default", says, byDefault: written, earlier };
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
        const expected = say`the keys ${names.join(", ")}`;
        return wrong(path, written, say`This is no group of keys.`, expected);
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
      const told = broken.map(({ at, message, expected }) =>
        at === undefined
          ? wrong(path, written, message, expected)
          : wrong([...path, at], written[at], message, expected),
      );
      return { problems: told.flatMap(({ problems }) => problems) };
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
  const strange = Object.keys(written).filter((key) => !Object.hasOwn(rows, key));
  return strange.map((key): Problem => {
    const now = names.find((name) => rows[name].earlier.includes(key));
    const at = { path: [...path, key], value: key };
    if (now === undefined) {
      return {
        ...at,
        code: "unknown-key",
        message: say`The key “${key}” is not known here.`,
        expected: say`one of ${names.join(", ")}`,
        known: names,
      };
    }
    return {
      ...at,
      code: "renamed-key",
      message: say`The key “${key}” is now called “${now}”.`,
      expected: now,
      known: [now],
    };
  });
}

/** What one key brings into the configuration. */
function readRow(
  key: string,
  { as, kind, need, byDefault, earlier }: AnyRow,
  written: Readonly<Record<string, unknown>>,
  path: Path,
): Read<object> {
  const at = [...path, key];
  let below = written[key];
  if (below === null) {
    return wrong(at, below, kind.whenEmpty ?? say`Nothing stands behind this key.`, wanted(kind));
  }
  if (below === undefined) {
    if (need === "optional" || earlier.some((name) => name in written)) return { value: {} };
    if (need === "required") return missing(at, wanted(kind));
    below = byDefault;
  }
  const read = kind.read(below, at);
  if ("problems" in read || as === BESIDE) return read;
  return { value: as === NOWHERE ? {} : { [as]: read.value } };
}

function groupSchema(rows: Rows): SchemaNode {
  const entries = Object.entries(rows);
  const needed = entries.filter(([, { need }]) => need === "required");
  return {
    type: "object",
    properties: Object.fromEntries(
      entries.map(([key, row]) => {
        const { as, kind, byDefault } = row;
        const { examples } = kind;
        return [
          key,
          {
            description: describe(row),
            ...kind.schema(),
            ...(examples.length === 0 ? {} : { examples }),
            ...(byDefault === undefined || as === BESIDE ? {} : { default: byDefault }),
          },
        ];
      }),
    ),
    ...(needed.length === 0 ? {} : { required: needed.map(([key]) => key) }),
    additionalProperties: false,
  };
}

/** What an editor shows of a key: its sentence, what is written, and what is taken without it. */
function describe({ says, kind, byDefault }: AnyRow): string {
  const written = kind.parts?.kind === "group" ? "" : ` ${upper(render(wanted(kind)))}.`;
  const taken =
    byDefault === undefined || typeof byDefault === "object" ? "" : ` Default: ${byDefault}.`;
  return `${says}${written}${taken}`;
}

function upper(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
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
  const bounds = min === 0 && max === undefined ? undefined : boundsOf({ min, max }, "");
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
      const read = allOf(written.map((one, index) => item.read(one, [...path, index])));
      const twice = unique === undefined ? [] : repeated(written, unique, path);
      if (twice.length === 0) return read;
      return { problems: [...("problems" in read ? read.problems : []), ...twice] };
    },
  };
}

function repeated(items: readonly unknown[], key: string, path: Path): Problem[] {
  const names = items.map((item) => (isGroup(item) ? item[key] : undefined));
  return names.flatMap((name, index) =>
    typeof name !== "string" || names.indexOf(name) === index
      ? []
      : wrong(
          [...path, index, key],
          name,
          say`Two entries have this ${key}.`,
          say`each ${key} once`,
        ).problems,
  );
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
      const names = Object.keys(written);
      const read = allOf(names.map((name) => item.read(written[name], [...path, name])));
      if ("problems" in read) return read;
      return { value: Object.fromEntries(names.map((name, index) => [name, read.value[index]])) };
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

function missing(path: Path, expected: Text): Problems {
  const message = say`This key is missing.`;
  return { problems: [{ path, code: "missing-key", message, expected }] };
}
