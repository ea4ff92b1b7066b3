import { parseArgs } from "node:util";
import { COMMAND_HELP, type CommandName } from "./help.js";

/** What the command line returns, so that a script can tell the outcomes apart. */
export const EXIT = {
  ok: 0,
  /** A fault of ours: an exception that nobody expected. */
  fault: 1,
  usage: 2,
  /** The study has errors. */
  badInput: 3,
  /** A notebook cell failed. */
  failedCell: 4,
  /** The notebook kernel ended while it was needed. */
  kernelDied: 5,
  /** A start, a cell or the whole run took longer than allowed. */
  timeOut: 6,
  /** The output exists already, or cannot be written. */
  output: 7,
} as const;

/** A command cannot go on, for a reason that the user can mend. The message is all they need. */
export class CommandError extends Error {
  readonly exitCode: number;

  constructor(exitCode: number, message: string) {
    super(message);
    this.name = "CommandError";
    this.exitCode = exitCode;
  }
}

export function misuse(problem: string): CommandError {
  return new CommandError(EXIT.usage, problem);
}

/** Options of a command, by what stands behind each: a text, one each time, or nothing. */
interface Options {
  readonly texts?: readonly string[];
  readonly lists?: readonly string[];
  readonly flags?: readonly string[];
  /** Texts where nothing is said. */
  readonly defaults?: Readonly<Record<string, string>>;
}

export type Call = ReturnType<typeof parseCall>;

/**
 * Reads the words behind a command: its places (a study, a folder, a notebook) and options.
 *
 * @param places how many the command takes; `optional` for one or none, `some` for one, or several sheets;
 * `and-sheets` for one and any sheets beside it.
 * @throws CommandError with the command's usage line for an unknown option or a word too many.
 */
export function parseCall(
  command: CommandName,
  words: readonly string[],
  { texts = [], lists = [], flags = [], defaults = {} }: Options,
  places: number | "optional" | "some" | "and-sheets",
) {
  const refuse = (problem: string): never => {
    const [usage] = COMMAND_HELP[command].split("\n");
    throw misuse(`${problem}\n${usage}`);
  };
  const rules = [
    ...texts.map((name) => [name, { type: "string" }] as const),
    ...lists.map((name) => [name, { type: "string", multiple: true }] as const),
    ...flags.map((name) => [name, { type: "boolean" }] as const),
    ...Object.entries(defaults).map(
      ([name, text]) => [name, { type: "string", default: text }] as const,
    ),
  ];
  const options = Object.fromEntries(rules);
  let parsed: ReturnType<typeof parseArgs>;
  try {
    parsed = parseArgs({ args: [...words], options, allowPositionals: true, strict: true });
  } catch (problem) {
    return refuse((problem as Error).message.split("\n")[0].replace(/\. To specify.*$/, "."));
  }
  const { values, positionals } = parsed;
  const extra = tooMany(positionals, places);
  if (extra !== undefined) refuse(`Unexpected argument: “${extra}”.`);
  const needed = typeof places === "number" ? places : Number(places !== "optional");
  if (positionals.length < needed) {
    refuse(
      needed === 1
        ? `“loambook ${command}” needs a place to work on.`
        : `“loambook ${command}” needs ${needed} places to work on.`,
    );
  }
  return {
    /** The first of `places`, for commands that need one. */
    place: positionals[0],
    places: positionals,
    text: (option: string) => values[option] as string | undefined,
    flag: (option: string) => values[option] === true,
    list: (option: string) => (values[option] as string[] | undefined) ?? [],
  };
}

/**
 * An option that is one of some names; undefined where it is not given.
 *
 * @throws CommandError for any other word.
 */
export function oneOf<T extends string>(
  call: Call,
  option: string,
  names: readonly T[],
): T | undefined {
  const asked = call.text(option);
  const found = names.find((name) => name === asked);
  if (asked === undefined || found !== undefined) return found;
  throw misuse(`--${option} is ${names.join(" or ")}, not “${asked}”.`);
}

/** Whether a word of the command line names a lab sheet. */
export function isSheet(word: string): boolean {
  return /\.(csv|xlsx)$/i.test(word);
}

/** A place too many: beside sheets, the last that is none. */
function tooMany(
  positionals: readonly string[],
  places: Parameters<typeof parseCall>[3],
): string | undefined {
  if (typeof places === "number") return positionals[places];
  if (places === "optional" || positionals.length <= 1) return positionals[1];
  const others = positionals.filter((place) => !isSheet(place));
  return others.length > (places === "some" ? 0 : 1) ? others[others.length - 1] : undefined;
}
