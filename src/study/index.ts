/** A study read and computed. @module */
export { type AttributedStep, attributeChanges, type StudyPart } from "./attribution.js";
export {
  type BlendInParts,
  blendInParts,
  blendInput,
  blendInputOf,
  guidanceBandPoints,
  isAimed,
} from "./blend.js";
export {
  compareStudies,
  type EntryChange,
  type ResultPair,
  type SheetChange,
  type StudyComparison,
} from "./compareStudies.js";
export { computeStudy, type StudyComputation } from "./computeStudy.js";
export { MADE_WITH } from "./madeWith.js";
export type { MixWater } from "./mixWater.js";
export { openStudy } from "./openStudy.js";
export { openPhotographs, type Photograph } from "./photographs.js";
export { readStudy } from "./readStudy.js";
export { APPENDIX_SECTIONS, type AppendixSection } from "./review.js";
export {
  type FoundMaterial,
  type FoundSheet,
  type SheetsAsStudy,
  sheetsAsStudy,
} from "./sheetsAsStudy.js";
export { type SpecifiedLine, specifiedMix, type ToleranceBasis } from "./specifiedMix.js";
export { notKnownYet, stageTitle } from "./stages.js";
export { type InputFile, type Study, StudyError, type StudyMaterial } from "./study.js";
export { type StudyReading, studyFromFiles } from "./studyFromFiles.js";
export type {
  BlendStudy,
  BlockMean,
  BlockMeans,
  CompactedDensity,
  ComparedMix,
  ContentCharacteristics,
  Crushed,
  GuidanceStudy,
  MaterialResult,
  MixStudy,
  MixTesting,
  Proposal,
  QualityPlan,
  SiteBlocks,
  SiteLot,
  Stage,
  StageName,
  StrengthStudy,
  StudyResult,
  TextureStudy,
  TrialBatch,
  TrialPair,
  TrialStudy,
  UngradedMaterial,
} from "./studyResult.js";
export { RESULT_FORMAT } from "./studyResult.js";
export {
  type BlendDifference,
  CLOSE_PASSING_POINTS,
  CLOSE_SHARE_POINTS,
  compareBlends,
} from "./testedBlend.js";
