// Made from the table of keys by "npm run schema": a change here is lost.
import type { BlendLimit, FixedOrRange } from "../blend/target.js";
import type { SheetSource } from "../lab/sheet/grid.js";
import type { SourcedRange } from "../quantities/sourcedRange.js";
import type { StrengthCovariate } from "../strength/regression/model.js";
import type { Locale } from "../words/render.js";
import type { ElementConfig } from "./element.js";
import type { WrittenPrice } from "./supply.js";

/** A reading that stands in the regression, and where the curve is asked. */
export interface CovariateConfig {
  readonly kind: StrengthCovariate;
  /** kg/m³ or percent; without it the mean of the blocks. The age is that of the requirement. */
  readonly at?: number;
}

export interface DecisionConfig {
  /** Date of the decision. */
  readonly date: string;
  /** What was decided. */
  readonly what: string;
  /** Why. */
  readonly why: string;
  /** What was the other choice. */
  readonly insteadOf?: string;
}

export interface ClauseConfig {
  /** As the code numbers it. */
  readonly clause: string;
  /** What it asks for. */
  readonly requirement: string;
  /** Key of the section of the report that answers it; left out while the clause is open. */
  readonly answeredBy?: string;
  /** Your remark. */
  readonly remark?: string;
}

export type AcceptanceConfig =
  | {
      /** How a lot is judged. */
      readonly kind: "mean-less-ks";
      /** Blocks that speak for a lot. */
      readonly blocks: number;
      /** Factor k: the mean less k standard deviations must reach the strength. */
      readonly factor: number;
      /** Strength that lots are held against; left out, that of the requirement. */
      readonly strengthMpa?: number;
    }
  | {
      /** How a lot is judged. */
      readonly kind: "mean-and-least";
      /** Blocks that speak for a lot. */
      readonly blocks: number;
      /** What the mean must reach. */
      readonly meanMpa: number;
      /** What each block must reach. */
      readonly minMpa: number;
    }
  | {
      /** How a lot is judged. */
      readonly kind: "designed";
      /** Strength that lots are held against; left out, that of the requirement. */
      readonly strengthMpa?: number;
      /** Share of blocks below the strength in a lot that should be accepted. */
      readonly acceptableQuality: number;
      /** Share of blocks below the strength in a lot that should be rejected. */
      readonly rejectableQuality: number;
      /** Probability that a lot of acceptable quality is rejected. */
      readonly producerRisk: number;
      /** Probability that a lot of rejectable quality is accepted. */
      readonly consumerRisk: number;
    };

export type LotConfig =
  | {
      readonly kind: "volume";
      /** Rammed volume of a lot. */
      readonly volumeM3: number;
    }
  | {
      readonly kind: "days";
      /** Working days of a lot. */
      readonly days: number;
      /** Pace of the work; without it lots are not counted. */
      readonly batchesADay?: number;
    };

export interface QualityConfig {
  /** What one set of blocks speaks for. */
  readonly lot: LotConfig;
  /** Ages at which blocks of a lot are crushed; left out, that of the requirement. */
  readonly agesDays?: readonly number[];
  /** Expected standard deviation of site blocks; left out, that of the regression. */
  readonly scatterMpa?: number;
  /** The rule that lots are judged by. */
  readonly acceptance: AcceptanceConfig;
  /** Code, clause or engineer's value, in your words. */
  readonly basis: string;
  /** Blocks of a lot that are kept, to be crushed where one is spoilt. Default 0. */
  readonly spareBlocks: number;
  /** Density checks of a lot. */
  readonly densityChecks?: number;
  /** How moisture is checked, in your words. */
  readonly moistureChecks?: string;
  /** The trial wall, in your words. */
  readonly trialWall?: string;
  /** Sheet of the blocks made on site, as far as crushed. */
  readonly siteBlocks?: SheetSource;
}

export interface ToleranceConfig {
  /** Of the cement's mass in a batch, each way. */
  readonly cementPct?: number;
  /** Points below. */
  readonly moistureBelowPct?: number;
  /** Points above. */
  readonly moistureAbovePct?: number;
  /** Of a material's dry mass in a batch, each way. */
  readonly sharesPct?: number;
  /** Least rammed dry density, of the maximum of the compaction test. */
  readonly densityPct?: number;
  /** Of the rammed depth of a lift, each way. */
  readonly liftM?: number;
  /** Where the entered values come from, in your words. */
  readonly basis?: string;
}

