import type { BlendedCurve } from "../blend/blendCurve.js";
import type { BlendResult } from "../blend/blendMaterials.js";
import type { CharacteristicSizes } from "../grading/characteristicSizes.js";
import type { GradingOverlap, GradingRepair } from "../grading/combinedGrading.js";
import type { Fractions } from "../grading/fractions.js";
import type { GradingCurve } from "../grading/gradingCurve.js";
import type { HydrometerAnalysis } from "../grading/hydrometerAnalysis.js";
import type { SieveAnalysis } from "../grading/sieveAnalysis.js";
import type { Finding } from "../lab/finding.js";
import type { SheetGrid } from "../lab/sheetGrid.js";
import type { SpecimenRecord } from "../lab/specimenRecord.js";
import type { CompactionAnalysis } from "../soil/compactionAnalysis.js";
import type { ConsistencyResult } from "../soil/consistencyResult.js";
import type { FormsCompared } from "../strength/compareForms.js";
import type { LackOfFit } from "../strength/lackOfFit.js";
import type { LeastCement } from "../strength/leastCement.js";
import type { StrengthBand } from "../strength/strengthBands.js";
import type { FittedStrength } from "../strength/strengthFit.js";
import type { InputFile } from "./study.js";
import type { StudyConfig } from "./studyConfig.js";

/** The value of `format` in a result of this version. */
export const RESULT_FORMAT = "loambook-result/1";

export interface MaterialResult {
  readonly id: string;
  readonly name: string;
  readonly role: "soil" | "sand" | "gravel";
  readonly sieve: SieveAnalysis;
  readonly sedimentation?: HydrometerAnalysis;
  readonly curve: GradingCurve;
  readonly overlap?: GradingOverlap;
  readonly repairs: readonly GradingRepair[];
  readonly sizes: CharacteristicSizes;
  readonly fractions: Fractions;
  readonly limits?: ConsistencyResult;
}

export interface BlendStudy extends BlendResult, BlendedCurve {
  readonly sizes: CharacteristicSizes;
  readonly fractions: Fractions;
  /** Mean particle density of the blend by volume: 100 / Σ (share / density). */
  readonly particleDensityKgM3: number;
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
  readonly leastCement: LeastCement;
  /** The least content rounded up; absent where the tests do not give one. */
  readonly chosenCementPct?: number;
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
  readonly strength: StrengthStudy;
  readonly inputs: readonly InputFile[];
  /** The sheets' cells as read, for the annex. */
  readonly sheets: readonly SheetGrid[];
}
