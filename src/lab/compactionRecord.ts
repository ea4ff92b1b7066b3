/** A compaction test: one point a row. */
export interface CompactionRecord {
  readonly file: string;
  /** The test as the lab names it, in its own words (effort, standard, edition). */
  readonly method?: string;
  readonly mouldVolumeCm3: number;
  readonly points: readonly CompactionPoint[];
}

export interface CompactionPoint {
  readonly waterContentPct: number;
  /** Mass of the moist soil in the mould. */
  readonly moistMassG: number;
  readonly row: number;
}
