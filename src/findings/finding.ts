import { say, type Text } from "../words/message.js";

/** How serious a finding is; `error` stops a command. */
export type Severity = "error" | "warning" | "note";

/** The file of a study folder that names all others. */
export const STUDY_FILE = "study.yaml";

/** Where a finding was made. */
export interface FindingPlace {
  /** File inside the study folder, as the study names it. */
  readonly file: string;
  /** Row as a spreadsheet counts it, from 1. */
  readonly row?: number;
  /** Header cell as written, or the key path in `study.yaml`. */
  readonly column?: string;
  /** The text found at that place, or a number worked out from it. */
  readonly value?: Text;
}

/** What a finding says to the user. */
export interface FindingWords {
  /** What was found, one sentence. */
  readonly message: Text;
  /** What was expected there. */
  readonly expected: Text;
  /** What the user can do. */
  readonly remedy: Text;
}

/**
 * One problem or remark about what the user gave us, told so that they can mend it.
 *
 * `error` stops a command; `warning` is shown wherever the number it touches is shown;
 * `note` records something that was done (a repair, an exclusion) so that nothing is silent.
 */
export interface Finding extends FindingPlace, FindingWords {
  readonly severity: Severity;
  /** Stable name of the kind of finding, kebab-case, for example `sieve-loss`. */
  readonly code: string;
}

/**
 * Makes a finding.
 *
 * @example
 * const words = { message: say`The loss is 3 %.`, expected: say`at most 2 %`, remedy: say`Weigh again.` };
 * finding({ file: "sieve.csv", row: 4 }, "warning", "sieve-loss", words).severity // => "warning"
 */
export function finding(
  { file, row, column, value }: FindingPlace,
  severity: Severity,
  code: string,
  { message, expected, remedy }: FindingWords,
): Finding {
  return {
    severity,
    code,
    file,
    ...(row === undefined ? {} : { row }),
    ...(column === undefined ? {} : { column }),
    ...(value === undefined ? {} : { value }),
    message,
    expected,
    remedy,
  };
}

/**
 * A finding where something is so, else none: to stand in the list of a function's findings.
 *
 * @example
 * const words = { message: say`The loss is 3 %.`, expected: say`at most 2 %`, remedy: say`Weigh again.` };
 * findingIf(3 > 2, { file: "sieve.csv" }, "warning", "sieve-loss", words).length // => 1
 * findingIf(1 > 2, { file: "sieve.csv" }, "warning", "sieve-loss", words) // => []
 */
export function findingIf(
  isSo: boolean,
  place: FindingPlace,
  severity: Severity,
  code: string,
  words: FindingWords,
): Finding[] {
  return isSo ? [finding(place, severity, code, words)] : [];
}

/**
 * Whether there is an error among the findings.
 *
 * @example
 * hasErrors([]) // => false
 */
export function hasErrors(findings: readonly Finding[]): boolean {
  return findings.some(({ severity }) => severity === "error");
}

/** What a person reads of a kind before mending it; the rest is the same again. */
const MAX_OF_A_KIND = 50;

/**
 * The findings of one file without the thousandth of a kind: the first 50, and one that counts the others.
 *
 * @example
 * const words = { message: say`Empty.`, expected: say`a reading`, remedy: say`Fill it in.` };
 * const all = Array.from({ length: 60 }, (_, row) => finding({ file: "a.csv", row }, "error", "missing-value", words));
 * const few = limitFindings(all);
 * [few.length, render(few[50].message)] // => [51, "10 more findings of this kind are not listed."]
 */
export function limitFindings(findings: readonly Finding[]): readonly Finding[] {
  if (findings.length <= MAX_OF_A_KIND) return findings;
  const counts = new Map<string, { readonly first: Finding; count: number }>();
  const kept = findings.filter((one) => {
    const kind = `${one.severity} ${one.code} ${one.file}`;
    const known = counts.get(kind) ?? { first: one, count: 0 };
    known.count += 1;
    counts.set(kind, known);
    return known.count <= MAX_OF_A_KIND;
  });
  const more = [...counts.values()].filter(({ count }) => count > MAX_OF_A_KIND);
  const told = more.map(({ first: { severity, code, file, expected, remedy }, count }) =>
    finding({ file }, severity, code, {
      message: say`${count - MAX_OF_A_KIND}{0, plural, one { more finding of this kind is not listed.} other { more findings of this kind are not listed.}}`,
      expected,
      remedy,
    }),
  );
  return [...kept, ...told];
}
