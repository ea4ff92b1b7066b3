/** Everything that a notebook or another program may use, room by room, lowest first. */

export {
  DEFAULT_BULK_DENSITIES,
  type DefaultBulkDensity,
  fillDensities,
  type SandBulking,
  sandBulking,
} from "./batch/bulkDensity.js";
export {
  type CarbonComparison,
  CONCRETE_AGGREGATE_KG_M3,
  carbonComparison,
  carbonSaving,
  type MixCarbon,
  type MixCarbonLine,
  mixCarbon,
} from "./batch/carbon.js";
export {
  CEMENT_CARBON_FACTORS,
  CONCRETE_CEMENT_CONTENT,
  MATERIAL_CARBON_FACTORS,
  type SourcedRange,
} from "./batch/carbonFactors.js";
export {
  type Between,
  type CementComparison,
  cementComparison,
  type SavingTrap,
  savingTrap,
} from "./batch/cementComparison.js";
export type { HaulPrice, MaterialPriceRange, PriceRange } from "./batch/cost.js";
export {
  type CostRange,
  type CostRangeLine,
  costRange,
  type MixSaving,
  mixSaving,
} from "./batch/cost.js";
export type {
  EarthElement,
  PierElement,
  RingElement,
  StraightElement,
} from "./batch/element.js";
export {
  type ElementAmounts,
  type ElementQuantities,
  elementQuantities,
} from "./batch/element.js";
export type {
  FieldBasis,
  FieldConclusion,
  FieldReading,
  FieldTest,
} from "./batch/fieldTests.js";
export {
  BALL_AND_DROP,
  FIELD_TESTS,
  JAR_TEST,
  PLASTIC_BALL,
  RIBBON_TEST,
  SHRINKAGE_BOX,
  WASH_AND_SMELL,
} from "./batch/fieldTests.js";
export { type FormDays, formDays } from "./batch/formDays.js";
export { type GradingChange, gradingChange } from "./batch/gradingChange.js";
export { type LorryLoads, lorryLoads } from "./batch/lorryLoads.js";
export { type MaterialPrice, type MixCost, type MixCostLine, mixCost } from "./batch/mixCost.js";
export type {
  LiftSize,
  Recipe,
  RecipeInput,
  RecipeLine,
  RecipeMaterial,
  RecipeWater,
} from "./batch/recipe.js";
export { recipe, saturationMoisturePct } from "./batch/recipe.js";
export { scaleRecipe } from "./batch/scaleRecipe.js";
export {
  type MassShares,
  toMassShares,
  type VolumePart,
  type VolumePartLine,
  type VolumeParts,
  volumeParts,
} from "./batch/volumeParts.js";
export type { WallElement, WallOpening } from "./batch/wallQuantities.js";
export { type WallAmounts, type WallQuantities, wallQuantities } from "./batch/wallQuantities.js";
export {
  type WaterByMoisture,
  type WaterWindow,
  waterByMoisture,
  waterWindow,
} from "./batch/water.js";
export { type WeighedBatch, type WeighedLine, weighOut } from "./batch/weighOut.js";
// batch
export type { BucketBatch, BucketLine } from "./batch/wholeBuckets.js";
export { wholeBuckets } from "./batch/wholeBuckets.js";
// blend
export { blendByHand, type HandBlend } from "./blend/byHand.js";
export { checkBlend } from "./blend/check.js";
export type {
  BlendConflict,
  BlendDesign,
  BlendFitPoint,
  BlendResult,
  BlendShare,
  LimitState,
  UnreachableLimit,
} from "./blend/description.js";
export { type BlendInput, blendMaterials, designBlend } from "./blend/design.js";
export type { BlendMaterial, TargetPoint } from "./blend/material.js";
export {
  type BlendedCurve,
  type BlendPassing,
  blendCurve,
  blendPassing,
} from "./blend/material.js";
export {
  type BucketChange,
  bucketSensitivity,
  type PartsLine,
  type PartsOptions,
  type PracticalParts,
  practicalParts,
} from "./blend/parts.js";
export type { MaterialVariation } from "./blend/robustness.js";
export {
  type RobustBlend,
  type RobustBlendInput,
  type Robustness,
  type RobustnessInput,
  type RobustPoint,
  robustBlend,
  robustness,
} from "./blend/robustness.js";
export type {
  BandAim,
  BandTargetPoint,
  BlendLimit,
  BlendTarget,
  FixedOrRange,
} from "./blend/target.js";
export { comparisonSizes, powerTarget } from "./blend/target.js";
export {
  blendFrontier,
  type FrontierPoint,
  type Relaxation,
  relaxLimits,
  type TernaryMap,
  type TernaryPoint,
  ternaryMap,
} from "./blend/tradeoffs.js";
export type {
  AcceptanceConfig,
  LotConfig,
  QualityConfig,
  ToleranceConfig,
} from "./entries/quality.js";
export type {
  ClauseConfig,
  DecisionConfig,
  ReportConfig,
  SamplingConfig,
} from "./entries/report.js";
export type { SiteConfig } from "./entries/site.js";
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
} from "./entries/studyConfig.js";
export {
  knownKeys,
  type SchemaDraft,
  type SchemaNode,
  studyJsonSchema,
} from "./entries/studyJsonSchema.js";
export type { Price, SupplyConfig, WrittenPrice } from "./entries/supply.js";
// figures
export { blendChart, robustnessChart, sharesChart } from "./figures/blend/blendChart.js";
export { frontierChart, ternaryChart } from "./figures/blend/tradeoffCharts.js";
export { compactionChart } from "./figures/compactionChart.js";
export type { Figure } from "./figures/figure.js";
export type { ChartBand } from "./figures/grading/band.js";
export { guidanceBand, modelBand, uncertaintyBand } from "./figures/grading/band.js";
export {
  type ChartCurve,
  type GradingChartOptions,
  gradingChart,
} from "./figures/grading/gradingChart.js";
export { gradingResidualsChart, modelChart } from "./figures/grading/modelChart.js";
export { type PlasticitySample, plasticityChart } from "./figures/plasticityChart.js";
export { lotsChart, operatingCharacteristicChart } from "./figures/strength/controlCharts.js";
export { residualsChart, strengthChart } from "./figures/strength/strengthChart.js";
export { type LineStyle, PALETTE, SERIES_STYLES, seriesStyle } from "./figures/style.js";
export { type DrawableFigure, FIGURE_FONT, renderSvg } from "./figures/svg/renderSvg.js";
export { type TextureSample, textureTriangle } from "./figures/textureTriangle.js";
export type { Finding } from "./findings/finding.js";
export { countFindings, formatFindings } from "./findings/format.js";
export {
  type CharacteristicSizes,
  characteristicSizes,
  type FinenessModulus,
  finenessModulus,
} from "./grading/characteristics.js";
export type {
  CombinedGrading,
  CombineInput,
  GradingOverlap,
  GradingRepair,
} from "./grading/combinedGrading.js";
export { combineGrading, poolAdjacent } from "./grading/combinedGrading.js";
export type { GradingCurve, GradingPoint } from "./grading/curve.js";
export { type CurveReading, passingAtSize, scalp, sizeAtPassing } from "./grading/curve.js";
export {
  type BoundarySystem,
  type Fractions,
  fractions,
  SIZE_BOUNDARIES,
  type SizeBoundaries,
} from "./grading/fractions.js";
export { bimodalLognormal, fredlundBimodal } from "./grading/models/bimodal.js";
export type { GradingFit, GradingFitParameter, GradingFitPoint } from "./grading/models/fit.js";
export { fitGrading } from "./grading/models/fit.js";
export type {
  GradingModel,
  GradingModelName,
  GradingModelParameter,
} from "./grading/models/gradingModel.js";
export { GRADING_MODELS, modelCurve } from "./grading/models/gradingModels.js";
export type { ChosenModel, RankedFit } from "./grading/models/modelChoice.js";
export { chooseModel } from "./grading/models/modelChoice.js";
export {
  fredlund,
  haverkampParlange,
  lognormal,
  power,
  skaggs,
  weibull,
} from "./grading/models/unimodal.js";
export type {
  HydrometerAnalysis,
  HydrometerAnalysisRow,
  HydrometerInput,
} from "./grading/sedimentation/hydrometer.js";
// grading
export {
  analyseHydrometer,
  type BsReading,
  bsHydrometer,
  type SeparateCorrections,
  separateCorrections,
} from "./grading/sedimentation/hydrometer.js";
export { effectiveDepth, hydrometerDepth } from "./grading/sedimentation/hydrometerDepth.js";
export type { JarAnalysis, JarShare } from "./grading/sedimentation/jar.js";
export {
  analyseJar,
  type JarAgainstLaboratory,
  type JarComparison,
  jarComparison,
} from "./grading/sedimentation/jar.js";
export type {
  PipetteAnalysis,
  PipetteAnalysisRow,
  PipetteInput,
} from "./grading/sedimentation/pipette.js";
export { analysePipette } from "./grading/sedimentation/pipette.js";
export {
  type SettlingInput,
  stokesDiameter,
  type WaterProperties,
  waterProperties,
} from "./grading/sedimentation/settling.js";
export type {
  SieveAnalysis,
  SieveAnalysisRow,
  SieveOptions,
  SieveSet,
} from "./grading/sieveAnalysis.js";
export { analyseSieve, minimumSieveMass } from "./grading/sieveAnalysis.js";
export {
  type GradingBandPoint,
  type ResampledFits,
  type ResampleFitsOptions,
  type ResampleMethod,
  type ResampleOptions,
  resampleFits,
  resampleGrading,
} from "./grading/uncertainty/fitBand.js";
export {
  type GradingQuantity,
  type QuantityInterval,
  quantityIntervals,
  readingSpread,
} from "./grading/uncertainty/intervals.js";
export {
  DEFAULT_READING_ERRORS,
  type ReadingErrors,
  type ReadingResampleOptions,
  type ReadingSheets,
  resampleReadings,
} from "./grading/uncertainty/readingErrors.js";
export { CAUTIONS, type Caution } from "./guidance/cautions.js";
export type {
  CriterionCheck,
  CriterionVerdict,
  GuidanceCheck,
  MeasuredConsistency,
  OtherCheck,
} from "./guidance/check.js";
// guidance
export { type BurroughsClass, burroughsClass, checkGuidance } from "./guidance/check.js";
export {
  compareGuidance,
  type GuidanceComparison,
  type GuidanceDisagreement,
} from "./guidance/comparison.js";
export type {
  BandPoint,
  ConsistencyLimit,
  FractionLimit,
  FractionName,
  GuidanceEntry,
  OtherLimit,
  OtherQuantity,
  Source,
} from "./guidance/entry.js";
export { type BandFraction, deriveBand, envelopeEntry } from "./guidance/entry.js";
export {
  type GuidanceSureness,
  guidanceSureness,
  SURE,
  surenessPercent,
  surenessWords,
} from "./guidance/probability.js";
export { GUIDANCE_ENTRIES } from "./guidance/published/recommendations.js";
export type { CompactionPoint, CompactionRecord } from "./lab/compaction.js";
export { COMPACTION_LAYOUT, readCompaction } from "./lab/compaction.js";
export type { EnvelopePoint, EnvelopeRecord } from "./lab/envelope.js";
export { ENVELOPE_LAYOUT, readEnvelope } from "./lab/envelope.js";
export type {
  BulbCalibration,
  DepthCalibration,
  HydrometerCalibration,
  HydrometerCorrections,
  HydrometerReading,
  HydrometerRecord,
  HydrometerType,
} from "./lab/hydrometer.js";
export { readHydrometer } from "./lab/hydrometer.js";
export type { JarLayer, JarLayerName, JarRecord } from "./lab/jar.js";
export { JAR_LAYOUT, readJar } from "./lab/jar.js";
export type { LimitsRecord, LiquidLimitPoint, PlasticLimitPoint } from "./lab/limits.js";
export { readLimits } from "./lab/limits.js";
export type { PipetteRecord, PipetteSample } from "./lab/pipette.js";
export { PIPETTE_LAYOUT, readPipette } from "./lab/pipette.js";
export type { Pretreatment } from "./lab/pretreatment.js";
export type { MappedSheet, SheetGrid, SheetMapping, SheetSource } from "./lab/sheet/grid.js";
export { type GridReading, readGrid } from "./lab/sheet/grid.js";
export { type HeaderCell, parseHeaderCell } from "./lab/sheet/layout.js";
export type { SieveRecord, SieveRow, SieveSplit } from "./lab/sieve.js";
export { readSieve } from "./lab/sieve.js";
export type { SpecimenRecord, SpecimenShape, SpecimenSheet } from "./lab/specimens.js";
// lab
export { type CementParts, cementFromParts, readSpecimens } from "./lab/specimens.js";
export type { WorkshopTrial } from "./lab/trials.js";
export { readTrials } from "./lab/trials.js";
export {
  KERNEL_NAME,
  type KernelSpec,
  kernelSpec,
  writeKernelSpec,
} from "./notebook/kernel/spec.js";
export { toBundle } from "./notebook/mimeBundle.js";
export type {
  CellOutput,
  DisplayOutput,
  NotebookCell,
  NotebookFile,
  NotebookText,
  StreamOutput,
} from "./notebook/notebookFile.js";
export { asNotebook, openNotebook } from "./notebook/notebookFile.js";
export type {
  CellFailure,
  CellPlace,
  NotebookProgress,
  NotebookRun,
} from "./notebook/notebookRun.js";
// notebook
export { formatFailure } from "./notebook/notebookRun.js";
export {
  INJECTED_TAG,
  injectParameters,
  ParameterError,
  type ParameterValue,
} from "./notebook/parameters.js";
export type { Timeouts } from "./notebook/runNotebook.js";
export { type RunNotebookOptions, runNotebook } from "./notebook/runNotebook.js";
export { show } from "./notebook/show.js";
export type { ConstrainedFit, ConstrainedProblem } from "./numerics/constrainedLeastSquares.js";
export { constrainedLeastSquares } from "./numerics/constrainedLeastSquares.js";
// numerics
export {
  chiSquareQuantile,
  fCdf,
  normalCdf,
  normalQuantile,
  tCdf,
  tQuantile,
} from "./numerics/distributions.js";
export { findRoot } from "./numerics/findRoot.js";
export type { LeastSquaresFit } from "./numerics/leastSquares.js";
export { leastSquares } from "./numerics/leastSquares.js";
export type { NonlinearFit, NonlinearProblem } from "./numerics/levenbergMarquardt.js";
export { levenbergMarquardt } from "./numerics/levenbergMarquardt.js";
export { monotoneCubic } from "./numerics/monotoneCubic.js";
export { noncentralTCdf, noncentralTQuantile, toleranceFactor } from "./numerics/noncentralT.js";
export { createRandom, type Random } from "./numerics/random.js";
export {
  type DisplayKind,
  displayUnit,
  displayValue,
  formatFixed,
  formatNumber,
  formatPlain,
  formatQuantity,
  type UnitSystem,
} from "./quantities/format.js";
export {
  acceptedUnits,
  type ParsedNumber,
  type ParsedQuantity,
  parseNumber,
  parseQuantity,
} from "./quantities/parseQuantity.js";
export { parseSieve, SIEVE_DESIGNATIONS, type SieveDesignation } from "./quantities/sieves.js";
// quantities
export {
  convertFromBase,
  convertToBase,
  type Dimension,
  type DimensionUnits,
  normaliseUnit,
  UNITS,
  type UnitScale,
} from "./quantities/units.js";
export type { PdfAttachment } from "./report/attachments.js";
export { studyAttachments } from "./report/attachments.js";
// report
export type {
  ChecklistNode,
  CodeNode,
  DocumentNode,
  FigureNode,
  HeadingNode,
  Inline,
  NumberedBlock,
  ReportDocument,
  SectionLink,
} from "./report/document.js";
export { EXPORTED, exportFiles } from "./report/export/exportFiles.js";
export {
  csvRow,
  harmlessText,
  type ShownNumber,
  shownNumber,
  tableCsv,
} from "./report/export/exportTable.js";
export { type HtmlOptions, renderHtml } from "./report/html/renderHtml.js";
export { notebookTitle, notebookToDocument } from "./report/notebookToDocument.js";
export { type PdfOptions, type PdfResult, renderPdf } from "./report/pdf/renderPdf.js";
export type {
  ReportFont,
  ReportInput,
  ReportLogo,
  ReportMeta,
  ReportStyle,
} from "./report/reportMeta.js";
export {
  PDF_STANDARDS,
  type PdfStandard,
  REPORT_TEMPLATES,
  type ReportTemplate,
} from "./report/reportMeta.js";
export { type OpenedStyle, openReportStyle } from "./report/style/openReportStyle.js";
export { type WriteReportOptions, type WrittenReport, writeReport } from "./report/writeReport.js";
export { siteDocument, type WrittenSite, writeMixCard, writeSite } from "./report/writeSite.js";
export type { AashtoClass, AashtoInput } from "./soil/classification/aashto.js";
export { classifyAashto, type GroupIndexInput, groupIndex } from "./soil/classification/aashto.js";
export { classifyBs5930 } from "./soil/classification/bs5930.js";
export {
  type ClassSystem,
  type CurveClass,
  type CurveLimits,
  classifyCurve,
} from "./soil/classification/classifyCurve.js";
export { classifyIso14688, type GradedTerm, gradedTerm } from "./soil/classification/iso14688.js";
export type { SizeClass, SizeClassInput } from "./soil/classification/sizeClass.js";
export type { UscsClass, UscsInput } from "./soil/classification/uscs.js";
export { classifyUscs, uscsFromCurve } from "./soil/classification/uscs.js";
export {
  type TextureCorner,
  USDA_POLYGONS,
  type UsdaClass,
  type UsdaParts,
  type UsdaTexture,
  usdaFromCurve,
  usdaTexture,
} from "./soil/classification/usdaTexture.js";
export type {
  CompactionAnalysis,
  CompactionAnalysisPoint,
  CompactionPeak,
  DensityAtWater,
  PeakMethod,
} from "./soil/compaction/compactionTest.js";
export { analyseCompaction } from "./soil/compaction/compactionTest.js";
export { type MoistureWindow, moistureWindow } from "./soil/compaction/moistureWindow.js";
export {
  airVoidsDensity,
  type OversizeInput,
  oversizeDensity,
  zeroAirVoidsDensity,
} from "./soil/compaction/phaseRelations.js";
export type { ConsistencyResult, FlowLine } from "./soil/consistency/limits.js";
export {
  consistencyLimits,
  type LiquidLimit,
  liquidLimit,
  onePointLiquidLimit,
  type PlasticLimitRepeats,
  plasticLimitRepeats,
} from "./soil/consistency/limits.js";
export {
  type LongBoxRule,
  type LongBoxShrinkage,
  longBoxShrinkage,
} from "./soil/consistency/longBox.js";
// soil
export { activity, aLine, uLine } from "./soil/consistency/plasticityChart.js";
export {
  type ClassLikelihood,
  type CurveUncertainty,
  classLikelihoods,
  curveUncertainty,
  type DoubtfulLimits,
} from "./soil/curveUncertainty.js";
export { surveyCsv } from "./soil/survey/surveyCsv.js";
export {
  type SurveyOptions,
  type SurveyProgress,
  surveyGradings,
} from "./soil/survey/surveyGradings.js";
export type { SurveyGrading, SurveyModel, SurveyRow } from "./soil/survey/surveyRow.js";
export {
  ASPECT_RATIO_TABLES,
  type AspectCorrected,
  type AspectRatioTable,
  correctAspectRatio,
} from "./strength/aspectRatio.js";
export { type BatchScatter, batchMeans, batchScatter } from "./strength/batches.js";
export {
  CHARACTERISTIC_RULES,
  type CharacteristicRule,
  type CharacteristicStrength,
  characteristicStrength,
} from "./strength/characteristicStrength.js";
export {
  type ContentInterval,
  contentInterval,
  type FiellerContent,
  fiellerContent,
} from "./strength/contentInterval.js";
// strength
export {
  type AcceptanceDesign,
  type AcceptanceRisks,
  acceptanceRisks,
  type CharacteristicPoint,
  designAcceptance,
  judgeLot,
  type LotJudgement,
  operatingCharacteristic,
} from "./strength/control/acceptance.js";
export {
  type ControlChart,
  type ControlPoint,
  controlChart,
} from "./strength/control/controlChart.js";
export { type RequiredAverage, requiredAverage } from "./strength/control/requiredAverage.js";
export { type IncludedSpecimens, includedSpecimens } from "./strength/includedBlocks.js";
export type { NextBlocks } from "./strength/leastCement.js";
export {
  type LeastCement,
  leastCement,
  roundUpToStep,
  type StrengthRequirement,
} from "./strength/leastCement.js";
export {
  programmeSheet,
  sheetCsv,
  type TestProgramme,
  type TestProgrammeOptions,
  testProgramme,
} from "./strength/programme.js";
export type { StrengthStatistic } from "./strength/regression/bounds.js";
export {
  type StrengthBand,
  type StrengthBandsOptions,
  type StrengthBoundOptions,
  strengthBands,
  strengthBound,
} from "./strength/regression/bounds.js";
export type {
  FittedStrength,
  StrengthCoefficient,
  StrengthFit,
  StrengthFitPoint,
  UnfittedStrength,
} from "./strength/regression/curve.js";
export { type FitStrengthOptions, fitStrength } from "./strength/regression/fit.js";
export {
  compareForms,
  type FormComparison,
  type FormsCompared,
} from "./strength/regression/formComparison.js";
export { type LackOfFit, lackOfFit } from "./strength/regression/lackOfFit.js";
export {
  STRENGTH_FORMS,
  type StrengthForm,
  type StrengthFormFacts,
} from "./strength/regression/model.js";
export {
  type ResidualCheck,
  residualChecks,
  shapiroWilk,
} from "./strength/regression/residuals.js";
export { type RobustStrength, robustStrength } from "./strength/regression/robustFit.js";
export { compareTrials, type TrialDifference, trialFindings } from "./strength/trials.js";
export { blendInput, blendInputOf, guidanceBandPoints } from "./study/blend.js";
export {
  compareStudies,
  type EntryChange,
  type ResultPair,
  type SheetChange,
  type StudyComparison,
} from "./study/compareStudies.js";
export { computeStudy, type StudyComputation } from "./study/computeStudy.js";
export { MADE_WITH } from "./study/madeWith.js";
export type { MixWater } from "./study/mixWater.js";
export { openStudy } from "./study/openStudy.js";
export { readStudy, type StudyReading } from "./study/readStudy.js";
export { resultJsonSchema } from "./study/resultJsonSchema.js";
// study
export { APPENDIX_SECTIONS, type AppendixSection } from "./study/review.js";
export { type SpecifiedLine, specifiedMix, type ToleranceBasis } from "./study/specifiedMix.js";
export type { InputFile, Study, StudyMaterial } from "./study/study.js";
export { StudyError } from "./study/study.js";
export type {
  ComparedMix,
  QualityPlan,
  SiteBlocks,
  SiteLot,
  TextureStudy,
} from "./study/studyResult.js";
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
} from "./study/studyResult.js";
export {
  blendFitTable,
  blendLimitsTable,
  blendPartsTable,
  blendRelaxTable,
  blendSharesTable,
  bucketTable,
} from "./tables/blend.js";
// tables
export {
  basisMark,
  carbonTable,
  comparisonTable,
  markedSource,
  mixReferences,
  savingTrapBlock,
  siteCarbonTable,
} from "./tables/carbon.js";
export { aspectTable, characteristicTable } from "./tables/characteristicStrength.js";
export { compareBlendTable, costTable, siteCostTable } from "./tables/cost.js";
export {
  jarTable,
  type NamedSizes,
  pipetteTable,
  pretreatmentNotes,
  sedimentationNotes,
  sedimentationTable,
  sievingTable,
  sizesTable,
} from "./tables/grading.js";
export { classesTable, intervalsTable } from "./tables/gradingUncertainty.js";
export {
  cautionsBlock,
  guidanceComparisonTable,
  guidanceTables,
  referencesBlock,
} from "./tables/guidance.js";
export { inputsTable, sheetTable } from "./tables/inputs.js";
export { recipeTable, toleranceTable } from "./tables/mix.js";
export {
  acceptanceTable,
  lotJudgementTable,
  lotsTable,
  noQuality,
  qualityChecksTable,
  qualityPlanTable,
  siteBlocksTable,
} from "./tables/quality.js";
export {
  cementText,
  formItems,
  loadsText,
  quantitiesTable,
  siteOrderList,
} from "./tables/quantities.js";
export type {
  CautionsBlock,
  ChecklistBlock,
  FindingsBlock,
  KeyValuesBlock,
  NoteBlock,
  PageBreakBlock,
  ParagraphBlock,
  ReferencesBlock,
  ReportBlock,
  SignatureBlock,
  TableBlock,
  TableColumn,
} from "./tables/reportBlock.js";
export { checklistHeaders, checklistTable, noMix } from "./tables/reportBlock.js";
export {
  siteBucketCard,
  siteMoistureCard,
  siteSheets,
  trialMass,
  trialText,
} from "./tables/site/crewCards.js";
export {
  bucketSize,
  buckets,
  GALLON_L,
  liquid,
  type SiteMix,
  siteMix,
} from "./tables/site/crewMix.js";
export { siteFieldTests } from "./tables/site/fieldTestForms.js";
export { siteBlockLabels, siteCuringLog } from "./tables/site/logAndLabels.js";
export { mixCard } from "./tables/site/mixCard.js";
export type { SiteOptions, SiteSheet } from "./tables/site/siteSheet.js";
export { siteCautions, siteOptionsOf } from "./tables/site/siteSheet.js";
export { compactionTable, limitsTable, modelTable, moistureWindowTable } from "./tables/soil.js";
export {
  bandsTable,
  formsTable,
  influenceTable,
  leastCementTable,
  regressionTable,
  specimensTable,
  statisticName,
  strengthChecksTable,
} from "./tables/strength.js";
export { studyComparisonTable } from "./tables/studyComparison.js";
export {
  checklistBlock,
  decisionsTable,
  elementText,
  materialsTable,
  methodsTable,
  projectTable,
  samplingTable,
} from "./tables/studyEntries.js";
export { type DataFrameLike, toDataFrame } from "./tables/toDataFrame.js";
export { programmeTable, trialDifferencesTable, trialsTable } from "./tables/trialBlocks.js";
// words
export {
  currentLanguage,
  type Language,
  type Locale,
  localNumber,
  useLanguage,
} from "./words/language.js";
export { nearestName } from "./words/nearestName.js";
export { phrase, type SaidValue, say, sayOf, sentenceKey } from "./words/say.js";
export { soilName } from "./words/soilName.js";
export { type GlossaryTerm, SPANISH_GLOSSARY } from "./words/spanish/glossary.js";
export { answerKey, wrongTurnsTable } from "./workshop/answerKey.js";
export { blendingExercises } from "./workshop/blendingExercises.js";
export type { ClassStrength } from "./workshop/cementExercises.js";
export { cementExercises } from "./workshop/cementExercises.js";
export {
  blendsTable,
  type ClassBlend,
  type ClassBlendInput,
  classBlend,
} from "./workshop/classBlend.js";
export type { ClassReadings } from "./workshop/classSoil.js";
export { type ClassSoil, classSoil } from "./workshop/classSoil.js";
export { type ClassWall, volumeMassTable, wallCement } from "./workshop/classWall.js";
export type {
  AnswerTolerance,
  ChoiceExercise,
  Exercise,
  NumberExercise,
  WrongTurn,
} from "./workshop/exercise.js";
// workshop
export { acceptedRange } from "./workshop/exercise.js";
export { type FewerBlocksDraw, fewerBlocks, fewerBlocksTable } from "./workshop/fewerBlocks.js";
export {
  gradingExercises,
  readOffWrongly,
  type WrongReadings,
} from "./workshop/gradingExercises.js";
export { jarSharesTable } from "./workshop/jarSharesTable.js";
export {
  type AnswerReading,
  commonTurns,
  type Judgement,
  judgeAnswer,
  readAnswer,
  recogniseTurn,
} from "./workshop/judgeAnswer.js";
export { savingExercises } from "./workshop/savingExercises.js";
export { comparePredictions, openExercises, predict, tryAnswer } from "./workshop/session.js";
