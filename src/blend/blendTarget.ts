import type { TargetPoint } from "./blendMaterial.js";

/** A number fixed by the user, or a range within which the best one is sought. */
export type FixedOrRange = number | { readonly min: number; readonly max: number };

/** Passing that is allowed at a size. */
export interface BandTargetPoint {
  readonly sizeMm: number;
  readonly lowPct: number;
  readonly highPct: number;
  /** As in `TargetPoint`; default 1. */
  readonly weight?: number;
}

/** What to seek among blends that all keep equally well to a band. */
export type BandAim = "most-site-soil" | "least-cost" | "least-carbon" | "nearest-middle";

/** What the blend is held against. */
export type BlendTarget =
  | {
      readonly kind: "power";
      readonly exponent: FixedOrRange;
      readonly topSizeMm: FixedOrRange;
      /** Default: `comparisonSizes` below the largest top size. */
      readonly sizesMm?: readonly number[];
    }
  | { readonly kind: "curve"; readonly points: readonly TargetPoint[] }
  | { readonly kind: "band-middle"; readonly points: readonly BandTargetPoint[] }
  | {
      readonly kind: "band";
      readonly points: readonly BandTargetPoint[];
      /** Default `nearest-middle`. */
      readonly aim?: BandAim;
    };

/** A condition that the blend must keep. Each `min…` and `max…` left out does not limit. */
export type BlendLimit =
  | {
      readonly kind: "passing";
      readonly sizeMm: number;
      readonly minPct?: number;
      readonly maxPct?: number;
    }
  | {
      /** By ISO 14688 (from memory): clay below 0.002 mm, silt from there to 0.063 mm, fines both. */
      readonly kind: "clay" | "silt" | "fines";
      readonly minPct?: number;
      readonly maxPct?: number;
      /** Upper sizes in mm in place of those. */
      readonly clayMm?: number;
      readonly siltMm?: number;
    }
  | {
      /** Estimated from the materials by the share passing 0.425 mm; to be confirmed by test. */
      readonly kind: "plasticity-index" | "linear-shrinkage";
      readonly minPct?: number;
      readonly maxPct?: number;
    }
  | {
      /** Everything must pass this size. */
      readonly kind: "top-size";
      readonly sizeMm: number;
    }
  | {
      /** All materials marked as soil of the site, together. */
      readonly kind: "site-soil";
      readonly minPct?: number;
      readonly maxPct?: number;
    }
  | { readonly kind: "cost"; readonly maxPerT: number }
  | { readonly kind: "carbon"; readonly maxKgPerT: number };
