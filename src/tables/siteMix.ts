import type { BucketBatch } from "../batch/bucketBatch.js";
import { type ElementAmounts, elementQuantities } from "../batch/elementQuantities.js";
import { type GradingChange, gradingChange } from "../batch/gradingChange.js";
import type { Recipe } from "../batch/recipeResult.js";
import { type WaterWindow, waterWindow } from "../batch/waterWindow.js";
import { wholeBuckets } from "../batch/wholeBuckets.js";
import { type MoistureWindow, moistureWindow } from "../soil/moistureWindow.js";
import type { StudyResult } from "../study/studyResult.js";
import type { SiteOptions } from "./siteSheet.js";
import { GALLON_L } from "./siteUnits.js";

/** What the site sheets are made from: the mix as a crew will make it. */
export interface SiteMix {
  readonly counted: BucketBatch;
  /** The batch of the buckets; where buckets cannot be counted, that of the study, to be weighed. */
  readonly batch: Recipe;
  readonly window: WaterWindow;
  /** Where the window comes from. */
  readonly windowBasis: "test" | "entered" | "common practice";
  /** Only with the basis `test`. */
  readonly fromTest?: MoistureWindow;
  /** What the buckets do to the grading; absent where they cannot be counted. */
  readonly grading?: GradingChange;
  readonly element: ElementAmounts | null;
}

/** Tolerance that stands in where neither a window nor a tolerance is known; common practice, no source. */
const FALLBACK_TOLERANCE_PCT = 1;

/** Works out the crew's batch; undefined where the study gives no mix. */
export function siteMix(result: StudyResult, options: SiteOptions): SiteMix | undefined {
  const { mix, config, compaction, materials } = result;
  if (!mix) return undefined;
  const counted = wholeBuckets(mix.recipe, {
    bucketL: options.bucketL ?? (config.units === "SI" ? 10 : 5 * GALLON_L),
    bucketStep: options.bucketStep ?? 0.5,
    mixerVolumeL: options.mixerVolumeL,
    cementBy: options.cementBy,
  });
  const batch = counted.batch ?? mix.recipe;
  const fromTest =
    options.tolerancePct === undefined && compaction ? moistureWindow(compaction) : undefined;
  const window = waterWindow(
    batch,
    fromTest ?? { tolerancePct: options.tolerancePct ?? FALLBACK_TOLERANCE_PCT },
  );
  const curves = Object.fromEntries(materials.map(({ id, curve }) => [id, curve]));
  const element = elementQuantities(
    { kind: "wall", ...config.element },
    {
      recipe: batch,
      density: { best: mix.density.valueKgM3 },
      bagMassKg: config.cement.bagMassKg,
    },
  );
  return {
    counted,
    batch,
    window,
    windowBasis: fromTest
      ? "test"
      : options.tolerancePct === undefined
        ? "common practice"
        : "entered",
    ...(fromTest ? { fromTest } : {}),
    ...(counted.batch
      ? { grading: gradingChange(curves, mix.recipe.materials, counted.materials) }
      : {}),
    element: element.amounts,
  };
}
