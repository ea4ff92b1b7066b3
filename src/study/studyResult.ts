import type { CarbonComparison, MixCarbon } from "../batch/carbon.js";
import type { CementComparison } from "../batch/cementComparison.js";
import type { CostRange, MixSaving } from "../batch/cost.js";
import type { BuiltAmounts } from "../batch/element.js";
import type { MeasuredForm, MixRecord } from "../batch/mixRecord.js";
import type { Recipe } from "../batch/recipe.js";
import type { BlendDesign } from "../blend/description.js";
import type { BlendedCurve } from "../blend/material.js";
import type { Robustness } from "../blend/robustness.js";
import type { SandToAdd } from "../blend/sandToAdd.js";
import type { Relaxation } from "../blend/tradeoffs.js";
import type { MaterialConfig, StudyConfig, TrialConfig } from "../entries/studyConfig.js";
import type { Finding } from "../findings/finding.js";
import type { CharacteristicSizes } from "../grading/characteristics.js";
import type { GradingOverlap, GradingRepair } from "../grading/combinedGrading.js";
import type { GradingCurve } from "../grading/curve.js";
import type { Fractions } from "../grading/fractions.js";
import type { ChosenModel } from "../grading/models/modelChoice.js";
import type { HydrometerAnalysis } from "../grading/sedimentation/hydrometer.js";
import type { JarAnalysis, JarComparison } from "../grading/sedimentation/jar.js";
import type { PipetteAnalysis } from "../grading/sedimentation/pipette.js";
import type { SieveAnalysis } from "../grading/sieveAnalysis.js";
import type { GuidanceCheck } from "../guidance/check.js";
import type { GuidanceComparison } from "../guidance/comparison.js";
import type { VerdictProbability } from "../guidance/probability.js";
import type { SheetGrid } from "../lab/sheet/grid.js";
import type { SpecimenRecord } from "../lab/specimens.js";
import type { WorkshopTrial } from "../lab/trials.js";
import type { Interval } from "../quantities/interval.js";
import type { UsdaParts } from "../soil/classification/usdaTexture.js";
import type { CompactionAnalysis } from "../soil/compaction/compactionTest.js";
import type { ConsistencyResult } from "../soil/consistency/limits.js";
import type { CurveUncertainty } from "../soil/curveUncertainty.js";
import type { AspectCorrected } from "../strength/aspectRatio.js";
import type { CharacteristicStrength } from "../strength/characteristicStrength.js";
import type {
  AcceptanceRisks,
  AcceptanceRule,
  LotJudgement,
} from "../strength/control/acceptance.js";
import type { ControlChart } from "../strength/control/controlChart.js";
import type { LeastCement } from "../strength/leastCement.js";
import type { LeastCementOfOthers } from "../strength/otherBlocks.js";
import type { StrengthBand } from "../strength/regression/bounds.js";
import type { FittedStrength } from "../strength/regression/curve.js";
import type { LackOfFit } from "../strength/regression/lackOfFit.js";
import type { ModelsCompared } from "../strength/regression/modelComparison.js";
import type { ResidualCheck } from "../strength/regression/residuals.js";
import type { RobustStrength } from "../strength/regression/robustFit.js";
import type { StrengthByAge } from "../strength/strengthByAge.js";
import type { Text } from "../words/message.js";
import type { MixWater } from "./mixWater.js";
import type { InputFile } from "./study.js";
import type { BlendDifference } from "./testedBlend.js";

/** The value of `format` in a result of this version. */
export const RESULT_FORMAT = "loambook-result/1";

type Named = Pick<MaterialConfig, "id" | "name">;

export interface MaterialResult extends Pick<MaterialConfig, "id" | "name" | "role"> {
  readonly sieve: SieveAnalysis;
  /** With the hydrometer. */
  readonly sedimentation?: HydrometerAnalysis;
  /** In place of the hydrometer. */
  readonly pipette?: PipetteAnalysis;
  /** A first guide beside the laboratory; never part of the curve. */
  readonly jar?: JarAnalysis & { readonly laboratory: JarComparison["rows"] };
  readonly curve: GradingCurve;
  readonly overlap?: GradingOverlap;
  readonly repairs: readonly GradingRepair[];
  readonly sizes: CharacteristicSizes;
  readonly fractions: Fractions;
  /** Smooth models of the curve, best first; for soils. */
  readonly models?: ChosenModel;
  readonly limits?: ConsistencyResult;
  /** What the stated reading errors do to the curve; for soils. */
  readonly uncertainty?: CurveUncertainty;
}

