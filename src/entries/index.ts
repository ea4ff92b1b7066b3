/** The entries of study.yaml. @module */
export type { ElementConfig } from "./element.js";
export type { SchemaNode } from "./kinds.js";
export { ANNEX_KEYS, type AnnexKey, annexKeys, USUAL_ANNEXES } from "./report.js";
export type {
  AcceptanceConfig,
  CarbonConfig,
  CementConfig,
  ClauseConfig,
  CompareConfig,
  CovariateConfig,
  DecisionConfig,
  LotConfig,
  MaterialConfig,
  MethodConfig,
  QualityConfig,
  ReportConfig,
  RequirementConfig,
  RequirementStatistic,
  SamplingConfig,
  SiteConfig,
  StrengthConfig,
  StudyConfig,
  TargetConfig,
  ToleranceConfig,
} from "./studyConfig.js";
export { type SchemaDraft, studyJsonSchema } from "./studyJsonSchema.js";
export type { WrittenPrice } from "./supply.js";