export interface SamplingConfig {
  /** Id of the material. */
  readonly material: string;
  /** Where it was taken. */
  readonly where: string;
  /** How it was taken. */
  readonly how: string;
  /** Pits, boreholes or heaps that the sample was put together from. */
  readonly pits?: number;
  /** Date of sampling. */
  readonly date?: string;
}

export interface MethodConfig {
  /** Name of the test. */
  readonly test: string;
  /** Standard that the laboratory names. */
  readonly standard: string;
  /** Its edition. */
  readonly edition?: string;
}

export interface ReportConfig {
  /** Form of the report; left out, permit. */
  readonly template?: "permit" | "handout";
  /** Annexes of the technical appendix; left out, calculations, findings, analyses, readings, regression, trials, inputs. */
  readonly annexes?: readonly (
    | "calculations"
    | "findings"
    | "analyses"
    | "readings"
    | "regression"
    | "trials"
    | "inputs"
    | "guidance"
    | "resampling"
    | "models"
    | "alternatives"
    | "quantities"
    | "cost"
    | "code"
  )[];
  /** SVG or PNG picture for the title block. */
  readonly logo?: string;
  /** What a reader who cannot see the logo is told; left out, “Logo”. */
  readonly logoText?: string;
  /** Colour of headings and rules, as CSS writes colours, in quotes. */
  readonly accent?: string;
  /** Text of the running head, in place of the title. */
  readonly header?: string;
  /** Text of the running foot, in place of what made the report. */
  readonly footer?: string;
  /** Style sheet that stands behind ours in the HTML file. */
  readonly css?: string;
  /** Typst file whose names stand in place of ours in the PDF. */
  readonly typst?: string;
  /** Folder of TTF and OTF fonts for scripts that ours do not have. */
  readonly fonts?: string;
}

export interface SiteConfig {
  /** Volume of a bucket struck level, measured with water; left out, 10 L, in US units 5 gal. */
  readonly bucketL?: number;
  /** Smallest part of a bucket; left out, 0.5. */
  readonly bucketStep?: 1 | 0.5;
  /** Loose volume that the mixer takes; left out, the batch of the study. */
  readonly mixerVolumeL?: number;
  /** Sizes the batch as near below one lift of the element as buckets allow, in place of a mixer. */
  readonly batchFills?: "lift";
  /** How cement is measured on site; left out, by scale. */
  readonly cementBy?: "bucket" | "scale";
  /** The least that the scale for a batch shows: masses on the cards are rounded to it, where the mix allows it. */
  readonly scaleStepKg?: number;
  /** Points of moisture below and above the target; left out, the window of the compaction test. */
  readonly tolerancePct?: number;
  /** Time until the forms come off; left out, a line to write it on. */
  readonly strippingHours?: number;
  /** Time of damp curing, in whole days; left out, a line to write it on. */
  readonly dampDays?: number;
  /** Labels to print; left out, 8. */
  readonly labels?: number;
  /** What a truck takes; left out, no loads are counted. */
  readonly truck?: {
    /** What it carries. */
    readonly payloadKg: number;
    /** Loose volume of its body. */
    readonly bodyM3: number;
  };
  /** The forms at hand and the pace of the work; left out, no days are counted. */
  readonly forms?: {
    /** Area of the forms at hand. */
    readonly formsAtHandM2: number;
    /** Time to set all of them and ram them full. */
    readonly hoursToSetAndRam: number;
    /** Length of a working day. */
    readonly workingHoursADay: number;
  };
  /** A small batch to make test blocks of, or to try first beside the full one. */
  readonly trial?: {
    /** Dry mass of soil and aggregate in it. */
    readonly dryMassKg?: number;
    /** The form that it must fill, in place of its dry mass. */
    readonly form?: {
      /** Inside the form. */
      readonly lengthM: number;
      /** Inside the form. */
      readonly widthM: number;
      /** Of the block after ramming. */
      readonly heightM: number;
      /** Blocks of one batch. */
      readonly blocks: number;
      /** Lifts of one block. Default 1. */
      readonly lifts: number;
    };
    /** The least that the scale for it shows. */
    readonly scaleStepKg: number;
    /** Cement contents to make blocks with; left out, those of the blocks made so far. */
    readonly cementPct?: readonly number[];
  };
}

export interface CarbonConfig {
  /** Your own carbon factor of haulage by road. */
  readonly haul?: SourcedRange;
  /** Volume of the concrete element that would stand in the same place; left out, that of the earth element. */
  readonly concreteVolumeM3?: number;
  /** Cement in the concrete that is compared with. */
  readonly concreteCement?: SourcedRange;
}

