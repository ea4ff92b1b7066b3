import { formatFixed } from "../quantities/format.js";
import { say, type Text } from "../words/message.js";
import { checkAbove } from "./checkAmount.js";
import type { Recipe, RecipeLine } from "./recipe.js";
import { rebuildRecipe } from "./scaleRecipe.js";
import { bestWholeParts } from "./volumeParts.js";

export interface BucketLine {
  readonly id: string;
  readonly name: Text;
  /** Struck level. Of weighed cement: what it would fill, not rounded. */
  readonly buckets: number;
  readonly looseVolumeL: number;
  readonly dryMassKg: number;
  /** What a scale would show. */
  readonly moistMassKg: number;
  /** Of the dry mass of soil and aggregate (for cement: the cement content) with these buckets. */
  readonly sharePct: number;
  /** Against the recipe, percentage points. */
  readonly changePct: number;
}

export interface BucketBatch {
  /** `no-volumes`: a bulk density is missing; `none`: no count of buckets fits the limits. */
  readonly status: "ok" | "no-volumes" | "none";
  readonly message: Text;
  readonly bucketL: number;
  /** Smallest part of a bucket that is used. */
  readonly bucketStep: 1 | 0.5;
  readonly cementBy: "bucket" | "scale";
  readonly materials: readonly BucketLine[];
  /** Null without cement in the recipe. */
  readonly cement: BucketLine | null;
  /** The batch that these buckets make, its own water in it. Null without counts. */
  readonly batch: Recipe | null;
  /** Soil and aggregate. */
  readonly totalBuckets: number | null;
  /** Percentage points of the dry mass of soil and aggregate. */
  readonly largestShareChangePct: number | null;
  /** Percentage points. */
  readonly cementChangePct: number | null;
}

/** A loose volume that fits by a billionth less fits. */
const SLACK = 1e-9;

/**
 * Turns a recipe into whole (or half) buckets struck level, and says what the rounding does.
 *
 * Every count up to the mixer's volume is tried; the best keeps the shares of dry mass nearest at their
 * worst, among equals the fewest buckets, and that ratio is then repeated as often as the mixer holds. A
 * mixer of very many buckets is searched up to a quarter of a million counts, and the rest is repetition.
 * Cement by bucket is never rounded down; cement by scale keeps the recipe's content exactly. The water is
 * worked out anew for the batch that the buckets make.
 *
 * @param of.bucketL volume of the bucket, struck level: measure it with water.
 * @param of.mixerVolumeL loose volume that the mixer takes; default the recipe's own loose volume.
 * @param of.bucketStep 1 (default) or 0.5.
 * @param of.cementBy `scale` (default) or `bucket`.
 * @param of.leastFillPct percent of the room that the batch is to fill where some count does; default 0.
 * For a batch that is to make a whole lift; it may cost a little of the shares.
 * @throws RangeError for a volume not above 0. Source: exact
 * enumeration, own arithmetic.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 70, looseBulkDensityKgM3: 1200, moisturePct: 6 }, { id: "sand", name: "Sand", sharePct: 30, looseBulkDensityKgM3: 1500, moisturePct: 4 }];
 * const batch = recipe({ materials, cementPct: 8, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 100 });
 * const counted = wholeBuckets(batch, { bucketL: 10 });
 * counted.materials.map(({ buckets }) => buckets) // => [3, 1]
 * counted.materials.map(({ changePct }) => changePct) // => [0.59, -0.59]
 * [counted.cement.dryMassKg, counted.cementChangePct] // => [4.08, 0]
 */
