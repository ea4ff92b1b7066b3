/** Everything that a notebook or another program may use, room by room, lowest first. */

// batch
export type { BucketBatch, BucketLine } from "./batch/bucketBatch.js";
export {
  type CarbonComparison,
  CONCRETE_AGGREGATE_KG_M3,
  carbonComparison,
} from "./batch/carbonComparison.js";
export {
  CEMENT_CARBON_FACTORS,
  CONCRETE_CEMENT_CONTENT,
  type SourcedRange,
} from "./batch/carbonFactors.js";
export { carbonSaving } from "./batch/carbonSaving.js";
export { type Between, type CementComparison, cementComparison } from "./batch/cementComparison.js";
export { type CostRange, type CostRangeLine, costRange } from "./batch/costRange.js";
export { DEFAULT_BULK_DENSITIES, type DefaultBulkDensity } from "./batch/defaultBulkDensities.js";
export type {
  EarthElement,
  PierElement,
  RingElement,
  StraightElement,
} from "./batch/earthElement.js";
export {
  type ElementAmounts,
  type ElementQuantities,
  elementQuantities,
} from "./batch/elementQuantities.js";
export { BALL_AND_DROP } from "./batch/fieldTests/ballAndDrop.js";
export type {
  FieldBasis,
  FieldConclusion,
  FieldReading,
  FieldTest,
} from "./batch/fieldTests/fieldTest.js";
export { FIELD_TESTS } from "./batch/fieldTests/fieldTests.js";
export { JAR_TEST } from "./batch/fieldTests/jarTest.js";
export { PLASTIC_BALL } from "./batch/fieldTests/plasticBall.js";
export { RIBBON_TEST } from "./batch/fieldTests/ribbonTest.js";
export { SHRINKAGE_BOX } from "./batch/fieldTests/shrinkageBox.js";
export { WASH_AND_SMELL } from "./batch/fieldTests/washAndSmell.js";
export { fillDensities } from "./batch/fillDensities.js";
export { type FormDays, formDays } from "./batch/formDays.js";
export { type GradingChange, gradingChange } from "./batch/gradingChange.js";
export { type LorryLoads, lorryLoads } from "./batch/lorryLoads.js";
export { MATERIAL_CARBON_FACTORS } from "./batch/materialCarbonFactors.js";
export { type MixCarbon, type MixCarbonLine, mixCarbon } from "./batch/mixCarbon.js";
export { type MaterialPrice, type MixCost, type MixCostLine, mixCost } from "./batch/mixCost.js";
export { type MixSaving, mixSaving } from "./batch/mixSaving.js";
export type { HaulPrice, MaterialPriceRange, PriceRange } from "./batch/priceRange.js";
export { recipe } from "./batch/recipe.js";
export type { LiftSize, RecipeInput, RecipeMaterial } from "./batch/recipeInput.js";
export type { Recipe, RecipeLine, RecipeWater } from "./batch/recipeResult.js";
export { type SandBulking, sandBulking } from "./batch/sandBulking.js";
export { saturationMoisturePct } from "./batch/saturationMoisturePct.js";
export { type SavingTrap, savingTrap } from "./batch/savingTrap.js";
export { scaleRecipe } from "./batch/scaleRecipe.js";
export { type MassShares, toMassShares, type VolumePart } from "./batch/toMassShares.js";
export { type VolumePartLine, type VolumeParts, volumeParts } from "./batch/volumeParts.js";
export type { WallElement, WallOpening } from "./batch/wallElement.js";
export { type WallAmounts, type WallQuantities, wallQuantities } from "./batch/wallQuantities.js";
export { type WaterByMoisture, waterByMoisture } from "./batch/waterByMoisture.js";
export { type WaterWindow, waterWindow } from "./batch/waterWindow.js";
export { type WeighedBatch, type WeighedLine, weighOut } from "./batch/weighOut.js";
export { wholeBuckets } from "./batch/wholeBuckets.js";
// blend
export { blendByHand, type HandBlend } from "./blend/blendByHand.js";
export { type BlendedCurve, blendCurve } from "./blend/blendCurve.js";
export { blendFrontier, type FrontierPoint } from "./blend/blendFrontier.js";
export type { BlendMaterial, TargetPoint } from "./blend/blendMaterial.js";
export { blendMaterials } from "./blend/blendMaterials.js";
export { type BlendPassing, blendPassing } from "./blend/blendPassing.js";
export type {
  BlendConflict,
  BlendDesign,
  BlendFitPoint,
  BlendResult,
  BlendShare,
  LimitState,
  UnreachableLimit,
} from "./blend/blendResult.js";
export type {
  BandAim,
  BandTargetPoint,
  BlendLimit,
  BlendTarget,
  FixedOrRange,
} from "./blend/blendTarget.js";
export { type BucketChange, bucketSensitivity } from "./blend/bucketSensitivity.js";
export { checkBlend } from "./blend/checkBlend.js";
export { comparisonSizes } from "./blend/comparisonSizes.js";
export { type BlendInput, designBlend } from "./blend/designBlend.js";
export type { MaterialVariation } from "./blend/materialVariation.js";
export { powerTarget } from "./blend/powerTarget.js";
export {
  type PartsLine,
  type PartsOptions,
  type PracticalParts,
  practicalParts,
} from "./blend/practicalParts.js";
export { type Relaxation, relaxLimits } from "./blend/relaxLimits.js";
export { type RobustBlend, type RobustBlendInput, robustBlend } from "./blend/robustBlend.js";
export {
  type Robustness,
  type RobustnessInput,
  type RobustPoint,
  robustness,
} from "./blend/robustness.js";
export { type TernaryMap, type TernaryPoint, ternaryMap } from "./blend/ternaryMap.js";
// figures
export { blendChart } from "./figures/blendChart.js";
export type { ChartBand } from "./figures/chartBand.js";
export { compactionChart } from "./figures/compactionChart.js";
export type { Figure } from "./figures/figure.js";
export { frontierChart } from "./figures/frontierChart.js";
export { type ChartCurve, type GradingChartOptions, gradingChart } from "./figures/gradingChart.js";
export { gradingResidualsChart } from "./figures/gradingResidualsChart.js";
export { guidanceBand } from "./figures/guidanceBand.js";
export { lotsChart } from "./figures/lotsChart.js";
export { modelBand } from "./figures/modelBand.js";
export { modelChart } from "./figures/modelChart.js";
export { operatingCharacteristicChart } from "./figures/operatingCharacteristicChart.js";
export { type LineStyle, PALETTE, SERIES_STYLES, seriesStyle } from "./figures/palette.js";
export { type PlasticitySample, plasticityChart } from "./figures/plasticityChart.js";
export { type DrawableFigure, FIGURE_FONT, renderSvg } from "./figures/renderSvg.js";
export { residualsChart } from "./figures/residualsChart.js";
export { robustnessChart } from "./figures/robustnessChart.js";
export { sharesChart } from "./figures/sharesChart.js";
export { strengthChart } from "./figures/strengthChart.js";
export { ternaryChart } from "./figures/ternaryChart.js";
export { type TextureSample, textureTriangle } from "./figures/textureTriangle.js";
export { uncertaintyBand } from "./figures/uncertaintyBand.js";
// grading
export { analyseHydrometer } from "./grading/analyseHydrometer.js";
export { analyseJar } from "./grading/analyseJar.js";
export { analysePipette } from "./grading/analysePipette.js";
export { analyseSieve } from "./grading/analyseSieve.js";
export { type BsReading, bsHydrometer } from "./grading/bsHydrometer.js";
export { type CharacteristicSizes, characteristicSizes } from "./grading/characteristicSizes.js";
export { chooseModel } from "./grading/chooseModel.js";
export type { ChosenModel, RankedFit } from "./grading/chosenModel.js";
export type {
  CombinedGrading,
  CombineInput,
  GradingOverlap,
  GradingRepair,
} from "./grading/combinedGrading.js";
export { combineGrading } from "./grading/combineGrading.js";
export { effectiveDepth } from "./grading/effectiveDepth.js";
export { type FinenessModulus, finenessModulus } from "./grading/finenessModulus.js";
export { fitGrading } from "./grading/fitGrading.js";
export { type Fractions, fractions } from "./grading/fractions.js";
export type { GradingCurve, GradingPoint } from "./grading/gradingCurve.js";
export type { GradingFit, GradingFitParameter, GradingFitPoint } from "./grading/gradingFit.js";
export type {
  HydrometerAnalysis,
  HydrometerAnalysisRow,
  HydrometerInput,
} from "./grading/hydrometerAnalysis.js";
export { hydrometerDepth } from "./grading/hydrometerDepth.js";
export type { JarAnalysis, JarShare } from "./grading/jarAnalysis.js";
export {
  type JarAgainstLaboratory,
  type JarComparison,
  jarComparison,
} from "./grading/jarComparison.js";
export { minimumSieveMass } from "./grading/minimumSieveMass.js";
export { modelCurve } from "./grading/modelCurve.js";
export { bimodalLognormal } from "./grading/models/bimodalLognormal.js";
export { fredlund } from "./grading/models/fredlund.js";
export { fredlundBimodal } from "./grading/models/fredlundBimodal.js";
export type {
  GradingModel,
  GradingModelName,
  GradingModelParameter,
} from "./grading/models/gradingModel.js";
export { GRADING_MODELS } from "./grading/models/gradingModels.js";
export { haverkampParlange } from "./grading/models/haverkampParlange.js";
export { lognormal } from "./grading/models/lognormal.js";
export { power } from "./grading/models/power.js";
export { skaggs } from "./grading/models/skaggs.js";
export { weibull } from "./grading/models/weibull.js";
export { type CurveReading, passingAtSize } from "./grading/passingAtSize.js";
export type {
  PipetteAnalysis,
  PipetteAnalysisRow,
  PipetteInput,
} from "./grading/pipetteAnalysis.js";
export { poolAdjacent } from "./grading/poolAdjacent.js";
export {
  type GradingQuantity,
  type QuantityInterval,
  quantityIntervals,
} from "./grading/quantityIntervals.js";
export { DEFAULT_READING_ERRORS, type ReadingErrors } from "./grading/readingErrors.js";
export { readingSpread } from "./grading/readingSpread.js";
export {
  type ResampledFits,
  type ResampleFitsOptions,
  type ResampleMethod,
  resampleFits,
} from "./grading/resampleFits.js";
export {
  type GradingBandPoint,
  type ResampleOptions,
  resampleGrading,
} from "./grading/resampleGrading.js";
export {
  type ReadingResampleOptions,
  type ReadingSheets,
  resampleReadings,
} from "./grading/resampleReadings.js";
export { scalp } from "./grading/scalp.js";
export { type SeparateCorrections, separateCorrections } from "./grading/separateCorrections.js";
export type {
  SieveAnalysis,
  SieveAnalysisRow,
  SieveOptions,
  SieveSet,
} from "./grading/sieveAnalysis.js";
export { sizeAtPassing } from "./grading/sizeAtPassing.js";
export {
  type BoundarySystem,
  SIZE_BOUNDARIES,
  type SizeBoundaries,
} from "./grading/sizeBoundaries.js";
export { type SettlingInput, stokesDiameter } from "./grading/stokesDiameter.js";
export { type WaterProperties, waterProperties } from "./grading/waterProperties.js";
// guidance
export { type BurroughsClass, burroughsClass } from "./guidance/burroughsClass.js";
export { CAUTIONS, type Caution } from "./guidance/cautions.js";
export { checkGuidance } from "./guidance/checkGuidance.js";
export {
  compareGuidance,
  type GuidanceComparison,
  type GuidanceDisagreement,
} from "./guidance/compareGuidance.js";
export { type BandFraction, deriveBand } from "./guidance/deriveBand.js";
export { envelopeEntry } from "./guidance/envelopeEntry.js";
export type {
  CriterionCheck,
  CriterionVerdict,
  GuidanceCheck,
  MeasuredConsistency,
  OtherCheck,
} from "./guidance/guidanceCheck.js";
export { GUIDANCE_ENTRIES } from "./guidance/guidanceEntries.js";
export type {
  BandPoint,
  ConsistencyLimit,
  FractionLimit,
  FractionName,
  GuidanceEntry,
  OtherLimit,
  OtherQuantity,
  Source,
} from "./guidance/guidanceEntry.js";
export { type GuidanceSureness, guidanceSureness } from "./guidance/guidanceSureness.js";
export { SURE, surenessPercent, surenessWords } from "./guidance/surenessWords.js";
// lab
export { type CementParts, cementFromParts } from "./lab/cementFromParts.js";
export type { CompactionPoint, CompactionRecord } from "./lab/compactionRecord.js";
export type { EnvelopePoint, EnvelopeRecord } from "./lab/envelopeRecord.js";
export type { Finding } from "./lab/finding.js";
export { countFindings, formatFindings } from "./lab/formatFindings.js";
export type {
  BulbCalibration,
  DepthCalibration,
  HydrometerCalibration,
} from "./lab/hydrometerCalibration.js";
export type {
  HydrometerCorrections,
  HydrometerReading,
  HydrometerRecord,
  HydrometerType,
} from "./lab/hydrometerRecord.js";
export type { JarLayer, JarLayerName, JarRecord } from "./lab/jarRecord.js";
export type { LimitsRecord, LiquidLimitPoint, PlasticLimitPoint } from "./lab/limitsRecord.js";
export type { PipetteRecord, PipetteSample } from "./lab/pipetteRecord.js";
export type { Pretreatment } from "./lab/pretreatment.js";
export { COMPACTION_LAYOUT, readCompaction } from "./lab/readCompaction.js";
export { ENVELOPE_LAYOUT, readEnvelope } from "./lab/readEnvelope.js";
export { type GridReading, readGrid } from "./lab/readGrid.js";
export { readHydrometer } from "./lab/readHydrometer.js";
export { JAR_LAYOUT, readJar } from "./lab/readJar.js";
export { readLimits } from "./lab/readLimits.js";
export { PIPETTE_LAYOUT, readPipette } from "./lab/readPipette.js";
export { readSieve } from "./lab/readSieve.js";
export { readSpecimens } from "./lab/readSpecimens.js";
export { readTrials } from "./lab/readTrials.js";
export type { SheetGrid } from "./lab/sheetGrid.js";
export type { MappedSheet, SheetMapping, SheetSource } from "./lab/sheetMapping.js";
export type { SieveRecord, SieveRow, SieveSplit } from "./lab/sieveRecord.js";
export type { SpecimenRecord, SpecimenShape, SpecimenSheet } from "./lab/specimenRecord.js";
export type { WorkshopTrial } from "./lab/workshopTrial.js";
// notebook
export { formatFailure } from "./notebook/formatFailure.js";
export {
  KERNEL_NAME,
  type KernelSpec,
  kernelSpec,
  writeKernelSpec,
} from "./notebook/kernelSpec.js";
export type {
  CellOutput,
  DisplayOutput,
  NotebookCell,
  NotebookFile,
  NotebookText,
  StreamOutput,
} from "./notebook/nbformat.js";
export type {
  CellFailure,
  CellPlace,
  NotebookProgress,
  NotebookRun,
} from "./notebook/notebookRun.js";
export { asNotebook, openNotebook } from "./notebook/openNotebook.js";
export {
  INJECTED_TAG,
  injectParameters,
  ParameterError,
  type ParameterValue,
} from "./notebook/parameters.js";
export { type RunNotebookOptions, runNotebook } from "./notebook/runNotebook.js";
export { show } from "./notebook/show.js";
export type { Timeouts } from "./notebook/timeouts.js";
export { toBundle } from "./notebook/toBundle.js";
// numerics
export { chiSquareQuantile } from "./numerics/chiSquareQuantile.js";
export type { ConstrainedFit, ConstrainedProblem } from "./numerics/constrainedFit.js";
export { constrainedLeastSquares } from "./numerics/convexQuadraticProgramme.js";
export { fCdf } from "./numerics/fCdf.js";
export { findRoot } from "./numerics/findRoot.js";
export { leastSquares } from "./numerics/leastSquares.js";
export type { LeastSquaresFit } from "./numerics/leastSquaresFit.js";
export { levenbergMarquardt } from "./numerics/levenbergMarquardt.js";
export { monotoneCubic } from "./numerics/monotoneCubic.js";
export { noncentralTCdf } from "./numerics/noncentralTCdf.js";
export { noncentralTQuantile } from "./numerics/noncentralTQuantile.js";
export type { NonlinearFit, NonlinearProblem } from "./numerics/nonlinearFit.js";
export { normalCdf } from "./numerics/normalCdf.js";
export { normalQuantile } from "./numerics/normalQuantile.js";
export { createRandom, type Random } from "./numerics/random.js";
export { tCdf } from "./numerics/tCdf.js";
export { toleranceFactor } from "./numerics/toleranceFactor.js";
export { tQuantile } from "./numerics/tQuantile.js";
// quantities
export { convertFromBase, convertToBase } from "./quantities/convertUnit.js";
export {
  type DisplayKind,
  displayUnit,
  displayValue,
  formatQuantity,
  type UnitSystem,
} from "./quantities/displayUnits.js";
export { formatFixed, formatNumber, formatPlain } from "./quantities/formatNumber.js";
export { normaliseUnit } from "./quantities/normaliseUnit.js";
export { type HeaderCell, parseHeaderCell } from "./quantities/parseHeaderCell.js";
export { type ParsedNumber, parseNumber } from "./quantities/parseNumber.js";
export { acceptedUnits, type ParsedQuantity, parseQuantity } from "./quantities/parseQuantity.js";
export { parseSieve } from "./quantities/parseSieve.js";
export { SIEVE_DESIGNATIONS, type SieveDesignation } from "./quantities/sieveDesignations.js";
export { type Dimension, type DimensionUnits, UNITS, type UnitScale } from "./quantities/units.js";
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
} from "./report/documentNode.js";
export { EXPORTED, exportFiles } from "./report/export/exportFiles.js";
export { type ShownNumber, shownNumber } from "./report/export/shownNumber.js";
export { csvRow, harmlessText, tableCsv } from "./report/export/tableCsv.js";
export { type HtmlOptions, renderHtml } from "./report/html/renderHtml.js";
export { notebookTitle } from "./report/notebookTitle.js";
export { notebookToDocument } from "./report/notebookToDocument.js";
export type { PdfAttachment } from "./report/pdf/pdfAttachment.js";
export { PDF_STANDARDS, type PdfStandard } from "./report/pdf/pdfStandard.js";
export { type PdfOptions, type PdfResult, renderPdf } from "./report/pdf/renderPdf.js";
export type { ReportInput, ReportMeta } from "./report/reportMeta.js";
export { REPORT_TEMPLATES, type ReportTemplate } from "./report/reportTemplate.js";
export { siteDocument } from "./report/site/siteDocument.js";
export { writeMixCard } from "./report/site/writeMixCard.js";
export { type WrittenSite, writeSite } from "./report/site/writeSite.js";
export { studyAttachments } from "./report/studyAttachments.js";
export { type OpenedStyle, openReportStyle } from "./report/style/openReportStyle.js";
export type { ReportFont, ReportLogo, ReportStyle } from "./report/style/reportStyle.js";
export { type WriteReportOptions, type WrittenReport, writeReport } from "./report/writeReport.js";
export type { AashtoClass, AashtoInput } from "./soil/aashtoInput.js";
export { activity } from "./soil/activity.js";
export { airVoidsDensity } from "./soil/airVoidsDensity.js";
// soil
export { aLine } from "./soil/aLine.js";
export { analyseCompaction } from "./soil/analyseCompaction.js";
export { classifyAashto } from "./soil/classifyAashto.js";
export { classifyBs5930 } from "./soil/classifyBs5930.js";
export {
  type ClassSystem,
  type CurveClass,
  type CurveLimits,
  classifyCurve,
} from "./soil/classifyCurve.js";
export { classifyIso14688 } from "./soil/classifyIso14688.js";
export { classifyUscs } from "./soil/classifyUscs.js";
export {
  type ClassLikelihood,
  classLikelihoods,
  type DoubtfulLimits,
} from "./soil/classLikelihoods.js";
export type {
  CompactionAnalysis,
  CompactionAnalysisPoint,
  CompactionPeak,
  DensityAtWater,
  PeakMethod,
} from "./soil/compactionAnalysis.js";
export { consistencyLimits } from "./soil/consistencyLimits.js";
export type { ConsistencyResult, FlowLine } from "./soil/consistencyResult.js";
export { type CurveUncertainty, curveUncertainty } from "./soil/curveUncertainty.js";
export { type GradedTerm, gradedTerm } from "./soil/gradedTerm.js";
export { type GroupIndexInput, groupIndex } from "./soil/groupIndex.js";
export { type LiquidLimit, liquidLimit } from "./soil/liquidLimit.js";
export {
  type LongBoxRule,
  type LongBoxShrinkage,
  longBoxShrinkage,
} from "./soil/longBoxShrinkage.js";
export { type MoistureWindow, moistureWindow } from "./soil/moistureWindow.js";
export { onePointLiquidLimit } from "./soil/onePointLiquidLimit.js";
export { type OversizeInput, oversizeDensity } from "./soil/oversizeDensity.js";
export { type PlasticLimitRepeats, plasticLimitRepeats } from "./soil/plasticLimitRepeats.js";
export type { SizeClass, SizeClassInput } from "./soil/sizeClassInput.js";
export { surveyCsv } from "./soil/surveyCsv.js";
export { type SurveyOptions, type SurveyProgress, surveyGradings } from "./soil/surveyGradings.js";
export type { SurveyGrading, SurveyModel, SurveyRow } from "./soil/surveyRow.js";
export { uLine } from "./soil/uLine.js";
export { uscsFromCurve } from "./soil/uscsFromCurve.js";
export type { UscsClass, UscsInput } from "./soil/uscsInput.js";
export { usdaFromCurve } from "./soil/usdaFromCurve.js";
export { type TextureCorner, USDA_POLYGONS } from "./soil/usdaPolygons.js";
export {
  type UsdaClass,
  type UsdaParts,
  type UsdaTexture,
  usdaTexture,
} from "./soil/usdaTexture.js";
export { zeroAirVoidsDensity } from "./soil/zeroAirVoidsDensity.js";
// strength
export { type AcceptanceRisks, acceptanceRisks } from "./strength/acceptanceRisks.js";
export { ASPECT_RATIO_TABLES, type AspectRatioTable } from "./strength/aspectRatioTables.js";
export { batchMeans } from "./strength/batchMeans.js";
export { type BatchScatter, batchScatter } from "./strength/batchScatter.js";
export type { StrengthStatistic } from "./strength/boundOffset.js";
export { CHARACTERISTIC_RULES, type CharacteristicRule } from "./strength/characteristicRules.js";
export {
  type CharacteristicStrength,
  characteristicStrength,
} from "./strength/characteristicStrength.js";
export { compareForms, type FormComparison, type FormsCompared } from "./strength/compareForms.js";
export { compareTrials, type TrialDifference } from "./strength/compareTrials.js";
export { type ContentInterval, contentInterval } from "./strength/contentInterval.js";
export { type ControlChart, type ControlPoint, controlChart } from "./strength/controlChart.js";
export { type AspectCorrected, correctAspectRatio } from "./strength/correctAspectRatio.js";
export { type AcceptanceDesign, designAcceptance } from "./strength/designAcceptance.js";
export { type FiellerContent, fiellerContent } from "./strength/fiellerContent.js";
export { type FitStrengthOptions, fitStrength } from "./strength/fitStrength.js";
export { type IncludedSpecimens, includedSpecimens } from "./strength/includedSpecimens.js";
export { judgeLot, type LotJudgement } from "./strength/judgeLot.js";
export { type LackOfFit, lackOfFit } from "./strength/lackOfFit.js";
export { type LeastCement, leastCement, type StrengthRequirement } from "./strength/leastCement.js";
export type { NextBlocks } from "./strength/nextBlocks.js";
export {
  type CharacteristicPoint,
  operatingCharacteristic,
} from "./strength/operatingCharacteristic.js";
export { programmeSheet } from "./strength/programmeSheet.js";
export { type RequiredAverage, requiredAverage } from "./strength/requiredAverage.js";
export { type ResidualCheck, residualChecks } from "./strength/residualChecks.js";
export { type RobustStrength, robustStrength } from "./strength/robustStrength.js";
export { roundUpToStep } from "./strength/roundUpToStep.js";
export { shapiroWilk } from "./strength/shapiroWilk.js";
export { sheetCsv } from "./strength/sheetCsv.js";
export {
  type StrengthBand,
  type StrengthBandsOptions,
  strengthBands,
} from "./strength/strengthBands.js";
export { type StrengthBoundOptions, strengthBound } from "./strength/strengthBound.js";
export type {
  FittedStrength,
  StrengthCoefficient,
  StrengthFit,
  StrengthFitPoint,
  UnfittedStrength,
} from "./strength/strengthFit.js";
export {
  STRENGTH_FORMS,
  type StrengthForm,
  type StrengthFormFacts,
} from "./strength/strengthForm.js";
export {
  type TestProgramme,
  type TestProgrammeOptions,
  testProgramme,
} from "./strength/testProgramme.js";
export { trialFindings } from "./strength/workshopTrial.js";
// study
export { APPENDIX_SECTIONS, type AppendixSection } from "./study/appendixSections.js";
export { blendInput, blendInputOf, guidanceBandPoints } from "./study/blendInput.js";
export type { ComparedMix } from "./study/comparedMix.js";
export {
  compareStudies,
  type EntryChange,
  type ResultPair,
  type SheetChange,
  type StudyComparison,
} from "./study/compareStudies.js";
export { computeStudy, type StudyComputation } from "./study/computeStudy.js";
export { knownKeys } from "./study/knownKeys.js";
export { MADE_WITH } from "./study/madeWith.js";
export type { MixWater } from "./study/mixWater.js";
export { nearestName } from "./study/nearestName.js";
export { openStudy } from "./study/openStudy.js";
export type { AcceptanceConfig, LotConfig, QualityConfig } from "./study/qualityConfig.js";
export type { QualityPlan, SiteBlocks, SiteLot } from "./study/qualityPlan.js";
export { readStudy, type StudyReading } from "./study/readStudy.js";
export type { ReportConfig } from "./study/reportConfig.js";
export { resultJsonSchema } from "./study/resultJsonSchema.js";
export type { ClauseConfig, DecisionConfig } from "./study/reviewConfig.js";
export type { SamplingConfig } from "./study/samplingConfig.js";
export type { SiteConfig } from "./study/siteConfig.js";
export { type SpecifiedLine, specifiedMix, type ToleranceBasis } from "./study/specifiedMix.js";
export type { InputFile, Study, StudyMaterial } from "./study/study.js";
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
} from "./study/studyConfig.js";
export { StudyError } from "./study/studyError.js";
export { type SchemaDraft, type SchemaNode, studyJsonSchema } from "./study/studyJsonSchema.js";
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
export type { Price, SupplyConfig, WrittenPrice } from "./study/supplyConfig.js";
export type { TextureStudy } from "./study/textureStudy.js";
export type { ToleranceConfig } from "./study/toleranceConfig.js";
// tables
export { basisMark, markedSource } from "./tables/basisMark.js";
export {
  blendLimitsTable,
  blendPartsTable,
  blendRelaxTable,
  bucketTable,
} from "./tables/blendDesignTables.js";
export { blendFitTable, blendSharesTable } from "./tables/blendTables.js";
export { carbonTable } from "./tables/carbonTable.js";
export { checklistBlock } from "./tables/checklistBlock.js";
export { checklistHeaders, checklistTable } from "./tables/checklistTable.js";
export { compareBlendTable } from "./tables/compareBlendTable.js";
export { comparisonTable } from "./tables/comparisonTable.js";
export { costTable } from "./tables/costTable.js";
export { decisionsTable } from "./tables/decisionsTable.js";
export { elementText } from "./tables/elementText.js";
export {
  type NamedSizes,
  sedimentationTable,
  sievingTable,
  sizesTable,
} from "./tables/gradingTables.js";
export { guidanceComparisonTable } from "./tables/guidanceComparisonTable.js";
export { cautionsBlock, guidanceTables, referencesBlock } from "./tables/guidanceTables.js";
export { inputsTable } from "./tables/inputsTable.js";
export { jarTable } from "./tables/jarTable.js";
export { leastCementTable } from "./tables/leastCementTable.js";
export { materialsTable, methodsTable } from "./tables/materialsTable.js";
export { mixCard } from "./tables/mixCard.js";
export { mixReferences } from "./tables/mixReferences.js";
export { moistureWindowTable } from "./tables/moistureWindowTable.js";
export { noMix } from "./tables/noMix.js";
export { pipetteTable } from "./tables/pipetteTable.js";
export { projectTable } from "./tables/projectTable.js";
export { qualityChecksTable } from "./tables/qualityChecksTable.js";
export { noQuality, qualityPlanTable } from "./tables/qualityPlanTable.js";
export { quantitiesTable } from "./tables/quantitiesTable.js";
export { cementText, formItems, loadsText } from "./tables/quantityItems.js";
export { recipeTable } from "./tables/recipeTable.js";
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
export { samplingTable } from "./tables/samplingTable.js";
export { savingTrapBlock } from "./tables/savingTrapBlock.js";
export { pretreatmentNotes, sedimentationNotes } from "./tables/sedimentationNotes.js";
export { sheetTable } from "./tables/sheetTable.js";
export { siteBlockLabels } from "./tables/siteBlockLabels.js";
export { siteBlocksTable } from "./tables/siteBlocksTable.js";
export { siteBucketCard } from "./tables/siteBucketCard.js";
export { siteCarbonTable } from "./tables/siteCarbonTable.js";
export { siteCautions } from "./tables/siteCautions.js";
export { siteCostTable } from "./tables/siteCostTable.js";
export { siteCuringLog } from "./tables/siteCuringLog.js";
export { siteFieldTests } from "./tables/siteFieldTests.js";
export { type SiteMix, siteMix } from "./tables/siteMix.js";
export { siteMoistureCard } from "./tables/siteMoistureCard.js";
export { siteOptionsOf } from "./tables/siteOptionsOf.js";
export { siteOrderList } from "./tables/siteOrderList.js";
export type { SiteOptions, SiteSheet } from "./tables/siteSheet.js";
export { siteSheets } from "./tables/siteSheets.js";
export { trialMass, trialText } from "./tables/siteTrial.js";
export { bucketSize, buckets, GALLON_L, liquid } from "./tables/siteUnits.js";
export { compactionTable, limitsTable, modelTable } from "./tables/soilTables.js";
export { statisticName } from "./tables/statisticName.js";
export { formsTable, influenceTable, strengthChecksTable } from "./tables/strengthChecksTable.js";
export { programmeTable } from "./tables/strengthProgrammeTable.js";
export { acceptanceTable, lotJudgementTable, lotsTable } from "./tables/strengthQualityTables.js";
export { aspectTable, characteristicTable } from "./tables/strengthRulesTable.js";
export { bandsTable, regressionTable, specimensTable } from "./tables/strengthTables.js";
export { trialDifferencesTable, trialsTable } from "./tables/strengthTrialTables.js";
export { studyComparisonTable } from "./tables/studyComparisonTable.js";
export { type DataFrameLike, toDataFrame } from "./tables/toDataFrame.js";
export { toleranceTable } from "./tables/toleranceTable.js";
export { classesTable, intervalsTable } from "./tables/uncertaintyTables.js";
// words
export {
  currentLanguage,
  type Language,
  type Locale,
  localNumber,
  useLanguage,
} from "./words/language.js";
export { phrase, type SaidValue, say, sayOf, sentenceKey } from "./words/say.js";
export { soilName } from "./words/soilName.js";
export { type GlossaryTerm, SPANISH_GLOSSARY } from "./words/spanish/glossary.js";
// workshop
export { acceptedRange } from "./workshop/acceptedRange.js";
export { answerKey } from "./workshop/answerKey.js";
export { blendingExercises } from "./workshop/blendingExercises.js";
export { blendsTable } from "./workshop/blendsTable.js";
export { cementExercises } from "./workshop/cementExercises.js";
export { type ClassBlend, type ClassBlendInput, classBlend } from "./workshop/classBlend.js";
export type { ClassReadings } from "./workshop/classReadings.js";
export { type ClassSoil, classSoil } from "./workshop/classSoil.js";
export type { ClassStrength } from "./workshop/classStrength.js";
export { commonTurns } from "./workshop/commonTurns.js";
export { comparePredictions } from "./workshop/comparePredictions.js";
export type {
  AnswerTolerance,
  ChoiceExercise,
  Exercise,
  NumberExercise,
  WrongTurn,
} from "./workshop/exercise.js";
export { type FewerBlocksDraw, fewerBlocks } from "./workshop/fewerBlocks.js";
export { fewerBlocksTable } from "./workshop/fewerBlocksTable.js";
export { gradingExercises } from "./workshop/gradingExercises.js";
export { jarSharesTable } from "./workshop/jarSharesTable.js";
export { type Judgement, judgeAnswer } from "./workshop/judgeAnswer.js";
export { openExercises } from "./workshop/openExercises.js";
export { predict } from "./workshop/predict.js";
export { type AnswerReading, readAnswer } from "./workshop/readAnswer.js";
export { readOffWrongly, type WrongReadings } from "./workshop/readOffWrongly.js";
export { recogniseTurn } from "./workshop/recogniseTurn.js";
export { savingExercises } from "./workshop/savingExercises.js";
export { tryAnswer } from "./workshop/tryAnswer.js";
export { volumeMassTable } from "./workshop/volumeMassTable.js";
export { type ClassWall, wallCement } from "./workshop/wallCement.js";
export { wrongTurnsTable } from "./workshop/wrongTurnsTable.js";