export interface CompareConfig {
  /** Name as it is printed. */
  readonly name: string;
  /** Shares of the dry mass of soil and aggregate by material id; what is not named has none. */
  readonly sharesPct: Readonly<Record<string, number>>;
  /** Cement, of the dry mass of soil and aggregate. */
  readonly cementPct: number;
  /** Rammed dry density of its solids; left out, that of the chosen mix. */
  readonly densityKgM3?: number;
  /** Moisture at ramming; left out, that of the chosen mix. */
  readonly moisturePct?: number;
  /** Where the mix comes from and whether it was tested, in your words. */
  readonly basis: string;
}

export interface SpecifiedConfig {
  /** Shares of the dry mass of soil and aggregate by material id; what is not named has none. Left out, the blend that the target leads to. */
  readonly sharesPct?: Readonly<Record<string, number>>;
  /** Cement, of the dry mass of soil and aggregate; never less than what the blocks show to be needed. Left out, the least cement. */
  readonly cementPct?: number;
  /** Moisture at ramming, inside the window of the compaction test. Left out, its optimum. */
  readonly moisturePct?: number;
}

export interface TrialConfig {
  /** Short name that “mix-from” uses. */
  readonly id: string;
  /** Name as it is printed; left out, the id. */
  readonly name?: string;
  /** Shares of the dry mass of soil and aggregate by material id; what is not named has none. */
  readonly sharesPct: Readonly<Record<string, number>>;
  /** Sheet of the compaction test of this blend; without it no mix follows from it. */
  readonly compaction?: SheetSource;
  /** Sheet of the crushed blocks of this blend; left out while none is crushed. */
  readonly blocks?: SheetSource;
  /** Sieve on which coarse grains were taken out before the blend was compacted in the mould; its densities and water contents are then corrected for them. */
  readonly screenedAtMm?: number;
  /** How the blocks were when they were crushed; moist is at the moisture of curing. */
  readonly crushed?: "dry" | "moist" | "soaked";
  /** How the blocks were cured, in your words. */
  readonly curing?: string;
  /** Shape of the blocks. */
  readonly shape?: "cube" | "prism" | "cylinder";
  /** Sheet of what was seen on the trial's blocks: texture, edges, cracks, colour when dry. */
  readonly looks?: SheetSource;
}

export interface TestedConfig {
  /** Name as it is printed. */
  readonly name?: string;
  /** Shares of the dry mass of soil and aggregate by material id; what is not named has none. */
  readonly sharesPct?: Readonly<Record<string, number>>;
  /** Sieve on which coarse grains were taken out before the blend was compacted in the mould; its densities and water contents are then corrected for them. */
  readonly screenedAtMm?: number;
  /** How the blocks were when they were crushed; moist is at the moisture of curing. */
  readonly crushed?: "dry" | "moist" | "soaked";
  /** How the blocks were cured, in your words. */
  readonly curing?: string;
  /** Shape of the blocks. */
  readonly shape?: "cube" | "prism" | "cylinder";
  /** Sheet of what was seen on the trial's blocks: texture, edges, cracks, colour when dry. */
  readonly looks?: SheetSource;
}

export type RequirementStatistic = "mean" | "prediction" | "tolerance";

export interface RequirementConfig {
  /** Compressive strength that the mix must reach. */
  readonly strengthMpa: number;
  /** Age at which it must. */
  readonly ageDays: number;
  /** Bound of the regression that is held against it: of the mean, of one further block, or of 95 % of blocks. */
  readonly statistic: RequirementStatistic;
  /** Confidence of that bound; in the result 0 to 1. */
  readonly confidence: number;
  /** How the blocks are that the requirement speaks of; moist is at the moisture of curing. */
  readonly crushed?: "dry" | "moist" | "soaked";
  /** Code, clause or engineer's letter that asks for it; printed as it stands. */
  readonly basis: string;
}

export interface StrengthConfig {
  /** Sheet of the crushed blocks. */
  readonly sheet?: SheetSource;
  /** Curve of strength on cement content. Default linear. */
  readonly model: "linear" | "quadratic" | "logarithmic" | "power";
  /** The least cement content is rounded up to a multiple of this. Default 0.5 %. */
  readonly roundUpToPct: number;
  /** How batches of blocks stand in the regression: not told apart (ignore), each with a level of its own (block), or each as the mean of its blocks (means). Default ignore. */
  readonly batches: "ignore" | "block" | "means";
  /** Readings that stand in the regression beside the cement content. */
  readonly covariates: readonly CovariateConfig[];
  /** Table that corrects strengths for the blocks' proportions, shown beside the measured ones. */
  readonly aspectTable?: string;
  /** Whether the scatter of blocks is the same at all contents, or grows with the strength. Default even. */
  readonly variance: "even" | "proportional";
  /** What the mix must reach; without it no least cement follows. */
  readonly requirement?: RequirementConfig;
}