export function wholeBuckets(
  recipe: Recipe,
  of: {
    readonly bucketL: number;
    readonly mixerVolumeL?: number;
    readonly bucketStep?: 1 | 0.5;
    readonly cementBy?: "bucket" | "scale";
    readonly leastFillPct?: number;
  },
): BucketBatch {
  const { bucketL, bucketStep = 1, cementBy = "scale", leastFillPct = 0 } = of;
  checkAbove("bucketL", bucketL);
  if (of.mixerVolumeL !== undefined) checkAbove("mixerVolumeL", of.mixerVolumeL);
  if (bucketStep !== 1 && bucketStep !== 0.5) {
    throw new RangeError(`invalid \`bucketStep\`: ${bucketStep}; expected 1 or 0.5`);
  }
  const failed = (status: "no-volumes" | "none", message: Text): BucketBatch => ({
    ...{ status, message, bucketL, bucketStep, cementBy, materials: [], cement: null },
    ...{ batch: null, totalBuckets: null, largestShareChangePct: null, cementChangePct: null },
  });
  if (recipe.looseVolumeL === null) {
    return failed(
      "no-volumes",
      say`A loose bulk density is missing, so buckets cannot be counted.`,
    );
  }
  const soils = recipe.materials.filter(({ dryMassKg }) => dryMassKg > 0);
  const weighed = cementBy === "scale" || recipe.cementPct === 0;
  const counted = weighed ? soils : [...soils, recipe.cement];
  const kgPerL = (line: RecipeLine) => line.dryMassKg / line.looseVolumeL!;
  const litres = (lines: readonly RecipeLine[]) =>
    lines.reduce((sum, { looseVolumeL }) => sum + looseVolumeL!, 0);
  // Weighed cement takes its room in the mixer too.
  const roomL = (of.mixerVolumeL ?? recipe.looseVolumeL) * (litres(counted) / recipe.looseVolumeL);
  const most = Math.floor(roomL / (bucketL * bucketStep) + SLACK);
  const mass = counted.reduce((sum, { dryMassKg }) => sum + dryMassKg, 0);
  const search = {
    densities: counted.map(kgPerL),
    shares: counted.map(({ dryMassKg }) => dryMassKg / mass),
    largestTotal: searchableTotal(counted.length, most),
    neverLess: weighed ? null : counted.length - 1,
  };
  const filled = (total: number) => total * Math.floor(most / total) >= (most * leastFillPct) / 100;
  const best =
    most < counted.length
      ? null
      : (bestWholeParts({ ...search, accepts: filled }) ?? bestWholeParts(search));
  if (best === null) {
    const step = bucketStep === 1 ? say`whole` : say`half`;
    return failed(
      "none",
      say`No count of ${step} buckets of ${bucketL} L up to ${most} in all holds every material${weighed ? "" : say` and enough cement`}. Take a smaller bucket, a larger mixer, or weigh.`,
    );
  }
  const times = Math.floor(most / best.parts.reduce((sum, parts) => sum + parts, 0));
  const bucketsOf = new Map(
    counted.map(({ id }, index) => [id, best.parts[index] * times * bucketStep]),
  );
  const dryCounted = (line: RecipeLine) => (bucketsOf.get(line.id) ?? 0) * bucketL * kgPerL(line);
  const soilKg = soils.reduce((sum, line) => sum + dryCounted(line), 0);
  const batch = rebuildRecipe(recipe, (line) =>
    line.id === "cement" && weighed ? (soilKg * recipe.cementPct) / 100 : dryCounted(line),
  );
  const bucketLine = (now: RecipeLine, asked: RecipeLine): BucketLine => ({
    id: now.id,
    name: now.name,
    buckets: bucketsOf.get(now.id) ?? now.looseVolumeL! / bucketL,
    looseVolumeL: now.looseVolumeL!,
    dryMassKg: now.dryMassKg,
    moistMassKg: now.moistMassKg,
    sharePct: now.sharePct,
    changePct: now.sharePct - asked.sharePct,
  });
  const materials = batch.materials.map((now, index) => bucketLine(now, soils[index]));
  const cement = recipe.cementPct > 0 ? bucketLine(batch.cement, recipe.cement) : null;
  const largest = Math.max(...materials.map(({ changePct }) => Math.abs(changePct)));
  return {
    status: "ok",
    message: say`Rounding to buckets moves no share by more than ${formatFixed(largest, 1)} points${cement ? say`; the batch holds ${formatFixed(cement.sharePct, 1)} % cement, the recipe asks for ${recipe.cementPct} %` : ""}.`,
    ...{ bucketL, bucketStep, cementBy, materials, cement, batch },
    totalBuckets: materials.reduce((sum, { buckets }) => sum + buckets, 0),
    largestShareChangePct: largest,
    cementChangePct: cement === null ? null : cement.changePct,
  };
}

/** Ratios that are tried while a person waits for a page: some hundredths of a second. */
const ENOUGH_RATIOS = 250_000;

/** The largest total of `count` whole parts, at most `most`, that leaves few enough ratios to try all. */
export function searchableTotal(count: number, most: number): number {
  // Lists of `count` parts, each at least 1, of at most `total` in all: total over count.
  let [total, ways] = [count, 1];
  while (total < most) {
    const next = (ways * (total + 1)) / (total + 1 - count);
    if (next > ENOUGH_RATIOS) break;
    total += 1;
    ways = next;
  }
  return Math.min(total, most);
}
