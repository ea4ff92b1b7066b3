import { checkPositive } from "../quantities/checkNumber.js";
import { formatFixed } from "../quantities/format.js";
import { say, type Text } from "../words/message.js";
import { type Recipe, type RecipeLine, usedLines } from "./recipe.js";
import { rebuildRecipe } from "./scaleRecipe.js";
import { bestWholeParts, searchableTotal } from "./wholeParts.js";

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
  readonly maxShareChangePct: number | null;
  /** Percentage points. */
  readonly cementChangePct: number | null;
}

export interface BucketOptions {
  /** Volume of the bucket, struck level: measure it with water. */
  readonly bucketL: number;
  /** Loose volume that the mixer takes; default the recipe's own loose volume. */
  readonly mixerVolumeL?: number;
  /** Default 1. */
  readonly bucketStep?: 1 | 0.5;
  /** Default `scale`. */
  readonly cementBy?: "bucket" | "scale";
  /**
   * Percent of the room that the batch is to fill where some count does; default 0. For a batch that is to
   * make a whole lift; it may cost a little of the shares.
   */
  readonly minFillPct?: number;
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
export function wholeBuckets(recipe: Recipe, options: BucketOptions): BucketBatch {
  const { bucketL, mixerVolumeL, bucketStep = 1, cementBy = "scale", minFillPct = 0 } = options;
  checkPositive("bucketL", bucketL);
  if (mixerVolumeL !== undefined) checkPositive("mixerVolumeL", mixerVolumeL);
  if (bucketStep !== 1 && bucketStep !== 0.5) {
    throw new RangeError(`invalid \`bucketStep\`: ${bucketStep}; expected 1 or 0.5`);
  }
  const means = { bucketL, bucketStep, cementBy };
  if (recipe.looseVolumeL === null) {
    const message = say`A loose bulk density is missing, so buckets cannot be counted.`;
    return noBuckets("no-volumes", message, means);
  }
  const weighed = cementBy === "scale" || recipe.cementPct === 0;
  const counted = weighed ? recipe.materials : usedLines(recipe);
  // Weighed cement takes its room in the mixer too.
  const countedL = counted.reduce((sum, { looseVolumeL }) => sum + looseVolumeL!, 0);
  const roomL = (mixerVolumeL ?? recipe.looseVolumeL) * (countedL / recipe.looseVolumeL);
  const most = Math.floor(roomL / (bucketL * bucketStep) + SLACK);
  const steps = stepsOfEach(counted, most, weighed, minFillPct);
  if (steps === null) return noBuckets("none", noCount(means, most, weighed), means);
  const bucketsOf = new Map(counted.map(({ id }, index) => [id, steps[index] * bucketStep]));
  const dryCounted = (line: RecipeLine) => (bucketsOf.get(line.id) ?? 0) * bucketL * kgPerL(line);
  const soilKg = recipe.materials.reduce((sum, line) => sum + dryCounted(line), 0);
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
  const materials = batch.materials.map((now, index) => bucketLine(now, recipe.materials[index]));
  const cement = recipe.cementPct > 0 ? bucketLine(batch.cement, recipe.cement) : null;
  const maxChange = Math.max(...materials.map(({ changePct }) => Math.abs(changePct)));
  return {
    status: "ok",
    message: roundingWords(maxChange, cement, recipe.cementPct),
    ...means,
    materials,
    cement,
    batch,
    totalBuckets: materials.reduce((sum, { buckets }) => sum + buckets, 0),
    maxShareChangePct: maxChange,
    cementChangePct: cement === null ? null : cement.changePct,
  };
}

function kgPerL(line: RecipeLine): number {
  return line.dryMassKg / line.looseVolumeL!;
}

/** Whole steps of a bucket of each counted material, at most so many in all; null where none will do. */
function stepsOfEach(
  counted: readonly RecipeLine[],
  most: number,
  cementWeighed: boolean,
  minFillPct: number,
): readonly number[] | null {
  if (most < counted.length) return null;
  const mass = counted.reduce((sum, { dryMassKg }) => sum + dryMassKg, 0);
  const search = {
    densities: counted.map(kgPerL),
    shares: counted.map(({ dryMassKg }) => dryMassKg / mass),
    maxTotal: searchableTotal(counted.length, most),
    cementIndex: cementWeighed ? null : counted.length - 1,
  };
  const filled = (total: number) => total * Math.floor(most / total) >= (most * minFillPct) / 100;
  const best = bestWholeParts({ ...search, accepts: filled }) ?? bestWholeParts(search);
  if (best === null) return null;
  const times = Math.floor(most / best.parts.reduce((sum, parts) => sum + parts, 0));
  return best.parts.map((parts) => parts * times);
}

type BucketMeans = Pick<BucketBatch, "bucketL" | "bucketStep" | "cementBy">;

function noBuckets(status: "no-volumes" | "none", message: Text, means: BucketMeans): BucketBatch {
  return {
    status,
    message,
    ...means,
    materials: [],
    cement: null,
    batch: null,
    totalBuckets: null,
    maxShareChangePct: null,
    cementChangePct: null,
  };
}

function noCount({ bucketStep, bucketL }: BucketMeans, most: number, weighed: boolean): Text {
  const step = bucketStep === 1 ? say`whole` : say`half`;
  return weighed
    ? say`No count of ${step} buckets of ${bucketL} L up to ${most} in all holds every material. Take a smaller bucket, a larger mixer, or weigh.`
    : say`No count of ${step} buckets of ${bucketL} L up to ${most} in all holds every material and enough cement. Take a smaller bucket, a larger mixer, or weigh.`;
}

function roundingWords(maxChange: number, cement: BucketLine | null, askedPct: number): Text {
  const points = formatFixed(maxChange, 1);
  return cement === null
    ? say`Rounding to buckets moves no share by more than ${points} points.`
    : say`Rounding to buckets moves no share by more than ${points} points; the batch holds ${formatFixed(cement.sharePct, 1)} % cement, the recipe asks for ${askedPct} %.`;
}
