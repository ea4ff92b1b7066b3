/** From readings to one grading curve, its models and its uncertainty. @module */
export {
  type CharacteristicSizes,
  characteristicSizes,
  type FinenessModulus,
  finenessModulus,
} from "./characteristics.js";
export {
  type CombinedGrading,
  type CombineInput,
  combineGrading,
  type GradingOverlap,
  type GradingRepair,
  poolAdjacent,
} from "./combinedGrading.js";
export type { CurveReading, GradingCurve, GradingPoint } from "./curve.js";
export { fineToCoarse, passingAtSize, scalp, sizeAtPassing } from "./curve.js";
export {
  type BoundarySystem,
  boundariesOf,
  type Fractions,
  fractions,
  SIZE_BOUNDARIES,
  type SizeBoundaries,
} from "./fractions.js";
export type { GradingFit, GradingFitParameter, GradingFitPoint } from "./models/fit.js";
export { fitGrading } from "./models/fit.js";
export type {
  GradingModel,
  GradingModelName,
  GradingModelParameter,
} from "./models/gradingModel.js";
export {
  bimodalLognormal,
  fredlund,
  fredlundBimodal,
  GRADING_MODELS,
  haverkampParlange,
  lognormal,
  power,
  skaggs,
  weibull,
} from "./models/gradingModels.js";
export { type ChosenModel, chooseModel, type RankedFit } from "./models/modelChoice.js";
export {
  analyseHydrometer,
  type HydrometerAnalysis,
  type HydrometerAnalysisRow,
  type SeparateCorrections,
  separateCorrections,
  temperatureDensityControl,
} from "./sedimentation/hydrometer.js";
export { effectiveDepth, hydrometerDepth } from "./sedimentation/hydrometerDepth.js";
export {
  analyseJar,
  type JarAgainstLaboratory,
  type JarAnalysis,
  type JarComparison,
  type JarShare,
  jarComparison,
  jarFines,
} from "./sedimentation/jar.js";
export type { PipetteAnalysis, PipetteAnalysisRow } from "./sedimentation/pipette.js";
export { analysePipette } from "./sedimentation/pipette.js";
export {
  type SettlingInput,
  stokesDiameter,
  WATER_SOURCES,
  type WaterBasis,
  type WaterProperties,
  waterBasis,
  waterProperties,
} from "./sedimentation/settling.js";
export type {
  SedimentationAnalysis,
  SedimentationInput,
  SedimentationRow,
} from "./sedimentation/suspension.js";
export type { SieveAnalysis, SieveAnalysisRow, SieveSet } from "./sieveAnalysis.js";
export { analyseSieve, minimumSieveMass } from "./sieveAnalysis.js";
export {
  type GradingBandPoint,
  type ResampledFits,
  type ResampleFitsOptions,
  type ResampleOptions,
  resampleFits,
  resampleGrading,
} from "./uncertainty/fitBand.js";
export {
  type GradingQuantity,
  type QuantityInterval,
  quantityIntervals,
  readingSpread,
} from "./uncertainty/intervals.js";
export {
  DEFAULT_READING_ERRORS,
  type ReadingErrors,
  type ReadingResampleOptions,
  type ReadingSheets,
  resampleReadings,
} from "./uncertainty/readingErrors.js";
