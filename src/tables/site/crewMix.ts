import { type GradingChange, gradingChange } from "../../batch/gradingChange.js";
import {
  type MeasuredForm,
  type MeasuredLine,
  type MixRecord,
  usableForm,
} from "../../batch/mixRecord.js";
import type { Recipe, RecipeLine } from "../../batch/recipe.js";
import { scaleRecipe } from "../../batch/scaleRecipe.js";
import { type WeighedBatch, weighOut } from "../../batch/weighOut.js";
import type { BuildableConfig } from "../../entries/buildable.js";
import type { SiteConfig } from "../../entries/studyConfig.js";
import {
  displayUnit,
  displayValue,
  formatFixed,
  type UnitSystem,
} from "../../quantities/format.js";
import { convertFromBase } from "../../quantities/units.js";
import type { MixWater } from "../../study/mixWater.js";
import { bucketLitres, LIQUID_UNIT, recordOf } from "../../study/studyRecord.js";
import type { MixStudy, StudyResult } from "../../study/studyResult.js";
import { say, type Text } from "../../words/message.js";
import { BLANK, massText, plain } from "../cell.js";
import { type SiteOptions, siteOptionsOf } from "./siteSheet.js";

/** What the site sheets are made from: the record of the mix, for the means of this crew. */
export interface SiteMix {
  readonly config: BuildableConfig;
  readonly record: MixRecord;
  /** Struck level. */
  readonly bucketL: number;
  /** Whether whole buckets were asked for. */
  readonly wholeBuckets: boolean;
  /** Of the record: the only batch that a sheet speaks of. */
  readonly batch: Recipe;
  readonly water: MixWater;
  /** What the buckets do to the grading; absent where they cannot be counted. */
  readonly grading?: GradingChange;
  /** The small batch to try first, weighed; absent where none was asked for. */
  readonly trial?: WeighedBatch;
}

/** Works out the crew's batch; undefined where the study gives no mix. */
export function siteMix(result: StudyResult, options: SiteOptions): SiteMix | undefined {
  const { mix, config, materials } = result;
  const site = siteOptionsOf(result, options);
  const found = recordOf(result, site);
  if (!mix || !found) return undefined;
  const { record, water } = found;
  const { batch, buckets: counted } = record;
  const curves = Object.fromEntries(materials.map(({ id, curve }) => [id, curve]));
  const trialKg = site.trial && trialDryMassKg(mix, site.trial);
  return {
    config: found.config,
    record,
    bucketL: bucketLitres(config, site),
    wholeBuckets: site.bucketStep === 1,
    batch,
    water,
    ...(counted ? { grading: gradingChange(curves, batch.materials, counted.materials) } : {}),
    ...(site.trial && trialKg !== undefined
      ? { trial: weighOut(scaleRecipe(batch, trialKg / batch.dryMassKg), site.trial.scaleStepKg) }
      : {}),
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

/** Water to pour: tenths of a litre, or hundredths of a US gallon. */
export function liquid(litres: number, units: UnitSystem): Text {
  const amount =
    units === "SI"
      ? formatFixed(litres, 1)
      : formatFixed(convertFromBase(1000 * litres, "gal", "volume"), 2);
  return say`${amount} ${LIQUID_UNIT[units]}`;
}

/** The moist mass of a line of the batch as the crew's scale shows it, or to three digits where none was entered. */
export function weighed(
  { scale }: MixRecord,
  { id, moistMassKg }: Pick<RecipeLine, "id" | "moistMassKg">,
  units: UnitSystem,
): Text {
  const shown = lineOf(usableForm(scale), id)?.measure ?? null;
  if (shown === null) return massText(moistMassKg, units);
  // Six digits hold every step of a scale, and none of the rounding errors behind it.
  return say`${plain(displayValue(1000 * shown, "mass", units), 6)} ${displayUnit("mass", units)}`;
}

function lineOf(form: MeasuredForm | null, id: string): MeasuredLine | null | undefined {
  return form && [...form.materials, form.cement].find((line) => line?.id === id);
}

/** How much of a form a material or the cement takes, or that it is weighed; a dash for what is not in it. */
export function measureText(
  form: MeasuredForm | null,
  id: string,
  write: (count: number) => string = String,
): Text {
  const line = lineOf(form, id);
  if (!line) return BLANK;
  return line.measure === null ? say`weigh` : write(line.measure);
}

/** Whole and half buckets as they are called out: 3½. */
export function buckets(count: number): string {
  const whole = Math.floor(count + 1e-9);
  const half = count - whole > 0.25;
  return half ? `${whole === 0 ? "" : whole}½` : `${whole}`;
}
