import type { CarbonComparison } from "../batch/carbonComparison.js";
import type { CementComparison } from "../batch/cementComparison.js";
import type { CostRange } from "../batch/costRange.js";
import type { ElementAmounts } from "../batch/elementQuantities.js";
import type { MixCarbon } from "../batch/mixCarbon.js";
import type { Recipe } from "../batch/recipeResult.js";
import type { VolumeParts } from "../batch/volumeParts.js";
import type { BlendedCurve } from "../blend/blendCurve.js";
import type { BlendDesign } from "../blend/blendResult.js";
import type { Relaxation } from "../blend/relaxLimits.js";
import type { Robustness } from "../blend/robustness.js";
import type { CharacteristicSizes } from "../grading/characteristicSizes.js";
import type { ChosenModel } from "../grading/chosenModel.js";
import type { GradingOverlap, GradingRepair } from "../grading/combinedGrading.js";
import type { Fractions } from "../grading/fractions.js";
import type { GradingCurve } from "../grading/gradingCurve.js";
import type { HydrometerAnalysis } from "../grading/hydrometerAnalysis.js";
import type { JarAnalysis } from "../grading/jarAnalysis.js";
import type { JarComparison } from "../grading/jarComparison.js";
import type { PipetteAnalysis } from "../grading/pipetteAnalysis.js";
import type { SieveAnalysis } from "../grading/sieveAnalysis.js";
import type { GuidanceComparison } from "../guidance/compareGuidance.js";
import type { GuidanceCheck } from "../guidance/guidanceCheck.js";
import type { GuidanceSureness } from "../guidance/guidanceSureness.js";
import type { Finding } from "../lab/finding.js";
import type { SheetGrid } from "../lab/sheetGrid.js";
import type { SpecimenRecord } from "../lab/specimenRecord.js";
import type { CompactionAnalysis } from "../soil/compactionAnalysis.js";
import type { ConsistencyResult } from "../soil/consistencyResult.js";
import type { CurveUncertainty } from "../soil/curveUncertainty.js";
import type { CharacteristicStrength } from "../strength/characteristicStrength.js";
import type { FormsCompared } from "../strength/compareForms.js";
import type { AspectCorrected } from "../strength/correctAspectRatio.js";
import type { LackOfFit } from "../strength/lackOfFit.js";
import type { LeastCement } from "../strength/leastCement.js";
import type { ResidualCheck } from "../strength/residualChecks.js";
import type { RobustStrength } from "../strength/robustStrength.js";
import type { StrengthBand } from "../strength/strengthBands.js";
import type { FittedStrength } from "../strength/strengthFit.js";
import type { ComparedMix } from "./comparedMix.js";
import type { MixWater } from "./mixWater.js";
import type { QualityPlan } from "./qualityPlan.js";
import type { InputFile } from "./study.js";
import type { StudyConfig } from "./studyConfig.js";
import type { TextureStudy } from "./textureStudy.js";

/** The value of `format` in a result of this version. */
export const RESULT_FORMAT = "loambook-result/1";

export interface MaterialResult {
  readonly id: string;
  readonly name: string;
  readonly role: "soil" | "sand" | "gravel";
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

export interface BlendStudy extends BlendDesign, BlendedCurve {
  /** What a little more room at each limit that binds would buy. */
  readonly relaxed: readonly Relaxation[];
  /** How often the blend keeps to the guidance band, where the study says how its materials vary. */
  readonly robustness?: Robustness;
  readonly sizes: CharacteristicSizes;
  readonly fractions: Fractions;
  /** Mean particle density of the blend by volume: 100 / Σ (share / density). */
  readonly particleDensityKgM3: number;
}

/** The blocks of one content taken alone, without the curve. */
export interface ContentCharacteristics {
  readonly cementPct: number;
  readonly values: readonly CharacteristicStrength[];
}

export interface StrengthStudy {
  readonly specimens: readonly SpecimenRecord[];
  readonly fit: FittedStrength;
  readonly lackOfFit: LackOfFit;
  readonly forms: FormsCompared;
  /** Across the tested contents, for drawing. */
  readonly bands: readonly StrengthBand[];
  /** At each tested content and at the chosen one. */
  readonly bandsAtContents: readonly StrengthBand[];
  /** Whether the scatter is even and normal, and a fit that outlying blocks move less. */
  readonly checks: readonly ResidualCheck[];
  readonly robust: RobustStrength;
  readonly characteristic: readonly ContentCharacteristics[];
  /** Measured and corrected for proportions, where the study names a table; the curve uses the measured. */
  readonly aspect: readonly {
    readonly block: SpecimenRecord;
    readonly corrected: AspectCorrected;
  }[];
  readonly leastCement: LeastCement;
  /** The least content rounded up; absent where the tests do not give one. */
  readonly chosenCementPct?: number;
}

/** A curve held against one published recommendation. */
export interface GuidanceStudy {
  /** Name of the material, or of the blend. */
  readonly name: string;
  readonly check: GuidanceCheck;
  /** How sure the verdicts are, given the stated reading errors. */
  readonly sureness: GuidanceSureness;
}

export interface CompactedDensity {
  /** Dry mass of all solids, cement included, in the rammed volume. */
  readonly valueKgM3: number;
  /** Of the lightest and the heaviest block. */
  readonly lowKgM3: number;
  readonly highKgM3: number;
  /** Where the value comes from. */
  readonly basis: string;
}

export interface MixStudy {
  /** One batch. */
  readonly recipe: Recipe;
  /** The recipe in whole parts by loose volume. */
  readonly parts: VolumeParts;
  readonly density: CompactedDensity;
  /** How wet and how dry a batch may be. */
  readonly water: MixWater;
  /** For the element. */
  readonly quantities: ElementAmounts;
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

/** Everything that a study gives: plain data, the same for the same input. */
export interface StudyResult {
  readonly format: typeof RESULT_FORMAT;
  readonly madeWith: string;
  readonly config: StudyConfig;
  readonly findings: readonly Finding[];
  readonly materials: readonly MaterialResult[];
  readonly compaction?: CompactionAnalysis;
  readonly blend: BlendStudy;
  /** What the reading errors of the materials do to the blend's passing at each size of its curve. */
  readonly blendSpread: CurveUncertainty["spread"];
  /** The soils, then the blend, on the texture triangle. */
  readonly textures: readonly TextureStudy[];
  /** The soils, then the blend, against the recommendation that the study names. */
  readonly guidance: readonly GuidanceStudy[];
  /** The blend against all recommendations that loambook knows for its kind of earth, and where they disagree. */
  readonly guidanceComparison: GuidanceComparison;
  readonly strength: StrengthStudy;
  /** Absent where the tests do not give a cement content or a water content. */
  readonly mix?: MixStudy;
  /** The quality-control plan, where the study asks for one. */
  readonly quality?: QualityPlan;
  readonly inputs: readonly InputFile[];
  /** The sheets' cells as read, for the annex. */
  readonly sheets: readonly SheetGrid[];
}
