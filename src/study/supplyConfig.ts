import type { SourcedRange } from "../batch/carbonFactors.js";

/** A price or a range of prices in the study's currency, for one tonne, loose cubic metre, bag or load. */
export interface WrittenPrice<Per extends string> {
  /** Middle of the range. */
  readonly amount: number;
  readonly low: number;
  readonly high: number;
  readonly per: Per;
  /** As the user wrote it. */
  readonly written: string;
}

/** For a tonne as weighed on delivery, its water included, or a loose cubic metre. */
export type Price = WrittenPrice<"t" | "m3">;

/** What it takes to get a material to the site. */
export interface SupplyConfig {
  readonly haul?: WrittenPrice<"t" | "m3" | "load">;
  /** Lost in the heap and on the way, percent of what goes into the mix; without it nothing is added. */
  readonly lossPct?: number;
  /** The user's own factor; without it a general one is taken. */
  readonly carbon?: SourcedRange;
  /** One way, in kilometres; without it haul is not counted. */
  readonly haulKm?: number;
}
