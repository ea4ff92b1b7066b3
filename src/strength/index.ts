/** Strength on cement content, least cement, quality control. @module */
export {
  ASPECT_RATIO_TABLES,
  type AspectCorrected,
  type AspectRatioTable,
  correctAspectRatio,
} from "./aspectRatio.js";
export { type BatchScatter, batchMeans, batchScatter } from "./batches.js";
export {
  CHARACTERISTIC_RULES,
  type CharacteristicRule,
  type CharacteristicStrength,
  characteristicStrength,
} from "./characteristicStrength.js";
export {
  type ContentInterval,
  contentInterval,
  type FiellerContent,
  fiellerContent,
} from "./contentInterval.js";
export {
  type AcceptanceDesign,
  type AcceptanceRisks,
  acceptanceRisks,
  type CharacteristicPoint,
  designAcceptance,
  judgeLot,
  type LotJudgement,
  operatingCharacteristic,
} from "./control/acceptance.js";
export { type ControlChart, type ControlPoint, controlChart } from "./control/controlChart.js";
export {
  type IncludedSpecimens,
  type IncludedSpecimensOptions,
  includedSpecimens,
} from "./includedBlocks.js";
export { type LeastCement, leastCement, type NextBlocks, roundUpToStep } from "./leastCement.js";
export {
  type ModelEvidence,
  modelFindings,
  type NearestBlocks,
  nearestBlocks,
} from "./modelFindings.js";
export { type LeastCementOfOthers, leastCementOfOthers } from "./otherBlocks.js";
export {
  programmeSheet,
  sheetCsv,
  type TestProgramme,
  type TestProgrammeOptions,
  testProgramme,
} from "./programme.js";
export {
  type StrengthBand,
  type StrengthBandsOptions,
  type StrengthBoundOptions,
  type StrengthRequirement,
  type StrengthStatistic,
  strengthBands,
  strengthBound,
} from "./regression/bounds.js";
export type {
  FittedStrength,
  StrengthCoefficient,
  StrengthFit,
  StrengthFitPoint,
  UnfittedStrength,
} from "./regression/curve.js";
export { type FitStrengthOptions, fitStrength } from "./regression/fit.js";
export { type LackOfFit, lackOfFit } from "./regression/lackOfFit.js";
export {
  STRENGTH_MODELS,
  type StrengthModel,
  type StrengthModelFacts,
} from "./regression/model.js";
export {
  compareModels,
  type ModelComparison,
  type ModelsCompared,
} from "./regression/modelComparison.js";
export {
  type ResidualCheck,
  residualChecks,
  shapiroWilk,
} from "./regression/residuals.js";
export { type RobustStrength, robustStrength } from "./regression/robustFit.js";
export { type StrengthAtAge, type StrengthByAge, strengthByAge } from "./strengthByAge.js";
export { compareTrials, type TrialDifference, trialFindings } from "./trials.js";
