/**
 * One problem or remark about what the user gave us, told so that they can mend it.
 *
 * `error` stops a command; `warning` is shown wherever the number it touches is shown;
 * `note` records something that was done (a repair, an exclusion) so that nothing is silent.
 */
export interface Finding {
  readonly severity: "error" | "warning" | "note";
  /** Stable name of the kind of finding, kebab-case, for example `sieve-loss`. */
  readonly code: string;
  /** File inside the study folder, as the study names it. */
  readonly file: string;
  /** Row as a spreadsheet counts it, from 1. */
  readonly row?: number;
  /** Header cell as written, or the key path in `study.yaml`. */
  readonly column?: string;
  /** The text found at that place. */
  readonly value?: string;
  /** What was found, one sentence. */
  readonly message: string;
  /** What was expected there. */
  readonly expected: string;
  /** What the user can do. */
  readonly wayOut: string;
}
