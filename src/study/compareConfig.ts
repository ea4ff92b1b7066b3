/** Another mix of the same element, to see what the chosen one saves. */
export interface CompareConfig {
  readonly name: string;
  /** By material id; percent of the dry mass of soil and aggregate. What is not named has none. */
  readonly sharesPct: Readonly<Record<string, number>>;
  readonly cementPct: number;
  /** Rammed dry density of its solids; without it that of the chosen mix is taken. */
  readonly densityKgM3?: number;
  /** Moisture at ramming; without it that of the chosen mix is taken. */
  readonly moisturePct?: number;
  /** Where the mix comes from, or whether it was tested: the user's words. */
  readonly basis: string;
}
