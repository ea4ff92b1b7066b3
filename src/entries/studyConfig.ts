import type { WallOpening } from "../batch/element.js";
import type { BandAim, BlendLimit, FixedOrRange } from "../blend/target.js";
import type { ReadingErrors } from "../grading/uncertainty/readingErrors.js";
import type { SheetSource } from "../lab/sheet/grid.js";
import type { UnitSystem } from "../quantities/format.js";
import type { StrengthCovariate } from "../strength/regression/model.js";
import type { Locale } from "../words/render.js";
import type { CompareConfig } from "./compareMix.js";
import type { ElementConfig } from "./element.js";
import type { QualityConfig, ToleranceConfig } from "./quality.js";
import type { ClauseConfig, DecisionConfig, ReportConfig, SamplingConfig } from "./report.js";
import type { SiteConfig } from "./site.js";
import type { CarbonConfig, Price, SupplyConfig, WrittenPrice } from "./supply.js";

export interface MaterialConfig extends SupplyConfig {
  readonly id: string;
  readonly name: string;
  readonly role: "soil" | "sand" | "gravel";
  /** Sheets, as named in the study. */
  readonly sieve: SheetSource;
  readonly hydrometer?: SheetSource;
  /** In place of a hydrometer. */
  readonly pipette?: SheetSource;
  /** A first guide, shown beside the laboratory's fractions. */
  readonly jar?: SheetSource;
  readonly limits?: SheetSource;
  readonly particleDensityKgM3: number;
  /** Dry mass in a loose volume at the moisture below. */
  readonly looseBulkDensityKgM3: number;
  readonly moisturePct: number;
  /** How much more room the damp material takes than the dry; with it the bulk density is that of dry material. */
  readonly bulkingPct?: number;
  readonly price?: Price;
  /** Allowed share of the dry mass of all soil and aggregate. */
  readonly minSharePct: number;
  readonly maxSharePct: number;
  /** How the material varies from load to load; absent where nothing is stated. */
  readonly finesPlusMinusPct?: number;
  readonly batchingPlusMinusPct?: number;
}

export type { ElementConfig } from "./element.js";
export type { Price } from "./supply.js";
export type OpeningConfig = WallOpening;

/** A power curve, fixed or the best within a range; or the band of the guidance (or of the study's own envelope). */
export type TargetConfig =
  | { readonly kind: "power"; readonly exponent: FixedOrRange; readonly topSizeMm: FixedOrRange }
  | { readonly kind: "band"; readonly aim: Exclude<BandAim, "least-carbon"> };

export type RequirementStatistic = "mean" | "prediction" | "tolerance";

export interface RequirementConfig {
  readonly strengthMpa: number;
  readonly ageDays: number;
  readonly statistic: RequirementStatistic;
  /** 0 to 1. */
  readonly confidence: number;
  /** Code, clause or engineer's value: the user's own words, printed as they stand. */
  readonly basis: string;
}

export interface StrengthConfig {
  readonly sheet: SheetSource;
  readonly form: "linear" | "quadratic" | "logarithmic" | "power";
  readonly roundUpToPct: number;
  /** Whether the batches stand in the regression. */
  readonly batches: "ignore" | "block";
  /** Whether the scatter of blocks is the same at all contents, or grows with the strength. */
  readonly spread: "even" | "proportional";
  /** Readings that stand in the regression beside the cement content, and where the curve is asked. */
  readonly covariates: readonly CovariateConfig[];
  /** Table for the correction of block proportions, shown beside the measured strengths. */
  readonly aspectTable?: string;
  readonly requirement: RequirementConfig;
}

export interface CovariateConfig {
  readonly kind: StrengthCovariate;
  /** kg/m³ or percent; without it the mean of the blocks. The age is that of the requirement. */
  readonly at?: number;
}

export interface CementConfig extends SupplyConfig {
  readonly name: string;
  readonly looseBulkDensityKgM3: number;
  readonly bagMassKg: number;
  readonly price?: WrittenPrice<"t" | "m3" | "bag">;
}

export interface MethodConfig {
  readonly test: string;
  readonly standard: string;
  readonly edition?: string;
}

/** What `study.yaml` says, in base units. */
export interface StudyConfig {
  readonly invented: boolean;
  readonly title: string;
  readonly place: string;
  readonly purpose: string;
  /** ISO 8601 calendar date. */
  readonly date: string;
  /** Of reports and findings; a country sets the decimal sign. */
  readonly language: Locale;
  readonly units: UnitSystem;
  readonly page: "A4" | "us-letter";
  readonly currency?: string;
  readonly seed: number;
  /** What is known of the laboratory's reading errors; the rest is taken as usual. */
  readonly readingErrors: Partial<ReadingErrors>;
  readonly materials: readonly MaterialConfig[];
  readonly target: TargetConfig;
  /** Conditions that the blend must keep, beside the materials' own shares. */
  readonly limits: readonly BlendLimit[];
  readonly mostMaterials?: number;
  /** Name of the guidance entry that the blend is held against. */
  readonly guidance: string;
  /** Sheet of the study's own grading envelope. */
  readonly envelope?: SheetSource;
  readonly compaction?: SheetSource;
  readonly cement: CementConfig;
  readonly strength: StrengthConfig;
  readonly batchDryMassKg: number;
  readonly element: ElementConfig;
  /** Another mix of the element that the chosen one is held against. */
  readonly compareBlend?: CompareConfig;
  readonly carbon: CarbonConfig;
  readonly site: SiteConfig;
  /** How the reports look. */
  readonly report?: ReportConfig;
  readonly methods: readonly MethodConfig[];
  readonly sampling?: readonly SamplingConfig[];
  /** How far the work may stand from the specified mix. */
  readonly tolerances?: ToleranceConfig;
  /** How the work is watched. */
  readonly quality?: QualityConfig;
  /** Clauses of the user's code, and where the report answers them. */
  readonly checklist?: readonly ClauseConfig[];
  readonly decisions?: readonly DecisionConfig[];
}
