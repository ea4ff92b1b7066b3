/** Shares of soil, sand and gravel. @module */

export { type BandPart, type BandState, bandFindings, bandStates } from "./band.js";
export { blendByHand, type HandBlend } from "./byHand.js";
export { checkBlend } from "./check.js";
export type {
  BlendConflict,
  BlendDesign,
  BlendFitPoint,
  BlendResult,
  BlendShare,
  LimitState,
  UnreachableLimit,
} from "./description.js";
export { type BlendInput, designBlend } from "./design.js";
export type { LimitSide } from "./limits.js";
export {
  type BlendedCurve,
  type BlendMaterial,
  type BlendPassing,
  blendCurve,
  blendPassing,
  type TargetPoint,
} from "./material.js";
export {
  type BucketChange,
  bucketSensitivity,
  type PartsLine,
  type PartsOptions,
  type PracticalParts,
  practicalParts,
} from "./parts.js";
export {
  type MaterialVariation,
  type RobustBlend,
  type RobustBlendInput,
  type Robustness,
  type RobustnessInput,
  type RobustPoint,
  robustBlend,
  robustness,
} from "./robustness.js";
export {
  type Estimate,
  type RoughMaterial,
  type SandToAdd,
  sandToAdd,
  type TrialMix,
} from "./sandToAdd.js";
export {
  type BandAim,
  type BandTargetPoint,
  type BlendLimit,
  type BlendTarget,
  comparisonSizes,
  type FixedOrRange,
  type PercentRange,
  powerTarget,
} from "./target.js";
export {
  blendFrontier,
  type FrontierPoint,
  type Relaxation,
  relaxLimits,
  type TernaryMap,
  type TernaryPoint,
  ternaryMap,
} from "./tradeoffs.js";