/** What is known of a material that has no sieve sheet. */
export interface UngradedMaterial extends Pick<MaterialResult, "id" | "name" | "role" | "limits"> {
  /** A first guide, and no grading. */
  readonly jar?: JarAnalysis;
}

/** What a blend has only where it was sought, not where its shares are given and the study has no target. */
type Sought = "target" | "rmsDifferencePct" | "worst";

export interface BlendStudy
  extends Omit<BlendDesign, Sought>,
    Partial<Pick<BlendDesign, Sought>>,
    BlendedCurve {
  /** What a little more room at each limit that binds would buy. */
  readonly relaxed: readonly Relaxation[];
  /** How often the blend keeps to the guidance band, where the study says how its materials vary. */
  readonly robustness?: Robustness;
  readonly sizes: CharacteristicSizes;
  readonly fractions: Fractions;
  /** Mean particle density of the blend by volume: 100 / Σ (share / density); absent where one is not told. */
  readonly particleDensityKgM3?: number;
}

/** The blocks of one content taken alone, without the curve. */
export interface ContentCharacteristics {
  readonly cementPct: number;
  readonly values: readonly CharacteristicStrength[];
}

/** Blocks of one cement content and age. */
export interface BlockMean {
  readonly cementPct: number;
  readonly ageDays: number;
  /** Those that are not excluded. */
  readonly blocks: number;
  readonly meanMpa: number;
  readonly lowestMpa: number;
  readonly highestMpa: number;
}

/** Crushed blocks that no curve is fitted to. */
export interface BlockMeans {
  /** By cement content, then by age. */
  readonly means: readonly BlockMean[];
  /** Why there is no curve. */
  readonly message: Text;
}

export interface StrengthStudy {
  readonly specimens: readonly SpecimenRecord[];
  readonly fit: FittedStrength;
  readonly lackOfFit: LackOfFit;
  readonly models: ModelsCompared;
  /** Across the tested contents, for drawing. */
  readonly bands: readonly StrengthBand[];
  /** At each tested content and at the chosen one. */
  readonly bandsAtContents: readonly StrengthBand[];
  /** Whether the scatter is even and normal, and a fit that outlying blocks move less. */
  readonly checks: readonly ResidualCheck[];
  readonly robust: RobustStrength;
  /** Strength against age at the chosen content; present where age is a covariate of the regression. */
  readonly byAge?: StrengthByAge;
  readonly characteristic: readonly ContentCharacteristics[];
  /** Measured and corrected for proportions, where the study names a table; the curve uses the measured. */
  readonly aspect: readonly {
    readonly block: SpecimenRecord;
    readonly corrected: AspectCorrected;
  }[];
  /** Absent where the study does not say what is required. */
  readonly leastCement?: LeastCement;
  /** Without each block that lies far from the others, with each excluded one put back; with a requirement. */
  readonly leastCementOfOthers?: readonly LeastCementOfOthers[];
  /** The least content rounded up; absent where the tests do not give one. */
  readonly chosenCementPct?: number;
}

/** A curve held against one published recommendation. */
export interface GuidanceStudy {
  /** Name of the material, or of the blend. */
  readonly name: Text;
  readonly check: GuidanceCheck;
  /** How sure the verdicts are, given the stated reading errors. */
  readonly probability: VerdictProbability;
}

export interface CompactedDensity {
  /** Dry mass of all solids, cement included, in the rammed volume. */
  readonly valueKgM3: number;
  /** Of the lightest and the heaviest block. */
  readonly lowKgM3: number;
  readonly highKgM3: number;
  /** Where the value comes from. */
  readonly basis: Text;
}

