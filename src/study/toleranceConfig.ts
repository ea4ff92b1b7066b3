/** How far the work may stand from the specified mix; what is left out gets a marked default or none. */
export interface ToleranceConfig {
  /** Of the cement's mass in a batch, each way. */
  readonly cementPct?: number;
  /** Points of moisture from the optimum. */
  readonly moistureBelowPct?: number;
  readonly moistureAbovePct?: number;
  /** Of a material's dry mass in a batch, each way. */
  readonly sharesPct?: number;
  /** Least rammed dry density, percent of the maximum of the compaction test. */
  readonly densityPct?: number;
  /** Of the rammed depth of a lift, each way. */
  readonly liftM?: number;
  /** Where the entered values come from: the user's own words. */
  readonly basis?: string;
}
