import type { SheetSource } from "../lab/sheetMapping.js";

/** The rule that lots are judged by: entered, or designed from the risks of both sides. */
export type AcceptanceConfig =
  | {
      readonly kind: "mean-less-ks";
      readonly blocks: number;
      readonly factor: number;
      /** Default the strength of the requirement. */
      readonly strengthMpa?: number;
    }
  | {
      readonly kind: "mean-and-least";
      readonly blocks: number;
      readonly meanMpa: number;
      readonly leastMpa: number;
    }
  | {
      readonly kind: "designed";
      /** Default the strength of the requirement. */
      readonly strengthMpa?: number;
      /** Shares and risks, 0 to 1. */
      readonly goodBelow: number;
      readonly poorBelow: number;
      readonly builderRisk: number;
      readonly ownerRisk: number;
    };

/** A lot is what one set of blocks speaks for. */
export type LotConfig =
  | { readonly kind: "volume"; readonly volumeM3: number }
  | { readonly kind: "days"; readonly days: number; readonly batchesADay?: number };

/** How the work is to be watched. */
export interface QualityConfig {
  readonly lot: LotConfig;
  /** Ages at which blocks of a lot are crushed; absent: that of the requirement alone. */
  readonly agesDays?: readonly number[];
  /** Expected standard deviation of site blocks; absent: that of the regression. */
  readonly scatterMpa?: number;
  readonly acceptance: AcceptanceConfig;
  /** Code, clause or engineer's value: the user's own words. */
  readonly basis: string;
  /** Blocks of a lot that are kept, to be crushed where one is spoilt. */
  readonly spareBlocks: number;
  /** Density checks a lot. */
  readonly densityChecks?: number;
  /** In the user's words; absent where not stated. */
  readonly moistureChecks?: string;
  readonly trialWall?: string;
  /** Sheet of the blocks made on site, as far as crushed. */
  readonly siteBlocks?: SheetSource;
}
