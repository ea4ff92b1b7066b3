import type { AcceptanceRisks } from "../strength/acceptanceRisks.js";
import type { AcceptanceRule } from "../strength/acceptanceRule.js";
import type { ControlChart } from "../strength/controlChart.js";
import type { LotJudgement } from "../strength/judgeLot.js";

/** A lot of blocks made on site, as far as crushed. */
export interface SiteLot {
  /** The batch of the sheet. */
  readonly label: string;
  /** At the age of the requirement, in the order of the sheet. */
  readonly strengthsMpa: readonly number[];
  readonly judgement: LotJudgement;
}

export interface SiteBlocks {
  readonly file: string;
  readonly lots: readonly SiteLot[];
  readonly chart: ControlChart;
  /** Blocks of other ages: shown in the annex, not judged. */
  readonly otherAges: number;
  /** Left out by the sheet, with its reason. */
  readonly excluded: readonly { readonly id: string; readonly reason: string }[];
}

/** How the work is watched, worked out for the element. */
export interface QualityPlan {
  readonly agesDays: readonly number[];
  /** Absent where no rule keeps the risks that were asked for. */
  readonly rule?: AcceptanceRule;
  /** How the rule was come by. */
  readonly ruleMessage: string;
  /** Standard deviation of blocks that the risks hold for. */
  readonly scatterMpa: number;
  readonly scatterBasis: "entered" | "regression";
  readonly risks?: AcceptanceRisks;
  /** Absent where a lot is days of work and no pace was entered, or the study gives no mix. */
  readonly lots?: number;
  /** Blocks to make for a lot, all ages and the spare ones together; absent without a rule. */
  readonly blocksALot?: number;
  readonly blocks?: number;
  readonly densityChecks?: number;
  /** Absent where the study names no sheet. */
  readonly site?: SiteBlocks;
}
