/**
 * What notebooks use, subject by subject. Everything else is imported from its subject, for example
 * `import { fitGrading } from "loambook/grading"`.
 *
 * @module
 */

// Recipe, buckets, quantities, cost, carbon.
export type * from "./batch/index.js";
export { toMassShares } from "./batch/index.js";
// Shares of soil, sand and gravel.
export type * from "./blend/index.js";
export {
  blendFrontier,
  bucketSensitivity,
  practicalParts,
  robustBlend,
  robustness,
  ternaryMap,
} from "./blend/index.js";
// Parts of a report.
export type * from "./blocks/index.js";
// The entries of study.yaml.
export type * from "./entries/index.js";
// Results as figures.
export type * from "./figures/index.js";
export {
  blendChart,
  compactionChart,
  frontierChart,
  gradingChart,
  gradingResidualsChart,
  guidanceBand,
  guidanceRangesChart,
  guidanceRangesCharts,
  lotsChart,
  modelBand,
  modelChart,
  operatingCharacteristicChart,
  plasticityChart,
  renderSvg,
  residualsChart,
  robustnessChart,
  sharesChart,
  strengthByAgeChart,
  strengthChart,
  ternaryChart,
  textureTriangle,
  uncertaintyBand,
} from "./figures/index.js";
// What is wrong or doubtful.
export type * from "./findings/index.js";
export { finding, formatFindings } from "./findings/index.js";
// From readings to one curve, its models and uncertainty.
export type * from "./grading/index.js";
export { boundariesOf, resampleGrading, scalp } from "./grading/index.js";

// Published limits and cautions, with their sources.
export type * from "./guidance/index.js";
export { compareGuidance, GUIDANCE_ENTRIES, powerEnvelope } from "./guidance/index.js";
// Sheets of the laboratory, read.
export type * from "./lab/index.js";
// Showing results in a cell.
export type * from "./notebook/index.js";
export { show, showIn } from "./notebook/index.js";
// Seeded random numbers and fits.
export type * from "./numerics/index.js";
// Units, sieve sizes and numbers for a person.
export type * from "./quantities/index.js";
export { formatFixed, formatNumber, formatPlain, parseSieve } from "./quantities/index.js";
// Reports and cards as files.
export type * from "./report/index.js";
export { permitAppendix } from "./report/index.js";
// Consistency, classes, compaction.
export type * from "./soil/index.js";
// Strength on cement content, least cement, quality control.
export type * from "./strength/index.js";
export { compareTrials, leastCement } from "./strength/index.js";
// A study, read and computed.
export type * from "./study/index.js";
export {
  blendInParts,
  blendInputOf,
  computeStudy,
  isAimed,
  notKnownYet,
  openPhotographs,
  openStudy,
  readStudy,
} from "./study/index.js";
// Results as tables.
export type * from "./tables/index.js";
export {
  aspectTable,
  bandsTable,
  blendDifferenceTable,
  blendFitTable,
  blendLimitsTable,
  blendPartsTable,
  blendRelaxTable,
  blendSharesTable,
  blockMeansTable,
  bucketTable,
  carbonTable,
  cautionsBlock,
  characteristicTable,
  checklistBlock,
  classesTable,
  compactionTable,
  compareMixTable,
  comparisonTable,
  computationTable,
  costTable,
  decisionsTable,
  doubtNotes,
  envelopeTables,
  guidanceComparisonTable,
  guidanceTables,
  inputsTable,
  intervalsTable,
  jarTable,
  leastCementByStatisticTable,
  leastCementTable,
  limitsTable,
  materialsTable,
  methodsTable,
  mixStateNote,
  modelsTable,
  modelTable,
  moistureWindowTable,
  notTestedTable,
  pipetteTable,
  powerTargetsTable,
  projectTable,
  qualityChecksTable,
  qualityPlanTable,
  quantitiesTable,
  recipeTable,
  referencesBlock,
  regressionTable,
  rowsOf,
  samplingTable,
  sedimentationTable,
  sheetTable,
  sievingTable,
  siteBlocksTable,
  siteSheets,
  sizesTable,
  specimensTable,
  strengthChecksTable,
  studyComparisonTable,
  testedBlendsTable,
  toDataFrame,
  toleranceTable,
  trialDifferencesTable,
  trialsTable,
} from "./tables/index.js";
// Messages and the language they are said in.
export type * from "./words/index.js";
export { isMessage, render, renderAll, say } from "./words/index.js";
// Exercises that answer, and the class's own data.
export * from "./workshop/classBlocks.js";
export type * from "./workshop/index.js";
export {
  afterAnswer,
  answerKey,
  answerPaper,
  blockRows,
  checkAnswer,
  classRows,
  classRowsTable,
  comparePredictions,
  LESSONS,
  lessonExercises,
  mistakesTable,
  openClass,
  openLesson,
  predict,
  rehearsalTable,
  semiLogPaper,
} from "./workshop/index.js";