export interface CementConfig {
  /** Name as it is printed. */
  readonly name: string;
  /** Mass in a loose volume. */
  readonly looseBulkDensityKgM3: number;
  /** Mass of a bag. */
  readonly bagMassKg: number;
  /** Price as delivered. */
  readonly price?: WrittenPrice<"t" | "m3" | "bag">;
  /** Price of haulage. */
  readonly haul?: WrittenPrice<"t" | "m3" | "load">;
  /** Lost in the heap and on the way, of what goes into the mix. Left out, nothing is added. */
  readonly lossPct?: number;
  /** Your own carbon factor of its making; left out, a general one is taken. */
  readonly carbon?: SourcedRange;
  /** Way by road to the site, one way; left out, the carbon of haulage is not counted. */
  readonly haulKm?: number;
}

export type TargetConfig =
  | {
      readonly kind: "power";
      /** Exponent of the power curve: passing = 100 (size / top size) ^ exponent; of a range the best is sought. */
      readonly exponent: FixedOrRange;
      /** Size that all grains pass; of a range the best is sought. */
      readonly topSizeMm: FixedOrRange;
    }
  | {
      readonly kind: "band";
      /** What is sought inside the band. Default nearest-middle. */
      readonly objective: "most-site-soil" | "least-cost" | "nearest-middle";
    };

export interface AddSandConfig {
  /** Id of the sand that is added. */
  readonly sand: string;
  /** Fines that the mix is to have, of its dry mass. */
  readonly finesPct: number;
  /** Id of the soil; left out, the only one. */
  readonly soil?: string;
  /** Fines of the sand where it has neither a sieve nor a jar sheet. */
  readonly sandFinesPct?: number;
  /** Dry mass of the batch to try. Default 15 kg. */
  readonly batchDryMassKg: number;
}

export interface ChemistryConfig {
  /** Organic matter, of the dry mass; or “not tested”. */
  readonly organicPct?: number | "not tested";
  /** Sulphates as SO₄, of the dry mass; or “not tested”. */
  readonly sulphatePct?: number | "not tested";
  /** Soluble salts, of the dry mass; or “not tested”. */
  readonly saltsPct?: number | "not tested";
}

export interface MaterialConfig {
  /** Short name that other entries use. */
  readonly id: string;
  /** Name as it is printed. */
  readonly name: string;
  /** What it is in the mix. */
  readonly role: "soil" | "sand" | "gravel";
  /** Sheet of the sieve analysis. */
  readonly sieve?: SheetSource;
  /** Sheet of the hydrometer test. */
  readonly hydrometer?: SheetSource;
  /** Sheet of the pipette test, in place of a hydrometer. */
  readonly pipette?: SheetSource;
  /** Sheet of a jar test: a first guide beside the laboratory, never part of the curve. */
  readonly jar?: SheetSource;
  /** Sheet of the consistency limits and the shrinkage bar. */
  readonly limits?: SheetSource;
  /** What was tested of the soil beside its grains; what is left out counts as not tested. */
  readonly chemistry?: ChemistryConfig;
  /** Density of the grains. */
  readonly particleDensityKgM3?: number;
  /** Dry mass in a loose volume, at the moisture below; with bulking, of the dry material. */
  readonly looseBulkDensityKgM3?: number;
  /** Moisture on delivery, of the dry mass. */
  readonly moisturePct?: number;
  /** How much more room the damp material takes than the dry: percent, or the two heights of the flooding test. */
  readonly bulkingPct?: number;
  /** Price as delivered, its water included. */
  readonly price?: WrittenPrice<"t" | "m3">;
  /** Price of haulage. */
  readonly haul?: WrittenPrice<"t" | "m3" | "load">;
  /** Lost in the heap and on the way, of what goes into the mix. Left out, nothing is added. */
  readonly lossPct?: number;
  /** Your own carbon factor of its making; left out, a general one is taken. */
  readonly carbon?: SourcedRange;
  /** Way by road to the site, one way; left out, the carbon of haulage is not counted. */
  readonly haulKm?: number;
  /** Least share. Default 0 %. */
  readonly minSharePct: number;
  /** Greatest share. Default 100 %. */
  readonly maxSharePct: number;
  /** The fines of 19 of 20 loads lie within plus or minus this. */
  readonly finesPlusMinusPct?: number;
  /** The mass of 19 of 20 batches lies within plus or minus this. */
  readonly batchingPlusMinusPct?: number;
}

