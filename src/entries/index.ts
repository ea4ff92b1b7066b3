/** The entries of study.yaml. @module */
export type {
  AcceptanceConfig,
  LotConfig,
  QualityConfig,
  ToleranceConfig,
} from "./quality.js";
export type {
  ClauseConfig,
  DecisionConfig,
  ReportConfig,
  SamplingConfig,
} from "./report.js";
export type { SiteConfig } from "./site.js";
export type {
  CementConfig,
  CovariateConfig,
  MaterialConfig,
  MethodConfig,
  OpeningConfig,
  RequirementConfig,
  RequirementStatistic,
  StrengthConfig,
  StudyConfig,
  TargetConfig,
} from "./studyConfig.js";
export {
  knownKeys,
  type SchemaDraft,
  type SchemaNode,
  studyJsonSchema,
} from "./studyJsonSchema.js";
export type { Price, SupplyConfig, WrittenPrice } from "./supply.js";
