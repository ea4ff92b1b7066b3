import type { Text } from "../words/message.js";

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
 * finding("warning", "sieve-loss", { file: "sieve.csv", row: 4 }, words).severity // => "warning"
 */
export function finding(
  severity: Severity,
  code: string,
  { file, row, column, value }: FindingPlace,
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
 * Whether there is an error among the findings.
 *
 * @example
 * hasErrors([]) // => false
 */
export function hasErrors(findings: readonly Finding[]): boolean {
  return findings.some(({ severity }) => severity === "error");
}
