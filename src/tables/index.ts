/** Results as tables and other blocks. @module */

export {
  blendFitTable,
  blendLimitsTable,
  blendPartsTable,
  blendRelaxTable,
  blendSharesTable,
  bucketTable,
} from "./blend.js";
export { carbonTable, comparisonTable, mixReferences, siteCarbonTable } from "./carbon.js";
export { aspectTable, characteristicTable } from "./characteristicStrength.js";
export { leastCementByStatisticTable, powerTargetsTable } from "./choices.js";
export { computationTable } from "./computation.js";
export { compareMixTable, costTable } from "./cost.js";
export { firstMixTable } from "./firstMix.js";
export {
  jarTable,
  type NamedSizes,
  pipetteTable,
  sedimentationTable,
  sievingTable,
  sizesTable,
} from "./grading.js";
export { classesTable, intervalsTable } from "./gradingUncertainty.js";
export {
  cautionsBlock,
  envelopeTables,
  guidanceComparisonTable,
  guidanceTables,
  notTestedTable,
} from "./guidance.js";
export { inputsTable, sheetTable } from "./inputs.js";
export { recipeTable, toleranceTable } from "./mix.js";
export { qualityChecksTable, qualityPlanTable, siteBlocksTable } from "./quality.js";
export { quantitiesTable, siteOrderList } from "./quantities.js";
export { referencesBlock } from "./references.js";
export { siteBucketCard, siteMoistureCard, siteSheets, trialMass } from "./site/crewCards.js";
export { buckets, liquid, type SiteMix, siteMix } from "./site/crewMix.js";
export { siteFieldTests } from "./site/fieldTestForms.js";
export { siteBlockLabels, siteCuringLog } from "./site/logAndLabels.js";
export { mixCard } from "./site/mixCard.js";
export type { SiteOptions, SiteSheet } from "./site/siteSheet.js";
export { siteCautions, siteOptionsOf } from "./site/siteSheet.js";
export { trialCard, trialLooksCard } from "./site/trialCard.js";
export { compactionTable, limitsTable, modelTable, moistureWindowTable } from "./soil.js";
export {
  bandsTable,
  blockMeansTable,
  leastCementTable,
  modelsTable,
  regressionTable,
  specimensTable,
  statisticName,
  strengthByAgeTable,
  strengthChecksTable,
} from "./strength.js";
export { attributionTable, studyComparisonTable } from "./studyComparison.js";
export {
  checklistBlock,
  decisionsTable,
  elementNames,
  elementsText,
  elementText,
  materialsTable,
  methodsTable,
  projectTable,
  samplingTable,
} from "./studyEntries.js";
export {
  type DataFrameLike,
  type FrameRow,
  type GroupsLike,
  rowsOf,
  type SeriesLike,
  toDataFrame,
} from "./toDataFrame.js";
export { trialDifferencesTable, trialsTable } from "./trialBlocks.js";
export {
  blendDifferenceTable,
  doubtNotes,
  mixStateNote,
  noMix,
  stateInShort,
  testedBlendsTable,
} from "./trials.js";