export interface StudyConfig {
  /** Whether the laboratory's numbers are invented for a demonstration: every page says so. Default false. */
  readonly invented: true | false;
  /** Title of the study and its reports. */
  readonly title?: string;
  /** Where the element will stand. */
  readonly place?: string;
  /** What the study is for, printed on the title page. */
  readonly purpose?: string;
  /** Date of the reports. */
  readonly date?: string;
  /** Language of reports and findings; a country sets the decimal sign. Default en. */
  readonly language: Locale;
  /** Units of what people read. Default SI. */
  readonly units: "SI" | "US";
  /** How D-sizes are read between two points of a curve: on a straight line over the logarithm of size, as charts are drawn, or over size, as some laboratories reckon. Default log-size. */
  readonly sizeReading: "log-size" | "size";
  /** Paper of the reports. Default A4. */
  readonly page: "A4" | "us-letter";
  /** Currency of all prices. */
  readonly currency?: string;
  /** Start of the random numbers: the same study gives the same bytes. Default 1. */
  readonly seed: number;
  /** What the blend may be made of. */
  readonly materials: readonly MaterialConfig[];
  /** What is known of the laboratory's reading errors; the rest is taken as usual. */
  readonly readingErrors: {
    /** Of each weighing on the balance. */
    readonly balanceG?: number;
    /** Mass that goes to the neighbouring sieve or is lost, of what a sieve retains. */
    readonly sievingPct?: number;
    /** Of each hydrometer reading, in units of the 152H scale (g/L). */
    readonly hydrometerUnits?: number;
    /** Of each temperature. */
    readonly temperatureC?: number;
  };
  /** A first mix for a soil that is known by a jar: the sand that is added for a share of fines. */
  readonly addSand?: AddSandConfig;
  /** What the blend aims at; without it no blend is designed. */
  readonly target?: TargetConfig;
  /** Conditions that the blend must keep, beside the materials' own shares. */
  readonly limits: readonly BlendLimit[];
  /** How many materials may go into the blend. */
  readonly maxMaterials?: number;
  /** Published recommendation, or power curves such as power-20mm-0.2-0.25, that soils and blend are held against. */
  readonly guidance?: string;
  /** Sheet of the study's own grading envelope. */
  readonly envelope?: SheetSource;
  /** Sheet of the compaction test; without it there is no mix. */
  readonly compaction?: SheetSource;
  /** The cement, as bought. */
  readonly cement?: CementConfig;
  /** The blocks, the curve and the requirement. */
  readonly strength: StrengthConfig;
  /** Which blend the study's own compaction and block sheets are of, and how the blocks were crushed. */
  readonly tested?: TestedConfig;
  /** Further blends that blocks were made of. */
  readonly trials?: readonly TrialConfig[];
  /** The trial whose blend is to be built, “tested” or an id of trials; left out, the one that the proposed blend matches. */
  readonly mixFrom?: string;
  /** The mix as the designer sets it by hand, in place of the blend, the least cement and the optimum moisture. */
  readonly specified?: SpecifiedConfig;
  /** Dry mass of soil and aggregate in a batch. */
  readonly batchDryMassKg?: number;
  /** What is to be built: one element, or a list of them, all of one mix. */
  readonly elements: readonly ElementConfig[];
  /** Another mix of the element that the chosen one is held against. */
  readonly compareMix?: CompareConfig;
  /** Carbon factors, and the concrete that is compared with. */
  readonly carbon: CarbonConfig;
  /** What the crew works with. */
  readonly site: SiteConfig;
  /** How the reports look. */
  readonly report?: ReportConfig;
  /** Test methods as the laboratory names them. */
  readonly methods: readonly MethodConfig[];
  /** How samples were taken. */
  readonly sampling?: readonly SamplingConfig[];
  /** How far the work may stand from the specified mix. */
  readonly tolerances?: ToleranceConfig;
  /** How lots of the work are sampled and judged. */
  readonly quality?: QualityConfig;
  /** Clauses of your code, and where the report answers them. */
  readonly checklist?: readonly ClauseConfig[];
  /** What was decided on the way, and why. */
  readonly decisions?: readonly DecisionConfig[];
}
