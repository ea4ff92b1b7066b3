import type { ReportBlock } from "./reportBlock.js";

/** A page for the crew: what it is called, and what stands on it. */
export interface SiteSheet {
  /** Name of the files, without ending. */
  readonly name:
    | "bucket-card"
    | "order-list"
    | "making-and-curing-log"
    | "block-labels"
    | "moisture-check"
    | "field-tests";
  readonly title: string;
  readonly blocks: readonly ReportBlock[];
}

/** What the crew works with. All have a default, and the sheet says where a default was used. */
export interface SiteOptions {
  /** Struck level, measured with water. Default 10 L, in US units 5 gal. */
  readonly bucketL?: number;
  /** Smallest part of a bucket. Default 0.5. */
  readonly bucketStep?: 1 | 0.5;
  /** Loose volume that the mixer takes. Default the batch of the study. */
  readonly mixerVolumeL?: number;
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
  /** For the order list: what a lorry takes. Default: no loads. */
  readonly lorry?: { readonly payloadKg: number; readonly bodyM3: number };
  /** For the order list: the forms at hand and the pace. Default: no days. */
  readonly forms?: {
    readonly formsAtHandM2: number;
    readonly hoursToSetAndRam: number;
    readonly workingHoursADay: number;
  };
}
