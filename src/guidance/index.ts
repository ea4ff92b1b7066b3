/** Published limits and cautions, with their sources. @module */
export { CAUTIONS, type Caution, type CautionWork, cautionsFor } from "./cautions.js";
export type {
  CriterionCheck,
  CriterionVerdict,
  GuidanceCheck,
  MeasuredConsistency,
  OtherCheck,
} from "./check.js";
export {
  checkGuidance,
  guidanceFindings,
  isForStabilisedEarth,
  selectionClass,
} from "./check.js";
export {
  compareGuidance,
  type GuidanceComparison,
  type GuidanceDisagreement,
} from "./comparison.js";
export type {
  BandPoint,
  ConsistencyLimit,
  FractionLimit,
  FractionName,
  GuidanceEntry,
  GuidanceMaterial,
  OtherLimit,
  OtherQuantity,
  PowerCurves,
  SelectionClass,
  SelectionClasses,
  Source,
} from "./entry.js";
export { envelopeEntry, shortSource, sourceMark } from "./entry.js";
export {
  type BandFraction,
  deriveBand,
  type GradingEnvelope,
  gradingEnvelope,
  powerEnvelope,
} from "./envelope.js";
export {
  probabilityPercent,
  probabilityWords,
  type VerdictProbability,
  verdictProbability,
} from "./probability.js";
export { GUIDANCE_ENTRIES, guidanceEntry } from "./published/recommendations.js";
