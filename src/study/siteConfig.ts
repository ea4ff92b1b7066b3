/** What the crew works with. All have a default, and the sheet says where a default was used. */
export interface SiteConfig {
  /** Struck level, measured with water. Default 10 L, in US units 5 gal. */
  readonly bucketL?: number;
  /** Smallest part of a bucket. Default 0.5. */
  readonly bucketStep?: 1 | 0.5;
  /** Loose volume that the mixer takes. Default the batch of the study. */
  readonly mixerVolumeL?: number;
  /** The batch is as near below one lift of the element as buckets allow, where no mixer volume is given. */
  readonly batchFills?: "lift";
  /** Default `scale`. */
  readonly cementBy?: "bucket" | "scale";
  /** Points below and above the target moisture. Default: the window of the compaction test. */
  readonly tolerancePct?: number;
  /** Hours until the forms come off. Default: left open to be written in. */
  readonly strippingHours?: number;
  /** Days of damp curing. Default: left open to be written in. */
  readonly dampDays?: number;
  /** Labels to print, 1 to 200. Default 8. */
  readonly labels?: number;
  /** What a lorry takes. Default: no loads. */
  readonly lorry?: { readonly payloadKg: number; readonly bodyM3: number };
  /** The forms at hand and the pace. Default: no days. */
  readonly forms?: {
    readonly formsAtHandM2: number;
    readonly hoursToSetAndRam: number;
    readonly workingHoursADay: number;
  };
  /** A small batch to try first, shown beside the full one. Default: none. */
  readonly trial?: {
    /** Soil and aggregate. */
    readonly dryMassKg: number;
    /** The least that the scale for it shows. */
    readonly scaleStepKg: number;
  };
}