export interface MixStudy {
  /** What every card, list, table and page says of the mix. */
  readonly record: MixRecord;
  /** The batch of the record. */
  readonly recipe: Recipe;
  /** Of the record: its batch in whole parts by loose volume; null where none can be counted. */
  readonly parts: MeasuredForm | null;
  readonly density: CompactedDensity;
  /** How wet and how dry a batch may be. */
  readonly water: MixWater;
  /** For all elements together. */
  readonly quantities: BuiltAmounts;
  /** Absent where nothing has a price. */
  readonly cost?: CostRange;
  /** Of the amount to make, with the user's factors or general ones. */
  readonly carbon: MixCarbon;
  /** Beside an all-concrete element of the same volume: cement with cement. */
  readonly comparison: CementComparison;
  /** Carbon of all materials with carbon of all materials; null where a factor is missing. */
  readonly carbonComparison: CarbonComparison | null;
  /** The other mix that the study asks to be compared. */
  readonly compared?: ComparedMix;
}

/** How blocks are when they are crushed; `moist` is at the moisture of curing. */
export type Crushed = NonNullable<TrialConfig["crushed"]>;

/** A blend that blocks were made of: what was tested, and how. */
export interface TrialStudy extends Pick<TrialConfig, "crushed" | "curing" | "shape"> {
  /** `tested` for the study's own compaction and block sheets. */
  readonly id: string;
  readonly name: Text;
  /** Where `study.yaml` has it. */
  readonly key: string;
  /** In the order of the materials, percent of the dry mass of soil and aggregate; absent where not told. */
  readonly sharesPct?: readonly number[];
  /** Of the tested shares. */
  readonly blended?: BlendedCurve;
  readonly compaction?: CompactionAnalysis;
  /** Absent where no curve could be fitted to its blocks. */
  readonly strength?: StrengthStudy;
  /** Of its blocks, where no curve could be fitted to them. */
  readonly blocks?: BlockMeans;
  /** The study's proposed blend against this one. */
  readonly difference?: BlendDifference;
  /** The least cement of this blend with what the element takes of it; absent where its tests give none. */
  readonly pair?: TrialPair;
  /** What was seen on its blocks, in the words of whoever looked. */
  readonly looks?: readonly WorkshopTrial[];
}

/** A tested blend with its least cement, worked out for the element of the study. */
export interface TrialPair {
  /** As it would be specified, percent of the dry mass of soil and aggregate. */
  readonly cementPct: number;
  readonly moisturePct: number;
  readonly densityKgM3: number;
  /** In a cubic metre rammed. */
  readonly cementKgM3: number;
  /** For the element. */
  readonly cementKg: number;
  /** Share of the soil of the site. */
  readonly siteSoilPct: number;
  /** For the element; absent where nothing has a price. */
  readonly cost?: Interval;
  /** For the element, kg CO2e. */
  readonly carbonKg: Interval;
}

/** Which blend is to be built, and on what that rests. */
export interface MixTesting {
  /** `tested`: compaction and blocks were made of the blend of this study. */
  readonly state: "proposed" | "tested";
  /** Id of the trial that compaction and strength of the result are of; absent where nothing was tested. */
  readonly trial?: string;
  /** `mix-from`: the study names the trial, and its blend is built; `closeness`: it lies close to the proposed blend. */
  readonly chosenBy: "mix-from" | "closeness" | "nothing";
  /** One sentence for every page. */
  readonly message: Text;
}

/** What is weighed out for blocks of one cement content. */
export interface TrialBatch {
  /** Of the dry mass of soil and aggregate. */
  readonly cementPct: number;
  readonly cementKg: number;
  /** Of soil and aggregate. */
  readonly dryMassKg: number;
  /** Those with a share. */
  readonly materials: readonly (Named & {
    readonly dryMassKg: number;
    /** As shovelled; absent where its moisture is not told. */
    readonly moistMassKg?: number;
  })[];
  /** Brought by the damp materials; absent where the moisture of one is not told. */
  readonly waterInMaterialsKg?: number;
}

/** A blend that was computed and not tested, and the batches to make test blocks of it. */
export interface Proposal {
  /** Those with a share, percent of the dry mass of soil and aggregate. */
  readonly shares: readonly (Named & { readonly sharePct: number })[];
  /** One a cement content. */
  readonly batches: readonly TrialBatch[];
  /** How large a batch is, and why. */
  readonly sizeBasis: Text;
  /** Where the cement contents come from. */
  readonly cementBasis: Text;
}

