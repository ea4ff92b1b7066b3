import type { GradingCurve } from "../grading/curve.js";
import { powerOf } from "../numerics/powerOf.js";
import { checkThat } from "../quantities/checkNumber.js";
import type { TargetPoint } from "./material.js";

export interface Range {
  readonly min: number;
  readonly max: number;
}

/** A number fixed by the user, or a range within which the best one is sought. */
export type FixedOrRange = number | Range;

export function asRange(value: FixedOrRange): Range {
  return typeof value === "number" ? { min: value, max: value } : value;
}

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

/** Percentages that a quantity may have; what is left out does not limit. */
export interface PercentRange {
  readonly minPct?: number;
  readonly maxPct?: number;
}

/** A condition that the blend must keep. */
export type BlendLimit =
  | ({ readonly kind: "passing"; readonly sizeMm: number } & PercentRange)
  | ({
      /** By ISO 14688 (from memory): clay below 0.002 mm, silt from there to 0.063 mm, fines both. */
      readonly kind: "clay" | "silt" | "fines";
      /** Upper sizes in mm in place of those. */
      readonly clayMm?: number;
      readonly siltMm?: number;
    } & PercentRange)
  /** Estimated from the materials by the share passing 0.425 mm; to be confirmed by test. */
  | ({ readonly kind: "plasticity-index" | "linear-shrinkage" } & PercentRange)
  /** Everything must pass this size. */
  | { readonly kind: "top-size"; readonly sizeMm: number }
  /** All materials marked as soil of the site, together. */
  | ({ readonly kind: "site-soil" } & PercentRange)
  | { readonly kind: "cost"; readonly maxPerT: number }
  | { readonly kind: "carbon"; readonly maxKgPerT: number };

/**
 * The power curve that packs grains densely, at the sizes asked for.
 *
 * Formula: passing = 100 (size / topSize)^exponent, and 100 at or above the top size.
 *
 * @param exponent more than 0, at most 1. Fuller and Thompson's is 0.5; for earth 0.20 to 0.25 is told
 * (from memory, no source read), because the binder must be more than in concrete.
 * Source: formula and range 0.3 to 0.6 for concrete in Das, Fundamentals of Geotechnical Engineering,
 * 5th ed., problem 2.15, as reproduced (read).
 * @throws RangeError where exponent or a size is out of range.
 *
 * @example
 * powerTarget(0.5, 20, [5, 20]) // => [{ sizeMm: 5, passingPct: 50 }, { sizeMm: 20, passingPct: 100 }]
 */
export function powerTarget(
  exponent: number,
  topSizeMm: number,
  sizesMm: readonly number[],
): TargetPoint[] {
  checkThat(exponent > 0 && exponent <= 1, { exponent }, "more than 0, at most 1");
  checkThat(topSizeMm > 0, { topSizeMm }, "more than 0");
  return sizesMm.map((sizeMm, index) => {
    checkThat(sizeMm > 0, { [`sizesMm[${index}]`]: sizeMm }, "more than 0");
    return { sizeMm, passingPct: 100 * Math.min(1, powerOf(sizeMm / topSizeMm, exponent)) };
  });
}

/** Sieves of the ISO 565 series, nearly evenly spaced on the logarithm of size (common practice, no source). */
export const COMPARISON_SIZES_MM = [0.063, 0.125, 0.25, 0.5, 1, 2, 4, 8, 16, 31.5, 63];

/**
 * The sizes at which a blend is held against its target: a standard set, limited to what every
 * material was measured at. The finest is the coarsest of the materials' finest sizes (a sand without
 * a hydrometer says nothing below its last sieve); the coarsest is below the target's top size.
 * Where the finest measured size is no standard one (0.075 mm), it replaces the standard size next to it.
 *
 * @example
 * const points = [{ sizeMm: 0.075, passingPct: 5, origin: "sieve" }, { sizeMm: 4.75, passingPct: 100, origin: "sieve" }];
 * comparisonSizes([{ points }], 10) // => [0.075, 0.125, 0.25, 0.5, 1, 2, 4, 8]
 */
export function comparisonSizes(curves: readonly GradingCurve[], topSizeMm: number): number[] {
  const finest = Math.max(...curves.map(({ points }) => points[0].sizeMm));
  const standard = COMPARISON_SIZES_MM.filter((size) => size >= finest && size < topSizeMm);
  // A size closer to the finest than a quarter of a decade would count the same grains twice.
  const spaced = standard.filter((size) => size === finest || size / finest > powerOf(10, 0.2));
  return spaced[0] === finest ? spaced : [finest, ...spaced];
}
