/** Consistency, classification, shrinkage, compaction. @module */
export type { AashtoClass, AashtoInput } from "./classification/aashto.js";
export { classifyAashto, type GroupIndexInput, groupIndex } from "./classification/aashto.js";
export { classifyBs5930 } from "./classification/bs5930.js";
export {
  type ClassSystem,
  type CurveClass,
  classifyCurve,
} from "./classification/classifyCurve.js";
export { classifyIso14688, type GradedTerm, gradedTerm } from "./classification/iso14688.js";
export type { CurveLimits, SizeClass, SizeClassInput } from "./classification/sizeClass.js";
export { classifyUscs, type UscsClass, type UscsInput } from "./classification/uscs.js";
export {
  type TextureCorner,
  USDA_POLYGONS,
  type UsdaClass,
  type UsdaParts,
  type UsdaTexture,
  usdaFromCurve,
  usdaTexture,
} from "./classification/usdaTexture.js";
export {
  analyseCompaction,
  type CompactionAnalysis,
  type CompactionAnalysisPoint,
  type CompactionPeak,
  type DensityAtWater,
  PEAK_RULE,
  type PeakMethod,
} from "./compaction/compactionTest.js";
export { type MoistureWindow, moistureWindow } from "./compaction/moistureWindow.js";
export {
  airVoidsDensity,
  type OversizeInput,
  oversizeDensity,
  zeroAirVoidsDensity,
} from "./compaction/phaseRelations.js";
export {
  type ConsistencyResult,
  consistencyLimits,
  type FlowLine,
  type LiquidLimit,
  liquidLimit,
  onePointLiquidLimit,
  type PlasticLimitRepeats,
  plasticLimitRepeats,
} from "./consistency/limits.js";
export {
  type LongBoxRule,
  type LongBoxShrinkage,
  longBoxShrinkage,
} from "./consistency/longBox.js";
export { aLine, uLine } from "./consistency/plasticityChart.js";
export {
  type ClassLikelihood,
  type CurveUncertainty,
  classLikelihoods,
  curveUncertainty,
  type DoubtfulLimits,
} from "./curveUncertainty.js";
export { surveyCsv } from "./survey/surveyCsv.js";
export {
  type SurveyOptions,
  type SurveyProgress,
  surveyGradings,
} from "./survey/surveyGradings.js";
export type { SurveyGrading, SurveyModel, SurveyRow } from "./survey/surveyRow.js";