/** How much sand a soil asks for, where `add-sand` asks: a first guide where the soil is known by a jar. */
export interface FirstMix extends SandToAdd {
  /** Ids. */
  readonly soil: string;
  readonly sand: string;
  /** On what the fines and the volumes rest, and what comes next. */
  readonly basis: Text;
}

/** A soil against all recommendations that loambook knows for its kind of earth. */
export interface SoilGuidance extends Named {
  readonly comparison: GuidanceComparison;
}

/** The stages of a study, each resting on those before it. */
export type StageName =
  | "soil"
  | "target"
  | "blend"
  | "compaction"
  | "blocks"
  | "cement"
  | "element"
  | "quantities";

/** How far a study has come: whether a stage is known, and if not, what would tell it. */
export interface Stage {
  readonly stage: StageName;
  readonly known: boolean;
  /** Which sheet or entry of `study.yaml` would tell it; absent where it is known. */
  readonly needs?: Text;
}

/**
 * Everything that a study gives: plain data, the same for the same input. A section is there where its
 * sheets and entries are; `stages` says what would tell the others.
 */
export interface StudyResult {
  readonly format: typeof RESULT_FORMAT;
  readonly madeWith: string;
  readonly config: StudyConfig;
  readonly findings: readonly Finding[];
  /** In the order in which each rests on those before it. */
  readonly stages: readonly Stage[];
  /** Those with a sieve sheet: whose grading is known. */
  readonly materials: readonly MaterialResult[];
  /** Those without one; absent where there are none. */
  readonly ungraded?: readonly UngradedMaterial[];
  readonly firstMix?: FirstMix;
  readonly compaction?: CompactionAnalysis;
  readonly blend?: BlendStudy;
  /** What the reading errors of the materials do to the blend's passing at each size of its curve. */
  readonly blendSpread?: CurveUncertainty["spread"];
  /** The soils, then the blend where there is one, on the texture triangle. */
  readonly textures: readonly TextureStudy[];
  /** The soils, then the blend where there is one, against the recommendation that the study names. */
  readonly guidance: readonly GuidanceStudy[];
  /** The blend against all recommendations that loambook knows for its kind of earth, and where they disagree. */
  readonly guidanceComparison?: GuidanceComparison;
  /** Each soil in the same way, while no blend was sought. */
  readonly soilGuidance?: readonly SoilGuidance[];
  /** Of the trial that `testing` names; where its blend is only proposed, without a least or chosen content. */
  readonly strength?: StrengthStudy;
  /** Of the same trial, in place of `strength` where no curve could be fitted. */
  readonly blocks?: BlockMeans;
  /** The blends that were compacted or that blocks were made of, the study's own sheets first. */
  readonly trials: readonly TrialStudy[];
  /** Whether the blend was tested, and on what its mix rests; absent without a blend. */
  readonly testing?: MixTesting;
  /** Batches for test blocks, where the blend is only proposed. */
  readonly proposal?: Proposal;
  /** Absent where the blend was not tested, or the tests do not give a cement content or a water content. */
  readonly mix?: MixStudy;
  /** The quality-control plan, where the study asks for one. */
  readonly quality?: QualityPlan;
  readonly inputs: readonly InputFile[];
  /** The sheets' cells as read, for the annex. */
  readonly sheets: readonly SheetGrid[];
}

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
  readonly ruleMessage: Text;
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

/** Another mix of the same element, and what the chosen one saves against it. */
export interface ComparedMix {
  readonly name: string;
  /** The user's words. */
  readonly basis: string;
  readonly quantities: BuiltAmounts;
  readonly cost?: CostRange;
  readonly carbon: MixCarbon;
  /** Absent where nothing has a price. */
  readonly saving?: MixSaving;
  readonly savedCementKg: number;
  /** kg CO2e; null where a factor is missing. */
  readonly savedCarbonKg: Interval | null;
}

/** Sand, silt and clay of a soil or of the blend, for the texture triangle. */
export interface TextureStudy {
  readonly name: Text;
  readonly parts: UsdaParts;
  /** As they could have come out within the reading errors; those of curves that reach far enough. */
  readonly resampled: readonly UsdaParts[];
}
