/** A study read and computed. @module */
export { blendInput, blendInputOf, guidanceBandPoints } from "./blend.js";
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
export { readStudy, type StudyReading } from "./readStudy.js";
export { resultJsonSchema } from "./resultJsonSchema.js";
export { APPENDIX_SECTIONS, type AppendixSection } from "./review.js";
export { type SpecifiedLine, specifiedMix, type ToleranceBasis } from "./specifiedMix.js";
export type { InputFile, Study, StudyMaterial } from "./study.js";
export { StudyError } from "./study.js";
export type {
  ComparedMix,
  Crushed,
  MixLife,
  Proposal,
  QualityPlan,
  SiteBlocks,
  SiteLot,
  TextureStudy,
  TrialBatch,
  TrialPair,
  TrialStudy,
} from "./studyResult.js";
export {
  type BlendStudy,
  type CompactedDensity,
  type ContentCharacteristics,
  type GuidanceStudy,
  type MaterialResult,
  type MixStudy,
  RESULT_FORMAT,
  type StrengthStudy,
  type StudyResult,
} from "./studyResult.js";
export {
  type BlendDifference,
  CLOSE_PASSING_POINTS,
  CLOSE_SHARE_POINTS,
  compareBlends,
} from "./testedBlend.js";
