/** A grading envelope that a study brings with it. */
export interface EnvelopeRecord {
  readonly file: string;
  readonly title: string;
  /** Where the user has it from, in their words. */
  readonly source: string;
  /** Increasing sizes. */
  readonly points: readonly EnvelopePoint[];
}

export interface EnvelopePoint {
  readonly sizeMm: number;
  readonly lowPct: number;
  readonly highPct: number;
  readonly row: number;
}
