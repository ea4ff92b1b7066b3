import { type ComparedNumber, comparedResults } from "./comparedResults.js";
import { type FlatValue, flatConfig } from "./flatConfig.js";
import { STUDY_FILE } from "./parseStudyYaml.js";
import type { StudyResult } from "./studyResult.js";

/** An entry of `study.yaml` that differs, by the path of its value in the result's `config`. */
export interface EntryChange {
  readonly key: string;
  /** Absent where that version has no such entry. */
  readonly before?: FlatValue;
  readonly after?: FlatValue;
}

export interface SheetChange {
  readonly file: string;
  readonly change: "added" | "removed" | "changed";
}

/** A result of both versions. */
export interface ResultPair extends Omit<ComparedNumber, "value"> {
  readonly before: number | null;
  readonly after: number | null;
  /** After less before; null where one is missing, or where the money is of two currencies. */
  readonly difference: number | null;
  readonly changed: boolean;
}

/** Two versions of a study, the second against the first. */
export interface StudyComparison {
  readonly entries: readonly EntryChange[];
  /** By the checksum of the bytes. */
  readonly sheets: readonly SheetChange[];
  readonly results: readonly ResultPair[];
  /** One version was computed by another version of the program. */
  readonly madeWith?: readonly [string, string];
}

/** A relative difference that another order of summing makes is none. */
const NO_DIFFERENCE = 1e-9;

/**
 * Holds two versions of a study against each other: which entries and sheets changed, and what that did to
 * the results.
 *
 * Entries are compared by the path of their value, materials by their id; sheets by the SHA-256 of their
 * bytes; results as numbers in base units. A sheet that was only saved anew with the same bytes is no change.
 *
 * Source: own arithmetic.
 */
export function compareStudies(a: StudyResult, b: StudyResult): StudyComparison {
  const sameMoney = a.config.currency === b.config.currency;
  return {
    entries: entryChanges(flatConfig(a.config), flatConfig(b.config)),
    sheets: sheetChanges(a, b),
    results: pairs(comparedResults(a), comparedResults(b), sameMoney),
    ...(a.madeWith === b.madeWith ? {} : { madeWith: [a.madeWith, b.madeWith] as const }),
  };
}

function entryChanges(
  before: ReadonlyMap<string, FlatValue>,
  after: ReadonlyMap<string, FlatValue>,
): EntryChange[] {
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((key): EntryChange[] => {
    const [was, is] = [before.get(key), after.get(key)];
    if (was === is) return [];
    return [
      {
        key,
        ...(was === undefined ? {} : { before: was }),
        ...(is === undefined ? {} : { after: is }),
      },
    ];
  });
}

function sheetChanges(a: StudyResult, b: StudyResult): SheetChange[] {
  const sumOf = ({ inputs }: StudyResult) =>
    // The study file differs wherever an entry does, and comments are no change.
    new Map(
      inputs.flatMap(({ file, sha256 }) => (file === STUDY_FILE ? [] : [[file, sha256] as const])),
    );
  const [before, after] = [sumOf(a), sumOf(b)];
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((file): SheetChange[] => {
    if (!before.has(file)) return [{ file, change: "added" }];
    if (!after.has(file)) return [{ file, change: "removed" }];
    return before.get(file) === after.get(file) ? [] : [{ file, change: "changed" }];
  });
}

function pairs(
  first: readonly ComparedNumber[],
  second: readonly ComparedNumber[],
  sameMoney: boolean,
): ResultPair[] {
  const after = new Map(second.map((one) => [one.key, one]));
  const keys = [...new Set([...first, ...second].map(({ key }) => key))];
  // Shares of materials that only one version has stand with the other shares.
  const shares = keys.filter((key) => key.startsWith("share."));
  const before = new Map(first.map((one) => [one.key, one]));
  return [...shares, ...keys.filter((key) => !key.startsWith("share."))].map((key) => {
    const was = before.get(key)?.value ?? null;
    const is = after.get(key)?.value ?? null;
    const { label, kind } = (after.get(key) ?? before.get(key))!;
    const comparable = was !== null && is !== null && (kind !== "money" || sameMoney);
    const difference = comparable ? is - was : null;
    const changed =
      difference === null
        ? was !== is
        : Math.abs(difference) > NO_DIFFERENCE * Math.max(Math.abs(was!), Math.abs(is!));
    return { key, label, kind, before: was, after: is, difference, changed };
  });
}
