/** Recipe, buckets, quantities, cost, carbon. @module */
export {
  DEFAULT_BULK_DENSITIES,
  type DefaultBulkDensity,
  type SandBulking,
  sandBulking,
} from "./bulkDensity.js";
export {
  type CarbonComparison,
  CONCRETE_AGGREGATE_KG_M3,
  carbonComparison,
  carbonSaving,
  type MixCarbon,
  type MixCarbonLine,
  mixCarbon,
} from "./carbon.js";
export {
  CEMENT_CARBON_FACTORS,
  CONCRETE_CEMENT_CONTENT,
  MATERIAL_CARBON_FACTORS,
} from "./carbonFactors.js";
export {
  type CementComparison,
  cementComparison,
  type SavingTrap,
  savingTrap,
} from "./cementComparison.js";
export {
  type CostRange,
  type CostRangeLine,
  costRange,
  type HaulPrice,
  type MaterialPriceRange,
  type MixSaving,
  mixSaving,
  type PriceRange,
} from "./cost.js";
export {
  type BuiltAmounts,
  type EarthElement,
  type ElementAmounts,
  type ElementOptions,
  type ElementQuantities,
  type ElementsQuantities,
  elementQuantities,
  elementsQuantities,
  type NamedElement,
  type PierElement,
  type RingElement,
  type StraightElement,
  type WallOpening,
} from "./element.js";
export {
  FIELD_TESTS,
  type FieldBasis,
  type FieldConclusion,
  type FieldReading,
  type FieldTest,
} from "./fieldTests.js";
export { type FormworkDuration, type FormworkUse, formworkDuration } from "./formworkDuration.js";
export { type GradingChange, gradingChange } from "./gradingChange.js";
export {
  type BucketMeasure,
  type MeasuredForm,
  type MeasuredLine,
  type MixRecord,
  type MixRecordInput,
  type MixState,
  type MixTolerances,
  mixRecord,
  usableForm,
} from "./mixRecord.js";
export {
  type Recipe,
  type RecipeInput,
  type RecipeLine,
  type RecipeMaterial,
  type RecipeWater,
  recipe,
  saturationMoisturePct,
} from "./recipe.js";
export { scaleRecipe } from "./scaleRecipe.js";
export {
  type SuppliedAmount,
  type SupplyTerms,
  suppliedAmounts,
  type Truck,
  type TruckLoads,
  truckLoads,
} from "./supply.js";
export { type MassShares, toMassShares, type VolumePart } from "./volumeParts.js";
export {
  type MoistureLimits,
  type WaterByMoisture,
  type WaterWindow,
  waterByMoisture,
  waterWindow,
} from "./water.js";
export { type WeighedBatch, type WeighedLine, weighOut } from "./weighOut.js";
