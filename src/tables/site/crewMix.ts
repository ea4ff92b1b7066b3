import { type ElementAmounts, elementQuantities } from "../../batch/element.js";
import { type GradingChange, gradingChange } from "../../batch/gradingChange.js";
import type { Recipe } from "../../batch/recipe.js";
import { scaleRecipe } from "../../batch/scaleRecipe.js";
import { type WeighedBatch, weighOut } from "../../batch/weighOut.js";
import { type BucketBatch, wholeBuckets } from "../../batch/wholeBuckets.js";
import type { SiteConfig } from "../../entries/studyConfig.js";
import { formatFixed, type UnitSystem } from "../../quantities/format.js";
import { convertFromBase } from "../../quantities/units.js";
import { type MixWater, mixWater } from "../../study/mixWater.js";
import type { MixStudy, StudyResult } from "../../study/studyResult.js";
import { say, type Text } from "../../words/message.js";
import { plain } from "../cell.js";
import { type SiteOptions, siteOptionsOf } from "./siteSheet.js";

/** What the site sheets are made from: the mix as a crew will make it. */
export interface SiteMix {
  readonly counted: BucketBatch;
  /** The batch of the buckets; where buckets cannot be counted, that of the study, to be weighed. */
  readonly batch: Recipe;
  readonly water: MixWater;
  /** What the buckets do to the grading; absent where they cannot be counted. */
  readonly grading?: GradingChange;
  /** The small batch to try first, weighed; absent where none was asked for. */
  readonly trial?: WeighedBatch;
  readonly element: ElementAmounts | null;
}

/** The usual bucket where US units are spoken. */
const FIVE_GALLONS_L = 5 / gallons(1);

/** A batch for a lift that leaves more of it open than a tenth is not a batch for a lift. */
const LIFT_FILL_PCT = 90;

/** Works out the crew's batch; undefined where the study gives no mix. */
export function siteMix(result: StudyResult, options: SiteOptions): SiteMix | undefined {
  const { mix, config, compaction, materials } = result;
  if (!mix) return undefined;
  const site = siteOptionsOf(result, options);
  const counted = wholeBuckets(mix.recipe, {
    bucketL: site.bucketL ?? (config.units === "SI" ? 10 : FIVE_GALLONS_L),
    bucketStep: site.bucketStep ?? 0.5,
    mixerVolumeL: site.mixerVolumeL ?? (site.batchFills ? liftVolumeL(mix) : undefined),
    cementBy: site.cementBy,
    minFillPct: site.batchFills && site.mixerVolumeL === undefined ? LIFT_FILL_PCT : 0,
  });
  const batch = counted.batch ?? mix.recipe;
  const curves = Object.fromEntries(materials.map(({ id, curve }) => [id, curve]));
  const { valueKgM3: best, lowKgM3: low, highKgM3: high } = mix.density;
  const { amounts } = elementQuantities(config.element, {
    recipe: batch,
    density: { best, low, high },
    bagMassKg: config.cement.bagMassKg,
  });
  const trialKg = site.trial && trialDryMassKg(mix, site.trial);
  return {
    counted,
    batch,
    water: mixWater(batch, compaction, site.tolerancePct),
    ...(counted.batch
      ? { grading: gradingChange(curves, mix.recipe.materials, counted.materials) }
      : {}),
    ...(site.trial && trialKg !== undefined
      ? {
          trial: weighOut(
            scaleRecipe(mix.recipe, trialKg / mix.recipe.dryMassKg),
            site.trial.scaleStepKg,
          ),
        }
      : {}),
    element: amounts,
  };
}

/** Dry soil and aggregate of the trial batch: as entered, or what rams the blocks of its form full. */
function trialDryMassKg(
  { density, recipe }: MixStudy,
  { dryMassKg, form }: NonNullable<SiteConfig["trial"]>,
): number | undefined {
  if (dryMassKg !== undefined || !form) return dryMassKg;
  const volumeM3 = form.lengthM * form.widthM * form.heightM * form.blocks;
  return (volumeM3 * density.valueKgM3) / (1 + recipe.cementPct / 100);
}

/** Loose volume of what fills one lift, or nothing where a bulk density is missing. */
function liftVolumeL({ recipe, quantities }: MixStudy): number | undefined {
  return recipe.looseVolumeL === null ? undefined : recipe.looseVolumeL * quantities.batchesPerLift;
}

function gallons(litres: number): number {
  return convertFromBase(1000 * litres, "gal", "volume");
}

/** Litres or US gallons, which are written alike in every language. */
const LIQUID_UNIT: Readonly<Record<UnitSystem, string>> = { SI: "L", US: "gal" };

/** Water to pour: tenths of a litre, or hundredths of a US gallon. */
export function liquid(litres: number, units: UnitSystem): Text {
  const amount = units === "SI" ? formatFixed(litres, 1) : formatFixed(gallons(litres), 2);
  return say`${amount} ${LIQUID_UNIT[units]}`;
}

/** The volume of a bucket, without zeros that say nothing. */
export function bucketSize(litres: number, units: UnitSystem): Text {
  const amount = units === "SI" ? plain(litres) : plain(gallons(litres), 3);
  return say`${amount} ${LIQUID_UNIT[units]}`;
}

/** Whole and half buckets as they are called out: 3½. */
export function buckets(count: number): string {
  const whole = Math.floor(count + 1e-9);
  const half = count - whole > 0.25;
  return half ? `${whole === 0 ? "" : whole}½` : `${whole}`;
}
