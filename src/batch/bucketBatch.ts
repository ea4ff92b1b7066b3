import type { Recipe } from "./recipeResult.js";

export interface BucketLine {
  readonly id: string;
  readonly name: string;
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
  readonly message: string;
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
